import type { Trip } from "../trip/types.ts";
import type { DrawsOf } from "./batch.ts";
import { gainOf } from "./gains.ts";
import type { Saying, Sides } from "./saying.ts";
import { sayingsFor } from "./sayingTable.ts";
import type { HabitSkipped, SayingResult } from "./types.ts";
import { sayingKey } from "./variants.ts";

/** The sayings that can be tried on a trip, what is run for them, and those that cannot be. */
export interface SayingTrials {
  tried: { saying: Saying; sides: Sides }[];
  keys: (string | null)[];
  skipped: HabitSkipped[];
}

/** A side that is the trip as written is not run once more. */
const keyOf = (
  trip: Trip,
  { saying, sides }: SayingTrials["tried"][number],
  side: "one" | "other",
): string | null => (sides[side] === trip ? null : sayingKey(saying.key, side));

export function sayingTrials(trip: Trip): SayingTrials {
  const tried: SayingTrials["tried"] = [];
  const skipped: HabitSkipped[] = [];
  for (const saying of sayingsFor(trip)) {
    const sides = saying.sides(trip);
    if ("why" in sides) skipped.push({ key: saying.key, says: saying.saying, why: sides.why });
    else tried.push({ saying, sides });
  }
  const keys = tried.flatMap((one) => [keyOf(trip, one, "one"), keyOf(trip, one, "other")]);
  return { tried, keys, skipped };
}

/** What each saying comes to on this trip, beside what it claims. */
export function foundIn(trip: Trip, { tried }: SayingTrials, drawsOf: DrawsOf): SayingResult[] {
  return tried.map((trial) => {
    const { saying, sides } = trial;
    const one = { trip: sides.one, draws: drawsOf(keyOf(trip, trial, "one")) };
    const other = { trip: sides.other, draws: drawsOf(keyOf(trip, trial, "other")) };
    const { key, claims, source } = saying;
    return {
      key,
      saying: saying.saying,
      tried: sides.tried,
      claims,
      source,
      gain: gainOf(other, one),
      ...saying.find({ trip, draws: drawsOf(null) }, one, other),
    };
  });
}
