import type { PullCard } from "../forecast/planResult.ts";
import type { Forecast } from "../forecast/types.ts";
import { hotAir_C } from "../safety/limits.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { eatingTimes_s, type MealMoment, mealMoments } from "./mealTimes.ts";
import { dayAt, isoAt } from "./moment.ts";
import { partWords } from "./partWords.ts";
import { type ThawMove, thawPlan } from "./thaw.ts";
import { stopsOf } from "./whereabouts.ts";
import { type WhereInside, whereInside } from "./whereInside.ts";

/** What is not cold-kept may be taken out so long before it is eaten, if that saves an opening. */
const EARLY_s = 6 * 3600;

/** A part of a food that is eaten at a moment. */
interface Helping {
  food: TripFood;
  t_s: number;
  part: number;
  parts: number;
  /** null: the dry box. */
  cooler: number | null;
}

interface Draft {
  t_s: number;
  meal: string;
  helpings: Helping[];
  /** Taken along for a later meal, so that the lid stays shut then. */
  early: Helping[];
  /** Taken out at an earlier meal. */
  ready: Set<Helping>;
  thaws: ThawMove[];
}

/**
 * A card for every meal: what to take, from which cooler and from under what, with each cooler opened once; what to move
 * so that it thaws; what goes back. What needs no cold is taken along an opening earlier where that saves one. Food that
 * is to last until the return, and thawing that begins before departure, are on no card.
 */
export function pullCards(trip: Trip, forecast: Forecast): PullCard[] {
  const meals = mealMoments(trip);
  const drafts = draftsOf(trip, meals);
  drafts.forEach((draft, i) => {
    takeEarly(draft, drafts[i + 1]);
  });
  const all = withThaws(trip, drafts, meals, thawPlan(trip, forecast));
  const where = whereInside(trip);
  return all.map((draft) => cardOf(trip, draft, where, meals));
}

function draftsOf(trip: Trip, meals: readonly MealMoment[]): Draft[] {
  const byMoment = new Map<number, Draft>();
  for (const food of trip.food) {
    const times_s = eatingTimes_s(food, meals);
    times_s.forEach((t_s, part) => {
      if (t_s >= trip.duration_s) return;
      const parts = times_s.length;
      if (isHelpYourself(trip, food) || partWords(food.amount, part, parts) === "") return;
      const draft = byMoment.get(t_s) ?? emptyDraft(t_s, meals);
      draft.helpings.push({ food, t_s, part, parts, cooler: coolerAt(trip, food, t_s) });
      byMoment.set(t_s, draft);
    });
  }
  return [...byMoment.values()].sort((a, b) => a.t_s - b.t_s);
}

/** Drinks of a drinks cooler are taken when somebody is thirsty, and on no card. */
const isHelpYourself = (trip: Trip, food: TripFood): boolean =>
  food.like.kind === "drink" &&
  food.eat_s === null &&
  food.parts_s === null &&
  food.cooler !== null &&
  trip.coolers[food.cooler]!.holds === "drinks";

const emptyDraft = (t_s: number, meals: readonly MealMoment[]): Draft => ({
  t_s,
  meal: meals.find((one) => one.t_s === t_s)?.meal ?? "snack",
  helpings: [],
  early: [],
  ready: new Set(),
  thaws: [],
});

/** The cooler that a food lies in just before a moment: what a merge of that very moment moves is taken out first. */
function coolerAt(trip: Trip, food: TripFood, t_s: number): number | null {
  return stopsOf(trip, food).findLast((stop, i) => i === 0 || stop.from_s < t_s)?.cooler ?? null;
}

/**
 * Spares the next meal an opening: where everything it takes from a cooler that is opened now needs no cold, it comes out
 * now and waits in the dry box.
 */
function takeEarly(now: Draft, next: Draft | undefined): void {
  if (next === undefined || next.t_s - now.t_s > EARLY_s) return;
  const open = new Set(now.helpings.map(({ cooler }) => cooler));
  for (const cooler of open) {
    if (cooler === null) continue;
    const wanted = next.helpings.filter((one) => one.cooler === cooler);
    if (!wanted.every(needsNoCold)) continue;
    now.early.push(...wanted);
    for (const one of wanted) next.ready.add(one);
  }
}

const needsNoCold = ({ food }: Helping): boolean =>
  !food.like.perishable && food.like.kind !== "drink" && food.like.kind !== "frozen" && !food.raw;

