import { type ClosureKey, closurePriors } from "../cooler/closures.ts";
import type { Spread } from "../matter/spread.ts";
import { type SkyClosureKey, skyPriors } from "../sky/closures.ts";
import type { Trip, TripCooler, TripFood, TripIce } from "../trip/types.ts";
import { drawnClosures, drawnSky, forecastError, type Scale, tripPriors } from "./priors.ts";

/** What a doubt is about, in the words of a person; inputs of one kind are told together. */
export type Doubt =
  | "this cooler's walls and joint"
  | "the weather"
  | "shade, sun and ground"
  | "openings"
  | "weight of the ice"
  | "cold at packing"
  | "what the food holds"
  | "how heat moves inside";

/** One thing that nobody knows about a trip. */
export interface Input {
  /** Unique and lasting: variants of a trip that have it share its draw. */
  name: string;
  /** Dimension of the sequence, made from the name. */
  dimension: number;
  prior: Spread & { scale: Scale };
  about: Doubt;
  /** Index of the only cooler that it belongs to; null: all of them. */
  cooler: number | null;
}

/** Closures that are each cooler's own; the rest are the same physics in all of them. */
export const ownClosures: readonly ClosureKey[] = ["thickness_frac", "foam_frac", "body_J_per_kgK"];

/** Thirty bits of the name (FNV-1a). */
function dimensionOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return (hash >>> 0) & 0x3fffffff;
}

/** A day of the forecast errs by a standard normal of its own; how much that is grows with the lead time. */
const dayScore: Spread & { scale: Scale } = {
  p10: -1.2815515655446004,
  p50: 0,
  p90: 1.2815515655446004,
  scale: "linear",
};

/** Days of weather of a trip, the day after its return included. */
export const weatherDays = (trip: Trip): number => Math.ceil(trip.duration_s / 86_400) + 2;

type Add = (name: string, prior: Spread & { scale: Scale }, about: Doubt, cooler?: number | null) => void;

const insideKeys = Object.keys(closurePriors).filter(
  (key) => !ownClosures.includes(key as ClosureKey),
) as ClosureKey[];

function addShared(trip: Trip, add: Add): void {
  for (const key of insideKeys) {
    const isOutside = key === "stillAir_W_per_m2K" || key === "outsideEmittance_frac";
    const isOpening = key === "spill_s" || key.startsWith("open");
    add(
      `physics:${key}`,
      drawnClosures[key],
      isOutside ? "shade, sun and ground" : isOpening ? "openings" : "how heat moves inside",
    );
  }
  for (const key of Object.keys(skyPriors) as SkyClosureKey[])
    add(`sky:${key}`, drawnSky[key], "shade, sun and ground");
  for (let day = 0; day < weatherDays(trip); day++) add(`air:${day}`, dayScore, "the weather");
  if (trip.assumed.some(({ path }) => path.startsWith("weather")))
    add("air:assumed", tripPriors.weatherAssumed_K, "the weather");
  add("dew", dayScore, "the weather");
  add("cloud", tripPriors.cloudShift_frac, "the weather");
  add("wind", tripPriors.wind_frac, "the weather");
}

/** What kind of joint a lid has, by what its build takes for it. */
function jointOf({ body }: TripCooler): "gasket" | "bare" | "zip" {
  return body.leak_per_h < 0.3 ? "gasket" : body.leak_per_h < 0.8 ? "bare" : "zip";
}

const isNamedBuild = (trip: Trip, cooler: number): boolean => {
  const typed = (trip.typed as { coolers?: readonly { wall?: unknown }[] } | null)?.coolers?.[cooler];
  return typed?.wall === undefined;
};

const isAssumed = (trip: Trip, path: string): boolean => trip.assumed.some((one) => one.path === path);

/** What the inputs of a cooler are named after: its own name, so that its place in the file does not matter. */
export function coolerName(trip: Trip, index: number): string {
  const name = trip.coolers[index]!.name.trim().toLowerCase();
  const nth = trip.coolers.slice(0, index).filter((other) => other.name.trim().toLowerCase() === name).length;
  return `cooler:${name}:${nth}:`;
}

/** The only cooler that a lot can matter to; null where a merge may take it to another. */
function coolerOf(trip: Trip, { cooler }: TripFood | TripIce): number | null {
  return trip.events.some((event) => event.do === "merge") ? null : cooler;
}

/** How far a measured conductance may be off: as much as is known of this very cooler, else as usual. */
function measuredPrior({ measured_frac }: TripCooler): Spread & { scale: Scale } {
  return measured_frac === null ? tripPriors.measured_frac : { ...measured_frac, scale: "log" };
}

