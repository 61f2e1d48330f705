/** Weights that add up to 1; even ones where all are 0. */
export function normalised(weights: ArrayLike<number>): Float64Array {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += weights[i]!;
  if (!(sum > 0)) return new Float64Array(weights.length).fill(1 / weights.length);
  return Float64Array.from(weights, (weight) => weight / sum);
}

/** How many members of equal weight would tell as much: 1 where a single one carries all. */
export function effectiveCount(weights: Float64Array): number {
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  return squares > 0 ? 1 / squares : 0;
}

/**
 * Places of `n` members of equal weight that stand for weighted ones: evenly spaced along the summed weights, so that a
 * member with k times the even weight comes ⌊k⌋ or ⌈k⌉ times, and the same weights always give the same picks.
 *
 * @param weights add up to 1
 */
export function evenPicks(weights: Float64Array, n: number): number[] {
  const picks: number[] = [];
  let at = 0;
  let sum = weights[0]!;
  for (let k = 0; k < n; k++) {
    const wanted = (k + 0.5) / n;
    while (sum < wanted && at + 1 < weights.length) sum += weights[++at]!;
    picks.push(at);
  }
  return picks;
}

/** Weighted quantile of numbers, straight between the middles of neighbours' weights; NaN counts as later than all. */
export function weightedQuantile(
  values: ArrayLike<number>,
  weights: Float64Array,
  p_frac: number,
): number | null {
  const order = Array.from(weights, (_, i) => i).sort((a, b) => rankOf(values[a]!) - rankOf(values[b]!));
  let below = 0;
  let last: { middle: number; value: number } | null = null;
  for (const i of order) {
    if (weights[i]! <= 0) continue;
    const middle = below + weights[i]! / 2;
    const value = rankOf(values[i]!);
    if (middle >= p_frac) {
      if (last === null || !Number.isFinite(value)) return Number.isFinite(value) ? value : null;
      const share = (p_frac - last.middle) / (middle - last.middle);
      return last.value + share * (value - last.value);
    }
    last = { middle, value };
    below += weights[i]!;
  }
  return last !== null && Number.isFinite(last.value) ? last.value : null;
}

const rankOf = (value: number): number => (Number.isNaN(value) ? Number.POSITIVE_INFINITY : value);
