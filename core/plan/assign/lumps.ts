import { medianClosures } from "../../cooler/closures.ts";
import { foodDensity_kg_per_m3, foodEnthalpy_J_per_kg } from "../../matter/foodProperties.ts";
import { iceLatent_J_per_kg } from "../../matter/ice.ts";
import type { Trip, TripFood } from "../../trip/types.ts";
import { eatingTimes_s, type MealMoment, mealMoments } from "../mealTimes.ts";
import { frozenUse_frac } from "./weights.ts";

/** The place that is in no cooler. */
export const dryBox = -1;

/** Items that go to one place together, as the solver sees them: one item, or many alike in a long menu. */
export interface Lump {
  /** Places in the trip's food. */
  items: readonly number[];
  /** First and last eaten of each of the items. */
  eaten_s: readonly (readonly [first_s: number, last_s: number])[];
  mass_kg: number;
  /** With its gaps; nothing for what comes aboard later, when other food has made room. */
  bulk_L: number;
  gaps_L: number;
  /** Ice that cooling it takes; below zero where it is frozen and gives cold. */
  ice_kg: number;
  firstEaten_s: number;
  lastEaten_s: number;
  drink: boolean;
  raw: boolean;
  /** Eaten as it is: raw juice must not reach it. */
  ready: boolean;
  frozen: boolean;
  freezesBadly: boolean;
  perishable: boolean;
  /** The file says where. */
  pinned: boolean;
  /** Places that no rule forbids, in the order of the coolers, the dry box last. */
  places: readonly number[];
  /** No rule leaves a place: it goes to the least bad. */
  ruleBroken: boolean;
}

/**
 * Things that are alike are put together first, each lump no larger than such a share of all that has to go somewhere:
 * coarse where it fits, since a solver that may swap every jar for every other takes ten times as long to prove what no
 * cook would notice; fine where the last litres count. A menu of fewer items than that is left as it is.
 */
export const coarse = { whole: 12, share: 16 } as const;
export const fine = { whole: 60, share: 40 } as const;

/** Ice that an item costs the cooler it goes into. */
function iceFor_kg(item: TripFood): number {
  const heat_J = item.mass_kg * foodEnthalpy_J_per_kg(item.like, item.start_C);
  return (heat_J / iceLatent_J_per_kg) * (heat_J < 0 ? frozenUse_frac : 1);
}

/** Neither spoils nor is wanted cold. */
export function needsNoCold(item: TripFood): boolean {
  if (item.state === "dry") return true;
  return item.state === "ambient" && !item.like.perishable && !item.raw && item.like.kind !== "drink";
}

/** Whether a cooler has ice in it that freezes what touches it. */
const freezesFood = (trip: Trip, cooler: number): boolean =>
  trip.ice.some((ice) => ice.cooler === cooler && (ice.form === "dry ice" || ice.form === "eutectic pack"));

function obeys(trip: Trip, cooler: number, item: TripFood, first_s: number): boolean {
  const { holds, sealedUntil_s } = trip.coolers[cooler]!;
  const isDrink = item.like.kind === "drink";
  if (holds !== "any" && (holds === "drinks") !== isDrink) return false;
  if (sealedUntil_s !== null && first_s < sealedUntil_s) return false;
  return !(item.freezesBadly && freezesFood(trip, cooler));
}

function placesOf(
  trip: Trip,
  item: TripFood,
  first_s: number,
): Pick<Lump, "pinned" | "places" | "ruleBroken"> {
  // Dry by what was decided about it, and not by the file.
  const isDecidedDry = item.cooler === null && item.open.state && needsNoCold(item);
  if (isDecidedDry) return { pinned: false, places: [dryBox], ruleBroken: false };
  if (!item.open.place) return { pinned: true, places: [item.cooler ?? dryBox], ruleBroken: false };
  if (needsNoCold(item)) return { pinned: false, places: [dryBox], ruleBroken: false };
  const all = trip.coolers.map((_, i) => i);
  const obeying = all.filter((cooler) => obeys(trip, cooler, item, first_s));
  const warm = item.like.perishable || item.raw || item.state === "frozen" ? [] : [dryBox];
  if (obeying.length > 0) return { pinned: false, places: [...obeying, ...warm], ruleBroken: false };
  if (warm.length > 0) return { pinned: false, places: warm, ruleBroken: false };
  return { pinned: false, places: all.length > 0 ? all : [dryBox], ruleBroken: true };
}

