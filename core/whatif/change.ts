import { placeDefaults } from "../sky/places.ts";
import type { Stay } from "../sky/types.ts";
import type { Trip, TripCooler, TripFood, TripIce } from "../trip/types.ts";

/** A change that cannot be made to this trip, with the reason as one would tell it. */
export interface Unmade {
  why: string;
}

export const isMade = (made: Trip | Unmade): made is Trip => !("why" in made);

/** The trip with one cooler changed. */
export function withCooler(trip: Trip, cooler: number, change: Partial<TripCooler>): Trip {
  return { ...trip, coolers: trip.coolers.map((one, i) => (i === cooler ? { ...one, ...change } : one)) };
}

/** The trip with every lot of ice passed through `change`. */
export const withIce = (trip: Trip, change: (ice: TripIce) => TripIce): Trip => ({
  ...trip,
  ice: trip.ice.map(change),
});

/** The trip with every item of food and drink passed through `change`. */
export const withFood = (trip: Trip, change: (food: TripFood) => TripFood): Trip => ({
  ...trip,
  food: trip.food.map(change),
});

/** A place where a cooler stands: a leg of the trip, or a move of one cooler. */
export type Spot = Pick<Stay, "place" | "shade_frac" | "ground" | "air_C">;

/** All places where coolers stand, in no particular order. */
export const spotsOf = (trip: Trip): Spot[] => [
  ...trip.legs,
  ...trip.events.filter((event) => event.do === "move"),
];

/** The trip with every place passed through `change`, which answers with what differs there. */
export function withSpots(trip: Trip, change: (spot: Spot) => Partial<Spot>): Trip {
  return {
    ...trip,
    legs: trip.legs.map((leg) => ({ ...leg, ...change(leg) })),
    events: trip.events.map((event) => (event.do === "move" ? { ...event, ...change(event) } : event)),
  };
}

/** Shade at a place: as told, or the place's own. */
export const shadeAt_frac = (spot: Spot): number => spot.shade_frac ?? placeDefaults[spot.place].shade_frac;

/** Whether a lot lay in a cooler when the trip began. */
export const isAboard = (lot: TripFood | TripIce): boolean => lot.putIn_s === null && lot.cooler !== null;

/** Cooler that matters most: of those with ice the one with the most perishable food, then with the most ice. */
export function mainCoolerIndex(trip: Trip): number {
  const sum = (lots: readonly (TripFood | TripIce)[], cooler: number): number =>
    lots.filter((lot) => isAboard(lot) && lot.cooler === cooler).reduce((kg, lot) => kg + lot.mass_kg, 0);
  const perishable = trip.food.filter((item) => item.like.perishable);
  const hasIce = (cooler: number): number => Number(trip.ice.some((lot) => lot.cooler === cooler));
  const order = trip.coolers.map((_, i) => i);
  order.sort(
    (a, b) =>
      hasIce(b) - hasIce(a) ||
      sum(perishable, b) - sum(perishable, a) ||
      sum(trip.ice, b) - sum(trip.ice, a) ||
      a - b,
  );
  return order[0] ?? 0;
}

/** So many pieces of a lot of which a share is left: at least one. */
export const nSharedPieces = (pieces: number, share_frac: number): number =>
  Math.max(1, Math.round(pieces * share_frac));
