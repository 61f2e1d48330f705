import { type Input, inputsOf } from "../ensemble/inputs.ts";
import { joinDraws } from "../ensemble/joinDraws.ts";
import { scoresOf } from "../ensemble/scores.ts";
import { tasksFor } from "../ensemble/tasks.ts";
import type { Draws, RunHooks, RunTasks } from "../ensemble/types.ts";
import type { Band } from "../forecast/result.ts";
import type { Trip } from "../trip/types.ts";
import { sharedCoolers } from "./groups.ts";
import { likelihood, wrongChance_frac } from "./likelihood.ts";
import type { Look } from "./looks.ts";
import { predictions } from "./predict.ts";
import { moveTo, type Tilt, tiltedRatio, tiltOf } from "./tilt.ts";
import { effectiveCount, normalised, weightedQuantile } from "./weights.ts";

export interface WeighOptions extends RunHooks {
  members: number;
  seed: number;
  /** How often further members may be drawn where few carry the weight. */
  nRefreshes: number;
}

/** Members and what they were drawn from. */
interface Pool {
  draws: Draws;
  /** Standard scores, one member after the other. */
  scores: Float64Array;
  nInputs: number;
  /** What each stretch of `members` members was drawn from; null: the priors. */
  tilts: readonly (Tilt | null)[];
}

/** What the members say of one cooler after its first looks. */
export interface LookStep {
  look: Look;
  /** End of the ice, before and after this look was known. */
  before_h: Band;
  after_h: Band;
  /** Chance that this look was a wrong one. */
  wrong_frac: number;
}

/** What was learned of one cooler. */
export interface CoolerWeighed {
  /** By member; they add up to 1. */
  weights: Float64Array;
  steps: readonly LookStep[];
  /** Members of equal weight that would tell as much. */
  effectiveCount: number;
}

export interface Weighed {
  draws: Draws;
  scores: Float64Array;
  inputs: readonly Input[];
  coolers: readonly CoolerWeighed[];
}

/** Members whose weight must not sink below this share before further ones are drawn. */
const fewest_frac = 0.25;

/** Likelihoods of a cooler's looks by member, look by look. */
type Likelihoods = readonly { look: Look; likely: Float64Array; predicted: Float64Array }[];

function likelihoodsOf(
  looks: readonly Look[],
  draws: Draws,
  times_h: readonly (readonly number[])[],
): Likelihoods {
  const n = draws.to - draws.from;
  return looks.map((look) => {
    const predicted = predictions(look, draws.series![look.cooler]!, times_h[look.cooler]!, n);
    return { look, predicted, likely: predicted.map((value) => likelihood(look, value)) };
  });
}

const touches = (input: Input, coolers: readonly number[]): boolean =>
  input.cooler === null || coolers.includes(input.cooler);

/** The part of a tilt that matters to these coolers: the rest is independent of them. */
function tiltFor(tilt: Tilt, inputs: readonly Input[], coolers: readonly number[]): Tilt {
  const kept = tilt.inputs.map((_, j) => j).filter((j) => touches(inputs[tilt.inputs[j]!]!, coolers));
  return {
    inputs: kept.map((j) => tilt.inputs[j]!),
    middle: kept.map((j) => tilt.middle[j]!),
    deviation: kept.map((j) => tilt.deviation[j]!),
  };
}

/**
 * Weights of the members before any look: they make up for where the members were drawn. A member's density is that of the
 * mixture of all it might have been drawn from, so no weight is more than the number of stretches times the even one.
 */
function drawnWeights(pool: Pool, inputs: readonly Input[], coolers: readonly number[]): Float64Array {
  const n = pool.draws.to - pool.draws.from;
  const own = pool.tilts.map((tilt) => (tilt === null ? null : tiltFor(tilt, inputs, coolers)));
  return Float64Array.from({ length: n }, (_, i) => {
    const sum = own.reduce(
      (all, tilt) => all + (tilt === null ? 1 : tiltedRatio(tilt, pool.scores, pool.nInputs, i)),
      0,
    );
    return own.length / sum;
  });
}

function weightsOf(
  pool: Pool,
  inputs: readonly Input[],
  coolers: readonly number[],
  all: Likelihoods,
): Float64Array {
  const weights = drawnWeights(pool, inputs, coolers);
  for (const { look, likely } of all)
    if (coolers.includes(look.cooler)) for (let i = 0; i < weights.length; i++) weights[i]! *= likely[i]!;
  return normalised(weights);
}

/** Where to draw further members: the cooler that needs it most moves what all share, the others what is their own. */
function nextTilt(
  pool: Pool,
  inputs: readonly Input[],
  poor: readonly { coolers: number[]; weights: Float64Array }[],
): Tilt | null {
  const parts: Tilt[] = [];
  const taken = new Set<number>();
  for (const { coolers, weights } of poor) {
    const tilt = tiltOf(pool.scores, pool.nInputs, weights);
    if (tilt === null) continue;
    const own = tiltFor(tilt, inputs, coolers);
    const fresh = own.inputs.map((_, j) => j).filter((j) => !taken.has(own.inputs[j]!));
    for (const j of fresh) taken.add(own.inputs[j]!);
    parts.push({
      inputs: fresh.map((j) => own.inputs[j]!),
      middle: fresh.map((j) => own.middle[j]!),
      deviation: fresh.map((j) => own.deviation[j]!),
    });
  }
  if (taken.size === 0) return null;
  return {
    inputs: parts.flatMap((part) => part.inputs),
    middle: parts.flatMap((part) => part.middle),
    deviation: parts.flatMap((part) => part.deviation),
  };
}

