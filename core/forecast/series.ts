/** Value at `t_s` of a polyline with rising times; where two values share a moment (an act), the later one. */
export function valueAt(times_s: readonly number[], values: readonly number[], t_s: number): number {
  let low = 0;
  let high = times_s.length - 1;
  if (t_s >= times_s[high]) return values[high];
  if (t_s < times_s[0]) return values[0];
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (times_s[mid] <= t_s) low = mid;
    else high = mid;
  }
  const span = times_s[high] - times_s[low];
  return span <= 0
    ? values[high]
    : values[low] + ((t_s - times_s[low]) / span) * (values[high] - values[low]);
}

/** As `valueAt`, but where two values share a moment, the earlier one: how things stood before the act. */
export function valueBefore(times_s: readonly number[], values: readonly number[], t_s: number): number {
  const i = times_s.indexOf(t_s);
  return i < 0 ? valueAt(times_s, values, t_s) : values[i];
}

/** First moment from index `from` on at which the polyline is above (or at most) `limit`, straight between its points. */
export function firstCrossing_s(
  times_s: readonly number[],
  values: readonly number[],
  limit: number,
  above: boolean,
  from_s: number = Number.NEGATIVE_INFINITY,
): number | null {
  const beyond = (value: number): boolean => (above ? value > limit : value <= limit);
  for (let i = 0; i < times_s.length; i++) {
    if (times_s[i] < from_s || !beyond(values[i])) continue;
    if (i === 0 || times_s[i - 1] < from_s || beyond(values[i - 1])) return times_s[i];
    return (
      times_s[i - 1] + ((limit - values[i - 1]) / (values[i] - values[i - 1])) * (times_s[i] - times_s[i - 1])
    );
  }
  return null;
}

/** Time that the polyline spends above `limit`. */
export function timeAbove_s(times_s: readonly number[], values: readonly number[], limit: number): number {
  let sum = 0;
  for (let i = 1; i < times_s.length; i++) {
    const a = values[i - 1] - limit;
    const b = values[i] - limit;
    const span = times_s[i] - times_s[i - 1];
    if (a > 0 && b > 0) sum += span;
    else if (a > 0 || b > 0) sum += (span * Math.max(a, b)) / Math.abs(b - a);
  }
  return sum;
}

/** Time that the first polyline is above its limit while the second, at the same moments, is above its own. */
export function timeBothAbove_s(
  times_s: readonly number[],
  one: readonly number[],
  limit: number,
  two: readonly number[],
  other: number,
): number {
  return timeAbove_s(
    times_s,
    one.map((value, i) => Math.min(value - limit, two[i] - other)),
    0,
  );
}
