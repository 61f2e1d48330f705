import { runMembers } from "../ensemble/runMembers.ts";
import type { Draws, MemberTask } from "../ensemble/types.ts";
import { DomainError } from "../quantity/errors.ts";
import type { Trip } from "../trip/types.ts";
import { variantOf } from "./variants.ts";

/** Variants made so far, by trip: a variant is cut into several tasks, and what its members share is reckoned once. */
const made = new WeakMap<Trip, Map<string, Trip>>();

function variant(trip: Trip, key: string): Trip {
  const before = made.get(trip)?.get(key);
  if (before !== undefined) return before;
  const one = variantOf(trip, key);
  if (one === null) throw new DomainError(`variant must be one that this trip can have, got ${key}`);
  if (!made.has(trip)) made.set(trip, new Map());
  made.get(trip)!.set(key, one);
  return one;
}

/**
 * Runs one stretch of members of a trip or of a variant of it.
 *
 * @param trips as they were given to the runner of tasks
 * @throws DomainError when the task names no trip or no variant of it
 * @throws ModelError when no step settles
 */
export function runTask(trips: readonly Trip[], task: MemberTask): Draws {
  const trip = trips[task.trip];
  if (trip === undefined) throw new DomainError(`trip must be one of ${trips.length}, got ${task.trip}`);
  return runMembers(task.variant === null ? trip : variant(trip, task.variant), task);
}
