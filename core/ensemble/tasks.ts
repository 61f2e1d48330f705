import type { MemberTask } from "./types.ts";

/** Small enough that cancelling is quick and workers end together, large enough that handing out costs nothing. */
const perTask = 4;

/**
 * Cuts the members of one variant of a trip into tasks of about equal length.
 *
 * @param only coolers whose numbers are wanted; see `MemberTask`
 */
export function tasksFor(
  trip: number,
  variant: string | null,
  members: number,
  seed: number,
  series: boolean,
  only?: readonly number[],
): MemberTask[] {
  const pieces = Math.max(1, Math.ceil(members / perTask));
  return Array.from({ length: pieces }, (_, i) => ({
    trip,
    variant,
    from: Math.floor((i * members) / pieces),
    to: Math.floor(((i + 1) * members) / pieces),
    seed,
    series,
    ...(only === undefined ? {} : { only }),
  }));
}

/** A worker has to be given this many members to be worth its start. */
const perWorker = 16;

/** Workers that tasks pay for, one at the least. */
export function workersFor(tasks: readonly MemberTask[]): number {
  let members = 0;
  for (const { from, to } of tasks) members += to - from;
  return Math.max(1, Math.ceil(members / perWorker));
}
