import { Temporal } from "temporal-polyfill";
import type { Band } from "../forecast/result.ts";
import { requireFinite } from "../quantity/errors.ts";
import { dayStart_ms, localClock_s, localInstant_ms, localIso } from "../sky/localTime.ts";
import { cut } from "./lines.ts";

/** What it takes to turn hours since departure into words of the local clock, across its changes. */
export interface TripClock {
  /** Local day of departure, ISO. */
  date: string;
  /** The instant of departure, milliseconds since 1970 UTC, and the clocks that the trip goes by. */
  depart_ms: number;
  timezone: string;
  /** Length of the trip. */
  length_h: number;
  /** Meals by local time of day: a moment that is one of them is told by its name. */
  meals: readonly (readonly [name: string, clock_s: number])[];
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
/** Said once beside values without a spread. */
/** A cooler that has no water ice at any time; its ice does not end, there is none. */
export const hasNoIce = ({ p90 }: Band): boolean => p90 === 0;

export const ONE_RUN = "One typical run, no range yet";

/** From Monday on. */
export const WEEKDAYS: readonly string[] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const PARTS: readonly (readonly [number, string])[] = [
  [5, "early morning"],
  [8, "morning"],
  [11, "noon"],
  [13, "afternoon"],
  [17, "evening"],
  [21, "night"],
];

/** The clock of a trip. */
export function clockOf(trip: {
  depart: string;
  duration_s: number;
  place: { timezone: string };
  meals: { breakfast_s: number; lunch_s: number; dinner_s: number };
}): TripClock {
  const { breakfast_s, lunch_s, dinner_s } = trip.meals;
  return {
    meals: [
      ["breakfast", breakfast_s],
      ["lunch", lunch_s],
      ["dinner", dinner_s],
    ],
    date: trip.depart.slice(0, 10),
    depart_ms: localInstant_ms(trip.depart, trip.place.timezone),
    timezone: trip.place.timezone,
    length_h: trip.duration_s / 3600,
  };
}

/** Hours from departure of the local midnight with which a day of the trip begins; clocks may change on the way. */
export function dayStart_h(day: number, clock: TripClock): number {
  return (dayStart_ms(clock.depart_ms, clock.timezone, day - 1) - clock.depart_ms) / 3_600_000;
}

/** Local day and time of a moment, to the nearest minute. `t_h` may be before departure or after the return. */
export function localTime(t_h: number, clock: TripClock): LocalTime {
  requireFinite("t_h", t_h, -1e5, 1e5);
  const minute_ms = 60_000;
  const instant_ms = Math.round((clock.depart_ms + t_h * 3_600_000) / minute_ms) * minute_ms;
  const local = Temporal.PlainDateTime.from(localIso(instant_ms, clock.timezone));
  const date = local.toPlainDate();
  return {
    day: Temporal.PlainDate.from(clock.date).until(date, { largestUnit: "days" }).days + 1,
    weekday: WEEKDAYS[date.dayOfWeek - 1]!,
    dayOfMonth: String(date.day),
    sinceMidnight_min: local.hour * 60 + local.minute,
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
  const clock_h = localClock_s(Math.round(clock.depart_ms + t_h * 3_600_000), clock.timezone) / 3600;
  return t_h - ((clock_h + 1e-6) % 1) + 1e-6;
}

/** "day 3 breakfast, 07:00" where the moment is a meal of the trip, else "day 3, 14:10". */
export function mealWords(t_h: number, clock: TripClock): string {
  const { day, sinceMidnight_min } = localTime(t_h, clock);
  const meal = clock.meals.find(([, clock_s]) => Math.round(clock_s / 60) === sinceMidnight_min);
  return `day ${day}${meal === undefined ? "" : ` ${meal[0]}`}, ${clockWords(sinceMidnight_min)}`;
}

/** "day 3, 14:00". */
export function hourWords(t_h: number, clock: TripClock): string {
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

/** "milk, ham and 2 more"; names are a stranger's words, so they are made fit for a line and cut. */
export function nameWords(names: readonly string[], most = 3): string {
  const shown = names.slice(0, most).map((name) => cut(printable(name), 30));
  if (names.length > most) return `${shown.join(", ")} and ${names.length - most} more`;
  return shown.length < 2 ? shown.join("") : `${shown.slice(0, -1).join(", ")} and ${shown.at(-1)}`;
}

/** True where the three values of a band are one. */
export function isPoint(band: Band): boolean {
  return band.p10 === band.p50 && band.p50 === band.p90;
}

/** A band no wider than this is told to the hour, a wider one by parts of the day. */
const NARROW_h = 12;

/** How the moments of one band are told: all to the hour or all by parts of the day. */
function momentsOf(band: Band, clock: TripClock): (t_h: number) => string {
  const isNarrow = band.p10 !== null && band.p90 !== null && band.p90 - band.p10 < NARROW_h;
  return (t_h) => (isNarrow ? hourWords(t_h, clock) : dayPart(t_h, clock));
}

/**
 * How long something lasts, in words that follow "ice" or "under 40 °F": "until day 4 evening", "likely until day 6
 * evening (day 5 noon to past the return)", "to the return, nine times in ten". Within twelve hours a band is told to the
 * hour, a wider one by parts of the day.
 *
 * @param middle true when the whole result is one run, so that even equal values are no band; that is said elsewhere
 */
export function spanWords(band: Band, clock: TripClock, middle: boolean): string {
  if (middle) return lastsUntil(band.p50, (t_h) => dayPart(t_h, clock));
  if (band.p10 === null) return "to the return, nine times in ten";
  const moment = momentsOf(band, clock);
  const say = (t_h: number | null): string => (t_h === null ? PAST_RETURN : moment(t_h));
  return `likely ${lastsUntil(band.p50, say)} (${rangeWords(say(band.p10), say(band.p90))})`;
}

function lastsUntil(t_h: number | null, say: (t_h: number) => string): string {
  return t_h === null ? "to the return" : `until ${say(t_h)}`;
}

/** "day 3 noon to day 4 morning"; a day is named once: "day 3 noon to evening". */
function rangeWords(from: string, to: string): string {
  if (from === to) return "hardly any range";
  const day = /^day \d+,? /.exec(from)?.[0];
  return `${from} to ${day !== undefined && to.startsWith(day) ? to.slice(day.length) : to}`;
}

/**
 * The same as a moment when something begins, fit to stand after "from": "day 4 evening", "day 4 evening, could be day 4
 * noon to day 5 noon", "day 4 evening, could be from day 4 noon or not at all", "likely not on this trip, could be from day
 * 4 noon".
 *
 * @param moment how a moment is told where the band decides it otherwise
 */
export function fromWords(
  band: Band,
  clock: TripClock,
  middle: boolean,
  moment: (t_h: number) => string = middle ? (t_h) => dayPart(t_h, clock) : momentsOf(band, clock),
): string {
  if (middle || band.p10 === null) return band.p50 === null ? "not on this trip" : moment(band.p50);
  if (band.p50 === null) return `likely not on this trip, could be from ${moment(band.p10)}`;
  const likely = moment(band.p50);
  if (band.p90 === null) return `${likely}, could be from ${moment(band.p10)} or not at all`;
  const [from, to] = [moment(band.p10), moment(band.p90)];
  return from === to ? `${likely}, hardly any range` : `${likely}, could be ${rangeWords(from, to)}`;
}

/** Text that a stranger typed, fit for one line: no control or direction characters, spaces single. */
export function printable(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufffe\uffff]/gu, " ")
    .replace(/\s+/g, " ")
    .trim();
}

/** Text made fit for HTML and XML: what a person typed can never become a tag, an attribute or a turn of the writing direction. */
export function escaped(text: string): string {
  return printable(text)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;")
    .replace(/'/g, "&#39;");
}
