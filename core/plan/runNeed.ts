import type { Draws } from "../ensemble/types.ts";
import type { Result } from "../forecast/result.ts";
import { linkedCoolers } from "../trip/oneCooler.ts";
import type { Trip } from "../trip/types.ts";
import { type Judgement, judge, type Need, needOf } from "./need.ts";

const HOUR_s = 3600;
const near_h = 1e-6;

/** A cooler that does not hold with what is in it, and since when more ice is wanted. */
export interface Wanting {
  cooler: number;
  need: Need;
  /** First hour at which it has no ice, or its food passes the limit, at the trip's confidence. */
  iceOut_h: number;
  over_h: number;
  /** The member at that place, in whose world ice is looked for; null: the middle case. */
  member: number | null;
}

/** How far a trial came; larger is further. */
export const reach_h = ({ food_h, ice_h }: Judgement): number => 1000 * food_h + ice_h;

const known = (hour: number): number => (Number.isNaN(hour) ? Infinity : hour);

/**
 * What one cooler does from now on: as `judge` has it, but hours without ice before more came are over. What food made of
 * them counts still.
 */
export function judgeAfter(result: Result, need: Need): Judgement {
  const judgement = judge(result, need);
  const cooler = result.coolers.find(({ name }) => name === need.cooler)!;
  if (judgement.outcome !== "short" || cooler.iceGaps_h.length === 0) return judgement;
  const ice_h = Math.min(cooler.iceOut_h.p50 ?? need.iceUntil_h, need.iceUntil_h);
  const holds = judgement.food_h >= need.foodUntil_h - near_h && ice_h >= need.iceUntil_h - near_h;
  return { ...judgement, ice_h, outcome: holds ? "holds" : "short" };
}

/** When food of a cooler first passes the limit within its need, by member; Infinity: never. */
function firstOver_h(trip: Trip, draws: Draws, need: Need): number[] {
  const inCoolers = trip.food.filter((food) => food.cooler !== null);
  const places = inCoolers.flatMap((food, i) =>
    need.foods.has(food.name) && need.under.has(trip.coolers[food.cooler!]!.name) ? [i] : [],
  );
  return Array.from({ length: draws.to - draws.from }, (_, m) => {
    const first = Math.min(Infinity, ...places.map((i) => known(draws.food[i]!.overLimit_h[m]!)));
    return first < need.foodUntil_h - near_h ? first : Infinity;
  });
}

/** Members in which food of a cooler passes its limit. */
export function overCount(trip: Trip, draws: Draws, cooler: number): number {
  const need = needOf(trip, cooler, linkedCoolers(trip, cooler));
  return firstOver_h(trip, draws, need).filter((hour) => hour < Infinity).length;
}

/**
 * Whether a cooler wants more ice: its food passes the limit in more members than the confidence allows, or it is short in
 * the middle case. null: it holds, or needs none.
 */
export function wantingOf(trip: Trip, result: Result, draws: Draws | null, cooler: number): Wanting | null {
  const need = needOf(trip, cooler, linkedCoolers(trip, cooler));
  if (need.none) return null;
  const judgement = judgeAfter(result, need);
  const isShort = judgement.outcome === "short";
  const lasts_h = isShort ? judgement.ice_h : Infinity;
  if (draws === null || need.foods.size === 0) {
    const over_h = judgement.food_h < need.foodUntil_h - near_h ? judgement.food_h : Infinity;
    return isShort ? { cooler, need, iceOut_h: lasts_h, over_h, member: null } : null;
  }
  const overs = firstOver_h(trip, draws, need);
  const outs = Array.from(draws.coolers[cooler]!.iceOut_h, known);
  const place = Math.min(overs.length - 1, Math.floor((1 - trip.confidence_frac) * overs.length + near_h));
  const order = overs.map((_, m) => m).sort((a, b) => overs[a]! - overs[b]! || outs[a]! - outs[b]! || a - b);
  const at = order[place]!;
  if (overs[at] === Infinity && !isShort) return null;
  const sortedOut_h = [...outs].sort((a, b) => a - b)[place]!;
  return {
    cooler,
    need,
    iceOut_h: Math.min(lasts_h, sortedOut_h),
    over_h: overs[at]!,
    member: draws.from + at,
  };
}

/** Ice must be in by then: while there is ice still, or at the latest before the food passes its limit. */
export const neededBy_s = ({ iceOut_h, over_h }: Wanting): number => Math.min(iceOut_h, over_h) * HOUR_s;
