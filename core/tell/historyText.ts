import type { CoolerResult } from "../forecast/result.ts";
import type { Spread } from "../matter/spread.ts";
import { hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { nameWords } from "./words.ts";

/** "0.98 W/K (0.91 to 1.05)". */
export function conductanceWords({ p10, p50, p90 }: Spread): string {
  return `${p50.toFixed(2)} W/K (${p10.toFixed(2)} to ${p90.toFixed(2)})`;
}

/** How many times as wide, on the scale of ratios, on which a conductance is believed. */
export function narrowed_frac(before: Spread, now: Spread): number {
  return 1 - Math.log(now.p90 / now.p10) / Math.log(before.p90 / before.p10);
}

/** What earlier trips taught of a cooler, and that its range is narrower for it. Nothing where there were none. */
export function historyLines({ history }: Pick<CoolerResult, "history">, voice: Voice): string[] {
  if (history === undefined) return [];
  const { records, before_W_per_K: before, now_W_per_K: now, odd } = history;
  if (records === 0) return hanging("known: ", "its history is empty so far.", voice.width);
  const narrower = Math.round(100 * narrowed_frac(before, now));
  const why =
    narrower < 1 ? "" : `: its range here is narrower for it (what is known of the walls by ${narrower} %)`;
  const trips = `${records} earlier ${records === 1 ? "trip" : "trips"}`;
  const says = `${trips} put its conductance at ${conductanceWords(now)}, before ${conductanceWords(before)}${why}.`;
  const doubt = `${nameWords(odd)} ${odd.length === 1 ? "does" : "do"} not agree with the rest: was lid, gasket or drain other than now?`;
  return hanging("known: ", odd.length === 0 ? says : `${says} ${doubt}`, voice.width);
}
