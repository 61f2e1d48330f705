import type { Fleet } from "../cooler/fleetState.ts";
import { companyOf, type FoodFacts, rulingOn, trackOf } from "../forecast/foodResult.ts";
import { foodResults } from "../forecast/forecast.ts";
import type { FoodResult } from "../forecast/result.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { bandOf, quantile } from "./quantiles.ts";
import type { Draws, FoodDraws } from "./types.ts";

const hour_s = 3600;

const isThere = (value: number): boolean => !Number.isNaN(value);
const inSeconds = (time_h: number | null): number | null => (time_h === null ? null : time_h * hour_s);

/** Share of the members that have a value. */
function share_frac(values: Float64Array): number {
  return values.filter(isThere).length / values.length;
}

/**
 * What the ruling is made on: of each fact, the value that no more than 1 − confidence of the members are worse than.
 * Something that happens to more of them counts as happening.
 */
export function factsAt(draws: FoodDraws, confidence_frac: number): FoodFacts {
  const late = (values: Float64Array): number | null => inSeconds(quantile(values, confidence_frac));
  const early = (values: Float64Array): number | null => inSeconds(quantile(values, 1 - confidence_frac));
  const known = (values: Float64Array): number | null => (share_frac(values) === 0 ? null : late(values));
  return {
    below_s: late(draws.belowLimit_h),
    over_s: early(draws.overLimit_h),
    warm_s: late(draws.warm_h) ?? 0,
    hotAir_s: known(draws.hotAir_h),
    over10C_s: known(draws.over10C_h),
    coreMax_C: quantile(draws.coreMax_C, confidence_frac),
    coreMin_C: quantile(draws.coreMin_C, 1 - confidence_frac),
    thawed_s: early(draws.thawed_h),
    wet_s: early(draws.wet_h),
  };
}

function foodIn(trip: Trip, fleet: Fleet, item: TripFood, middle: FoodResult, draws: FoodDraws): FoodResult {
  const track = trackOf(fleet, item.id)!;
  const facts = factsAt(draws, trip.confidence_frac);
  const end_s = track.left_s ?? trip.duration_s;
  const company = companyOf(trip, fleet, item, track);
  const ruling = rulingOn(trip, item, facts, end_s, company);
  const likely = rulingOn(trip, item, factsAt(draws, 0.5), end_s, company);
  const sure = `to be ${Math.round(100 * trip.confidence_frac)} % sure`;
  return {
    ...middle,
    coreMax_C: bandOf(draws.coreMax_C),
    coreMin_C: bandOf(draws.coreMin_C),
    belowLimit_h: bandOf(draws.belowLimit_h),
    overLimit_h: bandOf(draws.overLimit_h),
    overLimit_frac: share_frac(draws.overLimit_h),
    warm_h: bandOf(draws.warm_h),
    warmAllowed_h: ruling.warmAllowed_s === null ? null : ruling.warmAllowed_s / hour_s,
    thawed_h: bandOf(draws.thawed_h),
    wet_h: share_frac(draws.wet_h) === 0 ? null : bandOf(draws.wet_h),
    verdict: ruling.verdict,
    rule: ruling.rule,
    why: likely.why === ruling.why ? ruling.why : `${ruling.why}, ${sure}; likely: ${likely.why}`,
  };
}

/**
 * Every item of the trip in its order, with its bands and the verdict at the trip's confidence; the dry box is as the
 * middle case has it.
 *
 * @param fleet the run of the middle case
 * @param draws members of this trip, with or without series
 */
export function foodBands(trip: Trip, fleet: Fleet, draws: Draws): FoodResult[] {
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  return foodResults(trip, fleet).map((middle, i) => {
    const item = trip.food[i]!;
    const at = inCoolers.indexOf(item);
    return at < 0 ? middle : foodIn(trip, fleet, item, middle, draws.food[at]!);
  });
}
