import type { ItemState } from "../forecast/planResult.ts";
import type { Warning } from "../forecast/result.ts";
import { foodEnthalpy_J_per_kg } from "../matter/foodProperties.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { chartRowsOf } from "../safety/chartRows.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { foodRoom_m3, freezerSpace_m3, isFrozenAtHome } from "./freezerRoom.ts";
import { dayStart_s } from "./moment.ts";
import { firstEaten_s, fridge_C, thawTime } from "./thaw.ts";

type State = TripFood["state"];

interface Decision {
  state: State;
  why: string;
  pinned: boolean;
}

/** Food carried from a freezer to the cooler has lost a little; what a file without a temperature is read as. */
const FROZEN_C = -16;
const ROOM_C = 25;
const day_s = 86_400;
const hour_s = 3600;
/** Cooked dishes and the like keep no longer than this at the strict end of the charts. */
const SHORT_DAYS = 4;

/** Decided states in a new trip; the old one is not changed. */
export interface DecidedStates {
  trip: Trip;
  states: ItemState[];
  warnings: Warning[];
}

/** The warmer of the freezer's own temperature and the usual one. */
const frozenStart_C = (trip: Trip): number => Math.max(FROZEN_C, trip.freezer?.at_C ?? FROZEN_C);

/** Days at the strict end of the public chart; where it has no row, the first number of what is usual; null: shelf goods. */
function strict_days({ like }: TripFood): number | null {
  const row = chartRowsOf(like.key).days;
  if (row !== null) return row.strict_days;
  if (!like.perishable || /ambient|cut/.test(like.days)) return null;
  const first = /^\d+/.exec(like.days)?.[0];
  return first === undefined ? null : Number(first);
}

/** Ice that does as much as freezing this item beforehand does, against taking it chilled. */
function frozenAsIce_kg(food: TripFood, frozen_C: number): number {
  const h = (t_C: number): number => foodEnthalpy_J_per_kg(food.like, t_C);
  return (food.mass_kg * (h(fridge_C) - h(frozen_C))) / iceLatent_J_per_kg;
}

/** Day of the trip, 1 is that of departure. */
const dayOf = (trip: Trip, t_s: number): number =>
  Math.round((dayStart_s(trip, t_s) - dayStart_s(trip, 0)) / day_s) + 1;

const wasTyped = (trip: Trip, path: string): boolean => !trip.assumed.some((one) => one.path === path);

/** What needs no thought about freezing: written, sold frozen, a drink, or at home on a shelf. */
function plainDecision(trip: Trip, food: TripFood): Decision | null {
  const { like, state } = food;
  if (!food.open.state) return { state, why: "as written", pinned: true };
  if (wasTyped(trip, `${food.path}.at`) && state !== "dry")
    return { state, why: "its written temperature says so", pinned: true };
  if (food.putIn_s !== null) return { state, why: "it comes aboard on the way", pinned: false };
  if (state === "dry") return { state, why: "it is in the dry box", pinned: true };
  if (state === "frozen") return { state, why: "sold frozen", pinned: false };
  if (like.kind === "drink") return drinkDecision(food);
  if (!like.perishable && like.usualState === "ambient") {
    const boxed = food.cooler === null;
    const why = boxed ? "needs no cold: dry box" : "needs no cold, but its cooler is written";
    return { state: boxed ? "dry" : "ambient", why, pinned: false };
  }
  return null;
}

function drinkDecision(food: TripFood): Decision {
  const h = (t_C: number): number => foodEnthalpy_J_per_kg(food.like, t_C);
  const saved_kg = (food.mass_kg * (h(ROOM_C) - h(fridge_C))) / iceLatent_J_per_kg;
  const why = `a drink: cold from home it saves ${amount(saved_kg)} of ice; cans and bottles burst when they freeze`;
  return { state: "chilled", why, pinned: false };
}

/** "2.1 kg (4.6 lb)". */
function amount(mass_kg: number): string {
  return `${mass_kg.toFixed(1)} kg (${(mass_kg / 0.45359237).toFixed(1)} lb)`;
}

interface Wish {
  food: TripFood;
  why: string;
  /** It would not keep chilled. */
  must: boolean;
}

const chilled = (why: string): Decision => ({ state: "chilled", why, pinned: false });

/** Whether an item that is free to be frozen should be, if the freezer has room. */
function freezeWish(trip: Trip, food: TripFood): Wish | Decision {
  const { like } = food;
  if (food.freezesBadly) return chilled("freezing spoils it");
  if (like.kind === "produce") return chilled("fresh: freezing makes it limp");
  const first_s = firstEaten_s(food);
  if (food.eat_s === null) return chilled("eaten throughout: it is needed soft from the first day");
  if (like.freezes_C === null || like.freezes_C < frozenStart_C(trip) + 2)
    return chilled("it does not freeze hard in a home freezer");
  const first = dayOf(trip, first_s);
  const last = dayOf(trip, food.eat_s);
  const days = strict_days(food);
  const used_days = food.daysCold ?? 1;
  const must = days !== null && used_days + food.eat_s / day_s > days;
  const reason = must
    ? `chilled it keeps ${daysWords(days)} by the strict end of the charts, and it is eaten until day ${last}`
    : food.raw
      ? `raw, and eaten from day ${first} on`
      : `chilled it keeps only ${daysWords(days ?? 0)}`;
  if (first <= 1)
    return chilled(
      last > 1 && must ? `eaten from the first day on, though ${reason}` : "eaten on the first day",
    );
  if (!must && !food.raw && (days === null || days > SHORT_DAYS))
    return chilled(days === null ? "it keeps" : `chilled it keeps ${daysWords(days)}`);
  const takes_h = thawTime(food, frozenStart_C(trip), fridge_C).p90;
  if (!must && (takes_h === null || takes_h * hour_s > first_s))
    return chilled(`frozen it would not be thawed by day ${first}: ${thawWords(takes_h)}`);
  return { food, why: reason, must };
}

