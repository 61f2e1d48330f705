import { bisectRight, sum } from "d3-array";
import { iceLotDensity_kg_per_m3 } from "../cooler/layout.ts";
import type { PackLayer, PackPlace } from "../forecast/planResult.ts";
import type { BandSeries, CoolerResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { DomainError, requireFinite } from "../quantity/errors.ts";
import { massWords, temperatureWords, volumeWords } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { Trip, TripFood, TripIce } from "../trip/types.ts";
import { layersOf } from "./packWords.ts";
import { isMiddleCase } from "./voice.ts";
import { clockOf, clockWords, localTime, printable, type TripClock } from "./words.ts";

/** How soon something is eaten: at the next meal that takes from this cooler, within a day, within three, later. */
export type Due = "next" | "day" | "days" | "later";

/** A packed place as it is at a moment of the trip. */
export interface MomentPlace extends PackPlace {
  /** Of ice and packs: the share that is still frozen. */
  frozen_frac: number;
  /** Of food; null: it is ice. */
  due: Due | null;
  /** When it is eaten next, hours from departure; null: ice, or still aboard at the return. */
  eaten_h: number | null;
}

/** What is left of one packed layer, sunk onto what is left of those below it. */
export interface MomentLayer {
  layer: number;
  from_m: number;
  thick_m: number;
  places: MomentPlace[];
}

/** One cooler at one moment of the trip. */
export interface CoolerMoment {
  cooler: string;
  t_h: number;
  clock: TripClock;
  inside: { length_m: number; width_m: number; height_m: number };
  /** From the base up; a layer of which nothing is left is not among them. */
  layers: MomentLayer[];
  /** Ice that was put in after packing and is left, as loose ice on top: how high it stands. */
  addedIce_m: number;
  waterline_m: number;
  ice_kg: { p10: number; p50: number; p90: number };
  water_L: { p10: number; p50: number; p90: number };
  air_C: { p10: number; p50: number; p90: number };
  /** Of all the ice put in so far, the share that is likely left. */
  left_frac: number;
  middle: boolean;
  /** It was emptied into another one, by name. */
  emptiedInto: string | null;
}

/**
 * What of a packed cooler is left at a moment: food by its meals, ice by what has melted, layers sunk onto each other. Ice is
 * taken to melt by the same share in every piece of the cooler, for the series tell its sum alone; what is put in on the
 * way lies on top as loose ice, and food put in on the way is not drawn. Water and its height are those of the series.
 *
 * @param t_h hours from departure, 0…length of the trip; 0 is as packed
 * @throws DomainError for a cooler without a pack map, or a moment outside the trip
 */
export function coolerMoment(forecast: Forecast, index: number, t_h: number): CoolerMoment {
  const { trip, result } = forecast;
  requireFinite("t_h", t_h, 0, result.trip.hours);
  const cooler = result.coolers[index];
  const packed = cooler === undefined ? [] : layersOf(result.plan?.layers ?? [], cooler.name);
  if (cooler === undefined || packed.length === 0)
    throw new DomainError(`index must be of a cooler with a pack map, got ${index}`);
  const { inside } = trip.coolers[index]!.body;
  const at = (series: BandSeries): CoolerMoment["ice_kg"] => bandAt(cooler.series.t_h, series, t_h);
  const ice_kg = at(cooler.series.ice_kg);
  const put_kg = sum(iceIn(trip, index, t_h), ({ mass_kg }) => mass_kg);
  // Bags are likely a little light, which is no ice that has melted: as packed, all of it is there.
  const left_frac = put_kg <= 0 ? 0 : t_h === 0 ? 1 : Math.min(1, ice_kg.p50 / put_kg);
  const into = emptiedInto(trip, index, t_h);
  const now = (place: PackPlace): MomentPlace | null => placeAt(place, forecast, index, t_h, left_frac);
  const layers = into === null ? sunk(packed, now, left_frac) : [];
  const added_m3 = sum(iceIn(trip, index, t_h), ({ mass_kg, form, putIn_s }) =>
    putIn_s === null ? 0 : (mass_kg * left_frac) / iceLotDensity_kg_per_m3(form),
  );
  return {
    cooler: cooler.name,
    t_h,
    clock: clockOf(trip),
    inside,
    layers,
    addedIce_m: into === null ? added_m3 / (inside.length_m * inside.width_m) : 0,
    waterline_m: Math.min(inside.height_m, pointAt(cooler.series.t_h, cooler.series.waterline_m, t_h)),
    ice_kg,
    water_L: at(cooler.series.water_L),
    air_C: at(cooler.series.air_C),
    left_frac,
    middle: isMiddleCase(result),
    emptiedInto: into,
  };
}

/** The last value written down by then; after an act that lies at the moment itself. */
function pointAt(times_h: readonly number[], values: readonly number[], t_h: number): number {
  return values[Math.max(0, bisectRight(times_h, t_h) - 1)] ?? 0;
}

function bandAt(times_h: readonly number[], series: BandSeries, t_h: number): CoolerMoment["ice_kg"] {
  const at = (values: readonly number[]): number => pointAt(times_h, values, t_h);
  return { p10: at(series.p10), p50: at(series.p50), p90: at(series.p90) };
}

/** All water ice and packs put into a cooler up to then; what other coolers are emptied into it brings is not counted. */
function iceIn(trip: Trip, index: number, t_h: number): TripIce[] {
  return trip.ice.filter(
    ({ cooler, form, putIn_s }) =>
      cooler === index && form !== "dry ice" && (putIn_s === null || (t_h > 0 && putIn_s <= t_h * 3600)),
  );
}

function emptiedInto(trip: Trip, index: number, t_h: number): string | null {
  const merge = trip.events.find(
    (event) => event.do === "merge" && event.from === index && event.t_s <= t_h * 3600,
  );
  return merge?.do === "merge" ? trip.coolers[merge.into]!.name : null;
}

/** A packed place and where what is left of it lies; null: nothing is left. */
interface Lying {
  layer: number;
  packed: PackPlace;
  left: MomentPlace | null;
}

/** Whether two places lie over each other as seen from above. */
const overlap = (a: PackPlace, b: PackPlace): boolean =>
  a.x_m < b.x_m + b.length_m - GRAIN_m &&
  b.x_m < a.x_m + a.length_m - GRAIN_m &&
  a.y_m < b.y_m + b.width_m - GRAIN_m &&
  b.y_m < a.y_m + a.width_m - GRAIN_m;

/** Less than this is no room. */
const GRAIN_m = 1e-4;

const top_m = ({ z_m, height_m }: PackPlace): number => z_m + height_m;

/** How high the places below stand, 0 where there are none. */
const rest_m = (places: readonly (PackPlace | null)[]): number =>
  Math.max(0, ...places.map((place) => (place === null ? 0 : top_m(place))));

/**
 * What is left sinks: from the base up each place follows what it rests on, and never rises. What lay between the two at
 * packing was loose ice, and melts as all of it does. Loose ice carries only the layers above its own.
 */
function sunk(
  packed: readonly PackLayer[],
  now: (place: PackPlace) => MomentPlace | null,
  left_frac: number,
): MomentLayer[] {
  const lying: Lying[] = [];
  for (const { layer, places } of packed) {
    for (const place of [...places].sort((a, b) => a.z_m - b.z_m)) {
      const below = lying.filter(
        (other) =>
          overlap(other.packed, place) &&
          top_m(other.packed) < place.z_m + GRAIN_m &&
          (other.layer < layer || other.packed.kind !== "loose ice"),
      );
      const gap_m = place.z_m - rest_m(below.map((other) => other.packed));
      const z_m = Math.min(place.z_m, rest_m(below.map((other) => other.left)) + gap_m * left_frac);
      const left = now(place);
      lying.push({ layer, packed: place, left: left === null ? null : { ...left, z_m } });
    }
  }
  return packed.flatMap(({ layer }) => {
    const places = lying.flatMap((one) => (one.layer === layer && one.left !== null ? [one.left] : []));
    if (places.length === 0) return [];
    const from_m = Math.min(...places.map(({ z_m }) => z_m));
    return [{ layer, from_m, thick_m: rest_m(places) - from_m, places }];
  });
}

/** One place at the moment; null: nothing is left of it. */
function placeAt(
  place: PackPlace,
  { trip, result }: Forecast,
  index: number,
  t_h: number,
  left_frac: number,
): MomentPlace | null {
  const bare = { ...place, due: null, eaten_h: null, frozen_frac: left_frac };
  if (place.kind === "loose ice")
    return left_frac < 0.005 ? null : { ...bare, height_m: place.height_m * left_frac };
  if (place.kind === "ice" || place.kind === "pack") {
    // A jug or pack stays as large as it is; what is no longer ice is water in it.
    const isShell = place.kind === "pack" || place.item === "jug";
    return isShell ? bare : left_frac < 0.005 ? null : shrunk(bare, Math.cbrt(left_frac));
  }
  const food = trip.food.find(
    ({ name, cooler, putIn_s }) => name === place.item && cooler === index && putIn_s === null,
  );
  const next_h = food === undefined ? null : nextMeal_h(food, t_h);
  if (food !== undefined && next_h === undefined) return null;
  const thawed_h = result.food.find(({ name }) => name === place.item)?.thawed_h.p50 ?? null;
  const isThawed = place.kind === "frozen" && thawed_h !== null && thawed_h <= t_h;
  const due = dueAfter(next_h ?? null, t_h);
  return { ...bare, kind: isThawed ? "ready" : place.kind, due, eaten_h: next_h ?? null, frozen_frac: 0 };
}

/** A block grows smaller on every side, towards where it stands. */
function shrunk(place: MomentPlace, side_frac: number): MomentPlace {
  const { length_m, width_m, height_m } = place;
  return {
    ...place,
    length_m: length_m * side_frac,
    width_m: width_m * side_frac,
    height_m: height_m * side_frac,
    x_m: place.x_m + (length_m * (1 - side_frac)) / 2,
    y_m: place.y_m + (width_m * (1 - side_frac)) / 2,
  };
}

/** Hours from departure of its next meal; null: at no set meal; undefined: all of it is eaten. */
function nextMeal_h({ eat_s, parts_s }: TripFood, t_h: number): number | null | undefined {
  const meals = parts_s !== null && parts_s.length > 0 ? parts_s : eat_s === null ? [] : [eat_s];
  if (meals.length === 0) return null;
  const next_s = meals.find((meal_s) => meal_s > t_h * 3600);
  return next_s === undefined ? undefined : next_s / 3600;
}

function dueAfter(next_h: number | null, t_h: number): Due {
  if (next_h === null) return "later";
  const wait_h = next_h - t_h;
  return wait_h <= 12 ? "next" : wait_h <= 24 ? "day" : wait_h <= 72 ? "days" : "later";
}

/** "full", "three quarters", "half", "a quarter", "the last of it", "none": what the log's marks say too. */
function shareWords(share_frac: number): string {
  if (share_frac >= 0.875) return "full";
  if (share_frac >= 0.625) return "three quarters";
  if (share_frac >= 0.375) return "half";
  if (share_frac >= 0.125) return "a quarter";
  return share_frac > 0.01 ? "the last of it" : "none";
}

/** "Sat day 2, 09:00: ice three quarters", as a slider says it. */
export function momentSaid(moment: CoolerMoment): string {
  const { t_h, clock, emptiedInto: into, left_frac } = moment;
  const { weekday, day, sinceMidnight_min } = localTime(t_h, clock);
  const when = t_h === 0 ? "as packed" : `${weekday} day ${day}, ${clockWords(sinceMidnight_min)}`;
  return `${when}: ${into === null ? `ice ${shareWords(left_frac)}` : `emptied into ${printable(into)}`}`;
}

/** Ice, water and air with their ranges, a line each. */
export function momentLines(moment: CoolerMoment, units: UnitSystem): string[] {
  const { ice_kg, water_L, air_C, middle, emptiedInto: into } = moment;
  if (into !== null) return [`Emptied into ${printable(into)}.`];
  const range = (of: CoolerMoment["ice_kg"], say: (value: number) => string): string =>
    middle || say(of.p10) === say(of.p90) ? say(of.p50) : `${say(of.p50)} (${say(of.p10)} to ${say(of.p90)})`;
  return [
    `Ice ${range(ice_kg, (kg) => massWords(kg, units))}`,
    `Water ${range(water_L, (litres) => volumeWords(litres / 1000, units))}`,
    `Air inside ${range(air_C, (air) => temperatureWords(air, units))}`,
    ...(middle ? ["One typical run, no range yet"] : []),
  ];
}

/** Hours at which the lid of a cooler is lifted for something: meals, what is put in, merges; each once. */
export function openings_h(forecast: Forecast, index: number): number[] {
  const { name } = forecast.result.coolers[index] as CoolerResult;
  const lifted = forecast.marks.filter(
    ({ cooler, what, t_h }) =>
      cooler === name && t_h > 0 && ["open", "take out", "put in", "add ice", "merge"].includes(what),
  );
  return [...new Set(lifted.map(({ t_h }) => t_h))].sort((a, b) => a - b);
}
