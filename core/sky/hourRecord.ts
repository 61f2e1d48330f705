import type { HourRow } from "./hourlyWeather.ts";
import { localIso } from "./localTime.ts";

/** The trip that an hourly file must cover. */
export interface HourWindow {
  departUtc_ms: number;
  duration_s: number;
  timezone: string;
}

/** One mistake in a weather file: `must` continues "it must …" or "it must be …". */
export interface FileProblem {
  /** Counts from 1; null: the file as a whole. */
  line: number | null;
  must: string;
  got: string;
}

export type HourReading =
  | { ok: true; rows: HourRow[]; lined: readonly LinedRow[] }
  | { ok: false; problems: FileProblem[] };

/** A row with the line it came from. */
export interface LinedRow {
  line: number;
  row: HourRow;
}

/** Longest stretch without a row that a straight line may bridge. */
const widestGap_s = 3 * 3600;
/**
 * Dew point above which a row is a mistake: no air on earth is near it, and weather is reckoned with no damper.
 *
 * @source engineering-judgement
 */
export const dampest_C: number = 50;
const mostCharacters = 2_000_000;
const mostProblems = 50;

/** What is wrong with a file before a single row is read; null when nothing is. @source derivation */
export function sizeProblem(text: string): FileProblem | null {
  if (text.trim() === "") return { line: null, must: "hold hourly weather", got: "an empty file" };
  if (text.length <= mostCharacters) return null;
  return { line: null, must: "be at most 2 MB", got: `${(text.length / 1e6).toFixed(1)} MB` };
}

/** A finite number in its range, or null with the problem noted. @source derivation */
export function readNumber(
  cell: string | undefined,
  must: string,
  min: number,
  max: number,
  line: number,
  problems: FileProblem[],
): number | null {
  const text = (cell ?? "").trim();
  const value = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
  if (value >= min && value <= max) return value;
  problems.push({ line, must, got: text === "" ? "nothing" : text });
  return null;
}

/**
 * Rows that rise in time, without gaps in the trip, from before departure to after return; or what is wrong.
 *
 * @source derivation
 */
export function checkedRows(
  read: readonly LinedRow[],
  window: HourWindow,
  problems: FileProblem[],
): HourReading {
  const all = [...problems];
  read.forEach(({ line, row }, i) => {
    const before = read[i - 1]?.row;
    if (before === undefined) return;
    const step_s = row.t_s - before.t_s;
    if (step_s <= 0) {
      all.push({ line, must: "be later than the row before it", got: iso(row.t_s, window) });
    } else if (step_s > widestGap_s && row.t_s > 0 && before.t_s < window.duration_s) {
      all.push({ line, must: "follow the row before it within 3 h", got: `${(step_s / 3600).toFixed(1)} h` });
    }
  });
  if (problems.length === 0) all.push(...coverProblem(read, window));
  if (all.length === 0) return withLines(read.filter(({ row }) => isNear(row, window)));
  if (all.length <= mostProblems) return { ok: false, problems: all };
  const rest = { line: null, must: "have fewer mistakes", got: `${all.length - mostProblems} more` };
  return { ok: false, problems: [...all.slice(0, mostProblems), rest] };
}

const withLines = (read: readonly LinedRow[]): HourReading => ({
  ok: true,
  rows: read.map(({ row }) => row),
  lined: read,
});

/** Within the trip or a good day of it: all that the weather of the trip is made from. */
function isNear(row: HourRow, window: HourWindow): boolean {
  const margin_s = 86_400 + widestGap_s;
  return row.t_s >= -margin_s && row.t_s <= window.duration_s + margin_s;
}

function coverProblem(read: readonly LinedRow[], window: HourWindow): FileProblem[] {
  const trip = `${iso(0, window)} to ${iso(window.duration_s, window)}`;
  const must = `cover the trip, ${trip}`;
  if (read.length < 2) return [{ line: null, must, got: read.length === 0 ? "no rows" : "one row" }];
  const times = read.map(({ row }) => row.t_s);
  const first_s = Math.min(...times);
  const last_s = Math.max(...times);
  if (first_s <= 0 && last_s >= window.duration_s) return [];
  return [{ line: null, must, got: `${iso(first_s, window)} to ${iso(last_s, window)}` }];
}

function iso(t_s: number, window: HourWindow): string {
  return localIso(Math.round(window.departUtc_ms + t_s * 1000), window.timezone);
}
