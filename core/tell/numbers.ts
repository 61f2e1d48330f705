import { requireFinite } from "../quantity/errors.ts";
import { formatIn } from "../quantity/show.ts";

/** Values rounded so that what is shown adds up to the total that is shown. */
export interface RoundedParts {
  parts: number[];
  total: number;
}

/**
 * Rounds parts of a whole by the largest remainder: the total is the rounded sum, every part lies within one step of
 * its true value, and the shown parts add up to the shown total in whole steps. Parts may be negative.
 *
 * @param values each −1e9…1e9
 * @param digits decimals, 0…6
 */
export function roundToSum(values: readonly number[], digits: number): RoundedParts {
  const step = 10 ** requireFinite("digits", digits, 0, 6);
  const scaled = values.map((value) => requireFinite("value", value, -1e9, 1e9) * step);
  const floors = scaled.map(Math.floor);
  const total = Math.round(scaled.reduce((sum, value) => sum + value, 0));
  const missing = total - floors.reduce((sum, value) => sum + value, 0);
  const largestFirst = scaled
    .map((value, i) => ({ i, rest: value - floors[i]! }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of largestFirst.slice(0, missing)) floors[i]! += 1;
  return { parts: floors.map((value) => value / step + 0), total: total / step + 0 };
}

/** The number alone of an SI value in a unit, with exactly so many decimals. */
export function bare(valueSI: number, unit: string, digits: number): string {
  const number = formatIn(valueSI, unit, digits).split(" ")[0]!.replace("−", "-");
  return Number(number).toFixed(digits).replace(/^-/, "−");
}
