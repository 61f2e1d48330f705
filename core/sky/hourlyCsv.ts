import Papa from "papaparse";
import { Temporal } from "temporal-polyfill";
import { dewPoint_C } from "../matter/moistAir.ts";
import {
  checkedRows,
  dampest_C,
  type FileProblem,
  type HourReading,
  type HourWindow,
  type LinedRow,
  readNumber,
  sizeProblem,
} from "./hourRecord.ts";
import { localInstant_ms } from "./localTime.ts";

const needed = ["time", "temp_C", "humidity_pct", "wind_m_per_s"] as const;
const sunColumns = ["ghi_W_per_m2", "cloud_pct"] as const;

/** What a pyranometer may read at night. */
const darkOffset_W_per_m2 = -10;

/**
 * Hourly weather from CSV with a heading line: `time` (ISO, local to the place, or with an offset), `temp_C`,
 * `humidity_pct`, `wind_m_per_s`, and `ghi_W_per_m2` (of the moment) or `cloud_pct`, or both. Comma, semicolon or tab;
 * decimals with a point; other columns, blank lines and lines that begin with # are passed over.
 *
 * Rows may lie up to 3 h apart and must reach from departure to return. Night readings of sun down to −10 count as 0.
 *
 * @returns all mistakes at once (at most 50); never throws for what a person wrote
 * @source derivation
 */
export function readHourlyCsv(text: string, window: HourWindow): HourReading {
  const size = sizeProblem(text);
  if (size !== null) return { ok: false, problems: [size] };
  const options = { header: false, skipEmptyLines: false, delimitersToGuess: [",", ";", "\t"] } as const;
  const table = Papa.parse<string[]>(text, {
    ...options,
    delimitersToGuess: [...options.delimitersToGuess],
  }).data;
  const lines = table
    .map((cells, i) => ({ line: i + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== "") && !cells[0]!.startsWith("#"));
  const [heading, ...body] = lines;
  const names = heading?.cells ?? [];
  const missing = headingProblems(names, heading?.line ?? 1);
  if (missing.length > 0) return { ok: false, problems: missing };
  const problems: FileProblem[] = [];
  const rows = body
    .map(({ line, cells }) => csvRow(line, (name) => cells[names.indexOf(name)], window, problems))
    .filter((row) => row !== null);
  return checkedRows(rows, window, problems);
}

function headingProblems(names: readonly string[], line: number): FileProblem[] {
  const got = names.join(", ").slice(0, 200) || "nothing";
  const absent = needed.filter((name) => !names.includes(name)).map((name) => `have a column ${name}`);
  if (!sunColumns.some((name) => names.includes(name)))
    absent.push(`have a column ${sunColumns.join(" or ")}`);
  return absent.map((must) => ({ line, must, got }));
}

function csvRow(
  line: number,
  cell: (name: string) => string | undefined,
  window: HourWindow,
  problems: FileProblem[],
): LinedRow | null {
  const before = problems.length;
  const number = (name: string, must: string, min: number, max: number): number =>
    readNumber(cell(name), `be ${must} in ${name}`, min, max, line, problems) ?? 0;
  const optional = (name: string, must: string, min: number, max: number): number | null =>
    (cell(name) ?? "") === "" ? null : number(name, must, min, max);
  const t_s = readTime(cell("time") ?? "", line, window, problems);
  const air = number("temp_C", "a number from −40 to 60", -40, 60);
  const humidity_pct = number("humidity_pct", "a number from 1 to 100", 1, 100);
  const wind_m_per_s = number("wind_m_per_s", "a number from 0 to 75", 0, 75);
  const sun = optional("ghi_W_per_m2", "a number from 0 to 1500", darkOffset_W_per_m2, 1500);
  const cloud_pct = optional("cloud_pct", "a number from 0 to 100", 0, 100);
  if (sun === null && cloud_pct === null) {
    problems.push({ line, must: `have a number in ${sunColumns.join(" or ")}`, got: "nothing" });
  }
  if (problems.length > before || t_s === null) return null;
  const dew_C = dewPoint_C(air, humidity_pct / 100);
  if (dew_C > dampest_C) {
    const must = `be such that the dew point is at most ${dampest_C} °C in temp_C and humidity_pct`;
    problems.push({ line, must, got: `${air} °C with ${humidity_pct} %, dew point ${dew_C.toFixed(1)} °C` });
    return null;
  }
  const row = {
    t_s,
    air_C: air,
    dewPoint_C: dew_C,
    wind_m_per_s,
    cloud_frac: cloud_pct === null ? null : cloud_pct / 100,
    global_W_per_m2: sun === null ? null : Math.max(0, sun),
    diffuse_W_per_m2: null,
    sunOver_s: 0,
    pressure_Pa: null,
  };
  return { line, row };
}

function readTime(text: string, line: number, window: HourWindow, problems: FileProblem[]): number | null {
  const iso = text.replace(" ", "T");
  if (/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?(Z|[+-]\d\d:?\d\d)?$/.test(iso)) {
    try {
      const isLocal = !/(Z|[+-]\d\d:?\d\d)$/.test(iso.slice(10));
      const instant_ms = isLocal
        ? localInstant_ms(iso, window.timezone)
        : Temporal.Instant.from(iso).epochMilliseconds;
      return (instant_ms - window.departUtc_ms) / 1000;
    } catch {
      // Falls through to the problem: a date that no calendar has, such as February 30.
    }
  }
  problems.push({
    line,
    must: "be a time such as 2027-06-18T06:00 in time",
    got: text === "" ? "nothing" : text,
  });
  return null;
}
