import { medianClosures } from "../cooler/closures.ts";
import { buildWalls } from "../cooler/walls.ts";
import { worldAt } from "../ensemble/drawWorld.ts";
import type { EnsembleOptions } from "../ensemble/ensemble.ts";
import type { RunTasks } from "../ensemble/types.ts";
import { withBands } from "../ensemble/withBands.ts";
import { forecast } from "../forecast/forecast.ts";
import { bodyIn } from "../forecast/inWorld.ts";
import type { Band } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import type { Trip } from "../trip/types.ts";
import type { CampJson, CampResult, EatNext, LearnedResult, LookResult } from "./campResult.ts";
import { withFloors } from "./floors.ts";
import { looksOf } from "./looks.ts";
import { oneThing } from "./oneThing.ts";
import { meanScores, posteriorDraws, standingIn } from "./posterior.ts";
import type { Log } from "./types.ts";
import { type Weighed, weighLooks } from "./weighLooks.ts";
import { weightedQuantile } from "./weights.ts";

export interface CampOptions extends EnsembleOptions {
  /** The present; left out: the last entry of the log. */
  now_s?: number;
  nRefreshes?: number;
  /** 0: nothing is tried, and nothing is said of what to do. */
  nTryMembers?: number;
  /** Awaited between trials, so that a worker hears of a newer question. */
  pause?: () => Promise<void>;
}

/** A forecast of the trip as lived that knows the log, and what the log adds to it. */
export interface CampForecast {
  told: Forecast;
  camp: CampResult;
}

/** What `coldstow camp --json` prints. */
export const campJson = ({ told, camp }: CampForecast): CampJson => ({
  ...told.result,
  command: "camp",
  camp,
});

const hour_s = 3600;

function sawOf(file: object): string {
  if ("ice" in file) return String(file.ice);
  if ("read" in file) return String(file.read);
  return "drained" in file ? String(file.drained) : "";
}

/** Looks with what they did, in order of time. */
function lookResults(trip: Trip, { coolers }: Weighed): LookResult[] {
  return coolers
    .flatMap(({ steps }) => steps)
    .map(({ look, before_h, after_h, wrong_frac }) => ({
      id: look.entry.id,
      at_h: look.t_s / hour_s,
      cooler: trip.coolers[look.cooler]!.name,
      saw: sawOf(look.entry.file),
      of: look.of,
      before_h,
      after_h,
      wrong_frac,
    }))
    .sort((a, b) => a.at_h - b.at_h || (a.id < b.id ? -1 : 1));
}

const bandOver = (values: ArrayLike<number>, weights: Float64Array): Band => ({
  p10: weightedQuantile(values, weights, 0.1),
  p50: weightedQuantile(values, weights, 0.5),
  p90: weightedQuantile(values, weights, 0.9),
});

/** Conductance of a cooler in the world of every member. */
function conductances(trip: Trip, cooler: number, { scores, inputs, draws }: Weighed): number[] {
  const { body } = trip.coolers[cooler]!;
  return Array.from({ length: draws.to - draws.from }, (_, i) => {
    const own = worldAt(trip, scores.subarray(i * inputs.length, (i + 1) * inputs.length)).coolers[cooler]!;
    return buildWalls(bodyIn(body, own), own.closures ?? medianClosures).conductance_W_per_K;
  });
}

function learnedResults(trip: Trip, learned: Weighed, members: number): LearnedResult[] {
  const n = learned.draws.to - learned.draws.from;
  // The first stretch of members was drawn from the priors.
  const priors = Float64Array.from({ length: n }, (_, i) => (i < members ? 1 / members : 0));
  return learned.coolers.map(({ weights, steps, effectiveCount }, i) => {
    const { iceOut_h } = learned.draws.coolers[i]!;
    const own = conductances(trip, i, learned);
    return {
      cooler: trip.coolers[i]!.name,
      nLooks: steps.length,
      iceOutBefore_h: bandOver(iceOut_h, priors),
      iceOut_h: bandOver(iceOut_h, weights),
      conductanceBefore_W_per_K: bandOver(own, priors),
      conductance_W_per_K: bandOver(own, weights),
      members: Math.round(effectiveCount),
    };
  });
}

/** Perishables still aboard, by when they pass their limit at the earliest plausible moment. */
function eatOrder({ result }: Forecast, now_h: number): EatNext[] {
  const until = (band: Band): number => band.p10 ?? Number.POSITIVE_INFINITY;
  return result.food
    .filter(
      ({ perishable, eaten_h, cooler }) => perishable && cooler !== "dry box" && (eaten_h ?? 1e9) > now_h,
    )
    .map(({ name, cooler, overLimit_h, eaten_h, verdict }) => ({
      name,
      cooler,
      overLimit_h,
      eaten_h,
      verdict,
    }))
    .sort((a, b) => {
      const [one, two] = [until(a.overLimit_h), until(b.overLimit_h)];
      return one === two ? (a.eaten_h ?? 1e9) - (b.eaten_h ?? 1e9) || (a.name < b.name ? -1 : 1) : one - two;
    });
}

function unreckoned(trip: Trip, { entries }: Log): string[] {
  const gone = entries.filter(
    ({ file, withdrawnBy }) => withdrawnBy === null && ("swamped" in file || "dumped" in file),
  );
  return [...new Set(gone.flatMap(({ cooler }) => (cooler === null ? [] : [trip.coolers[cooler]!.name])))];
}

/** The moment that a log speaks up to, s from departure. */
export const lastEntry_s = ({ entries }: Log): number =>
  entries.reduce((last_s, { t_s }) => Math.max(last_s, t_s), 0);

/**
 * The forecast after looks into the coolers: the trip as lived (`livedFile`), its members weighted by what was seen,
 * food verdicts held to the log, and the one thing to do now. With an empty log it is the plain ensemble.
 *
 * It is no measurement of the food, and what was not logged is taken as planned.
 *
 * @param trip as lived
 * @param log read against the trip
 * @param run this trip is its number 0
 * @throws Cancelled when the signal is given
 */
export async function camp(trip: Trip, log: Log, run: RunTasks, options: CampOptions): Promise<CampForecast> {
  const {
    now_s = lastEntry_s(log),
    nRefreshes = 1,
    nTryMembers = 24,
    pause,
    members,
    seed,
    ...hooks
  } = options;
  const times_h = forecast(trip, { effects: false }).result.coolers.map(({ series }) => series.t_h);
  const looks = looksOf(log.entries);
  const learned = await weighLooks(trip, looks, times_h, run, { members, seed, nRefreshes, ...hooks });
  const middle = forecast(trip, { effects: false, world: worldAt(trip, meanScores(learned)) });
  const banded = withBands(
    middle,
    posteriorDraws(trip, learned, members),
    seed,
    standingIn(learned, members),
  );
  const held = withFloors(banded, log.entries, now_s);
  const now_h = now_s / hour_s;
  const standing = log.entries.filter(({ withdrawnBy }) => withdrawnBy === null).length;
  const result: CampResult = {
    now_h,
    nEntries: standing,
    nWithdrawn: log.entries.length - standing,
    looks: lookResults(trip, learned),
    learned: learnedResults(trip, learned, members),
    ...(await oneThing(trip, learned, now_s, { nTryMembers, ...(pause && { pause }), ...hooks })),
    eatOrder: eatOrder(held, now_h),
    unreckoned: unreckoned(trip, log),
  };
  return { told: held, camp: result };
}
