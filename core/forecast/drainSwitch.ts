import type { Fleet } from "../cooler/fleetState.ts";
import type { Trip } from "../trip/types.ts";
import { overLimit_s } from "./coolerResult.ts";
import { middle } from "./foodResult.ts";
import type { DrainSwitch } from "./result.ts";
import { iceOutCarriedOn_s, runTrip } from "./run.ts";

/**
 * What keeping the meltwater instead of draining it, or the other way round, does for one cooler of this trip. Numbers
 * only: raw juice, packages that let water in, weight and slosh may overrule them.
 */
export function drainSwitch(trip: Trip, fleet: Fleet, cooler: number): DrainSwitch {
  const to = trip.coolers[cooler].drain === "keep" ? "open" : "keep";
  const coolers = trip.coolers.map((one, i) => (i === cooler ? ({ ...one, drain: to } as const) : one));
  // A habit takes the place of single drainings.
  const events = trip.events.filter((event) => event.do !== "drain" || event.cooler !== cooler);
  const other = runTrip({ ...trip, coolers, events });
  const was_s = overLimit_s(trip, fleet, cooler);
  const would_s = overLimit_s(trip, other, cooler);
  const neither = was_s === null && would_s === null;
  return {
    to,
    iceGain_h: middle((iceOutCarriedOn_s(other, cooler) - iceOutCarriedOn_s(fleet, cooler)) / 3600),
    foodGain_h: neither ? null : middle(((would_s ?? trip.duration_s) - (was_s ?? trip.duration_s)) / 3600),
  };
}
