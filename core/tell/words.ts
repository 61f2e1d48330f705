import { Temporal } from "temporal-polyfill";
import type { Band } from "../forecast/result.ts";
import { requireFinite } from "../quantity/errors.ts";

/** What it takes to turn hours since departure into words of the local clock. It knows no change of the clock. */
export interface TripClock {
  /** Local day of departure, ISO. */
  date: string;
  /** Local time of day at departure. */
  departClock_s: number;
  /** Length of the trip. */
  length_h: number;
}

/** Hours from departure as local day and time; day 1 is the day of departure. */
export interface LocalTime {
  day: number;
  /** "Mon" … "Sun". */
  weekday: string;
  /** As a calendar writes it, "1" … "31". */
  dayOfMonth: string;
  /** Minutes since midnight, 0…1439. */
  sinceMidnight_min: number;
}

/** What may be said instead of a time that the reckoning does not reach. */
export const PAST_RETURN = "past the return";
/** Beside a value without a spread. */
export const NO_BAND = "middle case, no band yet";

const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const PARTS: readonly (readonly [number, string])[] = [
  [5, "early morning"],
  [8, "morning"],
  [11, "noon"],
  [13, "afternoon"],
  [17, "evening"],
  [21, "night"],
];

/** The clock of a trip. */
export function clockOf(trip: { depart: string; departClock_s: number; duration_s: number }): TripClock {
  return {
    date: trip.depart.slice(0, 10),
    departClock_s: trip.departClock_s,
    length_h: trip.duration_s / 3600,
  };
}

/** Local day and time of a moment, to the nearest minute. `t_h` may be before departure or after the return. */
export function localTime(t_h: number, clock: TripClock): LocalTime {
  requireFinite("t_h", t_h, -1e5, 1e5);
  const sinceMidnight = Math.round(clock.departClock_s / 60 + t_h * 60);
  const daysOn = Math.floor(sinceMidnight / 1440);
  const date = Temporal.PlainDate.from(clock.date).add({ days: daysOn });
  return {
    day: daysOn + 1,
    weekday: WEEKDAYS[date.dayOfWeek - 1]!,
    dayOfMonth: String(date.day),
    sinceMidnight_min: sinceMidnight - daysOn * 1440,
  };
}

/** "day 4 evening". Before five in the morning it is still the night: "night before day 4". */
export function dayPart(t_h: number, clock: TripClock): string {
  const { day, sinceMidnight_min } = localTime(t_h, clock);
  const part = PARTS.filter(([from]) => sinceMidnight_min >= from * 60).at(-1);
  return part === undefined ? `night before day ${day}` : `day ${day} ${part[1]}`;
}

/** "14:30". */
export function clockWords(sinceMidnight_min: number): string {
  const two = (count: number): string => String(count).padStart(2, "0");
  return `${two(Math.floor(sinceMidnight_min / 60))}:${two(sinceMidnight_min % 60)}`;
}

/** "Mon day 3, 14:30". */
export function momentWords(t_h: number, clock: TripClock): string {
  const { weekday, day, sinceMidnight_min } = localTime(t_h, clock);
  return `${weekday} day ${day}, ${clockWords(sinceMidnight_min)}`;
}

/** The full hour of the local clock before a reckoned moment: minutes would claim too much, and later would be milder. */
export function fullHour_h(t_h: number, clock: TripClock): number {
  const lead_h = clock.departClock_s / 3600;
  return Math.floor(t_h + lead_h + 1e-6) - lead_h;
}

/** "day 3, 14:00". */
function hourWords(t_h: number, clock: TripClock): string {
  const { day, sinceMidnight_min } = localTime(fullHour_h(t_h, clock), clock);
  return `day ${day}, ${clockWords(sinceMidnight_min)}`;
}

/** "2 h 20 min", "45 min", "3 h"; from two days on, "2 days 5 h". */
export function durationWords(span_h: number): string {
  requireFinite("span_h", span_h, 0, 1e5);
  const minutes = Math.round(span_h * 60);
  if (minutes >= 48 * 60) {
    const whole = Math.round(span_h);
    return join(`${Math.floor(whole / 24)} days`, whole % 24, "h");
  }
  if (minutes < 60) return `${minutes} min`;
  return join(`${Math.floor(minutes / 60)} h`, minutes % 60, "min");
}

function join(large: string, small: number, unit: string): string {
  return small === 0 ? large : `${large} ${small} ${unit}`;
}

/** True where the three values of a band are one. */
export function isPoint(band: Band): boolean {
  return band.p10 === band.p50 && band.p50 === band.p90;
}

/**
 * How long something lasts, in words that follow "ice" or "under 40 °F": "until day 4 evening (middle case, no band
 * yet)", "likely until day 6 evening (day 5 noon to past the return)", "to the return, nine times in ten".
 *
 * @param middle true when the whole result is the middle case alone, so that even equal values are no band
 */
export function untilWords(band: Band, clock: TripClock, middle: boolean): string {
  return middle ? `${spanWords(band, clock, true)} (${NO_BAND})` : spanWords(band, clock, false);
}

/**
 * As `untilWords`, for a sentence that says elsewhere that it is the middle case. Within twelve hours a band is told to
 * the hour, a wider one by parts of the day.
 */
export function spanWords(band: Band, clock: TripClock, middle: boolean): string {
  if (middle) return lastsUntil(band.p50, (t_h) => dayPart(t_h, clock));
  if (band.p10 === null) return "to the return, nine times in ten";
  const narrow = band.p90 !== null && band.p90 - band.p10 < 12;
  const say = (t_h: number | null): string => {
    if (t_h === null) return PAST_RETURN;
    return narrow ? hourWords(t_h, clock) : dayPart(t_h, clock);
  };
  return `likely ${lastsUntil(band.p50, say)} (${rangeWords(say(band.p10), say(band.p90))})`;
}

function lastsUntil(t_h: number | null, say: (t_h: number) => string): string {
  return t_h === null ? "to the return" : `until ${say(t_h)}`;
}

function rangeWords(from: string, to: string): string {
  return from === to ? `both ends ${from}` : `${from} to ${to}`;
}

/** The same as a moment when something begins: "day 4 evening", "likely day 4 evening (day 4 noon to never)". */
export function fromWords(band: Band, clock: TripClock, middle: boolean): string {
  const say = (t_h: number | null): string => (t_h === null ? "not on this trip" : dayPart(t_h, clock));
  if (middle) return say(band.p50);
  return `likely ${say(band.p50)} (${rangeWords(say(band.p10), say(band.p90))})`;
}

/** Text that a stranger typed, fit for one line: no control or direction characters, spaces single. */
export function printable(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufffe\uffff]/gu, " ")
    .replace(/\s+/g, " ")
    .trim();
}
