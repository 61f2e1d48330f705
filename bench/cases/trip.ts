import { bodyOf } from "../../core/cooler/builds.ts";
import type { Act, CoolerInput, FleetInput, FoodLot, IceLot } from "../../core/cooler/types.ts";
import {
  foodConductivity_W_per_mK,
  foodCurve,
  foodDensity_kg_per_m3,
} from "../../core/matter/foodProperties.ts";
import { foods } from "../../core/matter/foods.ts";
import { surroundingsAt, weatherBreaks_s } from "../../core/sky/surroundings.ts";
import type { Stay } from "../../core/sky/types.ts";
import { weatherFromDays } from "../../core/sky/weather.ts";

/** What a bench may ask for; all numbers of the trip are invented. */
export interface Size {
  days: number;
  coolers: number;
  /** Lots of food in each cooler; they share the same kilograms, so more lots are smaller lots. */
  lots: number;
  /** Kilograms of food in each cooler: more of it makes more rows. */
  food_kg: number;
}

const hour_s = 3600;
const day_s = 24 * hour_s;
const kinds = ["chicken breast", "milk", "deli meat", "cheddar", "egg", "soft drink"] as const;

function foodLots(size: Size, cooler: number): FoodLot[] {
  return Array.from({ length: size.lots }, (_, i): FoodLot => {
    const food = foods[kinds[i % kinds.length]] ?? foods.milk;
    return {
      kind: "food",
      id: `food ${cooler}.${i}`,
      mass_kg: size.food_kg / size.lots,
      pieces: 1,
      start_C: i % 3 === 0 ? -16 : 4,
      curve: foodCurve(food),
      density_kg_per_m3: foodDensity_kg_per_m3(food, 5),
      k_W_per_mK: foodConductivity_W_per_mK(food, 5),
      kFrozen_W_per_mK: foodConductivity_W_per_mK(food, -15),
      thick_m: food.thick_m,
      shape: food.shape,
      layer: null,
      depth: ((i * 7) % 24) + 1,
    };
  });
}

const iceLot = (id: string, form: IceLot["form"], mass_kg: number, start_C: number): IceLot => ({
  kind: "ice",
  id,
  form,
  mass_kg,
  pieces: 1,
  start_C,
  liquid_frac: form === "block" ? 0 : 0.03,
  layer: null,
});

function oneCooler(size: Size, index: number, stays: readonly Stay[], depart_ms: number): CoolerInput {
  const place = { latitude_deg: 38, longitude_deg: -110, elevation_m: 1200, timezone: "UTC" };
  const day = { low_C: 17, high_C: 34, humidity_frac: 0.3, cloud_frac: 0.2, wind_m_per_s: 2.5 };
  const weather = weatherFromDays([day], place, depart_ms, size.days * day_s);
  return {
    name: `cooler ${index}`,
    body: bodyOf("thick", 0.06, 0.25),
    start: { kind: "uniform", body_C: 22 },
    cover: "none",
    top: "none",
    drain: "keep",
    openings: { perDay: 12, each_s: 20, spans_s: daytime(size.days) },
    sealedUntil_s: null,
    around: {
      stays,
      breaks_s: stays.flatMap((stay) => weatherBreaks_s(weather, stay)),
      at: (t_s, out) => surroundingsAt(weather, stays.find(({ to_s }) => t_s < to_s) ?? stays[0], t_s, out),
    },
    lots: [
      iceLot(`block ${index}`, "block", 9, -16),
      iceLot(`cubes ${index}`, "cube", 9, -2),
      ...foodLots(size, index),
    ],
  };
}

/** From seven to nine in the evening of each day; the trip starts at eight. */
const daytime = (days: number): (readonly [number, number])[] =>
  Array.from({ length: days + 1 }, (_, i) => [i * day_s - hour_s, i * day_s + 13 * hour_s] as const);

/** A trip of so many days in summer: half a day in a car, then camp in the shade; food goes out, a little every day. */
export function benchTrip(size: Size): FleetInput {
  const depart_ms = Date.UTC(2027, 6, 10, 15);
  const end_s = size.days * day_s;
  const stay = { shade_frac: null, ground: null, air_C: null, water_C: null };
  const stays: Stay[] = [
    { ...stay, place: "trunk", from_s: 0, to_s: 6 * hour_s },
    { ...stay, place: "camp", shade_frac: 0.7, from_s: 6 * hour_s, to_s: end_s },
  ];
  const coolers = Array.from({ length: size.coolers }, (_, i) => oneCooler(size, i, stays, depart_ms));
  const acts = coolers.flatMap((cooler) =>
    cooler.lots
      .filter((lot) => lot.kind === "food")
      .map((lot, i, all): Act => {
        const t_s = ((i + 0.5) / all.length) * end_s;
        return { do: "take out", t_s, lot: lot.id, share_frac: 1 };
      }),
  );
  return { end_s, coolers, acts };
}
