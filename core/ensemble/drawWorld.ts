import { type ClosureKey, type Closures, medianClosures } from "../cooler/closures.ts";
import type { CoolerWorld, LotWorld, World } from "../forecast/world.ts";
import { medianSky, type SkyClosureKey, type SkyClosures } from "../sky/closures.ts";
import type { WeatherError } from "../sky/weatherError.ts";
import type { Trip, TripCooler, TripFood, TripIce } from "../trip/types.ts";
import { airError_K, coolerName, dewError_K, inputsOf, lotName, ownClosures, weatherDays } from "./inputs.ts";
import { forecastError, valueAtScore } from "./priors.ts";
import { scoresOf } from "./scores.ts";

type Drawn = ReadonlyMap<string, number>;

const day_s = 86_400;

/** Errors of the days, each keeping a share of the one before; what a day tells holds at its middle. */
function weatherIn(trip: Trip, drawn: Drawn): WeatherError {
  const days = weatherDays(trip);
  const kept = forecastError.airKept_frac;
  const fresh = Math.sqrt(1 - kept * kept);
  const t_s: number[] = [];
  const air_K: number[] = [];
  const dewPoint_K: number[] = [];
  let score = drawn.get("air:0")!;
  for (let day = 0; day < days; day++) {
    if (day > 0) score = kept * score + fresh * drawn.get(`air:${day}`)!;
    t_s.push((day + 0.5) * day_s - trip.departClock_s);
    air_K.push(airError_K(day) * score + (drawn.get("air:assumed") ?? 0));
    dewPoint_K.push(dewError_K(day) * drawn.get("dew")!);
  }
  return {
    t_s,
    air_K,
    dewPoint_K,
    cloudShift_frac: drawn.get("cloud")!,
    wind_frac: drawn.get("wind")!,
  };
}

function closuresIn(drawn: Drawn, own: string): Closures {
  const closures: Closures = { ...medianClosures };
  for (const key of Object.keys(medianClosures) as ClosureKey[])
    closures[key] = drawn.get(ownClosures.includes(key) ? `${own}${key}` : `physics:${key}`)!;
  // Of a named build the whole conductance is in doubt; the foam carries it.
  closures.foam_frac *= drawn.get(`${own}build`) ?? 1;
  return closures;
}

const within = (low: number, high: number, value: number): number => Math.min(high, Math.max(low, value));

function coolerIn({ body }: TripCooler, own: string, drawn: Drawn): CoolerWorld {
  const of = (name: string): number => drawn.get(`${own}${name}`)!;
  return {
    closures: closuresIn(drawn, own),
    measured_frac: drawn.get(`${own}measured`) ?? 1,
    seal_W_per_mK: body.seal_W_per_mK * of("seal"),
    leak_per_h: body.leak_per_h * of("leak"),
    absorptance_frac: within(0.05, 0.98, body.absorptance_frac + of("color")),
    bodyShift_K: of("body"),
    openings_frac: of("openings"),
    openFor_frac: of("openFor"),
  };
}

function iceIn(trip: Trip, ice: TripIce, drawn: Drawn): LotWorld {
  const dry = ice.form === "dry ice";
  return {
    mass_frac: drawn.get(`${lotName(trip, ice)}:weight`)!,
    start_C: dry ? ice.start_C : within(-40, 0, ice.start_C + drawn.get(`${lotName(trip, ice)}:cold`)!),
    liquid_frac: within(0, 0.5, drawn.get(`${lotName(trip, ice)}:liquid`) ?? ice.liquid_frac),
    heat_frac: 1,
  };
}

/** Food stays what it was said to be: frozen stays frozen, chilled stays unfrozen. */
function foodIn(trip: Trip, food: TripFood, drawn: Drawn): LotWorld {
  const start_C = food.start_C + drawn.get(`${lotName(trip, food)}:cold`)!;
  const freezes_C = food.like.freezes_C ?? 0;
  const isFrozen = food.start_C < freezes_C;
  return {
    mass_frac: 1,
    start_C: isFrozen ? Math.min(start_C, freezes_C - 0.5) : Math.max(start_C, freezes_C + 0.2),
    liquid_frac: 0,
    heat_frac: drawn.get(`${lotName(trip, food)}:heat`)!,
  };
}

/**
 * The world in which every input of a trip stands at these standard scores.
 *
 * @param scores one for each of `inputsOf(trip)`, in that order; see `scoresOf`
 */
export function worldAt(trip: Trip, scores: ArrayLike<number>): World {
  const drawn = new Map(inputsOf(trip).map(({ name, prior }, k) => [name, valueAtScore(prior, scores[k]!)]));
  const sky: SkyClosures = { ...medianSky };
  for (const key of Object.keys(medianSky) as SkyClosureKey[]) sky[key] = drawn.get(`sky:${key}`)!;
  const lots = new Map<string, LotWorld>();
  for (const ice of trip.ice) lots.set(ice.id, iceIn(trip, ice, drawn));
  for (const food of trip.food) if (food.cooler !== null) lots.set(food.id, foodIn(trip, food, drawn));
  return {
    sky,
    weather: weatherIn(trip, drawn),
    coolers: trip.coolers.map((cooler, i) => coolerIn(cooler, coolerName(trip, i), drawn)),
    lots,
  };
}

/**
 * Draws member number `member` of a trip: one value of every input, by a scrambled Sobol sequence whose dimensions are
 * named, so that the same member of two variants of a trip stands in the same world as far as they share inputs.
 */
export function drawWorld(trip: Trip, member: number, seed: number): World {
  return worldAt(trip, scoresOf(trip, member, seed));
}
