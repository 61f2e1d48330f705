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

/** Where a quantity stands in a data line, the figure from which it counts as missing, its range, and its words. */
interface Field {
  column: number;
  missing: number;
  min: number;
  max: number;
  must: string;
}

/** Columns and missing-value marks of the EnergyPlus weather data dictionary. @source energyplus-epw */
const fields = {
  dryBulb: { column: 6, missing: 99.9, min: -70, max: 70, must: "be a dry bulb from −70 to 70 °C" },
  dewPoint: {
    column: 7,
    missing: 99.9,
    min: -70,
    max: dampest_C,
    must: `be a dew point from −70 to ${dampest_C} °C`,
  },
  humidity: { column: 8, missing: 999, min: 1, max: 110, must: "be a relative humidity from 1 to 110 %" },
  pressure: {
    column: 9,
    missing: 999_999,
    min: 31_000,
    max: 110_000,
    must: "be a pressure from 31 000 to 110 000 Pa",
  },
  global: {
    column: 13,
    missing: 9999,
    min: 0,
    max: 1500,
    must: "be a global irradiance from 0 to 1500 Wh/m²",
  },
  diffuse: {
    column: 15,
    missing: 9999,
    min: 0,
    max: 1500,
    must: "be a diffuse irradiance from 0 to 1500 Wh/m²",
  },
  wind: { column: 21, missing: 999, min: 0, max: 75, must: "be a wind from 0 to 75 m/s" },
  cloud: { column: 22, missing: 99, min: 0, max: 10, must: "be a sky cover from 0 to 10 tenths" },
} as const satisfies Record<string, Field>;

const hour_s = 3600;

/**
 * Hourly weather from an EnergyPlus weather file (.epw). Its years are put together from different ones, so hours are
 * matched by month, day and hour; 29 February is read from the 28th where the file has none. Hours are local standard
 * time by the file's own offset, each line standing for the hour that ends then: air of that end, sun of that hour.
 *
 * Read for a day before departure to a day after return; the rest of the file is not looked at. Hours whose air, wind,
 * moisture or sky is marked missing are bridged up to 3 h.
 *
 * @returns all mistakes at once (at most 50); never throws for what the file holds
 * @source energyplus-epw
 */
export function readEpw(text: string, window: HourWindow): HourReading {
  const size = sizeProblem(text);
  if (size !== null) return { ok: false, problems: [size] };
  const table = Papa.parse<string[]>(text, { header: false, skipEmptyLines: false, delimiter: "," }).data;
  const problems: FileProblem[] = [];
  const offset_h = readOffset(table, problems);
  const first = firstDataLine(table, problems);
  if (offset_h === null || first === null) return { ok: false, problems };
  const hours = indexHours(table, first);
  const rows: LinedRow[] = [];
  for (const stamp_ms of stamps(window, offset_h)) {
    const i = findHour(hours, stamp_ms, offset_h);
    if (i === undefined) continue;
    const row = epwRow(table[i]!, i + 1, (stamp_ms - window.departUtc_ms) / 1000, problems);
    if (row !== null) rows.push(row);
  }
  return checkedRows(rows, window, problems);
}

function readOffset(table: readonly string[][], problems: FileProblem[]): number | null {
  const location = table[0] ?? [];
  if (location[0]?.trim().toUpperCase() !== "LOCATION") {
    problems.push({
      line: 1,
      must: "begin with LOCATION",
      got: (location[0] ?? "").slice(0, 40) || "nothing",
    });
    return null;
  }
  return readNumber(location[8], "be a time zone from −12 to 14 h in LOCATION", -12, 14, 1, problems);
}

function firstDataLine(table: readonly string[][], problems: FileProblem[]): number | null {
  const i = table.findIndex((cells) => cells[0]?.trim().toUpperCase() === "DATA PERIODS");
  if (i === -1) {
    problems.push({ line: null, must: "have a line DATA PERIODS before its data", got: "none" });
    return null;
  }
  const perHour = (table[i]![2] ?? "").trim();
  if (perHour === "1") return i + 1;
  problems.push({ line: i + 1, must: "hold one record an hour", got: perHour === "" ? "nothing" : perHour });
  return null;
}

const hourKey = (month: number, day: number, hour: number): number => (month * 100 + day) * 100 + hour;

function indexHours(table: readonly string[][], first: number): Map<number, number> {
  const hours = new Map<number, number>();
  for (let i = first; i < table.length; i++) {
    const cells = table[i]!;
    if (cells.length > 3) hours.set(hourKey(Number(cells[1]), Number(cells[2]), Number(cells[3])), i);
  }
  return hours;
}

/** Ends of hours in the file's clock, from a day before departure to a day after return. */
function stamps(window: HourWindow, offset_h: number): number[] {
  const shift_ms = offset_h * hour_s * 1000;
  const hour_ms = hour_s * 1000;
  const from = Math.floor((window.departUtc_ms - 24 * hour_ms + shift_ms) / hour_ms);
  const to = Math.ceil((window.departUtc_ms + window.duration_s * 1000 + 24 * hour_ms + shift_ms) / hour_ms);
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) * hour_ms - shift_ms);
}

function findHour(
  hours: ReadonlyMap<number, number>,
  stamp_ms: number,
  offset_h: number,
): number | undefined {
  // One second back, so that midnight is hour 24 of the day it ends.
  const inHour = Temporal.Instant.fromEpochMilliseconds(stamp_ms + offset_h * hour_s * 1000 - 1000);
  const { month, day, hour } = inHour.toZonedDateTimeISO("UTC");
  const found = hours.get(hourKey(month, day, hour + 1));
  return found ?? (month === 2 && day === 29 ? hours.get(hourKey(2, 28, hour + 1)) : undefined);
}

function epwRow(
  cells: readonly string[],
  line: number,
  t_s: number,
  problems: FileProblem[],
): LinedRow | null {
  const before = problems.length;
  const read = (field: Field): number | null => {
    const text = (cells[field.column] ?? "").trim();
    if (text === "" || Number(text) >= field.missing) return null;
    return readNumber(text, field.must, field.min, field.max, line, problems);
  };
  const air_C = read(fields.dryBulb);
  const dew = read(fields.dewPoint);
  const humidity_pct = dew === null ? read(fields.humidity) : null;
  const wind_m_per_s = read(fields.wind);
  const cloud = read(fields.cloud);
  const global_W_per_m2 = read(fields.global);
  const diffuse_W_per_m2 = read(fields.diffuse);
  const pressure_Pa = read(fields.pressure);
  if (problems.length > before || air_C === null || wind_m_per_s === null) return null;
  if (cloud === null && global_W_per_m2 === null) return null;
  const canReckon = humidity_pct !== null && air_C >= -40 && air_C <= 60;
  const dewPoint = dew ?? (canReckon ? dewPoint_C(air_C, Math.min(1, humidity_pct / 100)) : null);
  if (dewPoint === null) return null;
  if (dewPoint > dampest_C) {
    const must = `be such that the dew point is at most ${dampest_C} °C in dry bulb and humidity`;
    problems.push({
      line,
      must,
      got: `${air_C} °C with ${humidity_pct} %, dew point ${dewPoint.toFixed(1)} °C`,
    });
    return null;
  }
  const cloud_frac = cloud === null ? null : cloud / 10;
  const sky = { cloud_frac, global_W_per_m2, diffuse_W_per_m2, sunOver_s: hour_s, pressure_Pa };
  return { line, row: { t_s, air_C, dewPoint_C: dewPoint, wind_m_per_s, ...sky } };
}
