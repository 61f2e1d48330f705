import { outerSize_m } from "../cooler/outerSize.ts";
import type { CoolerBody } from "../cooler/types.ts";
import { requireFinite } from "../quantity/errors.ts";
import type { TripRules } from "../trip/types.ts";

/**
 * Room that handles, latches and feet take beyond the walls, in each direction.
 *
 * @source engineering-judgement
 */
const handleRoom_m: number = 0.02;

/**
 * Whether a shut cooler stands in a locker of this inside: upright, as it is or turned a quarter about, with room for
 * handles and feet. It does not look at the door, which may be smaller than the inside, nor does it lay a cooler on a side.
 *
 * @throws DomainError for an inside that is not 0…10 m
 * @source derivation
 */
export function fitsLocker(body: CoolerBody, locker: NonNullable<TripRules["locker"]>): boolean {
  for (const name of ["length_m", "width_m", "height_m"] as const) requireFinite(name, locker[name], 0, 10);
  const { length_m, width_m, height_m } = outerSize_m(body);
  const [long_m, short_m] = [Math.max(length_m, width_m), Math.min(length_m, width_m)];
  const [longRoom_m, shortRoom_m] = [
    Math.max(locker.length_m, locker.width_m),
    Math.min(locker.length_m, locker.width_m),
  ];
  return (
    long_m + handleRoom_m <= longRoom_m &&
    short_m + handleRoom_m <= shortRoom_m &&
    height_m + handleRoom_m <= locker.height_m
  );
}
