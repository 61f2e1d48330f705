import type { UnitSystem } from "../core/index.ts";

const LB_PER_KG = 2.204_622_621_8;

/** A mass as it is read on a screen; whole from ten on. */
export function mass(mass_kg: number, units: UnitSystem): string {
  const value = units === "us" ? mass_kg * LB_PER_KG : mass_kg;
  const shown = value >= 9.95 ? Math.round(value) : Math.round(value * 10) / 10;
  return `${shown} ${units === "us" ? "lb" : "kg"}`;
}

/** "Fri 16 Jul 09:00" of a local ISO moment. */
export function momentSaid(iso: string): string {
  const [, year, month, day, clock] = /^(\d+)-(\d+)-(\d+)T(\d+:\d+)/.exec(iso) ?? [];
  if (clock === undefined) return iso;
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  const words = new Intl.DateTimeFormat("en-GB", {
    weekday: "short",
    day: "numeric",
    month: "short",
    timeZone: "UTC",
  });
  return `${words.format(date).replace(",", "")} ${clock}`;
}

/** The day of a local ISO moment, in words. */
export const daySaid = (iso: string): string => momentSaid(iso).split(" ").slice(0, 3).join(" ");