function lumpOf(trip: Trip, index: number, meals: readonly MealMoment[]): Lump {
  const item = trip.food[index]!;
  const times = eatingTimes_s(item, meals);
  const firstEaten_s = times[0] ?? 0;
  const lastEaten_s = times.at(-1) ?? trip.duration_s;
  const aboard = item.putIn_s === null ? 1 : 0;
  const solid_L = (aboard * 1000 * item.mass_kg) / foodDensity_kg_per_m3(item.like, 5);
  const bulk_L = solid_L / medianClosures.foodPacking_frac;
  return {
    items: [index],
    eaten_s: [[firstEaten_s, lastEaten_s]],
    mass_kg: aboard * item.mass_kg,
    bulk_L,
    gaps_L: bulk_L - solid_L,
    ice_kg: iceFor_kg(item),
    firstEaten_s,
    lastEaten_s,
    drink: item.like.kind === "drink",
    raw: item.raw,
    ready:
      !item.raw && (item.like.kind === "rte" || item.like.kind === "produce" || item.like.kind === "drink"),
    frozen: item.state === "frozen",
    freezesBadly: item.freezesBadly,
    perishable: item.like.perishable,
    ...placesOf(trip, item, firstEaten_s),
  };
}

/** What may be put together without taking a choice away that a rule, a day or a seal asks for. */
const likeness = (lump: Lump, half_s: number): string =>
  [
    lump.places.join(","),
    Math.floor(lump.lastEaten_s / 86_400),
    Number(lump.firstEaten_s < half_s),
    ...[lump.raw, lump.ready, lump.drink, lump.frozen, lump.perishable, lump.pinned, lump.ruleBroken].map(
      Number,
    ),
  ].join(";");

function joined(a: Lump, b: Lump): Lump {
  return {
    ...a,
    items: [...a.items, ...b.items],
    eaten_s: [...a.eaten_s, ...b.eaten_s],
    mass_kg: a.mass_kg + b.mass_kg,
    bulk_L: a.bulk_L + b.bulk_L,
    gaps_L: a.gaps_L + b.gaps_L,
    ice_kg: a.ice_kg + b.ice_kg,
    firstEaten_s: Math.min(a.firstEaten_s, b.firstEaten_s),
    lastEaten_s: Math.max(a.lastEaten_s, b.lastEaten_s),
    freezesBadly: a.freezesBadly || b.freezesBadly,
  };
}

/** Puts alike things together, each lump small enough that coolers can still be filled well. */
function gather(lumps: readonly Lump[], share: number, half_s: number): Lump[] {
  const moving = lumps.filter(({ pinned, places }) => !pinned && places.some((place) => place !== dryBox));
  const most_L = moving.reduce((sum, { bulk_L }) => sum + bulk_L, 0) / share;
  const out: Lump[] = [];
  const open = new Map<string, number>();
  for (const lump of lumps) {
    const key = likeness(lump, half_s);
    const at = open.get(key);
    const isFixed = lump.pinned || lump.places.length === 1;
    if (at !== undefined && (isFixed || out[at]!.bulk_L + lump.bulk_L <= most_L))
      out[at] = joined(out[at]!, lump);
    else open.set(key, out.push(lump) - 1);
  }
  return out;
}

/** Everything that has to go somewhere: item by item where the menu is short, else gathered. */
export function lumpsOf(trip: Trip, { whole, share }: typeof coarse | typeof fine = coarse): Lump[] {
  const meals = mealMoments(trip);
  const each = trip.food.map((_, i) => lumpOf(trip, i, meals));
  return each.length > whole ? gather(each, share, trip.duration_s / 2) : each;
}
