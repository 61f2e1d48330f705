import type { Band } from "../forecast/result.ts";

/**
 * Value that a share `p_frac` of the members stay below, straight between neighbours, at the place p·(n + 1)
 * (type 6: a further draw lies below it with that chance; type 7 is too narrow for few members). A member without a value
 * (NaN: not before the return) counts as later than all others; where the quantile falls on one, the answer is null.
 */
export function quantile(values: Float64Array | readonly number[], p_frac: number): number | null {
  return ofSorted(sortedUp(values), p_frac);
}

function sortedUp(values: Float64Array | readonly number[]): Float64Array {
  return Float64Array.from(values, (value) =>
    Number.isNaN(value) ? Number.POSITIVE_INFINITY : value,
  ).sort();
}

function ofSorted(sorted: Float64Array, p_frac: number): number | null {
  if (sorted.length === 0) return null;
  const place = Math.min(sorted.length - 1, Math.max(0, p_frac * (sorted.length + 1) - 1));
  const low = Math.floor(place);
  const right = place - low;
  const value = sorted[low]!;
  if (right === 0) return Number.isFinite(value) ? value : null;
  const next = sorted[low + 1]!;
  return Number.isFinite(next) ? value + right * (next - value) : null;
}

/** The band of a number over the members; see `quantile`. */
export function bandOf(values: Float64Array | readonly number[]): Band {
  const sorted = sortedUp(values);
  return { p10: ofSorted(sorted, 0.1), p50: ofSorted(sorted, 0.5), p90: ofSorted(sorted, 0.9) };
}
