import { requireFinite } from "../quantity/errors.ts";
import { localInstant_ms } from "../sky/localTime.ts";
import { noPaint } from "./lines.ts";
import type { TextOptions, Voice } from "./voice.ts";
import type { TripClock } from "./words.ts";

/**
 * The clock of departure, carried through the trip: such results know no time zone, so after a change of clocks on the way
 * a time is told an hour off.
 */
export function departureClock(trip: { depart: string; hours: number }): TripClock {
  return {
    date: trip.depart.slice(0, 10),
    depart_ms: localInstant_ms(trip.depart, "UTC"),
    timezone: "UTC",
    length_h: trip.hours,
    meals: [],
  };
}

/**
 * Everything that the parts of a text share, where there is no forecast beside the result.
 *
 * @throws DomainError for a width outside 60…200
 */
export function whatIfVoice(clock: TripClock, members: number, options: TextOptions): Voice {
  return {
    units: options.units,
    width: requireFinite("width", options.width ?? 80, 60, 200),
    paint: options.colour ?? noPaint,
    clock,
    middle: members < 2,
  };
}
