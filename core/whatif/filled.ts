import { medianClosures } from "../cooler/closures.ts";
import { iceLotDensity_kg_per_m3 } from "../cooler/layout.ts";
import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import type { Trip, TripFood, TripIce } from "../trip/types.ts";
import { isAboard } from "./change.ts";

const isLoose = (ice: TripIce): boolean => ice.form === "cube" || ice.form === "crushed";

/** What of a lot is still there: all of it unless a share is told. */
export type Left = (lot: TripFood | TripIce) => number;
const all: Left = () => 1;

export const foodVolume_m3 = (item: TripFood): number => item.mass_kg / foodDensity_kg_per_m3(item.like, 5);
export const iceVolume_m3 = (ice: TripIce): number => ice.mass_kg / iceLotDensity_kg_per_m3(ice.form);

/**
 * Share of a cooler's room that a load takes, as one stack with its gaps: loose ice fills gaps between the rest first.
 * An estimate for telling whether a change fits, without packing; the forecast itself stacks layer by layer.
 *
 * @param lots what lies in it, whatever cooler the lots name
 */
export function filled_frac(
  volume_m3: number,
  food: readonly TripFood[],
  ice: readonly TripIce[],
  left_frac: Left = all,
): number {
  const { foodPacking_frac, cubePacking_frac, crushedPacking_frac, blockFloor_frac, gapFill_frac } =
    medianClosures;
  let firm_m3 = 0;
  let gaps_m3 = 0;
  let loose_m3 = 0;
  const addFirm = (solid_m3: number, packing_frac: number): void => {
    firm_m3 += solid_m3 / packing_frac;
    gaps_m3 += solid_m3 / packing_frac - solid_m3;
  };
  for (const item of food) addFirm(foodVolume_m3(item) * left_frac(item), foodPacking_frac);
  for (const lot of ice) {
    const solid_m3 = iceVolume_m3(lot) * left_frac(lot);
    if (!isLoose(lot)) addFirm(solid_m3, blockFloor_frac);
    else loose_m3 += solid_m3 / (lot.form === "cube" ? cubePacking_frac : crushedPacking_frac);
  }
  return (firm_m3 + loose_m3 - Math.min(loose_m3, gaps_m3 * gapFill_frac)) / volume_m3;
}

/** The same for a cooler as packed at departure. */
export function packed_frac(trip: Trip, cooler: number): number {
  const here = <Lot extends TripFood | TripIce>(lots: readonly Lot[]): Lot[] =>
    lots.filter((lot) => isAboard(lot) && lot.cooler === cooler);
  return filled_frac(trip.coolers[cooler].volume_m3, here(trip.food), here(trip.ice));
}