/** Lays each move on the last meal at or before it, with a card of its own where nothing is eaten then. */
function withThaws(
  trip: Trip,
  drafts: readonly Draft[],
  meals: readonly MealMoment[],
  thaws: readonly ThawMove[],
): Draft[] {
  const all = [...drafts];
  for (const thaw of thaws) {
    const { moveAt_s } = thaw;
    if (moveAt_s === null || moveAt_s < 0) continue;
    const at_s = meals.findLast(({ t_s }) => t_s <= moveAt_s)?.t_s ?? 0;
    let draft = all.find(({ t_s }) => t_s === at_s);
    if (draft === undefined) {
      draft = { ...emptyDraft(at_s, meals), ...(at_s === 0 ? { meal: "departure" } : {}) };
      all.push(draft);
    }
    draft.thaws.push(thaw);
  }
  return all.filter(({ t_s }) => t_s <= trip.duration_s).sort((a, b) => a.t_s - b.t_s);
}

function cardOf(trip: Trip, draft: Draft, where: WhereInside, meals: readonly MealMoment[]): PullCard {
  const take = [...draft.helpings, ...draft.early].map((one) => takeOf(trip, draft, one, where, meals));
  return {
    at: isoAt(trip, draft.t_s),
    day: dayAt(trip, draft.t_s),
    meal: draft.meal,
    take: take.sort((a, b) => place(trip, a.cooler) - place(trip, b.cooler)),
    thaw: draft.thaws.map(({ item, from, to, for_s, takes_h }) => ({
      item,
      from,
      to,
      for: isoAt(trip, for_s),
      takes_h,
    })),
    back: backOf(trip, draft),
  };
}

/** Coolers in their order, the dry box last. */
function place(trip: Trip, cooler: string): number {
  const index = trip.coolers.findIndex(({ name }) => name === cooler);
  return index < 0 ? trip.coolers.length : index;
}

const DRY_BOX = "dry box";

function takeOf(
  trip: Trip,
  draft: Draft,
  helping: Helping,
  where: WhereInside,
  meals: readonly MealMoment[],
): PullCard["take"][number] {
  const { food, cooler, part, parts } = helping;
  const amount = partWords(food.amount, part, parts);
  if (cooler === null) return { item: food.name, amount, cooler: DRY_BOX, from: "" };
  if (draft.ready.has(helping))
    return { item: food.name, amount, cooler: DRY_BOX, from: "taken out at the meal before" };
  const name = trip.coolers[cooler]!.name;
  const taken = [...draft.helpings, ...draft.early].map((one) => one.food);
  const inside = where(food, foodInside(trip, cooler, draft.t_s, meals), taken);
  const later = meals.find(({ t_s }) => t_s === helping.t_s)?.meal ?? "later";
  const from = draft.early.includes(helping)
    ? `${inside}; already for ${later}, so the lid stays shut`
    : inside;
  return { item: food.name, amount, cooler: name, from };
}

/** Food in a cooler that is not eaten up yet. */
function foodInside(trip: Trip, cooler: number, t_s: number, meals: readonly MealMoment[]): TripFood[] {
  return trip.food.filter((food) => {
    const last_s = eatingTimes_s(food, meals).at(-1) ?? trip.duration_s;
    return (food.putIn_s ?? 0) <= t_s && last_s >= t_s && coolerAt(trip, food, t_s) === cooler;
  });
}

/** What is opened and not eaten up goes back at once; leftovers by their time out of the cold. */
function backOf(trip: Trip, draft: Draft): string[] {
  const opened = draft.helpings.filter(
    ({ food, part, parts, cooler }) =>
      cooler !== null && part < parts - 1 && food.like.perishable && food.like.kind !== "drink",
  );
  const back = opened.map(({ food, cooler }) => `${food.name} to ${trip.coolers[cooler!]!.name}`);
  if (!draft.helpings.some(({ food }) => food.like.perishable)) return back;
  const isHot = trip.weather.at(draft.t_s).air_C > hotAir_C;
  const rule = isHot
    ? "Leftovers: only what was out of the cold less than 1 h, since the air is above 90 °F (32 °C); bin the rest"
    : "Leftovers: only what was out of the cold less than 2 h, 1 h in air above 90 °F (32 °C); bin the rest";
  return [...back, rule];
}
