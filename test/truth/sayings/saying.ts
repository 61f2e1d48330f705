import type { Change, Draft } from "../scenario.ts";
import { forecastWith, scaleLoad } from "../scenario.ts";

/** One thing that the trade says, beside our number for it. All are common practice without a source. */
export interface Saying {
  says: string;
  /** What our number means. */
  asked: string;
  /** A sign or a size from the saying's own words. */
  claim: readonly [low: number, high: number];
  ours: number;
  unit: string;
  /** Why our number lies outside the claim, where it does. */
  contradicts?: string;
}

export const no: number = Number.POSITIVE_INFINITY;
export const plain: Change = () => {};

export const both =
  (...changes: Change[]): Change =>
  (draft) => {
    for (const change of changes) change(draft);
  };

export const galley =
  (set: Partial<Draft["coolers"][0]>): Change =>
  (draft) => {
    Object.assign(draft.coolers[0], set);
  };

export const day =
  (set: Partial<Draft["weather"]["days"][0]>): Change =>
  (draft) => {
    Object.assign(draft.weather.days[0], set);
  };

export const leg =
  (set: Draft["legs"][0]): Change =>
  (draft) => {
    draft.legs = [set];
  };

export const ice =
  (...lots: Draft["ice"]): Change =>
  (draft) => {
    draft.ice = lots;
  };

export const cubes = (amount: string, more: Partial<Draft["ice"][0]> = {}): Change =>
  ice({ form: "cube", amount, at: "-2 C", in: "galley", ...more });

/** Without anything to eat: plain ice. */
export const noFood: Change = (draft) => {
  draft.food = [];
};

export const returnAt =
  (moment: string): Change =>
  (draft) => {
    draft.return = moment;
  };

export const load =
  (factor: number): Change =>
  (draft) =>
    scaleLoad(draft, factor);

export const hotGarage: Change = galley({ start: { kept: "32 C" } });
export const fullSun: Change = leg({ where: "camp", shade: "0 %", ground: "soil" });

export const ice_h = (change: Change): number => forecastWith(change).ice_h;
export const food_h = (change: Change): number => forecastWith(change).food_h;
