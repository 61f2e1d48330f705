import { foodIce_frac } from "../matter/foodProperties.ts";
import type { Trip } from "../trip/types.ts";
import { isAboard, mainCoolerIndex, nSharedPieces, type Unmade, withIce } from "./change.ts";
import { foodVolume_m3, iceVolume_m3, packed_frac } from "./filled.ts";

/** Volumes aboard the main cooler at departure, without gaps. */
function volumes(trip: Trip): { ice_m3: number; frozen_m3: number; rest_m3: number } {
  const main = mainCoolerIndex(trip);
  const sums = { ice_m3: 0, frozen_m3: 0, rest_m3: 0 };
  for (const lot of trip.ice) if (isAboard(lot) && lot.cooler === main) sums.ice_m3 += iceVolume_m3(lot);
  for (const item of trip.food) {
    if (!isAboard(item) || item.cooler !== main) continue;
    sums[foodIce_frac(item.like, item.start_C) > 0 ? "frozen_m3" : "rest_m3"] += foodVolume_m3(item);
  }
  return sums;
}

/** Ice, frozen food counted, to the rest by volume in the main cooler; null where there is no rest. */
export function iceToLoad_ratio(trip: Trip): number | null {
  const { ice_m3, frozen_m3, rest_m3 } = volumes(trip);
  return rest_m3 > 0 ? (ice_m3 + frozen_m3) / rest_m3 : null;
}

/** The trip with so much of its ice in the main cooler that it comes to this ratio, if it fits. */
export function withRatio(trip: Trip, wanted_ratio: number): Trip | Unmade {
  const main = mainCoolerIndex(trip);
  const { name } = trip.coolers[main];
  const { ice_m3, frozen_m3, rest_m3 } = volumes(trip);
  if (rest_m3 === 0) return { why: `nothing in ${name} but ice and frozen food` };
  const needed_m3 = wanted_ratio * rest_m3 - frozen_m3;
  if (ice_m3 === 0) return { why: `no ice in ${name} from the start` };
  if (needed_m3 <= 0) return { why: `the frozen food in ${name} alone is more than ${wanted_ratio} : 1` };
  const factor = needed_m3 / ice_m3;
  const scaled = withIce(trip, (lot) =>
    isAboard(lot) && lot.cooler === main
      ? { ...lot, mass_kg: lot.mass_kg * factor, pieces: nSharedPieces(lot.pieces, factor) }
      : lot,
  );
  const full = packed_frac(scaled, main);
  return full <= 1
    ? scaled
    : { why: `at ${wanted_ratio} : 1 ${name} would be ${Math.round(100 * full)} % full` };
}
