import type { CampFacts } from "../worker/logAsks.ts";

const HOUR_ms = 3_600_000;
const DAY_ms = 24 * HOUR_ms;
/** A clock that stands further behind what it last showed was set. Below, it may have been put right by the network. */
const BACK_ms = 10 * 60_000;
/** A phone that was not looked at for longer may as well have lost its clock: asking once costs one tap. */
const AHEAD_ms = 36 * HOUR_ms;
/** What a log may reach beyond the trip, as the reader of logs has it. */
const BEFORE_ms = 2 * DAY_ms;
const AFTER_ms = 13 * DAY_ms;

/** "2027-07-16T09:00:05" on a clock of the place. */
export function localIso(at_ms: number, timezone: string): string {
  const parts = new Intl.DateTimeFormat("en-CA", {
    timeZone: timezone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
    hourCycle: "h23",
  }).formatToParts(at_ms);
  const part = (type: string): string => parts.find((one) => one.type === type)?.value ?? "00";
  return `${part("year")}-${part("month")}-${part("day")}T${part("hour")}:${part("minute")}:${part("second")}`;
}

/** Day of the trip on which this is; day 1 is the day of departure, and 0 the day before it. */
export function dayAt(at_ms: number, { timezone, depart }: CampFacts): number {
  const midnight = (iso: string): number => Date.parse(`${iso.slice(0, 10)}T00:00Z`);
  return 1 + Math.round((midnight(localIso(at_ms, timezone)) - midnight(depart)) / DAY_ms);
}

/** "Sat 17 Jul" and "7:05 pm", for people at camp. */
export function dayWords(at_ms: number, timezone: string): string {
  const words = new Intl.DateTimeFormat("en-GB", {
    timeZone: timezone,
    weekday: "short",
    day: "numeric",
    month: "short",
  });
  return words.format(at_ms).replace(",", "");
}

export function clockWords(at_ms: number, timezone: string): string {
  const words = new Intl.DateTimeFormat("en-US", { timeZone: timezone, hour: "numeric", minute: "2-digit" });
  return words.format(at_ms).replace(/:00/, "").replace(/\s/g, " ").toLowerCase();
}

/** Before it, nothing has begun; after it, the trip is over and what is logged would not fit it. */
export const isBefore = (at_ms: number, { depart_ms }: CampFacts): boolean => at_ms < depart_ms - BEFORE_ms;
export const isAfter = (at_ms: number, { return_ms }: CampFacts): boolean => at_ms > return_ms + AFTER_ms;

/**
 * Days of which one must be asked, since the clock does not go on from what it last showed: those around the last one
 * seen and what it shows now. Empty: nothing to ask.
 *
 * @param seen_ms what the clock showed when the log was last touched; null: never
 */
export function doubtfulDays(now_ms: number, seen_ms: number | null, facts: CampFacts): number[] {
  if (seen_ms === null || (now_ms >= seen_ms - BACK_ms && now_ms <= seen_ms + AHEAD_ms)) return [];
  const last = dayAt(seen_ms, facts);
  const end = dayAt(facts.return_ms, facts) + 1;
  const days = new Set([last, last + 1, last + 2]);
  const shown = dayAt(now_ms, facts);
  if (shown >= last && shown <= end) days.add(shown);
  return [...days]
    .filter((day) => day >= 0)
    .sort((a, b) => a - b)
    .slice(-4);
}

/** By how much the clock is off when it is this day of the trip, to the whole day: its hour is believed. */
export function shiftTo_ms(day: number, clock_ms: number, facts: CampFacts): number {
  return (day - dayAt(clock_ms, facts)) * DAY_ms;
}
