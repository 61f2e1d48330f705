import { medianClosures } from "../cooler/closures.ts";
import { learnedAlone } from "../cooler/joinHistory.ts";
import { buildWalls } from "../cooler/walls.ts";
import { drawWorld } from "../ensemble/drawWorld.ts";
import type { CoolerDraws } from "../ensemble/types.ts";
import { inWorld } from "../forecast/inWorld.ts";
import { loadTrip } from "../forecast/load.ts";
import type { Spread } from "../matter/spread.ts";
import type { Trip } from "../trip/types.ts";

/** Standard score of the 90 % point. */
const z90 = 1.2815515655446004;

/** What a look at the return says of a cooler, as a number with its error. */
export type Look =
  | { kind: "ice"; left_kg: number; error_kg: number }
  /** Nothing left; about when it went. */
  | { kind: "gone at"; gone_h: number; error_h: number }
  /** Nothing left, nobody knows since when. */
  | { kind: "gone" };

/** What a look taught of a cooler's conductance. */
export interface Learned {
  /** Before this trip. */
  before_W_per_K: Spread;
  after_W_per_K: Spread;
  /** What this trip says without what was believed before; null: nothing. */
  alone_W_per_K: Spread | null;
  /** Share of the members that had less ice than was seen. */
  less_frac: number;
  /** Further out than members reach: something else than walls is behind it, and nothing is learned. */
  beyond: boolean;
}

/**
 * Conductance of every cooler in every member of a trip, W/K, by cooler and then by member: no run is needed for it.
 *
 * @throws DomainError for what `drawWorld` refuses
 */
export function memberConductances_W_per_K(trip: Trip, members: number, seed: number): Float64Array[] {
  const input = loadTrip(trip);
  const all = trip.coolers.map(() => new Float64Array(members));
  for (let member = 0; member < members; member++) {
    const { coolers } = inWorld(input, trip.weather, drawWorld(trip, member, seed));
    coolers.forEach(({ body, closures = medianClosures }, i) => {
      all[i][member] = buildWalls(body, closures).conductance_W_per_K;
    });
  }
  return all;
}

/** Share of a normal curve below a standard score, by a logistic curve; within 0.01, which is as much as a look is worth. */
const below_frac = (score: number): number => 1 / (1 + Math.exp(-1.702 * score));

/** How well each member agrees with the look, as the logarithm of a likelihood. */
function agreement(look: Look, draws: CoolerDraws): number[] {
  if (look.kind === "ice")
    return Array.from(draws.iceLeft_kg, (kg) => -0.5 * ((kg - look.left_kg) / look.error_kg) ** 2);
  if (look.kind === "gone at")
    return Array.from(draws.iceCarriedOn_h, (h) => -0.5 * ((h - look.gone_h) / look.error_h) ** 2);
  return Array.from(draws.iceOut_h, (h) => (Number.isNaN(h) ? -12 : 0));
}

/** Share of the members that had less ice, or had none earlier, than was seen. */
function lessFrac(look: Look, draws: CoolerDraws): number {
  const mean = (values: Float64Array, score: (value: number) => number): number =>
    values.reduce((sum, value) => sum + below_frac(score(value)), 0) / values.length;
  if (look.kind === "ice") return mean(draws.iceLeft_kg, (kg) => (look.left_kg - kg) / look.error_kg);
  if (look.kind === "gone at") return mean(draws.iceCarriedOn_h, (h) => (look.gone_h - h) / look.error_h);
  return draws.iceOut_h.filter((h) => !Number.isNaN(h)).length / draws.iceOut_h.length;
}

/** Fewer members than this to carry a belief are chance. */
const fewest = 24;

/** Weights of the members; where too few carry nearly all, the look counts as rougher until enough do. */
function weightsOf(agreements: readonly number[]): number[] {
  const best = agreements.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const at = (power: number): number[] => agreements.map((one) => Math.exp(power * (one - best)));
  const effective = (weights: readonly number[]): number => {
    const sum = weights.reduce((a, b) => a + b, 0);
    return (sum * sum) / weights.reduce((a, b) => a + b * b, 0);
  };
  if (effective(at(1)) >= fewest) return at(1);
  let [low, high] = [0, 1];
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (effective(at(middle)) >= fewest) low = middle;
    else high = middle;
  }
  return at(low);
}

/** The lognormal with the mean and the width of weighted values. */
function spreadOf(values: Float64Array, weights: readonly number[] | null): Spread {
  let [sum, first, second] = [0, 0, 0];
  values.forEach((value, i) => {
    const weight = weights === null ? 1 : weights[i];
    const log = Math.log(value);
    sum += weight;
    first += weight * log;
    second += weight * log * log;
  });
  const mean = first / sum;
  const width = Math.sqrt(Math.max(1e-8, second / sum - mean * mean));
  return { p10: Math.exp(mean - z90 * width), p50: Math.exp(mean), p90: Math.exp(mean + z90 * width) };
}

/** Out of a hundred members, one or fewer on that side. */
const edge_frac = 0.01;

/**
 * What a look into a cooler at the return teaches of its conductance: members count by how well they agree with the look,
 * and openings, weather and the rest are weighed along with the walls. Not a fit of the walls alone.
 *
 * @param conductance_W_per_K of each member, as `memberConductances_W_per_K`
 * @param draws of the same members
 */
export function learnFrom(look: Look, conductance_W_per_K: Float64Array, draws: CoolerDraws): Learned {
  const before = spreadOf(conductance_W_per_K, null);
  const less_frac = lessFrac(look, draws);
  const beyond = less_frac < edge_frac || (less_frac > 1 - edge_frac && look.kind !== "gone");
  if (beyond)
    return { before_W_per_K: before, after_W_per_K: before, alone_W_per_K: null, less_frac, beyond };
  const after = spreadOf(conductance_W_per_K, weightsOf(agreement(look, draws)));
  const alone = learnedAlone(before, after);
  return {
    before_W_per_K: before,
    after_W_per_K: alone === null ? before : after,
    alone_W_per_K: alone,
    less_frac,
    beyond,
  };
}
