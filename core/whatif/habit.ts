import type { Trip } from "../trip/types.ts";
import { isMade, type Unmade } from "./change.ts";

/** How a trip has a habit: the good way, the bad way, or something between or some of each. */
export type Way = "good" | "bad" | "between";

/** How the trip has it, and the names of the coolers that going to the good or to the bad way would touch. */
export interface Standing {
  way: Way;
  /** How those have it that going to the good way would touch. */
  from: Way;
  toGood: string[];
  toBad: string[];
}

/** One habit: what people call the good way of it and the bad way, and the trip either way. */
export interface Habit {
  key: string;
  /** What one does, as advice. */
  says: string;
  goodWords: string;
  badWords: string;
  /** What a file that has the bad way may have, where that is more than what is tried. */
  badNow?: string;
  /** Whether "every habit good" and "every habit bad" take part in it. */
  inAll: "both" | "good" | "bad" | "no";
  standing(trip: Trip): Standing | Unmade;
  /** The trip with the habit the good way or the bad way, all else as written. */
  make(trip: Trip, good: boolean): Trip | Unmade;
}

type Row = Omit<Habit, "standing" | "make">;

/** A habit that each cooler has for itself. */
export interface CoolerRow extends Row {
  /** null: not a question for this cooler. */
  wayOf(trip: Trip, cooler: number): Way | null;
  set(trip: Trip, cooler: number, good: boolean): Trip;
  /** Why it cannot be tried where it is a question for no cooler. */
  why: string;
}

/** The one way of many, or between. */
const wayOfAll = (ways: readonly Way[]): Way =>
  ways.every((way) => way === "good") ? "good" : ways.every((way) => way === "bad") ? "bad" : "between";

/** The way of all that are not good already. */
const fromOf = (ways: readonly Way[]): Way => wayOfAll(ways.filter((way) => way !== "good"));

function coolersOf(row: CoolerRow, trip: Trip, but: Way | null = null): number[] {
  const all = trip.coolers.map((_, i) => i);
  return all.filter((i) => {
    const way = row.wayOf(trip, i);
    return way !== null && way !== but;
  });
}

/** A habit of coolers: switched in every cooler for which it is a question. */
export function coolerHabit(row: CoolerRow): Habit {
  return {
    ...row,
    standing: (trip) => {
      const asked = coolersOf(row, trip);
      if (asked.length === 0) return { why: row.why };
      const ways = asked.map((i) => row.wayOf(trip, i)!);
      const named = (but: Way): string[] => coolersOf(row, trip, but).map((i) => trip.coolers[i].name);
      const [toGood, toBad] = [named("good"), named("bad")];
      return { way: wayOfAll(ways), from: fromOf(ways), toGood, toBad };
    },
    make: (trip, good) => {
      const touched = coolersOf(row, trip, good ? "good" : "bad");
      if (touched.length === 0) return { why: row.why };
      return touched.reduce((made, i) => row.set(made, i, good), trip);
    },
  };
}

/** A habit of things that lie in coolers or of places where they stand: each thing has its way. */
export interface ThingRow<Thing> extends Row {
  things(trip: Trip): readonly Thing[];
  wayOf(thing: Thing, trip: Trip): Way;
  /** Names of the coolers that a change of this thing touches. */
  coolersOf(thing: Thing, trip: Trip): readonly string[];
  set(trip: Trip, good: boolean): Trip;
  why: string;
}

export function thingHabit<Thing>(row: ThingRow<Thing>): Habit {
  return {
    ...row,
    standing: (trip) => {
      const things = row.things(trip);
      if (things.length === 0) return { why: row.why };
      const touched = (but: Way): string[] => {
        const changed = things.filter((thing) => row.wayOf(thing, trip) !== but);
        const coolers = new Set(changed.flatMap((thing) => row.coolersOf(thing, trip)));
        return trip.coolers.map(({ name }) => name).filter((name) => coolers.has(name));
      };
      const ways = things.map((thing) => row.wayOf(thing, trip));
      return { way: wayOfAll(ways), from: fromOf(ways), toGood: touched("good"), toBad: touched("bad") };
    },
    make: (trip, good) => (row.things(trip).length === 0 ? { why: row.why } : row.set(trip, good)),
  };
}

/** Every habit that the trip can have, the good way or the bad way: one after another, where it can be. */
export function allWays(trip: Trip, habits: readonly Habit[], good: boolean): Trip {
  const taking = habits.filter(({ inAll }) => inAll === "both" || inAll === (good ? "good" : "bad"));
  return taking.reduce((sofar, habit) => {
    const made = habit.make(sofar, good);
    return isMade(made) ? made : sofar;
  }, trip);
}
