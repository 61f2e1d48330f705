import type { Fleet } from "../cooler/fleetState.ts";
import { companyOf, type FoodFacts, rulingOn, trackOf } from "../forecast/foodResult.ts";
import { foodResults, mostUrgentFirst } from "../forecast/forecast.ts";
import type { BandSeries, CoolerResult, FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { DomainError } from "../quantity/errors.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { doubtsOf } from "./doubts.ts";
import { bandOf, quantile } from "./quantiles.ts";
import { binnedQuantiles } from "./seriesBins.ts";
import type { CoolerSeriesBins, Draws, FoodDraws, SeriesBins } from "./types.ts";

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
function factsAt(draws: FoodDraws, confidence_frac: number): FoodFacts {
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

function seriesBand<T extends number | null>(
  of: SeriesBins,
  middle: readonly T[],
): { p10: T[]; p50: T[]; p90: T[] } {
  const at = middle.map((value, moment) =>
    value === null ? [null, null, null] : binnedQuantiles(of, moment, [0.1, 0.5, 0.9]),
  ) as [T, T, T][];
  return { p10: at.map(([p10]) => p10), p50: at.map(([, p50]) => p50), p90: at.map(([, , p90]) => p90) };
}

function seriesIn(middle: CoolerResult["series"], bins: CoolerSeriesBins): CoolerResult["series"] {
  const band = (key: "air_C" | "ice_kg" | "dryIce_kg" | "water_L"): BandSeries =>
    seriesBand(bins[key], middle[key].p50);
  return {
    ...middle,
    air_C: band("air_C"),
    ice_kg: band("ice_kg"),
    dryIce_kg: band("dryIce_kg"),
    water_L: band("water_L"),
    warmestPerishable_C: seriesBand(bins.warmestPerishable_C, middle.warmestPerishable_C.p50),
  };
}

/**
 * A forecast of the middle case with the bands of its ensemble. The heat budget, the waterline and what is packed stay
 * those of the middle case; verdicts are made at the trip's confidence.
 *
 * @param draws all members, with series
 * @throws DomainError when the draws are not of this forecast, or hold no series
 */
export function withBands(forecast: Forecast, draws: Draws, seed: number): Forecast {
  const { trip, result, fleet } = forecast;
  if (fleet === undefined || draws.series === null || draws.coolers.length !== trip.coolers.length)
    throw new DomainError("draws must be of this forecast, with series, and the forecast of a run");
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  const food = foodResults(trip, fleet).map((middle, i) => {
    const item = trip.food[i]!;
    const at = inCoolers.indexOf(item);
    return at < 0 ? middle : foodIn(trip, fleet, item, middle, draws.food[at]!);
  });
  const coolers = result.coolers.map((middle, i): CoolerResult => {
    const own = draws.coolers[i]!;
    return {
      ...middle,
      iceOut_h: bandOf(own.iceOut_h),
      overLimit_h: bandOf(own.overLimit_h),
      series: seriesIn(middle.series, draws.series![i]!),
      doubts: doubtsOf(trip, draws, i, seed),
    };
  });
  const ensemble = { members: draws.to - draws.from, seed, confidence_frac: trip.confidence_frac };
  return { ...forecast, result: { ...result, ensemble, food: food.sort(mostUrgentFirst), coolers } };
}