function addCooler(trip: Trip, cooler: TripCooler, index: number, add: Add): void {
  const own = "this cooler's walls and joint";
  const at = coolerName(trip, index);
  for (const key of ownClosures) add(`${at}${key}`, drawnClosures[key], own, index);
  if (cooler.body.measured_W_per_K !== null) add(`${at}measured`, measuredPrior(cooler), own, index);
  else if (isNamedBuild(trip, index)) add(`${at}build`, tripPriors.unknownBuild_frac, own, index);
  const joint = jointOf(cooler);
  add(`${at}seal`, tripPriors[`${joint}Seal_frac`], own, index);
  add(`${at}leak`, tripPriors[`${joint}Leak_frac`], own, index);
  add(`${at}color`, tripPriors.colorShift_frac, "shade, sun and ground", index);
  const start = `coolers[${index}].start`;
  const told = !isAssumed(trip, `${start}.at`) && !isAssumed(trip, `${start}.kept`);
  add(`${at}body`, told ? tripPriors.bodyTold_K : tripPriors.bodyAssumed_K, "cold at packing", index);
  add(`${at}openings`, tripPriors.openings_frac, "openings", index);
  add(`${at}openFor`, tripPriors.openFor_frac, "openings", index);
}

/**
 * Form of ice as the file has it: a variant that tries another form of the same ice must not weigh it otherwise, or the
 * forms would not be compared alone.
 */
function boughtAs(trip: Trip, ice: TripIce): string {
  const at = /^ice\[(\d+)\]$/.exec(ice.path)?.[1];
  const typed = (trip.typed as { ice?: readonly { form?: string }[] } | null)?.ice;
  return (at === undefined ? undefined : typed?.[Number(at)]?.form) ?? ice.form;
}

const lotNames = new WeakMap<Trip, ReadonlyMap<string, string>>();

/**
 * Name of a lot that lasts when others come, go or change places in the file: what the person calls it, or the form of
 * the ice and where it goes when; alike ones are counted.
 */
export function lotName(trip: Trip, { id }: TripFood | TripIce): string {
  let names = lotNames.get(trip);
  if (names === undefined) {
    const seen = new Map<string, number>();
    const named = (lot: TripFood | TripIce): [string, string] => {
      const what = "form" in lot ? `ice:${boughtAs(trip, lot)}:${lot.putIn_s}` : `food:${lot.name}`;
      const nth = seen.get(what) ?? 0;
      seen.set(what, nth + 1);
      return [lot.id, `${what}:${nth}`];
    };
    names = new Map([...trip.ice.map(named), ...trip.food.map(named)]);
    lotNames.set(trip, names);
  }
  return names.get(id)!;
}

function addIce(trip: Trip, ice: TripIce, add: Add): void {
  const [name, cooler] = [lotName(trip, ice), coolerOf(trip, ice)];
  const bought = boughtAs(trip, ice);
  const loose = bought === "cube" || bought === "crushed";
  const weight = loose ? tripPriors.bagWeight_frac : tripPriors.pieceWeight_frac;
  add(`${name}:weight`, weight, "weight of the ice", cooler);
  // Dry ice is never warmer or colder.
  if (ice.form === "dry ice") return;
  if (loose && isAssumed(trip, `${ice.path}.liquid`))
    add(`${name}:liquid`, tripPriors.liquid_frac, "weight of the ice", cooler);
  const assumed = ice.start_C < -10 ? tripPriors.freezerAssumed_K : tripPriors.shopIceAssumed_K;
  const isTold = !isAssumed(trip, `${ice.path}.at`) && !isAssumed(trip, `${ice.path}.from`);
  add(`${name}:cold`, isTold ? tripPriors.iceTold_K : assumed, "cold at packing", cooler);
}

function addFood(trip: Trip, food: TripFood, add: Add): void {
  const [name, cooler] = [lotName(trip, food), coolerOf(trip, food)];
  add(`${name}:heat`, tripPriors.foodHeat_frac, "what the food holds", cooler);
  const assumed = {
    frozen: tripPriors.frozenAssumed_K,
    chilled: tripPriors.fridgeAssumed_K,
    ambient: tripPriors.ambientAssumed_K,
    dry: tripPriors.ambientAssumed_K,
  }[food.state];
  const told = !isAssumed(trip, `${food.path}.at`);
  add(`${name}:cold`, told ? tripPriors.foodTold_K : assumed, "cold at packing", cooler);
}

const known = new WeakMap<Trip, readonly Input[]>();

/** Everything about a trip that nobody knows, each with its prior, in a lasting order. */
export function inputsOf(trip: Trip): readonly Input[] {
  const before = known.get(trip);
  if (before !== undefined) return before;
  const inputs: Input[] = [];
  const add: Add = (name, prior, about, cooler = null) => {
    inputs.push({ name, dimension: dimensionOf(name), prior, about, cooler });
  };
  addShared(trip, add);
  trip.coolers.forEach((cooler, index) => {
    addCooler(trip, cooler, index, add);
  });
  for (const ice of trip.ice) addIce(trip, ice, add);
  for (const food of trip.food) if (food.cooler !== null) addFood(trip, food, add);
  known.set(trip, inputs);
  return inputs;
}

/** Standard deviation of a day's air, and of the dew point, by lead time in days. */
export const airError_K = (day: number): number =>
  Math.min(forecastError.airMost_K, forecastError.airFirst_K + forecastError.airGrowth_K_per_day * day);
export const dewError_K = (day: number): number =>
  Math.min(forecastError.dewMost_K, forecastError.dewFirst_K + forecastError.dewGrowth_K_per_day * day);
