import type { Doubt as DoubtResult } from "../forecast/result.ts";
import type { Trip } from "../trip/types.ts";
import { type Doubt, type Input, inputsOf } from "./inputs.ts";
import type { Draws } from "./types.ts";

/** What a person may do about each doubt, and what is meant by it. */
const words: Readonly<Record<Doubt, { says: string; advice: string }>> = {
  "this cooler's walls and joint": {
    says: "how thick and tight it really is",
    advice: "test it at home with a known weight of ice",
  },
  "the weather": {
    says: "how far the forecast is off by then",
    advice: "look at a fresh forecast the day before",
  },
  "shade, sun and ground": {
    says: "how much sun, sky, wind and warm ground reach it",
    advice: "settle where it stands, and keep it in full shade and off the ground",
  },
  openings: {
    says: "how often and how long it is opened",
    advice: "count openings, or agree on hours for them",
  },
  "weight of the ice": { says: "what the bags and pieces really weigh", advice: "weigh the ice" },
  "cold at packing": {
    says: "how cold cooler, ice and food are when packed",
    advice: "put a thermometer in at packing",
  },
  "what the food holds": { says: "how much heat the food takes up", advice: "nothing: it is small" },
  "how heat moves inside": {
    says: "how well ice, food, water and walls touch",
    advice: "look inside once on the way and write down what is left",
  },
};

/** Ranks from 0, ties sharing their mean; a value that is not a number ranks last. */
function ranks(values: Float64Array): Float64Array {
  const order = Array.from(values, (value, i) => ({ i, value: Number.isNaN(value) ? Infinity : value }));
  order.sort((a, b) => (a.value === b.value ? 0 : a.value - b.value));
  const out = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to < order.length && order[to]!.value === order[from]!.value) to++;
    for (let k = from; k < to; k++) out[order[k]!.i] = (from + to - 1) / 2;
    from = to;
  }
  return out;
}

/** Pearson's correlation of two series; 0 where one does not vary. */
function correlation(a: Float64Array, b: Float64Array): number {
  const n = a.length;
  const mean = (n - 1) / 2;
  let ab = 0;
  let aa = 0;
  let bb = 0;
  for (let i = 0; i < n; i++) {
    const x = a[i]! - mean;
    const y = b[i]! - mean;
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa * bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/** Fewer members than this cannot tell one input from another. */
const fewest = 32;
/** Smaller shares are noise of the sample, and nobody would act on them. */
const least_frac = 0.03;

/** Where a member stands on an input: anything that rises with the input's value. */
export type Standing = (member: number, input: Input, place: number) => number;

/** Squared rank correlation of a target with one input, less what chance alone would give. */
function beyondChance_frac(values: Float64Array, target: Float64Array): number {
  const n = target.length;
  const r = correlation(ranks(values), target);
  const chance = 1 / (n - 1);
  return (r * r - chance) / (1 - chance);
}

/**
 * Which doubts make the band of one cooler: its ice-out, or where it has no ice its warmest food. Inputs are told in
 * groups that one act would settle, and a group only where its sum is three standard errors beyond chance; shares need not
 * add up to 1, the rest is small things and things in combination.
 *
 * @param standing of the draws' members, counted from the first of them
 */
export function doubtsOf(trip: Trip, draws: Draws, cooler: number, standing: Standing): DoubtResult[] {
  const { iceCarriedOn_h, warmest_C } = draws.coolers[cooler]!;
  const hasIce = iceCarriedOn_h.some((value) => value > 0);
  const target = ranks(hasIce ? iceCarriedOn_h : warmest_C);
  if (target.length < fewest) return [];
  const groups = new Map<Doubt, { share: number; inputs: number }>();
  for (const [place, input] of inputsOf(trip).entries()) {
    if (input.cooler !== null && input.cooler !== cooler) continue;
    const values = Float64Array.from(target, (_, i) => standing(i, input, place));
    const group = groups.get(input.about) ?? { share: 0, inputs: 0 };
    group.share += beyondChance_frac(values, target);
    group.inputs++;
    groups.set(input.about, group);
  }
  const chance_frac = (inputs: number): number => (3 * Math.sqrt(2 * inputs)) / (target.length - 1);
  return [...groups]
    .map(([about, { share, inputs }]) => ({ about, share: Math.min(1, share), least: chance_frac(inputs) }))
    .filter(({ share, least }) => share >= Math.max(least, least_frac))
    .sort((a, b) => b.share - a.share)
    .map(({ about, share }) => ({
      about,
      ...words[about],
      share_frac: share,
      narrows_frac: 1 - Math.sqrt(1 - share),
    }));
}
