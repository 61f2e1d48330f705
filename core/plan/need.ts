import type { CoolerResult, FoodResult, Result } from "../forecast/result.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import type { Outcome } from "./leastPieces.ts";
import { eaten_s, emptied_s, foodIn, stopsOf } from "./whereabouts.ts";

const HOUR_s = 3600;

/** What one cooler's ice must do in the middle case. */
export interface Need {
  cooler: string;
  /** Nothing in it calls for ice. */
  none: boolean;
  /** Perishables that must stay under the limit, by name and by the cooler they may be listed under. */
  foods: ReadonlySet<string>;
  under: ReadonlySet<string>;
  /** They must do so until this hour: the return, or the merge that empties the cooler. */
  foodUntil_h: number;
  /** Solid ice must be there from this hour: what it is for is there from the start, is put in, or comes with a merge. */
  iceFrom_h: number;
  /** Solid ice must be left until this hour, as long as it does not freeze outside until then anyway. */
  iceUntil_h: number;
}

/** How far a trial came. */
export interface Judgement {
  outcome: Outcome;
  filled_frac: number;
  /** First perishable above its limit, and end of the ice; the hour needed where that is not reached. */
  food_h: number;
  ice_h: number;
  /** What fails, in words. */
  failing: readonly string[];
  /** Food that freezing spoils, and that would freeze, by its path. */
  freezes: ReadonlySet<string>;
}

/**
 * What the cooler must do by itself. Its ice is needed until the last perishable or drink is gone from it; where there is
 * neither, until the last of what was packed cold is.
 */
export function needOf(trip: Trip, cooler: number, linked: ReadonlySet<number>): Need {
  const inside = foodIn(trip, cooler);
  const cold = inside.filter((food) => food.state !== "dry");
  const perishable = inside.filter((food) => food.like.perishable);
  const wanted = [...perishable, ...cold.filter((food) => food.like.kind === "drink")];
  const end_s = emptied_s(trip, cooler);
  const iced = wanted.length > 0 ? wanted : cold;
  const last_s = Math.max(0, ...iced.map((food) => eaten_s(food, trip)));
  const first_s = Math.min(...iced.map((food) => comes_s(trip, food, cooler)));
  return {
    cooler: trip.coolers[cooler]!.name,
    none: cold.length === 0 && perishable.length === 0,
    foods: new Set(perishable.map((food) => food.name)),
    under: new Set([...linked].map((i) => trip.coolers[i]!.name)),
    foodUntil_h: end_s / HOUR_s,
    iceFrom_h: iced.length === 0 ? 0 : first_s / HOUR_s,
    iceUntil_h: Math.min(end_s, last_s) / HOUR_s,
  };
}

/** When a food of a cooler is there for the first time. */
function comes_s(trip: Trip, food: TripFood, cooler: number): number {
  return stopsOf(trip, food).find((stop) => stop.cooler === cooler)!.from_s;
}

/**
 * Reads a forecast against a need, in the middle case. A verdict for another cause than warmth (a wet package) is not
 * a matter of how much ice, and is not read here.
 */
export function judge(result: Result, need: Need): Judgement {
  const cooler = result.coolers.find(({ name }) => name === need.cooler)!;
  const foods = result.food.filter((food) => need.foods.has(food.name) && need.under.has(food.cooler));
  const warm = foods.filter((food) => isWarm(food, need.foodUntil_h));
  const until_h = iceUntil_h(cooler, need);
  const ice_h = Math.min(firstWithout_h(cooler, need.iceFrom_h) ?? until_h, until_h);
  const noIce = !need.none && ice_h < until_h - 1e-6;
  const over = cooler.filled_frac > 1 + 1e-9;
  const failing = [
    ...(over ? [`${cooler.name} would be ${Math.ceil(cooler.filled_frac * 100)} % full`] : []),
    ...warm.map((food) => `${food.name} is above the limit ${sinceWords(food)}`),
    ...(noIce
      ? [
          `the ice in ${cooler.name} ends at hour ${Math.floor(ice_h)}, needed until hour ${Math.round(until_h)}`,
        ]
      : []),
  ];
  return {
    outcome: over ? "over" : warm.length > 0 || noIce ? "short" : "holds",
    filled_frac: cooler.filled_frac,
    // Warm time from before packing is no ice's fault: such food counts as held, or less ice would look better.
    food_h: Math.min(need.foodUntil_h, ...warm.map((food) => food.overLimit_h.p50 ?? need.foodUntil_h)),
    ice_h,
    failing,
    freezes: new Set(result.warnings.flatMap(({ code, path }) => (code === "freezes" ? [path] : []))),
  };
}

