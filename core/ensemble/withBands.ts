import { mostUrgentFirst } from "../forecast/forecast.ts";
import type { BandSeries, CoolerResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { DomainError } from "../quantity/errors.ts";
import { doubtsOf, type Standing } from "./doubts.ts";
import { foodBands } from "./foodBands.ts";
import { bandOf } from "./quantiles.ts";
import { binnedQuantiles } from "./seriesBins.ts";
import { sobol_frac } from "./sobol.ts";
import type { CoolerSeriesBins, Draws, SeriesBins } from "./types.ts";

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
 * @param standing of the members that each cooler has, where they are not those that the seed draws
 * @throws DomainError when the draws are not of this forecast, or hold no series
 */
export function withBands(
  forecast: Forecast,
  draws: Draws,
  seed: number,
  standing: (cooler: number) => Standing = () =>
    (i, { dimension }) =>
      sobol_frac(draws.from + i, dimension, seed),
): Forecast {
  const { trip, result, fleet } = forecast;
  if (fleet === undefined || draws.series === null || draws.coolers.length !== trip.coolers.length)
    throw new DomainError("draws must be of this forecast, with series, and the forecast of a run");
  const food = foodBands(trip, fleet, draws);
  const coolers = result.coolers.map((middle, i): CoolerResult => {
    const own = draws.coolers[i]!;
    return {
      ...middle,
      iceOut_h: bandOf(own.iceOut_h),
      overLimit_h: bandOf(own.overLimit_h),
      series: seriesIn(middle.series, draws.series![i]!),
      doubts: doubtsOf(trip, draws, i, standing(i)),
    };
  });
  const ensemble = { members: draws.to - draws.from, seed, confidence_frac: trip.confidence_frac };
  return { ...forecast, result: { ...result, ensemble, food: food.sort(mostUrgentFirst), coolers } };
}
