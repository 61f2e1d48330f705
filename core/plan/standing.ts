import type { Fleet } from "../cooler/fleetState.ts";
import { factsAt, foodBands } from "../ensemble/foodBands.ts";
import type { Draws } from "../ensemble/types.ts";
import { companyOf, rulingOn, trackOf } from "../forecast/foodResult.ts";
import { forecast } from "../forecast/forecast.ts";
import type { FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { linkedCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { judge, needOf } from "./need.ts";

/** When each perishable that lies in a cooler passes its limit, by member. */
export function watchedOver_h(trip: Trip, draws: Draws): Float64Array[] {
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  return inCoolers.flatMap((item, i) => (item.like.perishable ? [draws.food[i]!.overLimit_h] : []));
}

/** Members in which a perishable may pass its limit. */
export const allowedCount = (trip: Trip, members: number): number =>
  Math.floor((1 - trip.confidence_frac) * members + 1e-9);

/** Food that is lost, with its cooler. */
export interface Lost {
  food: FoodResult;
  item: TripFood;
  cooler: number;
}

/** How far a trip with its ice is from what was asked of it. */
export interface Standing {
  /** Members in which every perishable keeps its limit. */
  heldCount: number;
  /** Members in which a perishable passes its limit, beyond what the confidence allows. */
  excessCount: number;
  /** When the first perishable likely passes its limit; the return where none does. */
  likelyOver_h: number;
  /** Food to be discarded at the confidence that would not be if it stayed cold and frozen. */
  lost: Lost[];
  /** Food to be discarded at the confidence for the water that it lies in: no matter of how much ice. */
  wet: Lost[];
  /** Coolers that do not do in the middle case what they must. */
  short: ReadonlySet<number>;
  /** Coolers that any of this concerns. */
  weak: ReadonlySet<number>;
}

/** Food that more cold does not mend: too many days, a package that was refused before. */
function isLostAnyway(trip: Trip, item: TripFood): boolean {
  const unknown = item.warmBefore_s > 0 ? null : 0;
  const best = {
    below_s: 0,
    over_s: null,
    warm_s: item.warmBefore_s,
    hotAir_s: unknown,
    over10C_s: unknown,
    coreMax_C: trip.limit.limit_C,
    coreMin_C: Math.min(item.start_C, trip.limit.limit_C),
    thawed_s: null,
    wet_s: null,
  };
  const apart = { raw: false, refrozen: false };
  return rulingOn(trip, item, best, item.eat_s ?? trip.duration_s, apart).verdict === "discard";
}

/** Food in coolers that is to be discarded at the confidence, by whether cold or water is to blame. */
function lostOf(trip: Trip, fleet: Fleet, draws: Draws): Pick<Standing, "lost" | "wet"> {
  const lost: Lost[] = [];
  const wet: Lost[] = [];
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  foodBands(trip, fleet, draws).forEach((food, i) => {
    const item = trip.food[i]!;
    if (item.cooler === null || food.verdict !== "discard") return;
    const track = trackOf(fleet, item.id)!;
    const facts = factsAt(draws.food[inCoolers.indexOf(item)]!, trip.confidence_frac);
    const end_s = track.left_s ?? trip.duration_s;
    const dry = rulingOn(trip, item, { ...facts, wet_s: null }, end_s, companyOf(trip, fleet, item, track));
    const one = { food, item, cooler: item.cooler };
    if (dry.verdict !== "discard") wet.push(one);
    else if (!isLostAnyway(trip, item)) lost.push(one);
  });
  return { lost, wet };
}

/** Coolers with a perishable that passes its limit in some member. */
function failingIn(trip: Trip, draws: Draws): ReadonlySet<number> {
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  const failing = inCoolers.filter(
    (item, i) => item.like.perishable && draws.food[i]!.overLimit_h.some((over_h) => !Number.isNaN(over_h)),
  );
  return new Set(failing.map(({ cooler }) => cooler!));
}

/** When the first perishable passes its limit, by member; Infinity: never. */
function firstOver_h(trip: Trip, draws: Draws): number[] {
  const foods = watchedOver_h(trip, draws);
  const first = (at: number): number =>
    Math.min(Infinity, ...foods.map((over_h) => over_h[at]!).filter((hour) => !Number.isNaN(hour)));
  return Array.from({ length: draws.to - draws.from }, (_, at) => first(at));
}

/**
 * Reads members and middle case of a trip against what was asked: the limit of all perishables together, the verdict on
 * each item by itself, and what every cooler must do in the middle case.
 *
 * @param trip with its ice
 * @param middle its middle case, if that was run already
 */
export function standingOf(
  trip: Trip,
  draws: Draws,
  middle: Forecast = forecast(trip, { effects: false }),
): Standing {
  const members = draws.to - draws.from;
  const overs_h = firstOver_h(trip, draws).sort((a, b) => a - b);
  const over = overs_h.filter((hour) => hour < Infinity).length;
  const excessCount = Math.max(0, over - allowedCount(trip, members));
  const { lost, wet } = lostOf(trip, middle.fleet!, draws);
  const coolers = trip.coolers.map((_, i) => i);
  const short = coolers.filter((i) => {
    const need = needOf(trip, i, linkedCoolers(trip, i));
    return !need.none && judge(middle.result, need).outcome !== "holds";
  });
  const concerned = new Set([
    ...short,
    ...[...lost, ...wet].map(({ cooler }) => cooler),
    ...(excessCount > 0 ? failingIn(trip, draws) : []),
  ]);
  const isWeak = (i: number): boolean => [...linkedCoolers(trip, i)].some((other) => concerned.has(other));
  return {
    heldCount: members - over,
    excessCount,
    likelyOver_h: Math.min(overs_h[members >> 1] ?? Infinity, trip.duration_s / 3600),
    lost,
    wet,
    short: new Set(short),
    weak: new Set(coolers.filter(isWeak)),
  };
}

export const isSure = ({ excessCount, lost, short }: Standing): boolean =>
  excessCount === 0 && lost.length === 0 && short.size === 0;

/** Whether one stands nearer to what was asked: first the limit, then the verdicts, then the ice. */
export function isNearer(one: Standing, other: Standing): boolean {
  const by = one.excessCount - other.excessCount || one.lost.length - other.lost.length;
  return (by || one.short.size - other.short.size) < 0;
}
