import { berthOf } from "../cooler/layout.ts";
import { loadTrip } from "../forecast/load.ts";
import type { Trip, TripFood } from "../trip/types.ts";

/** Says where in a cooler a food lies at a moment, among what else is in there. */
export type WhereInside = (food: TripFood, among: readonly TripFood[], taken: readonly TripFood[]) => string;

/**
 * The order in which the reckoning lays food: raw lowest, then what is eaten last; wishes come first. It tells what lies
 * over an item and not how deep that is.
 */
export function whereInside(trip: Trip): WhereInside {
  const heights = heightsOf(trip);
  const height = (food: TripFood): number => heights.get(food.id) ?? 0;
  return (food, among, taken) => {
    const others = among.filter((other) => other !== food && !taken.includes(other));
    const over = others.filter((other) => height(other) > height(food));
    if (over.length === 0) return food.raw ? "on top, raw: its own tray" : "top";
    const next = over.reduce((a, b) => (height(b) < height(a) ? b : a));
    const under = `under the ${next.name}`;
    const isLowest = others.every((other) => height(other) > height(food));
    if (isLowest) return food.raw ? `lowest, in the tray, ${under}` : `lowest, ${under}`;
    return food.raw ? `${under}, raw: its own tray` : under;
  };
}

/** Place in the stack of each food, by id; larger lies higher. */
function heightsOf(trip: Trip): ReadonlyMap<string, number> {
  const input = loadTrip(trip);
  const later = input.acts.flatMap((act) => (act.do === "put in" ? [act.lot] : []));
  const lots = [...input.coolers.flatMap((cooler) => cooler.lots), ...later].filter(
    (lot) => lot.kind === "food",
  );
  const berths = ["base", "rows", "fill", "top"] as const;
  const rank = lots.map((lot) => ({
    id: lot.id,
    berth: berths.indexOf(berthOf(lot)),
    row: typeof lot.layer === "number" ? lot.layer : Number.MAX_VALUE,
    depth: lot.depth,
  }));
  rank.sort((a, b) => a.berth - b.berth || a.row - b.row || b.depth - a.depth || (a.id < b.id ? -1 : 1));
  return new Map(rank.map(({ id }, i) => [id, i]));
}
