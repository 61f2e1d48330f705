/** One published number beside ours. Both are spans: a publication gives a band, and we do not know all that was done. */
export interface Sample {
  /** What was measured, with the conditions that count. */
  name: string;
  unit: string;
  /** Key in core/sources.json. */
  source: string;
  /** How we read it: read, quoted elsewhere, or computed from such. */
  mark: "R" | "Q" | "C";
  published: readonly [low: number, high: number];
  /** Lowest and highest of what we get over the conditions that the publication leaves open. */
  ours: readonly [low: number, high: number];
  /**
   * A number that we miss, and why. It stays in the table and in the mean; the test fails when it is no longer
   * missed or when the gap grows past `gap_frac`, so that what is written here is true.
   */
  miss?: { gap_frac: number; why: string };
}

export const span = (values: readonly number[]): readonly [number, number] => [
  Math.min(...values),
  Math.max(...values),
];

const middle = ([low, high]: readonly [number, number]): number =>
  Number.isFinite(high) ? 0.5 * (low + high) : low;

/** Distance between the two spans as a share of the published middle; 0 where they overlap, signed like ours − theirs. */
export function gap_frac({ published, ours }: Sample): number {
  const whole = Math.abs(middle(published)) || 1;
  if (ours[0] > published[1]) return (ours[0] - published[1]) / whole;
  if (ours[1] < published[0]) return (ours[1] - published[0]) / whole;
  return 0;
}

/** Our middle against the published middle, as a share: how far off we are where both only give bands. */
function error_frac(sample: Sample): number {
  const whole = middle(sample.published);
  return (middle(sample.ours) - whole) / (Math.abs(whole) || 1);
}

export interface Score {
  mean_frac: number;
  worst_frac: number;
  missed: number;
}

/** Mean and worst size of the gap over all samples, hits and misses alike. */
export function scoreOf(samples: readonly Sample[]): Score {
  const sizes = samples.map((sample) => Math.abs(gap_frac(sample)));
  return {
    mean_frac: sizes.reduce((a, b) => a + b, 0) / sizes.length,
    worst_frac: Math.max(...sizes),
    missed: sizes.filter((size) => size > 0).length,
  };
}

const figure = (value: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(3))) : value > 0 ? "more" : "–";

export function spanText([low, high]: readonly [number, number]): string {
  return low === high ? figure(low) : `${figure(low)} … ${figure(high)}`;
}

/** Prints rows as columns, only when a person asked for the score. */
export function printTable(
  title: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
): void {
  if (process.env.COLDSTOW_SCORE === undefined) return;
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
  const line = (row: readonly string[]) =>
    row
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join("  ")
      .trimEnd();
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  console.log(["", title, line(head), rule, ...rows.map(line), ""].join("\n"));
}

const percent = (share: number): string => `${share > 0 ? "+" : ""}${Math.round(100 * share)} %`;

function gapText(sample: Sample): string {
  const gap = gap_frac(sample);
  if (gap !== 0) return `${percent(gap)} outside`;
  const [low, high] = sample.published;
  return sample.ours[0] >= low && sample.ours[1] <= high ? "inside" : "overlap";
}

export function printSamples(title: string, samples: readonly Sample[]): void {
  const rows = samples.map((sample) => [
    sample.name,
    `${spanText(sample.published)} ${sample.unit}`.trim(),
    `${spanText(sample.ours)} ${sample.unit}`.trim(),
    Number.isFinite(sample.published[1]) ? percent(error_frac(sample)) : "",
    gapText(sample),
    `${sample.source} (${sample.mark})`,
  ]);
  printTable(title, ["what", "published", "ours", "middles", "gap", "source"], rows);
}
