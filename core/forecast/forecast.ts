import type { Fleet } from "../cooler/fleetState.ts";
import { ModelError } from "../quantity/errors.ts";
import type { Trip } from "../trip/types.ts";
import { closes_kg, closes_rel, coolerResult } from "./coolerResult.ts";
import { drainSwitch } from "./drainSwitch.ts";
import { type EffectsOptions, effect_h } from "./effects.ts";
import { dryBoxResult, foodResult } from "./foodResult.ts";
import { marksOf, nightSpans_h } from "./marks.ts";
import type { AssumedResult, CoolerResult, FoodResult, Result } from "./result.ts";
import { runTrip } from "./run.ts";
import type { Forecast } from "./types.ts";
import { warningsFor } from "./warnings.ts";
import type { World } from "./world.ts";

export interface ForecastOptions extends EffectsOptions {
  /** Also reckon what each assumption, and the other drain habit, changes: a few runs for each. Default true. */
  effects?: boolean;
  /** Run this world instead of the middle case. */
  world?: World;
  /** Allowed error of a step relative to the standard one (`SimulateOptions`). */
  tolerance?: number;
}

function assumedOf(trip: Trip, options: ForecastOptions): AssumedResult[] {
  return trip.assumed.map((assumed, i) => {
    const { path, value, why } = assumed;
    if (options.effects === false || options.signal?.aborted) return { path, value, why, effect_h: null };
    options.onProgress?.(i / trip.assumed.length, `what ${path} changes`);
    return { path, value, why, effect_h: effect_h(trip, assumed, options) };
  });
}

const urgency: Record<FoodResult["verdict"], number> = { discard: 0, "eat next": 1, keep: 2 };

/** Cold food leads: what is lost first, then what must be eaten, then by the moment it passes its limit. */
export function mostUrgentFirst(a: FoodResult, b: FoodResult): number {
  const over = (f: FoodResult): number => f.overLimit_h.p50 ?? Number.POSITIVE_INFINITY;
  const by = urgency[a.verdict] - urgency[b.verdict] || Number(b.perishable) - Number(a.perishable);
  if (by !== 0) return by;
  const early = over(a) === over(b) ? 0 : over(a) - over(b);
  return (
    early || (a.eaten_h ?? Number.MAX_VALUE) - (b.eaten_h ?? Number.MAX_VALUE) || (a.name < b.name ? -1 : 1)
  );
}

function checkBooks(results: readonly CoolerResult[]): void {
  for (const { name, balance } of results) {
    if (!(Math.abs(balance.energy_rel) <= closes_rel))
      throw new ModelError(`${name}: the energy books do not close`, balance.energy_rel);
    if (!(Math.abs(balance.water_g) <= closes_kg * 1000))
      throw new ModelError(`${name}: water is missing, g`, balance.water_g);
  }
}

/** Every item of the trip in its order, as one run has it. */
export function foodResults(trip: Trip, fleet: Fleet): FoodResult[] {
  return trip.food.map((item) =>
    item.cooler === null ? dryBoxResult(trip, item) : foodResult(trip, fleet, item),
  );
}

function resultOf(trip: Trip, fleet: Fleet, options: ForecastOptions): Result {
  const coolers = trip.coolers.map((_, i) => coolerResult(trip, fleet, i));
  checkBooks(coolers);
  if (options.effects !== false)
    coolers.forEach((cooler, i) => {
      cooler.drainSwitch = drainSwitch(trip, fleet, i);
    });
  return {
    coldstow: 1,
    command: "forecast",
    trip: { title: trip.title, depart: trip.depart, return: trip.return, hours: trip.duration_s / 3600 },
    limit: { profile: trip.limit.profile, limit_C: trip.limit.limit_C },
    assumed: assumedOf(trip, options),
    food: foodResults(trip, fleet).sort(mostUrgentFirst),
    coolers,
    warnings: warningsFor(trip, fleet, coolers),
  };
}

/**
 * What will happen to this trip as it is written: the middle case, one run of every cooler. Bands hold the middle
 * value three times; how sure it is only an ensemble can say.
 *
 * @throws ModelError when books do not close: our bug
 */
export function forecast(trip: Trip, options: ForecastOptions = {}): Forecast {
  const { world, tolerance } = options;
  const fleet = runTrip(trip, {
    ...(world === undefined ? {} : { world }),
    ...(tolerance === undefined ? {} : { tolerance }),
  });
  const result = resultOf(trip, fleet, options);
  return { trip, result, nights_h: nightSpans_h(trip), marks: marksOf(trip), fleet };
}
