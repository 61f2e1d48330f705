import type { CoolerDraws, CoolerSeriesBins, Draws, FoodDraws, SeriesBins } from "./types.ts";

type Columns<T> = { [K in keyof T]: Float64Array };

function picked<T extends Columns<T>>(of: T, picks: readonly number[]): T {
  const out: Record<string, Float64Array> = {};
  for (const key of Object.keys(of) as (keyof T & string)[])
    out[key] = Float64Array.from(picks, (i) => of[key][i]!);
  return out as T;
}

function pickedBins(of: SeriesBins, picks: readonly number[]): SeriesBins {
  const bins = new Uint16Array(picks.length * of.nMoments);
  picks.forEach((i, at) => {
    bins.set(of.bins.subarray(i * of.nMoments, (i + 1) * of.nMoments), at * of.nMoments);
  });
  return { ...of, bins };
}

/** Members of one cooler's numbers by their places; a place may come more than once. */
const pickCooler = (of: CoolerDraws, picks: readonly number[]): CoolerDraws => picked(of, picks);
const pickFood = (of: FoodDraws, picks: readonly number[]): FoodDraws => picked(of, picks);

function pickSeries(of: CoolerSeriesBins, picks: readonly number[]): CoolerSeriesBins {
  const one = (key: keyof CoolerSeriesBins): SeriesBins => pickedBins(of[key], picks);
  return {
    air_C: one("air_C"),
    ice_kg: one("ice_kg"),
    dryIce_kg: one("dryIce_kg"),
    water_L: one("water_L"),
    warmestPerishable_C: one("warmestPerishable_C"),
  };
}

/**
 * Draws made of other draws: for each cooler and each item the members at these places. What was learned of one cooler says
 * little of another, so each has picks of its own; bands are made of one cooler or one item, so nothing is lost by it.
 *
 * @param coolers by cooler of the trip; all of one length
 * @param food by item of the draws
 */
export function pickDraws(
  draws: Draws,
  coolers: readonly (readonly number[])[],
  food: readonly (readonly number[])[],
): Draws {
  return {
    from: 0,
    to: coolers[0]?.length ?? 0,
    coolers: draws.coolers.map((own, i) => pickCooler(own, coolers[i]!)),
    food: draws.food.map((own, i) => pickFood(own, food[i]!)),
    series: draws.series === null ? null : draws.series.map((own, i) => pickSeries(own, coolers[i]!)),
  };
}
