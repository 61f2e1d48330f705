import { DomainError } from "../quantity/errors.ts";
import { coldBetween } from "./coolerResult.ts";
import type { ColdHours } from "./result.ts";
import type { Forecast } from "./types.ts";

const hour_s = 3600;

/**
 * Where the cold of every cooler went between two hours of the trip, in the middle case.
 *
 * @throws DomainError when the hours are not within the trip, in order, or the forecast does not hold its run
 */
export function coldHours({ result, fleet }: Forecast, from_h: number, to_h: number): ColdHours {
  const { hours } = result.trip;
  if (fleet === undefined || !(from_h >= 0 && from_h < to_h && to_h <= hours))
    throw new DomainError(`from_h and to_h must be in order within 0…${hours}, got ${from_h} and ${to_h}`);
  const coolers = result.coolers.map(({ name }, i) => ({
    name,
    heat_kJ: coldBetween(fleet, i, from_h * hour_s, to_h * hour_s),
  }));
  return { from_h, to_h, coolers };
}
