import { medianClosures } from "../cooler/closures.ts";
import type { DrinkAdvice } from "../forecast/planResult.ts";
import type { CoolerResult } from "../forecast/result.ts";
import { valueAt } from "../forecast/series.ts";
import type { Forecast } from "../forecast/types.ts";
import { coolingTime_s } from "../heat/coolingTime.ts";
import { foodEnthalpy_J_per_kg } from "../matter/foodProperties.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { massWords } from "../quantity/show.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { mealMoments } from "./mealTimes.ts";

/** What a drink in ice comes down to in the end. */
const ICED_C = 2;
/** A drink at this temperature is cold to who drinks it: 45 °F. An engineering judgement. */
const COLD_C = (45 - 32) / 1.8;
/** Ice with some of its water; ice alone holds the air around a can somewhat above its melting point. */
const WET_BATH_C = 0.5;
const DRY_BATH_C = 2;
const hour_s = 3600;

/**
 * For every drink in a cooler: what one piece costs in ice if it goes in warm, and how long until it is cold. The price
 * is its heat from outside down to 2 °C over the latent heat of ice; what the cooler itself lets in meanwhile is not in it.
 */
export function drinkAdvice(trip: Trip, forecast: Forecast): DrinkAdvice[] {
  return trip.food.flatMap((food) => {
    const result = food.cooler === null ? undefined : forecast.result.coolers[food.cooler];
    return food.like.kind === "drink" && result !== undefined ? [adviceOn(trip, food, result)] : [];
  });
}

function adviceOn(trip: Trip, food: TripFood, cooler: CoolerResult): DrinkAdvice {
  const outside_C = warmStart_C(food, cooler);
  const eachIce_kg = warmPrice_kg(food, outside_C);
  const time_s = coldTime_s(food, outside_C, cooler);
  // What never comes down to 45 °F in there has the whole trip as its time.
  const cold_h = (time_s ?? trip.duration_s) / hour_s;
  return {
    cooler: cooler.name,
    drink: food.name,
    count: food.pieces,
    eachIce_kg,
    cold_h,
    says: saysOf(trip, food, cooler, eachIce_kg),
  };
}

/** How warm one comes that was not chilled: as stated, else as warm as the air around the cooler is on average. */
function warmStart_C(food: TripFood, { series }: CoolerResult): number {
  if (food.state === "ambient") return food.start_C;
  return Math.max(ICED_C, series.outside_C.reduce((sum, t_C) => sum + t_C, 0) / series.outside_C.length);
}

/** Ice that takes up the heat of one piece from a temperature down to 2 °C; 0 for one that is colder. */
export function warmPrice_kg(food: Pick<TripFood, "like" | "mass_kg" | "pieces">, from_C: number): number {
  const heat_J_per_kg = foodEnthalpy_J_per_kg(food.like, from_C) - foodEnthalpy_J_per_kg(food.like, ICED_C);
  return (Math.max(0, heat_J_per_kg) * food.mass_kg) / food.pieces / iceLatent_J_per_kg;
}

/** Time until the middle of one is cold: among wet ice, or in the water that stands in the cooler by mid-trip. */
function coldTime_s(food: TripFood, from_C: number, { series }: CoolerResult): number | null {
  const { t_h, waterline_m, ice_kg } = series;
  const middle_h = (t_h.at(-1) ?? 0) / 2;
  const isUnder = valueAt(t_h, waterline_m, middle_h) > food.thick_m / 2;
  const hasIce = valueAt(t_h, ice_kg.p50, middle_h) > 0;
  const film_W_per_m2K = isUnder
    ? medianClosures.lotPool_W_per_m2K
    : hasIce
      ? medianClosures.iceContact_W_per_m2K
      : medianClosures.contact_W_per_m2K;
  const bath = { t_C: isUnder ? WET_BATH_C : DRY_BATH_C, film_W_per_m2K };
  const piece = { food: food.like, thick_m: food.thick_m, shape: food.shape };
  return coolingTime_s(piece, from_C, bath, COLD_C);
}

function saysOf(trip: Trip, food: TripFood, cooler: CoolerResult, eachIce_kg: number): string {
  const { pieces } = food;
  const all_kg = eachIce_kg * pieces;
  const price = `all ${pieces} warm at once cost ${massWords(all_kg, "us")} (${massWords(all_kg, "metric")}) of ice`;
  const fit = roomFor(food, cooler);
  const room =
    fit < pieces
      ? `${fit} fit in ${cooler.name} at once as it is packed`
      : `all ${pieces} fit in ${cooler.name} at once`;
  const perDay = perDayOf(trip, food);
  if (pieces === 1)
    return `${food.name}: it costs ${massWords(all_kg, "us")} (${massWords(all_kg, "metric")}) of ice if it goes in warm.`;
  const rotation =
    perDay >= pieces
      ? "they are drunk within a day: chill them before departure"
      : `about ${perDay} a day are drunk: keep ${Math.min(fit, 2 * perDay)} in, the rest in the shade, and put ${perDay} in every evening`;
  return `${food.name}: ${room}; ${price}; ${rotation}.`;
}

/** How many of one drink are in when the cooler is just full; all of them where there is room. */
function roomFor(food: TripFood, { filled_frac }: CoolerResult): number {
  if (filled_frac <= 1 || food.putIn_s !== null) return food.pieces;
  return Math.max(0, Math.floor(food.pieces / filled_frac));
}

function perDayOf(trip: Trip, food: TripFood): number {
  const meals = Math.max(1, mealMoments(trip).length);
  return Math.max(1, Math.ceil((food.pieces / meals) * Math.min(3, meals)));
}
