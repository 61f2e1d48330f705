import type { EnsembleOptions } from "../ensemble/ensemble.ts";
import { joinDraws } from "../ensemble/joinDraws.ts";
import { tasksFor } from "../ensemble/tasks.ts";
import type { Draws, RunTasks } from "../ensemble/types.ts";
import { DomainError, requireFinite } from "../quantity/errors.ts";
import type { Trip } from "../trip/types.ts";

/** Draws of every variant that was run; null is the trip as written. */
export type DrawsOf = (variant: string | null) => Draws;

/** The number of members of a comparison: there is no comparison without any. */
export function checkMembers({ members }: EnsembleOptions): void {
  requireFinite("members", members, 1, 1e6);
}

/**
 * Runs variants of one trip (number 0 of the runner) over the same members, as one stretch of work.
 *
 * @param options.onlyOf coolers whose numbers are wanted of a variant; left out, or undefined: all
 */
export async function runVariants(
  run: RunTasks,
  variants: readonly (string | null)[],
  options: EnsembleOptions & { onlyOf?: (variant: string | null) => readonly number[] | undefined },
): Promise<DrawsOf> {
  checkMembers(options);
  const { members, seed, onlyOf, ...hooks } = options;
  const wanted = [...new Set(variants)];
  const tasks = wanted.map((variant) => tasksFor(0, variant, members, seed, false, onlyOf?.(variant)));
  const parts = await run(tasks.flat(), hooks);
  const joined = new Map<string | null, Draws>();
  let at = 0;
  wanted.forEach((variant, i) => {
    joined.set(variant, joinDraws(parts.slice(at, at + tasks[i].length)));
    at += tasks[i].length;
  });
  return (variant) => {
    const draws = joined.get(variant);
    if (draws === undefined) throw new DomainError(`variant must be one that was run, got ${variant}`);
    return draws;
  };
}

/** What heads every result: which trip, which limit, how many members. */
export const headOf = (
  trip: Trip,
  { members, seed }: EnsembleOptions,
): {
  coldstow: 1;
  trip: { title: string; depart: string; return: string; hours: number };
  limit: { profile: string; limit_C: number };
  members: number;
  seed: number;
} => ({
  coldstow: 1,
  trip: { title: trip.title, depart: trip.depart, return: trip.return, hours: trip.duration_s / 3600 },
  limit: { profile: trip.limit.profile, limit_C: trip.limit.limit_C },
  members,
  seed,
});