const thawWords = (takes_h: number | null): string =>
  takes_h === null ? "it does not thaw in the cold" : `thawing takes up to ${Math.round(takes_h)} h`;

const daysWords = (days: number): string => (days === 1 ? "1 day" : `${days} days`);

const isWish = (one: Wish | Decision): one is Wish => "must" in one;

/** First what would not keep chilled, then what is eaten last, then what is worth most ice. */
function byNeed(frozen_C: number): (a: Wish, b: Wish) => number {
  return (a, b) =>
    Number(b.must) - Number(a.must) ||
    b.food.eat_s! - a.food.eat_s! ||
    frozenAsIce_kg(b.food, frozen_C) - frozenAsIce_kg(a.food, frozen_C) ||
    (a.food.id < b.food.id ? -1 : 1);
}

/** Room in the freezer that food written as frozen takes. */
function writtenFrozen_m3(trip: Trip): number {
  return trip.food.filter(isFrozenAtHome).reduce((sum, food) => sum + foodRoom_m3(food), 0);
}

function decideWishes(trip: Trip, wishes: readonly Wish[], warnings: Warning[]): Map<string, Decision> {
  const frozen_C = frozenStart_C(trip);
  let left_m3 = freezerSpace_m3(trip) - writtenFrozen_m3(trip);
  const made = new Map<string, Decision>();
  for (const { food, why, must } of [...wishes].sort(byNeed(frozen_C))) {
    const room_m3 = foodRoom_m3(food);
    if (room_m3 <= left_m3 + 1e-9) {
      left_m3 -= room_m3;
      const worth = `frozen it does the work of ${amount(frozenAsIce_kg(food, frozen_C))} of ice`;
      made.set(food.id, { state: "frozen", why: `${why}; ${worth}`, pinned: false });
      continue;
    }
    made.set(food.id, chilled(`the freezer has no room left for it, though ${why}`));
    if (must) {
      const says = `${food.name} should be frozen: ${why}. The freezer has no room left for it; buy it on the way, eat it earlier, or find room`;
      warnings.push({ code: "freezer-food", says, path: food.path });
    }
  }
  return made;
}

const starts: Readonly<Record<State, readonly [usual: string, range: readonly [string, string] | null]>> = {
  frozen: ["-16 C", ["-20 C", "-12 C"]],
  chilled: ["4 C", ["2 C", "7 C"]],
  ambient: ["25 C", ["18 C", "32 C"]],
  dry: ["25 C", null],
};

function decided(food: TripFood, { state, pinned }: Decision, frozen_C: number): TripFood {
  const open = { place: food.open.place && state !== "dry", state: false };
  if (pinned || state === food.state) return { ...food, open };
  const start_C = state === "frozen" ? frozen_C : state === "chilled" ? fridge_C : ROOM_C;
  return { ...food, state, start_C, open };
}

/** The list of what is assumed, with the starts that go with the states decided; a decided state is not assumed. */
function assumedAfter(trip: Trip, after: readonly TripFood[]): Trip["assumed"] {
  const before = new Map(trip.food.map((food) => [food.path, food.state]));
  const changed = new Map(
    after.filter(({ path, state }) => before.get(path) !== state).map((food) => [`${food.path}.at`, food]),
  );
  const states = new Set(trip.food.filter(({ open }) => open.state).map(({ path }) => `${path}.state`));
  return trip.assumed
    .filter(({ path }) => !states.has(path))
    .map((one) => {
      const food = changed.get(one.path);
      if (food === undefined) return one;
      const [usual, range] = starts[food.state];
      const value = food.state === "frozen" ? `${food.start_C} C` : usual;
      return { ...one, value, why: `not given: ${food.state} by the plan`, range };
    });
}

/**
 * Decides what is frozen, chilled or in the dry box wherever the file leaves it open. Frozen is what would not keep
 * chilled until it is eaten (strict end of the public charts, one day before departure where the file is silent), raw food
 * from the second day on, and dishes that keep only a few days, each only where it is thawed by its meal and freezing does
 * not spoil it, and as far as the freezer has room; food frozen counts as ice. What the file says stays.
 *
 * No freezer in the file: no bound is known, and none is set. A food that must be frozen and has no room is warned of.
 */
export function decideStates(trip: Trip): DecidedStates {
  const warnings: Warning[] = [];
  const wishes: Wish[] = [];
  const decisions = new Map<string, Decision>();
  for (const food of trip.food) {
    const decision = plainDecision(trip, food) ?? freezeWish(trip, food);
    if (isWish(decision)) wishes.push(decision);
    else decisions.set(food.id, decision);
  }
  for (const [id, decision] of decideWishes(trip, wishes, warnings)) decisions.set(id, decision);
  const frozen_C = frozenStart_C(trip);
  const food = trip.food.map((one) => decided(one, decisions.get(one.id)!, frozen_C));
  const states = food.map(({ id, name }) => {
    const { state, why, pinned } = decisions.get(id)!;
    return { item: name, state, why, pinned };
  });
  return { trip: { ...trip, food, assumed: assumedAfter(trip, food) }, states, warnings };
}
