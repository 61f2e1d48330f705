import type { Band, FoodResult } from "../forecast/result.ts";
import { valueAt } from "../forecast/series.ts";
import type { Forecast } from "../forecast/types.ts";
import { centreTime_s } from "../heat/conduction.ts";
import { foodBody } from "../heat/coolingTime.ts";
import type { Food } from "../matter/food.ts";
import type { Spread } from "../matter/spread.ts";
import type { Trip, TripFood } from "../trip/types.ts";

/** When a frozen item must leave the ice so that it is thawed by its meal. */
export interface ThawMove {
  item: string;
  /** Id of the food. */
  id: string;
  /** The meal, or the first of its meals. */
  for_s: number;
  takes_h: Band;
  /** Latest moment to move it, by the slow end; negative: before departure. null: nothing to move. */
  moveAt_s: number | null;
  from: string;
  to: string;
  says: string;
}

/** Still, humid air of a cooler or a refrigerator at a wrapped piece, in W/m²K. Engineering judgement. */
const thawFilm_W_per_m2K: Spread = { p10: 4.5, p50: 7, p90: 10 };

/** Air of a refrigerator. */
export const fridge_C = 4;
/** Nothing thaws in air that is not this much above its freezing point. */
const LEAST_K = 0.5;
const hour_s = 3600;
const day_s = 86_400;

/** The first moment at which it is eaten; 0 for what is eaten throughout. */
export const firstEaten_s = (food: TripFood): number => food.parts_s?.[0] ?? food.eat_s ?? 0;

/** Frozen goods that are eaten frozen, or go into the pot as they are. */
export const staysFrozen = (food: TripFood): boolean => food.like.kind === "frozen";

const known = new WeakMap<Food, Map<string, Band>>();
const tenth = (t_C: number): number => Math.round(10 * t_C) / 10;

/**
 * Time in which an item thaws through in still air, by how air gets at it; nulls where it does not. Temperatures count to
 * a tenth of a degree.
 *
 * @param from_C of the frozen item
 * @param air_C −20…60
 */
export function thawTime(food: TripFood, from_C: number, air_C: number): Band {
  const { like, shape, thick_m } = food;
  const key = [shape, thick_m, tenth(from_C), tenth(air_C)].join(" ");
  const bands = known.get(like) ?? new Map<string, Band>();
  known.set(like, bands);
  const band = bands.get(key) ?? thawBand(food, tenth(from_C), tenth(air_C));
  bands.set(key, band);
  return band;
}

function thawBand(food: TripFood, from_C: number, air_C: number): Band {
  const freezes_C = food.like.freezes_C;
  if (freezes_C === null) return { p10: 0, p50: 0, p90: 0 };
  if (air_C < freezes_C + LEAST_K) return { p10: null, p50: null, p90: null };
  const body = foodBody(food.like, food.thick_m, food.shape);
  const at = (film_W_per_m2K: number): number | null => {
    const time_s = centreTime_s(body, Math.min(from_C, air_C), { t_C: air_C, film_W_per_m2K }, freezes_C);
    return time_s === null ? null : time_s / hour_s;
  };
  return {
    p10: at(thawFilm_W_per_m2K.p90),
    p50: at(thawFilm_W_per_m2K.p50),
    p90: at(thawFilm_W_per_m2K.p10),
  };
}

interface Place {
  name: string;
  air_C: number;
}

/** Mean and warmest air of a cooler in the hours before a meal, middle case. */
function airBefore(forecast: Forecast, cooler: number, from_h: number, to_h: number): [number, number] {
  const { t_h, air_C } = forecast.result.coolers[cooler]!.series;
  const steps = 24;
  let [sum, most] = [0, Number.NEGATIVE_INFINITY];
  for (let i = 0; i <= steps; i++) {
    const at = valueAt(t_h, air_C.p50, from_h + ((to_h - from_h) * i) / steps);
    sum += at;
    most = Math.max(most, at);
  }
  return [sum / (steps + 1), most];
}

/** The warmest place that is still within the limit, its own cooler's top or another one for food. */
function warmestPlace(trip: Trip, forecast: Forecast, food: TripFood): Place | null {
  const to_s = firstEaten_s(food);
  const from_s = Math.max(0, to_s - day_s);
  let best: (Place & { cooler: number }) | null = null;
  trip.coolers.forEach((cooler, i) => {
    const own = i === food.cooler;
    if (!own && (cooler.holds === "drinks" || (cooler.sealedUntil_s ?? 0) > from_s)) return;
    const [air_C, most_C] = airBefore(forecast, i, from_s / hour_s, to_s / hour_s);
    if (most_C > trip.limit.limit_C || air_C <= (best?.air_C ?? Number.NEGATIVE_INFINITY)) return;
    best = { name: own ? `top of ${cooler.name}, off the ice` : `top of ${cooler.name}`, air_C, cooler: i };
  });
  return best;
}

