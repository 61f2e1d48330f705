import { medianClosures } from "../../cooler/closures.ts";
import { forecast } from "../../forecast/forecast.ts";
import type { Warning } from "../../forecast/result.ts";
import { foodDensity_kg_per_m3 } from "../../matter/foodProperties.ts";
import { massWords } from "../../quantity/show.ts";
import { onlyCoolers } from "../../trip/oneCooler.ts";
import type { Trip, TripFood, TripIce } from "../../trip/types.ts";
import type { Lay } from "../lay.ts";
import { dayAt } from "../moment.ts";
import { reserveLots } from "./placed.ts";
import { firm_L_per_kg, loose_L_per_kg } from "./task.ts";

const hour_s = 3600;
const day_s = 24 * hour_s;
/** Days of drinks that are tried to be in at once. */
const daysTried = [1, 2] as const;
/** Ice that ends in the last part of the trip is no matter for it, and less gained than this is not worth the work. */
const late_frac = 0.9;
const worth_h = 12;

/** How a cooler for drinks goes with a part of them in it at a time. */
interface InTurn {
  days: number;
  ice_kg: number;
  end_s: number;
}

/** What is for drinking all through the trip, in a cooler that has nothing else in it. */
function drinksOf(trip: Trip, cooler: number): TripFood[] | null {
  const inside = trip.food.filter((item) => item.cooler === cooler && item.putIn_s === null);
  const isDrink = inside.every(({ like, eat_s }) => like.kind === "drink" && eat_s === null);
  return inside.length > 0 && isDrink ? inside : null;
}

/** A share of a drink. */
const shareOf = (item: TripFood, share: number): TripFood => ({
  ...item,
  mass_kg: item.mass_kg * share,
  pieces: Math.max(1, Math.round(item.pieces * share)),
});

/** The drinks of some days aboard, and in every evening a day's more from the shade, as warm as the day's mean air. */
function dealtByDay(trip: Trip, drinks: readonly TripFood[], days: number): TripFood[] {
  const all = Math.max(1, Math.ceil(trip.duration_s / day_s));
  const evening_s = trip.meals.dinner_s - trip.departClock_s;
  return drinks.flatMap((item) => {
    const aboard = { ...shareOf(item, days / all), eat_s: Math.min(trip.duration_s, days * day_s) };
    const later = Array.from({ length: Math.max(0, all - days) }, (_, k): TripFood | null => {
      const putIn_s = evening_s + (evening_s <= 0 ? day_s : 0) + k * day_s;
      if (putIn_s >= trip.duration_s) return null;
      const start_C = Math.max(item.start_C, trip.weather.dayMean_C(putIn_s));
      const eat_s = Math.min(trip.duration_s, putIn_s + days * day_s);
      return { ...shareOf(item, 1 / all), id: `${item.id} ${k}`, putIn_s, start_C, eat_s };
    }).filter((one) => one !== null);
    return [aboard, ...later];
  });
}

/** Ice that fills what the drinks leave: what keeps its shape where it can be had. */
function fillingIce(trip: Trip, cooler: number, food: readonly TripFood[], lay: Lay): TripIce[] {
  const aboard = food.filter(({ putIn_s }) => putIn_s === null);
  const solid_m3 = aboard.reduce(
    (all_m3, { mass_kg, like }) => all_m3 + mass_kg / foodDensity_kg_per_m3(like, 5),
    0,
  );
  const left_L = 1000 * (trip.coolers[cooler]!.volume_m3 - solid_m3 / medianClosures.foodPacking_frac);
  const firm = reserveLots(trip, cooler, false, left_L / firm_L_per_kg, lay);
  return firm.length > 0 ? firm : reserveLots(trip, cooler, true, left_L / loose_L_per_kg, lay);
}

function tried(trip: Trip, cooler: number, drinks: readonly TripFood[], days: number): InTurn | null {
  const food = dealtByDay(trip, drinks, days);
  let best: InTurn | null = null;
  for (const lay of ["usual", "top"] as const) {
    const ice = fillingIce(trip, cooler, food, lay);
    const ice_kg = ice.reduce((all_kg, { mass_kg }) => all_kg + mass_kg, 0);
    const trial = onlyCoolers({ ...trip, food, ice }, new Set([cooler]));
    const { iceOut_h } = forecast(trial, { effects: false }).result.coolers[0]!;
    const end_s = iceOut_h.p50 === null ? trip.duration_s : iceOut_h.p50 * hour_s;
    if (best === null || end_s > best.end_s) best = { days, ice_kg, end_s };
  }
  return best;
}

/**
 * What a cooler for drinks could do that has no room for ice to the end beside all of them: with the drinks of a day or two
 * in it and the rest in the shade, there is room for more, and each evening's cost to be chilled. Run in the middle case,
 * with what the plan has aboard now beside it. It is told, not planned: how many are in at once is for people to keep to,
 * and the file says it with two entries, one of them in the dry box.
 *
 * @param placed with everything in its place
 * @param iceEnd_s by cooler, in the trial of the assignment
 */
export function inTurnWarnings(placed: Trip, iceEnd_s: readonly (number | null)[]): Warning[] {
  return placed.coolers.flatMap(({ name }, cooler): Warning[] => {
    const now_s = iceEnd_s[cooler] ?? placed.duration_s;
    const drinks = drinksOf(placed, cooler);
    if (drinks === null || now_s > late_frac * placed.duration_s) return [];
    const ways = daysTried.flatMap((days) => tried(placed, cooler, drinks, days) ?? []);
    const [best] = ways.sort((a, b) => b.end_s - a.end_s);
    if (best === undefined || best.end_s < now_s + worth_h * hour_s) return [];
    return [{ code: "drinks-in-turn", says: saysOf(placed, name, now_s, best), path: `coolers[${cooler}]` }];
  });
}

function saysOf(trip: Trip, name: string, now_s: number, { days, ice_kg, end_s }: InTurn): string {
  const ice = `${massWords(ice_kg, "metric")} (${massWords(ice_kg, "us")})`;
  const isWhole = end_s >= trip.duration_s;
  const until = isWhole ? "to the return" : `into day ${dayAt(trip, end_s)}`;
  const some = days === 1 ? "one day" : `${days} days`;
  return `${name}: with all drinks in it from the start its ice ends on day ${dayAt(trip, now_s)}. With those for ${some} in it, the rest in the shade and a day's more put in each evening, ${ice} of ice fits and lasts ${until}. To plan it so, write the drinks as two entries, one of them \`in: dry box\``;
}
