import { linkedCoolers, onlyCoolers } from "../trip/oneCooler.ts";
import { withValue } from "../trip/paths.ts";
import { readTripObject } from "../trip/readTrip.ts";
import type { Assumed, Trip } from "../trip/types.ts";
import { iceOutCarriedOn_s, looseStep_rel, runTrip } from "./run.ts";

export interface EffectsOptions {
  readBeside?: (name: string) => string | null;
  onProgress?: (done_frac: number, says: string) => void;
  signal?: { readonly aborted: boolean };
}

/** Coolers that a value of the file can matter to; null: all of them. */
function concerned(trip: Trip, path: string): ReadonlySet<number> | null {
  const [, list, at] = /^(coolers|ice|food)\[(\d+)\]/.exec(path) ?? [];
  if (list === undefined) return null;
  const own =
    list === "coolers"
      ? Number(at)
      : [...trip.ice, ...trip.food].find((lot) => lot.path === `${list}[${at}]`)?.cooler;
  return own === undefined || own === null ? null : linkedCoolers(trip, own);
}

/** Ice-out of the coolers that one changed value of a trip's file concerns; null when the file does not take it. */
function iceOutWith(trip: Trip, path: string, value: string, options: EffectsOptions): number[] | null {
  const read = options.readBeside === undefined ? {} : { readBeside: options.readBeside };
  const reading = readTripObject(withValue(trip.typed, path, value), { file: trip.title, ...read });
  if (!reading.ok) return null;
  // Ice that a plan adds stands after the file's own.
  const added = trip.ice.filter((ice) => !reading.trip.ice.some((other) => other.id === ice.id));
  const whole = { ...reading.trip, ice: [...reading.trip.ice, ...added] };
  const only = concerned(whole, path);
  const fleet = runTrip(only === null ? whole : onlyCoolers(whole, only), {
    tolerance: looseStep_rel,
    books: "end",
  });
  return fleet.boxes.map((_, i) => iceOutCarriedOn_s(fleet, i));
}

/**
 * How far ice-out moves, in hours, when one assumed value goes from one end of its plausible range to the other, in the
 * cooler where it moves most; null where there is no range or the file does not take its ends.
 */
export function effect_h(trip: Trip, assumed: Assumed, options: EffectsOptions): number | null {
  if (assumed.range === null) return null;
  const low = iceOutWith(trip, assumed.path, assumed.range[0], options);
  const high = iceOutWith(trip, assumed.path, assumed.range[1], options);
  if (low === null || high === null || low.length !== high.length) return null;
  return low.reduce((most, t, i) => Math.max(most, Math.abs(high[i] - t)), 0) / 3600;
}
