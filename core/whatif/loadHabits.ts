import type { IceForm } from "../cooler/types.ts";
import type { Trip, TripFood, TripIce } from "../trip/types.ts";
import { isAboard, isMade, type Unmade, withFood, withIce } from "./change.ts";
import { packed_frac } from "./filled.ts";
import { type Habit, thingHabit, type Way } from "./habit.ts";

/* What stands below as a figure of a good or bad way is judgement of what people do, not a law. */
const deepFreeze_C = -18;
const shop_C = -1;
const shopWater_frac = 0.03;

const isLoose = (form: IceForm): boolean => form === "cube" || form === "crushed";
const melts0: ReadonlySet<IceForm> = new Set(["block", "cube", "crushed", "jug", "gel pack"]);

/** Ice brought from the start that melts at 0 °C; what is bought on the way comes as it is sold. */
export const iceFromHome = (trip: Trip): TripIce[] =>
  trip.ice.filter((lot) => isAboard(lot) && melts0.has(lot.form));

/** The ice brought from the start at one temperature, with so much water on what of it is loose. */
export function withIceAt(trip: Trip, at_C: number, water_frac = 0): Trip {
  const own = new Set(iceFromHome(trip).map(({ id }) => id));
  return withIce(trip, (lot) => {
    if (!own.has(lot.id)) return lot;
    return { ...lot, start_C: at_C, liquid_frac: isLoose(lot.form) ? water_frac : 0 };
  });
}

const byWarmth = (at_C: number, good_C: number, bad_C: number): Way =>
  at_C <= good_C ? "good" : at_C >= bad_C ? "bad" : "between";

const inIt = (lot: TripIce | TripFood, trip: Trip): string[] => [trip.coolers[lot.cooler!].name];

const deepFrozenIce = thingHabit<TripIce>({
  key: "deep-frozen ice",
  says: "bring ice from a deep freeze, not from the shop's ice chest",
  goodWords: "all ice at 0 °F (−18 °C)",
  badWords: "ice as a shop sells it, at 30 °F (−1 °C), cubes wet",
  badNow: "ice as a shop sells it",
  inAll: "both",
  why: "no ice is brought from the start",
  things: iceFromHome,
  wayOf: (lot) => byWarmth(lot.start_C, -12, -5),
  coolersOf: inIt,
  set: (trip, good) => (good ? withIceAt(trip, deepFreeze_C) : withIceAt(trip, shop_C, shopWater_frac)),
});

const unfrozen = (trip: Trip): TripFood[] =>
  trip.food.filter((item) => isAboard(item) && item.state !== "frozen");
const cold_C = 4;
const warmFood_C = 15;
const warmDrink_C = 25;

const chilledFood = thingHabit<TripFood>({
  key: "chilled food",
  says: "put in nothing that is not cold already",
  goodWords: "food and drink at 39 °F (4 °C)",
  badWords: "food at 59 °F (15 °C), drinks at 77 °F (25 °C)",
  badNow: "food or drink put in warm",
  inAll: "both",
  why: "everything aboard is frozen, or there is no food",
  things: unfrozen,
  wayOf: (item) => byWarmth(item.start_C, 8, item.like.kind === "drink" ? 20 : 12),
  coolersOf: inIt,
  set: (trip, good) => {
    const own = new Set(unfrozen(trip).map(({ id }) => id));
    return withFood(trip, (item) => {
      if (!own.has(item.id)) return item;
      const warm_C = item.like.kind === "drink" ? warmDrink_C : warmFood_C;
      return good
        ? { ...item, state: "chilled", start_C: Math.min(item.start_C, cold_C) }
        : { ...item, state: "ambient", start_C: Math.max(item.start_C, warm_C) };
    });
  },
});

const blockPiece_kg = 4.5;
const changesForm = (lot: TripIce): boolean => lot.form === "block" || isLoose(lot.form);
export const looseAndBlocks = (trip: Trip): TripIce[] =>
  trip.ice.filter((lot) => isAboard(lot) && changesForm(lot));

/** All blocks and loose ice brought from the start in one form, the same mass; where it lies goes with the form. */
export function withIceForm(trip: Trip, form: "block" | "cube"): Trip {
  return withIce(trip, (lot) => {
    if (!isAboard(lot) || !changesForm(lot) || lot.form === form) return lot;
    const pieces = form === "block" ? Math.max(1, Math.round(lot.mass_kg / blockPiece_kg)) : 1;
    const liquid_frac = form === "block" ? 0 : lot.liquid_frac;
    return { ...lot, form, pieces, liquid_frac, layer: form === "block" ? "base" : "fill" };
  });
}

/** A trip that still closes its lids wherever it closed them before. */
export function fits(before: Trip, after: Trip): Trip | Unmade {
  const full = after.coolers.find((_, i) => packed_frac(after, i) > Math.max(1, packed_frac(before, i)));
  return full === undefined ? after : { why: `${full.name} would not hold it` };
}

const blockForm = thingHabit<TripIce>({
  key: "block ice",
  says: "bring block ice rather than cubes",
  goodWords: "the same weight of ice as blocks",
  badWords: "the same weight of ice as cubes",
  inAll: "no",
  why: "there is no block ice and no cubes",
  things: looseAndBlocks,
  wayOf: (lot) => (lot.form === "block" ? "good" : "bad"),
  coolersOf: inIt,
  set: (trip, good) => withIceForm(trip, good ? "block" : "cube"),
});

const blocks: Habit = {
  ...blockForm,
  make: (trip, good) => {
    const made = blockForm.make(trip, good);
    return isMade(made) ? fits(trip, made) : made;
  },
};

const isPack = (lot: TripIce): boolean => lot.form === "gel pack" || lot.form === "eutectic pack";

const packsOnTop = thingHabit<TripIce>({
  key: "packs on top",
  says: "lay the cold packs on top of the food",
  goodWords: "packs on top",
  badWords: "packs at the base",
  inAll: "both",
  why: "there are no cold packs",
  things: (trip) => trip.ice.filter((lot) => isAboard(lot) && isPack(lot)),
  wayOf: (lot) => (lot.layer === "top" || lot.layer === null ? "good" : "bad"),
  coolersOf: inIt,
  set: (trip, good) =>
    withIce(trip, (lot) => (isAboard(lot) && isPack(lot) ? { ...lot, layer: good ? "top" : "base" } : lot)),
});

/** Habits of what is put in. */
export const loadHabits: readonly Habit[] = [deepFrozenIce, chilledFood, blocks, packsOnTop];
