import type { Trip, TripFood } from "../trip/types.ts";
import { momentWords } from "./moment.ts";
import { eaten_s, stopsOf } from "./whereabouts.ts";

/** Two coolers, the one that is emptied first. */
export interface Pair {
  from: number;
  into: number;
}

/** Drinks that may come among food, as a share of the room of the food's cooler: a handful. Engineering judgement. */
const LITTLE_frac = 0.15;

const isDrink = (food: TripFood): boolean => food.like.kind === "drink" && !food.like.perishable;

/** Food that lies in a cooler after a moment's meal. */
export function insideAt(trip: Trip, cooler: number, t_s: number): TripFood[] {
  return trip.food.filter((food) => {
    const last = stopsOf(trip, food).findLast((stop) => stop.from_s <= t_s);
    return last?.cooler === cooler && eaten_s(food, trip) > t_s;
  });
}

/** Rough share of an item that is left after a moment. */
function left_frac(food: TripFood, trip: Trip, t_s: number): number {
  if (food.parts_s !== null && food.parts_s.length > 0)
    return food.parts_s.filter((part_s) => part_s > t_s).length / food.parts_s.length;
  return food.eat_s === null ? Math.max(0, 1 - t_s / trip.duration_s) : 1;
}

/** Why one cooler may not be emptied into another one at all; null: nothing speaks against it. */
export function neverWords(trip: Trip, { from, into }: Pair): string | null {
  const [one, other] = [trip.coolers[from]!, trip.coolers[into]!];
  const merges = trip.events.filter((event) => event.do === "merge");
  const gone = merges.find((event) => event.from === from || event.from === into);
  if (gone !== undefined) return `the file empties ${trip.coolers[gone.from]!.name} already`;
  const food = trip.food.filter((item) => item.cooler === from && !isDrink(item));
  if (other.holds === "drinks" && food.length > 0)
    return `${other.name} holds drinks, and ${one.name} has food`;
  return juiceWords(trip, { from, into });
}

/** Raw juice that may be in one of two coolers keeps everything else out of it: when it was there does not count. */
function juiceWords(trip: Trip, { from, into }: Pair): string | null {
  const lain = (cooler: number): TripFood[] =>
    trip.food.filter((food) => stopsOf(trip, food).some((stop) => stop.cooler === cooler));
  for (const [wet, dry] of [
    [from, into],
    [into, from],
  ] as const) {
    const drips = lain(wet).find((food) => food.raw && !food.watertight);
    if (drips !== undefined && lain(dry).some((food) => !food.raw))
      return `${drips.name} in ${trip.coolers[wet]!.name} is raw and not watertight: it stays apart from what is eaten as it is`;
  }
  return null;
}

/** Why not at this moment; null: nothing speaks against it. Whether it fits and helps is for a run to tell. */
export function notYetWords(trip: Trip, { from, into }: Pair, t_s: number): string | null {
  const [one, other] = [trip.coolers[from]!, trip.coolers[into]!];
  for (const { name, sealedUntil_s } of [one, other])
    if (sealedUntil_s !== null && t_s < sealedUntil_s)
      return `${name} is sealed until ${momentWords(trip, sealedUntil_s)}`;
  const later = trip.events.some((event) => event.do === "merge" && event.into === from && event.t_s >= t_s);
  const comes = [...trip.food, ...trip.ice].some((lot) => lot.cooler === from && (lot.putIn_s ?? 0) > t_s);
  if (later || comes) return `something comes into ${one.name} later`;
  const [moved, kept] = [insideAt(trip, from, t_s), insideAt(trip, into, t_s)];
  if (moved.length + kept.length === 0) return "nothing is left that needs the cold";
  return drinksWords(trip, { from, into }, t_s);
}

/** Many drinks would keep the lid of the food open. */
function drinksWords(trip: Trip, { from, into }: Pair, t_s: number): string | null {
  const [moved, kept] = [insideAt(trip, from, t_s), insideAt(trip, into, t_s)];
  const drinks = moved.filter(isDrink);
  if (trip.coolers[into]!.holds === "drinks" || kept.every(isDrink)) return null;
  // Drinks are nearly water: a kilogram to the litre.
  const litres = drinks.reduce((sum, food) => sum + food.mass_kg * left_frac(food, trip, t_s), 0);
  if (litres <= LITTLE_frac * trip.coolers[into]!.volume_m3 * 1000) return null;
  return `too many drinks are left in ${trip.coolers[from]!.name} to be kept among food`;
}

/** What to mind where raw food comes along; nothing where there is none. */
export function rawWords(trip: Trip, { from, into }: Pair, t_s: number): string {
  const raw = [...insideAt(trip, from, t_s), ...insideAt(trip, into, t_s)].filter((food) => food.raw);
  return raw.length === 0
    ? ""
    : ` ${[...new Set(raw.map(({ name }) => name))].join(", ")}: raw, lowest in its watertight package, the rest above.`;
}
