import type { Fleet } from "../cooler/fleetState.ts";
import type { Trip } from "../trip/types.ts";
import { overLimit_s } from "./coolerResult.ts";
import { middle } from "./foodResult.ts";
import type { DrainSwitch } from "./result.ts";
import { iceOutCarriedOn_s, runTrip } from "./run.ts";

/** The trip with another drain habit for one cooler; a habit takes the place of single drainings. */
export function withDrain(trip: Trip, cooler: number, drain: DrainSwitch["to"]): Trip {
  return {
    ...trip,
    coolers: trip.coolers.map((one, i) => (i === cooler ? { ...one, drain } : one)),
    events: trip.events.filter((event) => event.do !== "drain" || event.cooler !== cooler),
  };
}

/**
 * What keeping the meltwater instead of draining it, or the other way round, does for one cooler of this trip. Numbers
 * only: raw juice, packages that let water in, weight and slosh may overrule them.
 */
export function drainSwitch(trip: Trip, fleet: Fleet, cooler: number): DrainSwitch {
  const to = trip.coolers[cooler].drain === "keep" ? "open" : "keep";
  const other = runTrip(withDrain(trip, cooler, to));
  const was_s = overLimit_s(trip, fleet, cooler);
  const would_s = overLimit_s(trip, other, cooler);
  const neither = was_s === null && would_s === null;
  return {
    to,
    iceGain_h: middle((iceOutCarriedOn_s(other, cooler) - iceOutCarriedOn_s(fleet, cooler)) / 3600),
    foodGain_h: neither ? null : middle(((would_s ?? trip.duration_s) - (was_s ?? trip.duration_s)) / 3600),
  };
}
