import { runFleet, type SimulateOptions, startFleet } from "../../core/cooler/fleet.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import { type AnyCooler, type AnyFood, type AnyIce, type AnyTrip, fleetOf } from "./anyCooler.ts";
import type { AnyWeather } from "./anyWeather.ts";

/* One ordinary trip to change one thing of: a 45 L chest with foamed walls, two days at 28 °C, all numbers invented. */

export const ice = (over: Partial<AnyIce> = {}): AnyIce => ({
  form: "cube",
  mass_kg: 6,
  pieces: 2,
  start_C: -2,
  liquid_frac: 0,
  layer: null,
  ...over,
});

export const food = (over: Partial<AnyFood> = {}): AnyFood => ({
  food: "chicken breast",
  mass_kg: 2,
  start_C: 4,
  thick_m: 0.04,
  shape: "slab",
  layer: null,
  depth: 24,
  ...over,
});

export const cooler = (over: Partial<AnyCooler> = {}): AnyCooler => ({
  build: "standard",
  litres: 45,
  absorptance_frac: 0.25,
  measured_frac: null,
  start: { kind: "uniform", body_C: 22 },
  cover: "none",
  top: "none",
  drain: "keep",
  openings: null,
  sealed_frac: null,
  ice: [ice()],
  food: [food(), food({ food: "milk", depth: 6, thick_m: 0.07 })],
  ...over,
});

export const weather = (over: Partial<AnyWeather> = {}): AnyWeather => ({
  mean_C: 28,
  swing_K: 0,
  humidity_frac: 0.5,
  wind_m_per_s: 1,
  sunPeak_W_per_m2: 0,
  sky_K: 0,
  ground_K: 0,
  groundResistance_m2K_per_W: 0.2,
  jump_frac: 0,
  jump_K: 0,
  ...over,
});

export const trip = (over: Partial<AnyTrip> = {}): AnyTrip => ({
  clock_s: 8 * 3600,
  end_s: 48 * 3600,
  weather: weather(),
  coolers: [cooler()],
  acts: [],
  ...over,
});

/** Starts a trip and runs it to its end, landing on the given moments too. */
export function runTo(any: AnyTrip, options: SimulateOptions = {}, cuts_s: readonly number[] = []): Fleet {
  const fleet = startFleet(fleetOf(any), options);
  for (const cut_s of cuts_s) runFleet(fleet, cut_s);
  runFleet(fleet, any.end_s);
  return fleet;
}