/** The need for ice ends with the last hour that it is not freezing around the cooler; from then on, the food alone tells. */
function iceUntil_h({ series: { t_h, outside_C } }: CoolerResult, need: Need): number {
  const mild = t_h.findLastIndex(
    (t, i) =>
      i > 0 && t_h[i - 1]! < need.iceUntil_h && Math.max(outside_C[i - 1]!, outside_C[i]!) > 0 && t > 0,
  );
  return mild === -1 ? 0 : Math.min(need.iceUntil_h, t_h[mild]!);
}

/**
 * When there is no solid ice for the first time since it was wanted: ice that comes later does not undo the hours without.
 * null: never. An hour or less is no gap, as in the result.
 */
function firstWithout_h({ iceOut_h, iceGaps_h }: CoolerResult, from_h: number): number | null {
  const gap = iceGaps_h.find(([start_h, end_h]) => end_h - Math.max(start_h, from_h) > 1);
  return gap === undefined ? iceOut_h.p50 : Math.max(gap[0], from_h);
}

function isWarm(food: FoodResult, until_h: number): boolean {
  const over_h = food.overLimit_h.p50;
  if (over_h !== null) return over_h < until_h - 1e-6;
  return food.warmAllowed_h !== null && (food.warm_h.p50 ?? 0) > food.warmAllowed_h;
}

function sinceWords(food: FoodResult): string {
  const over_h = food.overLimit_h.p50;
  return over_h === null
    ? `for ${(food.warm_h.p50 ?? 0).toFixed(1)} h in all`
    : `from hour ${Math.floor(over_h)}`;
}

/**
 * What in a result fails the person who asked: perishables that pass their limit before they are eaten, with members in
 * more of them than the trip's confidence allows, or that are to be discarded, coolers that do not fit, and dry ice where people breathe. Empty where
 * nothing does. Ice that ends while the food stays cold is not among them.
 */
export function failuresOf(result: Result): string[] {
  const most_frac = result.ensemble === undefined ? 0 : 1 - result.ensemble.confidence_frac;
  const risk_frac = ({ overLimit_frac, overLimit_h }: FoodResult): number =>
    overLimit_frac ?? (overLimit_h.p50 === null ? 0 : 1);
  const warm = result.food.filter((food) => food.perishable && risk_frac(food) > most_frac + 1e-9);
  const bad = result.food.filter((food) => food.verdict === "discard" && !warm.includes(food));
  const full = result.coolers.filter((cooler) => cooler.filled_frac > 1 + 1e-9);
  const airless = [...new Set(result.warnings.filter(isUnresolved).map(({ says }) => says.split(":")[0]!))];
  return [
    ...warm.map((food) => `${food.name} passes the limit before it is eaten`),
    ...bad.map((food) => `${food.name}: ${food.why}`),
    ...full.map((cooler) => `${cooler.name} is ${Math.ceil(cooler.filled_frac * 100)} % full`),
    ...airless.map((name) => `${name}: dry ice in a closed place whose air nobody has answered for`),
  ];
}

/** A warning that a person must resolve before the trip: dry ice where people breathe. */
const isUnresolved = ({ code }: Result["warnings"][number]): boolean => code === "dry-ice-air";
