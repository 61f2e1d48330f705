import type { CoolerSeriesBins, SeriesBins } from "../ensemble/types.ts";
import type { Look } from "./looks.ts";

/** Value of a member at a moment of the grid, the middle of its bin; NaN where it has none. */
function binValue({ bins, nMoments, from, width }: SeriesBins, member: number, moment: number): number {
  const bin = bins[member * nMoments + moment]!;
  if (bin === 0xffff) return Number.NaN;
  return bin === 0 ? from : from + (bin - 0.5) * width;
}

/**
 * Where a moment lies between two of a grid. What was seen in the minute of an act was seen before it.
 *
 * @param times_h rising; at an act twice the same, before it and after it
 */
function placeIn(times_h: readonly number[], t_h: number): { at: number; toNext_frac: number } {
  const minute_h = 1 / 60;
  let at = 0;
  while (at + 1 < times_h.length && times_h[at + 1]! <= t_h - minute_h / 2) at++;
  const next_h = times_h[Math.min(times_h.length - 1, at + 1)]!;
  const span_h = next_h - times_h[at]!;
  return { at, toNext_frac: span_h > 0 ? Math.min(1, Math.max(0, (t_h - times_h[at]!) / span_h)) : 0 };
}

function valueAt(of: SeriesBins, member: number, place: { at: number; toNext_frac: number }): number {
  const here = binValue(of, member, place.at);
  if (place.toNext_frac === 0 || place.at + 1 >= of.nMoments) return here;
  const next = binValue(of, member, place.at + 1);
  return Number.isNaN(next) ? here : here + place.toNext_frac * (next - here);
}

/** Most ice that a member held up to a moment of the grid. */
function mostIce_kg(of: SeriesBins, member: number, upTo: number): number {
  let most = 0;
  for (let moment = 0; moment <= upTo; moment++) most = Math.max(most, binValue(of, member, moment));
  return most;
}

/**
 * What each member has where somebody looked: share of ice, °C of the air, or litres of water. Read from the hourly
 * series of the members, straight between the hours; NaN where there is no ice of which a share could be told.
 *
 * @param times_h moments of the series
 */
export function predictions(
  look: Look,
  series: CoolerSeriesBins,
  times_h: readonly number[],
  nMembers: number,
): Float64Array {
  const place = placeIn(times_h, look.t_s / 3600);
  return Float64Array.from({ length: nMembers }, (_, member) => {
    if (look.of === "air") return valueAt(series.air_C, member, place);
    if (look.of === "water") return valueAt(series.water_L, member, place);
    const most_kg = mostIce_kg(series.ice_kg, member, place.at);
    return most_kg > 0 ? valueAt(series.ice_kg, member, place) / most_kg : Number.NaN;
  });
}
