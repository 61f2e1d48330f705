import type { Trip } from "../trip/types.ts";
import { inputsOf } from "./inputs.ts";
import { normalQuantile } from "./normalQuantile.ts";
import { sobol_frac } from "./sobol.ts";

/**
 * Where a member stands on every input of a trip, in standard scores: 0 is the median of the prior, ±1.28 its 90 % and 10 %
 * points. Before anything was seen the scores of all inputs are independent standard normals.
 *
 * @returns one score for each of `inputsOf(trip)`, in that order
 */
export function scoresOf(trip: Trip, member: number, seed: number): Float64Array {
  return Float64Array.from(inputsOf(trip), ({ dimension }) =>
    normalQuantile(sobol_frac(member, dimension, seed)),
  );
}
