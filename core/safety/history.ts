import type { Food } from "../matter/food.ts";
import type { LimitProfile } from "../trip/types.ts";

/** What happened to one item until it is eaten, or until the trip ends. Times are sums over the whole life of the food. */
export interface FoodHistory {
  food: Pick<Food, "key" | "name" | "kind" | "warm" | "days" | "rawAnimal">;
  profile: LimitProfile;
  /** Somebody who is easily harmed eats with the party. */
  vulnerable: boolean;
  /** Time with its warmest point above the limit, what was declared before packing included. */
  warm_s: number;
  /** Part of it with the air around the food above 90 °F; null: not known, which counts as hot. */
  hotAir_s: number | null;
  /** Time above 50 °F; null: not known, which counts as all the warm time. */
  over10C_s: number | null;
  /** Its warmest point; null: not known, which counts as warm. */
  warmest_C: number | null;
  /** It was under the limit once and rose above it. */
  limitPassed: boolean;
  /** It went in frozen. */
  cameFrozen: boolean;
  /** It went in frozen and has begun to thaw, or is sold frozen and came thawed. */
  thawing: boolean;
  /** It thawed once and was frozen again. */
  refrozen: boolean;
  /** It lies in a package without air. */
  withoutAir: boolean;
  /** Time since it was made, opened, bought or thawed, frozen time left out; null: no clock runs. */
  cold_s: number | null;
  /** How long it was cold before it was packed is not said, and a day of it is a guess. */
  coldGuessed: boolean;
  /** The day that the date mark counts when it is eaten: 1 is the day it was made or opened; null: no clock runs. */
  mark_days: number | null;
  /** Time that a package which lets water in lay in meltwater; null: it never did, or the package is watertight. */
  wet_s: number | null;
  /** Raw meat, poultry, fish or eggs are, or were, in the same cooler. */
  rawInSameCooler: boolean;
}

export type Verdict = "keep" | "eat next" | "discard";

/** What one rule says of an item. */
export interface Finding {
  verdict: Verdict;
  rule: string;
  why: string;
}
