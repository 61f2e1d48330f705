import type { IceForm } from "../cooler/types.ts";
import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import { pieceRoom_m3 } from "../trip/ice.ts";
import type { Trip, TripFood } from "../trip/types.ts";

/*
 * What lies in the freezer at home, and how much room it takes: the states, the ice and the countdown all ask here.
 */

/** Share of a freezer's room that pieces can take: the rest is gaps, and air that has to get around them. Common practice. */
export const FREEZER_FRAC = 0.8;
/** Shoulders and handle: a jug stands in a box half as large again, and jugs nest a little. Engineering judgement. */
const JUG_BOX_RATIO = 1.4;
const FRIDGE_C = 4;

/** Room for pieces in the freezer of the trip; no freezer in the file: no bound is known. */
export const freezerSpace_m3 = ({ freezer }: Trip): number =>
  freezer === null ? Number.POSITIVE_INFINITY : FREEZER_FRAC * freezer.space_m3;

/** Room that a food takes in a freezer, without gaps. */
export function foodRoom_m3(food: TripFood): number {
  return food.mass_kg / foodDensity_kg_per_m3(food.like, FRIDGE_C);
}

/** Room that one piece of ice takes in a freezer, without gaps. */
export function iceRoom_m3(form: IceForm, each_kg: number): number {
  return (form === "jug" ? JUG_BOX_RATIO : 1) * pieceRoom_m3(form, each_kg);
}

/** Somebody has to freeze it at home: food that is sold frozen is bought at the last, and the dry box takes none. */
export function isFrozenAtHome({ state, putIn_s, like, cooler, open }: TripFood): boolean {
  return state === "frozen" && putIn_s === null && like.kind !== "frozen" && (cooler !== null || open.place);
}
