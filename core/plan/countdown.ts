import type { IceForm } from "../cooler/types.ts";
import type { IcePiece, ItemState, PrepAct } from "../forecast/planResult.ts";
import type { Warning } from "../forecast/result.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { type FreezerSchedule, freezerSchedule } from "./freezerBatches.ts";
import { isFrozenAtHome } from "./freezerRoom.ts";
import { type FreezerJob, foodJob, iceJob, jobWords } from "./freezerTimes.ts";
import { eachWords, isFromHome } from "./iceSource.ts";
import { chillActs, coolerActs, loadActs, packing_h, thawActs, thawBefore_h } from "./prepActs.ts";
import { actId, PrepClock } from "./prepClock.ts";
import { buyActs } from "./shopping.ts";

export interface Countdown {
  prep: PrepAct[];
  warnings: Warning[];
}

/** Where a file names no freezer, times are for a usual one. */
const USUAL_FREEZER_C = -16;
/** An act that lies further back than this is worth a warning. */
const FAR_H = 14 * 24;
const NIGHT_H = 9;

/** Equal pieces for several coolers are one job. */
function iceJobs(trip: Trip, ice: readonly IcePiece[], air_C: number): FreezerJob[] {
  const jobs = new Map<string, FreezerJob>();
  for (const piece of ice.filter(isFromHome)) {
    const form = piece.form as IceForm;
    const job = iceJob(form, piece.each_kg, eachWords(trip, piece), piece.pieces, air_C);
    const known = jobs.get(job.what);
    if (known === undefined) jobs.set(job.what, job);
    else known.pieces += piece.pieces;
  }
  return [...jobs.values()];
}

/** Frozen before it has to begin to thaw again; a night is added, as the thawing itself is put off to the evening before. */
function readyFor(food: TripFood | undefined, job: FreezerJob): number {
  const before_h = food === undefined ? null : thawBefore_h(food);
  return before_h === null ? 0 : before_h + (job.takes_h.p90 ?? 0) + NIGHT_H;
}

function freezeActs(trip: Trip, clock: PrepClock, { batches }: FreezerSchedule): PrepAct[] {
  const foods = new Map(trip.food.map((food) => [food.name, food]));
  const seen = new Map<string, number>();
  return batches.flatMap(({ parts, before_h }) =>
    parts.map(({ job, pieces }): PrepAct => {
      const nth = (seen.get(job.what) ?? 0) + 1;
      seen.set(job.what, nth);
      const food = job.ice === null ? foods.get(job.what) : undefined;
      return {
        at: clock.iso(clock.beforePacking_ms(Math.max(before_h, readyFor(food, job)))),
        does: food === undefined ? freezeIceWords(job, pieces) : freezeFoodWords(food, pieces),
        why: "one day's batch is what a home freezer takes the heat out of, and each piece needs its time",
        id: nth === 1 ? actId("freeze", job.what) : actId("freeze", job.what, nth),
        lasts_h: job.takes_h,
      };
    }),
  );
}

function freezeIceWords(job: FreezerJob, pieces: number): string {
  const room = job.ice?.form === "jug" ? "; leave a tenth of each empty, ice needs more room than water" : "";
  return `Put ${jobWords(job, pieces)} into the freezer, apart from each other${room}`;
}

function freezeFoodWords({ name, shape, thick_m }: TripFood, pieces: number): string {
  const mm = Math.round(thick_m * 1000);
  const flat = shape === "slab" ? `, flat, at most ${mm} mm (${(mm / 25.4).toFixed(1)} in) thick,` : "";
  const some = pieces === 1 ? "" : ` (${pieces} pieces)`;
  return `Freeze ${name}${some}${flat} in a closed bag, with its name and date on it`;
}

function freezerWarnings(trip: Trip, schedule: FreezerSchedule): Warning[] {
  const path = "freezer";
  const warnings: Warning[] = schedule.noRoom.map(({ job, pieces }) => ({
    code: "freezer-room",
    says: `the freezer has room for ${job.pieces - pieces} of ${jobWords(job, job.pieces)}; for the other ${pieces}, buy block ice or borrow a freezer`,
    path: `${path}.space`,
  }));
  for (const job of schedule.never)
    warnings.push({
      code: "freezer-warm",
      says: `${job.what} does not freeze through in this freezer: it is not cold enough`,
      path: `${path}.at`,
    });
  const first_h = schedule.batches[0]?.before_h ?? 0;
  if (first_h > FAR_H)
    warnings.push({
      code: "freezer-slow",
      says: `freezing all of it takes this freezer ${Math.ceil(first_h / 24)} days: begin then, or buy some of the ice`,
      path,
    });
  if (trip.freezer === null && schedule.batches.length > 0)
    warnings.push({
      code: "freezer-unknown",
      says: "the file names no freezer: freezing times are for a usual one at −16 °C (3 °F), and whether there is room is not known",
      path,
    });
  return warnings;
}

/** "Nothing to prepare" has its reason. */
function emptyWarning(prep: readonly PrepAct[]): Warning[] {
  if (prep.length > 0) return [];
  return [{ code: "prep-none", says: "there is no cooler to prepare", path: "coolers" }];
}

/**
 * What to do before departure, by the clock, from the last act backwards: freezing in batches that the freezer can do,
 * buying ice, chilling drinks, coolers indoors and cold, labels, packing, loading, and what must thaw for the first meals.
 * No act lies at night but packing itself for an early departure. What the freezer has no room for is told, and not put in.
 *
 * @param trip with its states decided and food placed
 * @param plan its ice in pieces
 */
export function countdown(
  trip: Trip,
  plan: { ice: readonly IcePiece[]; states: readonly ItemState[] },
): Countdown {
  const clock = new PrepClock(trip, packing_h(trip));
  const air_C = trip.freezer?.at_C ?? USUAL_FREEZER_C;
  const foods = trip.food.filter(isFrozenAtHome).flatMap((food) => foodJob(food, air_C) ?? []);
  const schedule = freezerSchedule(trip, [...foods, ...iceJobs(trip, plan.ice, air_C)]);
  const bought = buyActs(trip, clock, plan.ice);
  const prep = [
    ...freezeActs(trip, clock, schedule),
    ...bought.prep,
    ...chillActs(trip, clock),
    ...thawActs(trip, clock),
    ...coolerActs(trip, clock),
    ...loadActs(trip, clock),
  ];
  const sorted = prep.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1));
  const warnings = [...freezerWarnings(trip, schedule), ...bought.warnings, ...emptyWarning(sorted)];
  return { prep: unique(sorted), warnings };
}

/** Ids of two things with one name are told apart by a number. */
function unique(acts: readonly PrepAct[]): PrepAct[] {
  const seen = new Map<string, number>();
  return acts.map((act) => {
    const nth = (seen.get(act.id) ?? 0) + 1;
    seen.set(act.id, nth);
    return nth === 1 ? act : { ...act, id: `${act.id}:same-name-${nth}` };
  });
}
