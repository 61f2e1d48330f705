import type { OpeningHabit } from "../cooler/types.ts";
import type { Trip, TripEvent, TripFood, TripIce } from "../trip/types.ts";
import { isAboard, mainCoolerIndex, type Unmade, withCooler } from "./change.ts";
import { filled_frac, packed_frac } from "./filled.ts";
import type { Habit } from "./habit.ts";

const isDrink = (item: TripFood): boolean => item.like.kind === "drink" && !item.like.perishable;
const drinksIn = (trip: Trip, cooler: number): boolean =>
  trip.food.some((item) => item.cooler === cooler && isDrink(item));

/** Where the food is, and a cooler with drinks and nothing perishable; null where there is none. */
function foodAndDrinks(trip: Trip): { food: number; drinks: number | null } {
  const food = mainCoolerIndex(trip);
  const apart = trip.coolers.findIndex(
    (cooler, i) =>
      i !== food &&
      (cooler.holds === "drinks" || drinksIn(trip, i)) &&
      !trip.food.some((item) => item.cooler === i && item.like.perishable),
  );
  return { food, drinks: apart < 0 ? null : apart };
}

/** As many openings as of both, each as long as before on average, within the hours of both. */
function openedForBoth(one: OpeningHabit | null, two: OpeningHabit | null): OpeningHabit | null {
  if (one === null || two === null) return one ?? two;
  const perDay = one.perDay + two.perDay;
  return {
    perDay,
    each_s: (one.perDay * one.each_s + two.perDay * two.each_s) / perDay,
    from_s: Math.min(one.from_s, two.from_s),
    to_s: Math.max(one.to_s, two.to_s),
  };
}

/** What happens to a cooler that is no longer used: openings go to the other one, the rest is left out. */
function eventsWithout(trip: Trip, gone: number, into: number): TripEvent[] {
  return trip.events.flatMap((event): TripEvent[] => {
    if (event.do === "merge") return event.from === gone || event.into === gone ? [] : [event];
    // Food keeps its id wherever it is packed.
    if (event.do === "take out" || event.cooler !== gone) return [event];
    return event.do === "open" ? [{ ...event, cooler: into }] : [];
  });
}

/** All of one cooler packed with the other; the one that is left out stays, empty and shut. */
function together(trip: Trip, from: number, into: number): Trip | Unmade {
  const moved = <Lot extends TripFood | TripIce>(lot: Lot): Lot =>
    lot.cooler === from ? { ...lot, cooler: into } : lot;
  const packed: Trip = {
    ...trip,
    food: trip.food.map(moved),
    ice: trip.ice.map(moved),
    events: eventsWithout(trip, from, into),
  };
  const full_frac = packed_frac(packed, into);
  const { name } = trip.coolers[into];
  if (full_frac > 1) return { why: `${name} would be ${Math.round(100 * full_frac)} % full with both in it` };
  const openings = openedForBoth(trip.coolers[into].openings, trip.coolers[from].openings);
  return withCooler(withCooler(packed, into, { openings }), from, { openings: null });
}

function drinksOut(trip: Trip, food: number, drinks: number): Trip | Unmade {
  const parted: Trip = {
    ...trip,
    food: trip.food.map((item) =>
      item.cooler === food && isDrink(item) ? { ...item, cooler: drinks } : item,
    ),
  };
  if (packed_frac(parted, drinks) > 1)
    return { why: `${trip.coolers[drinks].name} has no room for more drinks` };
  return parted;
}

const namesOf = (trip: Trip, coolers: readonly number[]): string[] =>
  trip.coolers.map(({ name }) => name).filter((_, i) => coolers.includes(i));

const drinksApart: Habit = {
  key: "drinks apart",
  says: "keep drinks in a cooler of their own",
  goodWords: "drinks in their own cooler",
  badWords: "all food, drinks and ice in one cooler, opened for both",
  badNow: "drinks among the food",
  inAll: "no",
  standing: (trip) => {
    const { food, drinks } = foodAndDrinks(trip);
    if (!trip.food.some(isDrink)) return { why: "there are no drinks" };
    if (drinks === null) return { why: "there is no second cooler to put the drinks in" };
    const both = namesOf(trip, [food, drinks]);
    return { way: drinksIn(trip, food) ? "bad" : "good", from: "bad", toGood: both, toBad: both };
  },
  make: (trip, good) => {
    const { food, drinks } = foodAndDrinks(trip);
    if (drinks === null) return { why: "there is no second cooler to put the drinks in" };
    return good ? drinksOut(trip, food, drinks) : together(trip, drinks, food);
  },
};

/** The cooler with less in it, and the one that it would be emptied into. */
function emptierInto(trip: Trip): [from: number, into: number] {
  const order = trip.coolers.map((_, i) => i);
  const inside_m3 = (i: number): number => packed_frac(trip, i) * trip.coolers[i].volume_m3;
  order.sort((a, b) => inside_m3(a) - inside_m3(b) || b - a);
  return [order[0], order[order.length - 1]];
}

/** Ice and food that halfway through are still there, roughly: half of the ice, and what is eaten later. */
function leftHalfway(trip: Trip): (lot: TripFood | TripIce) => number {
  return (lot) => {
    if ("form" in lot || lot.eat_s === null) return 0.5;
    const moments_s = lot.parts_s ?? [lot.eat_s];
    return moments_s.filter((t_s) => t_s > trip.duration_s / 2).length / moments_s.length;
  };
}

function mergedHalfway(trip: Trip): Trip | Unmade {
  const [from, into] = emptierInto(trip);
  const { name, volume_m3 } = trip.coolers[into];
  const t_s = Math.round(trip.duration_s / 2);
  const inBoth = <Lot extends TripFood | TripIce>(lots: readonly Lot[]): Lot[] =>
    lots.filter((lot) => isAboard(lot) && (lot.cooler === from || lot.cooler === into));
  const full_frac = filled_frac(volume_m3, inBoth(trip.food), inBoth(trip.ice), leftHalfway(trip));
  if (full_frac > 1)
    return { why: `halfway through, ${name} would be about ${Math.round(100 * full_frac)} % full` };
  const moved = <Lot extends TripFood | TripIce>(lot: Lot): Lot =>
    lot.cooler === from && lot.putIn_s !== null && lot.putIn_s >= t_s ? { ...lot, cooler: into } : lot;
  const merge: TripEvent = { do: "merge", t_s, from, into, path: "events" };
  return {
    ...trip,
    food: trip.food.map(moved),
    ice: trip.ice.map(moved),
    events: [...trip.events, merge].sort((a, b) => a.t_s - b.t_s),
  };
}

const merging: Habit = {
  key: "merge",
  says: "empty one cooler into the other when both have room",
  goodWords: "merged halfway through, then opened as the one that stays",
  badWords: "left apart to the end",
  inAll: "no",
  standing: (trip) => {
    if (trip.coolers.length < 2) return { why: "there is only one cooler" };
    const merges = trip.events.filter((event) => event.do === "merge");
    const named = new Set(merges.flatMap(({ from, into }) => [from, into]));
    const both = namesOf(trip, merges.length > 0 ? [...named] : emptierInto(trip));
    return { way: merges.length > 0 ? "good" : "bad", from: "bad", toGood: both, toBad: both };
  },
  make: (trip, good) => {
    if (trip.coolers.length < 2) return { why: "there is only one cooler" };
    if (good) return mergedHalfway(trip);
    return { ...trip, events: trip.events.filter((event) => event.do !== "merge") };
  },
};

/** Habits of what shares a cooler. */
export const sharingHabits: readonly Habit[] = [drinksApart, merging];
