import type { Trip } from "../trip/types.ts";
import { freezerSpace_m3 } from "./freezerRoom.ts";
import { type FreezerJob, freezerHeat_W } from "./freezerTimes.ts";

/** Pieces that go into the freezer together. */
export interface FreezerBatch {
  parts: { job: FreezerJob; pieces: number }[];
  /** Latest moment to put them in, hours before packing. */
  before_h: number;
}

export interface FreezerSchedule {
  /** Earliest first. */
  batches: FreezerBatch[];
  /** Pieces that the freezer has no room for. */
  noRoom: { job: FreezerJob; pieces: number }[];
  /** Jobs that never freeze in it. */
  never: FreezerJob[];
}

const day_h = 24;
/** Heat that one day's batch may bring: what the freezer takes out in a day, middle case. */
const dayHeat_J = freezerHeat_W.p50 * day_h * 3600;

/** Slow end of a job; packed close, as it will be. */
const slow_h = (job: FreezerJob): number => job.takes_h.p90 ?? Number.POSITIVE_INFINITY;

/** Takes pieces while there is room for them, in the order given. */
function fitting(
  trip: Trip,
  jobs: readonly FreezerJob[],
): Pick<FreezerSchedule, "noRoom"> & { jobs: FreezerJob[] } {
  let left_m3 = freezerSpace_m3(trip) + 1e-9;
  const fit: FreezerJob[] = [];
  const noRoom: FreezerSchedule["noRoom"] = [];
  for (const job of jobs) {
    const pieces = Math.min(job.pieces, Math.floor(left_m3 / job.room_m3));
    left_m3 -= pieces * job.room_m3;
    if (pieces > 0) fit.push({ ...job, pieces });
    if (pieces < job.pieces) noRoom.push({ job, pieces: job.pieces - pieces });
  }
  return { jobs: fit, noRoom };
}

/**
 * Day batches for a freezer, counted back from packing. What goes in stays in, so that all must find room together; a
 * batch brings no more heat than the freezer takes out in a day (one piece may), and is in at least as long as its
 * slowest piece takes. The jobs are kept in their order: the first are frozen first.
 */
export function freezerSchedule(trip: Trip, jobs: readonly FreezerJob[]): FreezerSchedule {
  const never = jobs.filter((job) => job.takes_h.p90 === null);
  const { jobs: fit, noRoom } = fitting(
    trip,
    jobs.filter((job) => job.takes_h.p90 !== null),
  );
  const groups = inDays(fit);
  const batches: FreezerBatch[] = [];
  let next_h = 0;
  for (const parts of groups.reverse()) {
    const heat_J = parts.reduce((sum, { job, pieces }) => sum + pieces * job.heat_J, 0);
    const heat_h = heat_J / (freezerHeat_W.p50 * 3600);
    const piece_h = Math.max(...parts.map(({ job }) => slow_h(job)));
    const before_h = Math.max(next_h + heat_h, piece_h);
    batches.push({ parts, before_h });
    next_h = Math.max(next_h + day_h, before_h);
  }
  return { batches: batches.reverse(), noRoom, never };
}

/** Splits the jobs into what the freezer can do in a day each. */
function inDays(jobs: readonly FreezerJob[]): FreezerBatch["parts"][] {
  const days: FreezerBatch["parts"][] = [];
  let left_J = 0;
  for (const job of jobs) {
    let rest = job.pieces;
    while (rest > 0) {
      if (left_J < job.heat_J || days.length === 0) {
        days.push([]);
        left_J = dayHeat_J;
      }
      const pieces = Math.max(1, Math.min(rest, Math.floor(left_J / job.heat_J)));
      days.at(-1)!.push({ job, pieces });
      left_J -= pieces * job.heat_J;
      rest -= pieces;
    }
  }
  return days;
}
