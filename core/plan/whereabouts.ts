import type { Trip, TripFood } from "../trip/types.ts";

/** A cooler that food lies in, and from when. */
interface Stop {
  cooler: number;
  from_s: number;
}

/** When a cooler is emptied into another one, or the return. */
export function emptied_s(trip: Trip, cooler: number): number {
  const merges = trip.events.filter((event) => event.do === "merge" && event.from === cooler);
  return Math.min(trip.duration_s, ...merges.map((event) => event.t_s));
}

/** When the last of a food is eaten. */
export const eaten_s = (food: TripFood, trip: Trip): number => food.eat_s ?? trip.duration_s;

/** The coolers that a food is in, one after another: a merge takes along what is in the cooler then, and nothing later. */
export function stopsOf(trip: Trip, food: TripFood): Stop[] {
  if (food.cooler === null) return [];
  const stops: Stop[] = [{ cooler: food.cooler, from_s: food.putIn_s ?? 0 }];
  for (const event of trip.events) {
    const { cooler, from_s } = stops.at(-1)!;
    if (event.do !== "merge" || event.from !== cooler || event.t_s < from_s) continue;
    if (event.t_s < eaten_s(food, trip)) stops.push({ cooler: event.into, from_s: event.t_s });
  }
  return stops;
}

/** Food that a cooler's own ice is there for: what is in it at some time before it is emptied. */
export function foodIn(trip: Trip, cooler: number): TripFood[] {
  const end_s = emptied_s(trip, cooler);
  return trip.food.filter((food) =>
    stopsOf(trip, food).some((stop) => stop.cooler === cooler && stop.from_s <= end_s),
  );
}

/** Perishables that come into a cooler after it was emptied: no ice of the departure is in it any more. */
export function cameTooLate(trip: Trip): TripFood[] {
  return trip.food.filter((food) => {
    const last = stopsOf(trip, food).at(-1);
    return food.like.perishable && last !== undefined && last.from_s > emptied_s(trip, last.cooler);
  });
}
