import type { Trip, TripFood, TripIce } from "../trip/types.ts";
import { freezerSpace_m3, iceRoom_m3, isFrozenAtHome } from "./freezerRoom.ts";
import { foodJob } from "./freezerTimes.ts";
import { isOf, type Offer, usualWhere } from "./offer.ts";

const isHome = (where: string): boolean => where.trim().toLowerCase() === "home";

/** Room that pieces take in the freezer at home; those that are bought take none. */
function room_m3(pieces: number, each_kg: number, form: TripIce["form"], where: string): number {
  return isHome(where) ? pieces * iceRoom_m3(form, each_kg) : 0;
}

/** What planned pieces take of the freezer. */
export function frozenAtHome_m3(ice: readonly TripIce[], offers: readonly Offer[]): number {
  return ice.reduce((sum, lot) => {
    const offer = offers.find((one) => isOf(lot, one));
    return sum + (offer === undefined ? 0 : room_m3(lot.pieces, offer.each_kg, lot.form, offer.where));
  }, 0);
}

/** Food that is frozen at home lies there with the ice until packing; what the freezer never gets hard is not put in. */
function frozenFood_m3(food: readonly TripFood[], air_C: number): number {
  return food.filter(isFrozenAtHome).reduce((sum, item) => {
    const job = foodJob(item, air_C);
    return sum + (job === null || job.takes_h.p90 === null ? 0 : job.pieces * job.room_m3);
  }, 0);
}

/**
 * What is left in the freezer for planned ice, beside the ice of the file and the food that is frozen in it; nothing
 * where these alone are too much, so that ice which is bought can still be had. No freezer in the file: no bound is known.
 */
export function freezerLeft_m3(trip: Trip): number {
  if (trip.freezer === null) return Number.POSITIVE_INFINITY;
  const written = trip.ice.filter(({ putIn_s, path }) => putIn_s === null && path !== PLANNED);
  const taken = written.reduce(
    (sum, lot) => sum + room_m3(lot.pieces, lot.mass_kg / lot.pieces, lot.form, whereFrom(lot, trip)),
    0,
  );
  return Math.max(0, freezerSpace_m3(trip) - taken - frozenFood_m3(trip.food, trip.freezer.at_C));
}

/** As the supply has it, else as it is usual. */
function whereFrom(lot: TripIce, { supply }: Trip): string {
  const each_kg = lot.mass_kg / lot.pieces;
  const sold = supply.find(
    (one) => one.when_s === null && one.form === lot.form && Math.abs(one.each_kg - each_kg) < 1e-3 * each_kg,
  );
  return sold?.where ?? usualWhere(lot.form);
}

/** Path of ice that a plan adds. */
const PLANNED = "supply";

/** Whether the freezer has no room for another piece of any kind that is made at home and could still be had. */
export function isFreezerFull(trip: Trip, planned: readonly TripIce[], offers: readonly Offer[]): boolean {
  const left_m3 = freezerLeft_m3(trip) - frozenAtHome_m3(planned, offers);
  return offers.some((offer) => {
    const used = planned.filter((lot) => isOf(lot, offer)).reduce((sum, lot) => sum + lot.pieces, 0);
    if (!isHome(offer.where) || (offer.max !== null && used >= offer.max)) return false;
    return iceRoom_m3(offer.form, offer.each_kg) > left_m3 + 1e-9;
  });
}
