import { DomainError } from "../quantity/errors.ts";
import type { Trip } from "../trip/types.ts";
import { isMade, type Unmade } from "./change.ts";
import { allWays } from "./habit.ts";
import { habitsFor } from "./habitTable.ts";
import { sayingsFor } from "./sayingTable.ts";
import { stresses } from "./stressTable.ts";

export const habitKey = (habit: string, good: boolean): string => `habit: ${habit}: ${good ? "good" : "bad"}`;
export const allKey = (good: boolean): string => `all: ${good ? "good" : "bad"}`;
export const stressKey = (stress: string): string => `stress: ${stress}`;
export const sayingKey = (saying: string, side: "one" | "other"): string => `saying: ${saying}: ${side}`;

/** A trip that is made when it is asked for. */
type Make = () => Trip | Unmade;

/** All variants that can be asked of a trip, by key. */
function variantsOf(trip: Trip): Map<string, Make> {
  const all = new Map<string, Make>();
  const habits = habitsFor(trip);
  for (const good of [true, false]) {
    all.set(allKey(good), () => allWays(trip, habits, good));
    for (const habit of habits) all.set(habitKey(habit.key, good), () => habit.make(trip, good));
  }
  for (const { key, make } of stresses) all.set(stressKey(key), () => make(trip));
  for (const { key, sides } of sayingsFor(trip)) {
    const side = (which: "one" | "other") => (): Trip | Unmade => {
      const made = sides(trip);
      return "why" in made ? made : made[which];
    };
    all.set(sayingKey(key, "one"), side("one"));
    all.set(sayingKey(key, "other"), side("other"));
  }
  return all;
}

/**
 * A variant of a trip by its key: the same trip and key always give the same variant, wherever it is asked.
 *
 * @returns null where this trip cannot have it
 * @throws DomainError for a key that names no variant
 */
export function variantOf(trip: Trip, key: string): Trip | null {
  const make = variantsOf(trip).get(key);
  if (make === undefined) throw new DomainError(`variant must be the key of one of this trip, got ${key}`);
  const made = make();
  return isMade(made) ? told(trip, made) : null;
}

/** What a variant sets is told by it and no longer assumed: it must not be drawn as widely as a guess. */
function told(trip: Trip, made: Trip): Trip {
  const set = new Set<string>();
  const lots = [...trip.ice, ...trip.food];
  for (const lot of [...made.ice, ...made.food]) {
    const before = lots.find(({ id }) => id === lot.id);
    if (before === undefined || before.start_C === lot.start_C) continue;
    for (const key of ["at", "from", "liquid"]) set.add(`${lot.path}.${key}`);
  }
  made.coolers.forEach(({ start }, i) => {
    if (start === trip.coolers[i]?.start) return;
    for (const key of ["at", "kept"]) set.add(`coolers[${i}].start.${key}`);
  });
  return { ...made, assumed: made.assumed.filter(({ path }) => !set.has(path)) };
}