async function run(
  trip: Trip,
  runner: RunTasks,
  from: number,
  scores: Float64Array | null,
  { members, seed, ...hooks }: WeighOptions,
): Promise<Draws> {
  const nInputs = inputsOf(trip).length;
  const tasks = tasksFor(0, null, members, seed, true).map((task) => ({
    ...task,
    from: task.from + from,
    to: task.to + from,
    ...(scores === null ? {} : { scores: scores.slice(task.from * nInputs, task.to * nInputs) }),
  }));
  return joinDraws(await runner(tasks, hooks));
}

function drawnScores(trip: Trip, from: number, { members, seed }: WeighOptions): Float64Array {
  const nInputs = inputsOf(trip).length;
  const scores = new Float64Array(members * nInputs);
  for (let i = 0; i < members; i++) scores.set(scoresOf(trip, from + i, seed), i * nInputs);
  return scores;
}

/** Adds a stretch of members drawn from a tilt. */
async function refreshed(
  trip: Trip,
  pool: Pool,
  tilt: Tilt,
  runner: RunTasks,
  options: WeighOptions,
): Promise<Pool> {
  const from = pool.draws.to;
  const scores = drawnScores(trip, from, options);
  moveTo(tilt, scores, pool.nInputs);
  const more = await run(trip, runner, from, scores, options);
  const all = new Float64Array(pool.scores.length + scores.length);
  all.set(pool.scores);
  all.set(scores, pool.scores.length);
  return { ...pool, draws: joinDraws([pool.draws, more]), scores: all, tilts: [...pool.tilts, tilt] };
}

const bandIn = (values: Float64Array, weights: Float64Array): Band => ({
  p10: weightedQuantile(values, weights, 0.1),
  p50: weightedQuantile(values, weights, 0.5),
  p90: weightedQuantile(values, weights, 0.9),
});

/** What each look of a cooler did to the end of its ice, all acts of the log known. */
function stepsOf(
  pool: Pool,
  inputs: readonly Input[],
  group: readonly number[],
  cooler: number,
  all: Likelihoods,
  weights: Float64Array,
): LookStep[] {
  const { iceOut_h } = pool.draws.coolers[cooler]!;
  const running = drawnWeights(pool, inputs, group);
  let band = bandIn(iceOut_h, normalised(running));
  const steps: LookStep[] = [];
  for (const { look, likely, predicted } of all) {
    if (!group.includes(look.cooler)) continue;
    for (let i = 0; i < running.length; i++) running[i]! *= likely[i]!;
    const before_h = band;
    band = bandIn(iceOut_h, normalised(running));
    if (look.cooler !== cooler) continue;
    const wrong_frac = weights.reduce((sum, w, i) => sum + w * wrongChance_frac(look, predicted[i]!), 0);
    steps.push({ look, before_h, after_h: band, wrong_frac });
  }
  return steps;
}

/**
 * What looks into the coolers tell: the members of a trip weighted by how likely each look was in their world. Each cooler
 * learns from its own looks and those of coolers it shares contents with, not from the others. Where few members carry the
 * weight, further ones are drawn near what was seen, with weights that make up for it.
 *
 * @param times_h by cooler, the moments of its series
 * @throws Cancelled when the signal is given
 */
export async function weighLooks(
  trip: Trip,
  looks: readonly Look[],
  times_h: readonly (readonly number[])[],
  runner: RunTasks,
  options: WeighOptions,
): Promise<Weighed> {
  const inputs = inputsOf(trip);
  const groups = sharedCoolers(trip);
  let pool: Pool = {
    draws: await run(trip, runner, 0, null, options),
    scores: drawnScores(trip, 0, options),
    nInputs: inputs.length,
    tilts: [null],
  };
  for (let round = 0; ; round++) {
    const all = likelihoodsOf(looks, pool.draws, times_h);
    const weights = groups.map((group) => weightsOf(pool, inputs, group, all));
    const poor = groups
      .map((coolers, i) => ({ coolers, weights: weights[i]!, count: effectiveCount(weights[i]!) }))
      .filter(({ count }) => count < fewest_frac * options.members)
      .sort((a, b) => a.count - b.count);
    const tilt = round < options.nRefreshes && poor.length > 0 ? nextTilt(pool, inputs, poor) : null;
    if (tilt === null)
      return {
        draws: pool.draws,
        scores: pool.scores,
        inputs,
        coolers: groups.map((group, i) => ({
          weights: weights[i]!,
          steps: stepsOf(pool, inputs, group, i, all, weights[i]!),
          effectiveCount: effectiveCount(weights[i]!),
        })),
      };
    pool = await refreshed(trip, pool, tilt, runner, options);
  }
}
