import { Temporal } from "temporal-polyfill";
import { parseClock } from "../quantity/clock.ts";
import { DomainError } from "../quantity/errors.ts";
import { clockMoments_s, localClock_s, localInstant_ms, localIso } from "../sky/localTime.ts";
import type { Notes } from "./notes.ts";
import { instantWords, momentWords } from "./schema/words.ts";

/** Local times of the meals, seconds since midnight. */
export interface Meals {
  breakfast_s: number;
  lunch_s: number;
  dinner_s: number;
}

const stamp = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2}(?::\d{2})?)$/;
const dayMoment = /^day\s+(\d{1,3})\s+(\S+)$/i;
const mealWords = ["breakfast", "lunch", "dinner"] as const;
export type MealWord = (typeof mealWords)[number];
const day_ms = 86_400_000;
const longest_s = 60 * 86_400;
const shortest_s = 3600;
/** Years for which sun and clocks are reckoned. */
const [firstYear, lastYear] = [1950, 2090];

/** Whether clocks of this name are known. */
export function isTimezone(name: string): boolean {
  return readInstant("2000-01-01T00:00", name) !== null;
}

/** Milliseconds of a local ISO time, or null when there is no such time or zone. */
function readInstant(iso: string, timezone: string): number | null {
  try {
    return localInstant_ms(iso, timezone);
  } catch (mistake) {
    if (mistake instanceof DomainError) return null;
    throw mistake;
  }
}

/**
 * The trip's time line: turns what a person writes for a moment into elapsed seconds since departure, across clock
 * changes. Day 1 is the local day of departure.
 */
export class Calendar {
  /** Local ISO without offset. */
  readonly depart: string;
  readonly return: string;
  readonly depart_ms: number;
  /** NaN when departure or return have a problem. */
  readonly duration_s: number;
  readonly departClock_s: number;
  readonly #timezone: string;
  readonly #meals: Meals;
  readonly #notes: Notes;

  constructor(notes: Notes, file: { depart: string; return: string }, timezone: string, meals: Meals) {
    this.#notes = notes;
    this.#timezone = timezone;
    this.#meals = meals;
    this.depart = file.depart.trim().replace(" ", "T");
    this.return = file.return.trim().replace(" ", "T");
    this.depart_ms = this.#stamp("depart", file.depart, instantWords);
    this.departClock_s = Number.isNaN(this.depart_ms) ? Number.NaN : localClock_s(this.depart_ms, timezone);
    this.duration_s = this.#length(this.#stamp("return", file.return, instantWords), file.return);
  }

  /** Seconds from departure of a typed moment within the trip, its ends included; NaN with the problem noted. */
  seconds(path: string, typed: string): number {
    if (Number.isNaN(this.duration_s)) return this.within_s(path, typed, [0, 0], "");
    const must = `within the trip, ${this.depart} to ${this.return}`;
    return this.within_s(path, typed, [0, this.duration_s], must);
  }

  /** As `seconds`, for what may lie before or after the trip; `must` says in which range. */
  within_s(path: string, typed: string, [low_s, high_s]: readonly [number, number], must: string): number {
    const t_s = this.#anySeconds(path, typed.trim());
    if (Number.isNaN(t_s) || Number.isNaN(this.duration_s)) return Number.NaN;
    return t_s >= low_s && t_s <= high_s ? t_s : this.#notes.refuse(path, must, typed);
  }

  /** Every such meal after departure and up to return, in order; none where the dates have a problem. */
  mealsOn(meal: MealWord): { day: number; t_s: number }[] {
    const clock_s = this.#meals[`${meal}_s`];
    if (Number.isNaN(this.duration_s) || Number.isNaN(clock_s)) return [];
    const moments = clockMoments_s(this.depart_ms, this.#timezone, clock_s, 0, this.duration_s);
    return moments.filter((t_s) => t_s > 0).map((t_s) => ({ day: this.#dayOf(t_s, clock_s), t_s }));
  }

  /** Every meal after departure and up to return, in no order. */
  allMeals_s(): number[] {
    return mealWords.flatMap((meal) => this.mealsOn(meal).map(({ t_s }) => t_s));
  }

  /** Day of the trip; a clock that shows 24:00 belongs to the day that ends. */
  #dayOf(t_s: number, clock_s: number): number {
    const date_ms = (iso: string): number => Date.parse(`${iso.slice(0, 10)}T00:00Z`);
    const iso = localIso(this.depart_ms + t_s * 1000, this.#timezone);
    return 1 + Math.round((date_ms(iso) - date_ms(this.depart)) / day_ms) - (clock_s >= 86_400 ? 1 : 0);
  }

  #length(return_ms: number, typed: string): number {
    const length_s = (return_ms - this.depart_ms) / 1000;
    if (Number.isNaN(length_s)) return length_s;
    if (length_s < shortest_s) {
      return this.#notes.refuse("return", `at least an hour after departure, ${this.depart}`, typed);
    }
    if (length_s > longest_s) return this.#notes.refuse("return", "within 60 days of departure", typed);
    return length_s;
  }

  #anySeconds(path: string, typed: string): number {
    const parts = dayMoment.exec(typed);
    if (parts === null) return (this.#stamp(path, typed, momentWords) - this.depart_ms) / 1000;
    const clock_s = this.#clock(path, parts[2] as string, typed);
    if (Number.isNaN(clock_s) || Number.isNaN(this.depart_ms)) return Number.NaN;
    const day = Number(parts[1]);
    if (day < 1) return this.#notes.refuse(path, "day 1 or later; day 1 is the day of departure", typed);
    const midnight = Temporal.PlainDate.from(this.depart.slice(0, 10))
      .add({ days: day - 1 })
      .toPlainDateTime();
    const local = midnight.add({ seconds: clock_s }).toString({ smallestUnit: "second" });
    return (this.#shownByClocks(path, local, typed, momentWords) - this.depart_ms) / 1000;
  }

  #clock(path: string, word: string, typed: string): number {
    const meal = mealWords.find((known) => known === word.toLowerCase());
    if (meal !== undefined) return this.#meals[`${meal}_s`];
    const reading = parseClock(word);
    return reading.ok ? reading.clock_s : this.#notes.refuse(path, momentWords, typed);
  }

  #stamp(path: string, typed: string, must: string): number {
    const iso = typed.trim().replace(" ", "T");
    return stamp.test(iso)
      ? this.#shownByClocks(path, iso, typed, must)
      : this.#notes.refuse(path, must, typed);
  }

  /** The instant at which clocks show this; refuses dates that do not exist and hours that a clock change skips. */
  #shownByClocks(path: string, iso: string, typed: string, must: string): number {
    const instant_ms = readInstant(iso, this.#timezone);
    const year = Number(iso.slice(0, 4));
    if (year < firstYear || year > lastYear) {
      return this.#notes.refuse(path, `a date from ${firstYear} to ${lastYear}`, typed);
    }
    if (instant_ms === null) return this.#notes.refuse(path, `${must}; there is no such date or time`, typed);
    if (localIso(instant_ms, this.#timezone) === iso.slice(0, 16)) return instant_ms;
    return this.#notes.refuse(path, "an hour that clocks show; they skip this one when they change", typed);
  }
}
