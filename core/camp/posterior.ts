import type { Input } from "../ensemble/inputs.ts";
import { inputsOf } from "../ensemble/inputs.ts";
import { pickDraws } from "../ensemble/pickDraws.ts";
import type { Draws } from "../ensemble/types.ts";
import type { Trip } from "../trip/types.ts";
import type { Weighed } from "./weighLooks.ts";
import { evenPicks } from "./weights.ts";

/** The cooler whose looks told most: what all coolers share (weather, films) stands as its members have it. */
function tellingCooler({ coolers }: Weighed): number {
  return coolers.reduce(
    (best, { effectiveCount }, i) => (effectiveCount < coolers[best]!.effectiveCount ? i : best),
    0,
  );
}

/** Members of equal weight for every cooler and its food: what bands and verdicts are read from. */
export function posteriorDraws(trip: Trip, learned: Weighed, members: number): Draws {
  const picks = learned.coolers.map(({ weights }) => evenPicks(weights, members));
  const inCoolers = trip.food.filter(({ cooler }) => cooler !== null);
  return pickDraws(
    learned.draws,
    picks,
    inCoolers.map(({ cooler }) => picks[cooler!]!),
  );
}

/** Scores of the picked member of a cooler, for the shares of the doubts. */
export function standingIn(learned: Weighed, members: number) {
  return (cooler: number) => {
    const picks = evenPicks(learned.coolers[cooler]!.weights, members);
    return (i: number, _input: Input, place: number): number =>
      learned.scores[picks[i]! * learned.inputs.length + place]!;
  };
}

/** Weighted mean of one input over the members of a cooler. */
function meanScore({ scores, inputs, coolers }: Weighed, cooler: number, place: number): number {
  const { weights } = coolers[cooler]!;
  return weights.reduce((sum, weight, i) => sum + weight * scores[i * inputs.length + place]!, 0);
}

/** Where every input stands on the mean, each cooler's own by its own looks. */
export function meanScores(learned: Weighed): Float64Array {
  const telling = tellingCooler(learned);
  return Float64Array.from(learned.inputs, ({ cooler }, place) =>
    meanScore(learned, cooler ?? telling, place),
  );
}

/** Scores of `n` members that stand for what was learned of all coolers together. */
export function jointScores(learned: Weighed, n: number): Float64Array[] {
  const telling = tellingCooler(learned);
  const picks = learned.coolers.map(({ weights }) => evenPicks(weights, n));
  const nInputs = learned.inputs.length;
  return Array.from({ length: n }, (_, k) =>
    Float64Array.from(
      learned.inputs,
      ({ cooler }, place) => learned.scores[picks[cooler ?? telling]![k]! * nInputs + place]!,
    ),
  );
}

/** The same scores for another variant of the trip: inputs that it alone has stand at their medians. */
export function scoresFor(variant: Trip, inputs: readonly Input[], scores: Float64Array): Float64Array {
  const known = new Map(inputs.map(({ name }, place) => [name, scores[place]!]));
  return Float64Array.from(inputsOf(variant), ({ name }) => known.get(name) ?? 0);
}