/** How cold its coldest point is then; as it went in where no run was kept. */
function coldAt_C(forecast: Forecast, food: TripFood, t_s: number): number {
  const { fleet } = forecast;
  const track = fleet?.lotTracks[fleet.lots.findIndex((lot) => lot.id === food.id)];
  if (track === undefined || track.t_s.length === 0) return food.start_C;
  return valueAt(track.t_s, track.cold_C, Math.max(0, t_s));
}

function moveFor(trip: Trip, forecast: Forecast, food: TripFood, place: Place): ThawMove {
  const for_s = firstEaten_s(food);
  let takes_h = thawTime(food, food.start_C, place.air_C);
  if (takes_h.p90 !== null && for_s > takes_h.p90 * hour_s)
    takes_h = thawTime(food, coldAt_C(forecast, food, for_s - takes_h.p90 * hour_s), place.air_C);
  const from = trip.coolers[food.cooler!]!.name;
  const base: Omit<ThawMove, "moveAt_s" | "to" | "says"> = {
    item: food.name,
    id: food.id,
    for_s,
    takes_h,
    from,
  };
  if (takes_h.p90 === null) return { ...base, moveAt_s: null, to: "the pot", says: fromFrozen(food) };
  if (takes_h.p90 * hour_s > for_s) return tooSlow(food, base, place);
  return {
    ...base,
    moveAt_s: for_s - takes_h.p90 * hour_s,
    to: place.name,
    says: `${food.name}: to the ${place.name}, ${hoursWords(takes_h)} before its meal`,
  };
}

/** Not thawed for sure in the cooler by its meal, even from the start. */
function tooSlow(food: TripFood, base: Omit<ThawMove, "moveAt_s" | "to" | "says">, place: Place): ThawMove {
  const { for_s, takes_h } = base;
  if (takes_h.p50 !== null && takes_h.p50 * hour_s <= for_s) {
    const says = `${food.name}: to the ${place.name} from the start; it takes ${hoursWords(takes_h)} and may still be icy inside, so heat it through`;
    return { ...base, moveAt_s: 0, to: place.name, says };
  }
  const fridge_h = thawTime(food, food.start_C, fridge_C).p90;
  if (fridge_h !== null && fridge_h * hour_s > for_s) return beforehand(food, base);
  return { ...base, moveAt_s: null, to: "the pot", says: fromFrozen(food) };
}

/** It must begin to thaw at home, in the refrigerator. */
function beforehand(food: TripFood, base: Omit<ThawMove, "moveAt_s" | "to" | "says">): ThawMove {
  const takes_h = thawTime(food, food.start_C, fridge_C);
  if (takes_h.p90 === null)
    return { ...base, takes_h, moveAt_s: null, to: "the pot", says: fromFrozen(food) };
  return {
    ...base,
    takes_h,
    moveAt_s: Math.min(-1, base.for_s - takes_h.p90 * hour_s),
    from: "freezer",
    to: "refrigerator",
    says: `${food.name}: from the freezer to the refrigerator ${hoursWords(takes_h)} before its meal; the trip is too short for it to thaw on the way`,
  };
}

const fromFrozen = (food: TripFood): string =>
  `${food.name} does not thaw in the cold by its meal: cook it from frozen, or in its bag under running water of at most 21 °C (70 °F)`;

function hoursWords({ p10, p90 }: Band): string {
  return `${Math.round(p10 ?? 0)} to ${Math.round(p90 ?? 0)} h`;
}

/** Thawed in its place anyway, in time even where it goes slowly. */
function byItself(food: TripFood, result: FoodResult, from: string): ThawMove | null {
  const for_s = firstEaten_s(food);
  const late_h = result.thawed_h.p90;
  if (late_h === null || late_h * hour_s > for_s) return null;
  const says = `${food.name} thaws in ${from} by itself, about hour ${Math.round(result.thawed_h.p50 ?? late_h)} of the trip: nothing to move`;
  return {
    item: food.name,
    id: food.id,
    for_s,
    takes_h: result.thawed_h,
    moveAt_s: null,
    from,
    to: from,
    says,
  };
}

/**
 * For every frozen item that is not eaten or cooked frozen: whether the cooler thaws it in time, else when it must go to
 * a warmer place that is still within the limit, counted back from its meal by the slow end. In the order of meals.
 *
 * Limits: still air at the mean of the day before the meal; thickness and shape as stated; a place that is full of cold
 * food is slower.
 *
 * @param forecast of this trip
 * @source cleland-1986
 */
export function thawPlan(trip: Trip, forecast: Forecast): ThawMove[] {
  const frozen = trip.food.filter(
    (food) => food.state === "frozen" && food.cooler !== null && food.eat_s !== null && !staysFrozen(food),
  );
  const moves = frozen.map((food): ThawMove => {
    const from = trip.coolers[food.cooler!]!.name;
    const result = forecast.result.food.find(({ name, cooler }) => name === food.name && cooler === from);
    const free = result === undefined ? null : byItself(food, result, from);
    if (free !== null) return free;
    const place = warmestPlace(trip, forecast, food) ?? { name: `top of ${from}, off the ice`, air_C: 0 };
    return moveFor(trip, forecast, food, place);
  });
  return moves.sort((a, b) => a.for_s - b.for_s || (a.id < b.id ? -1 : 1));
}
