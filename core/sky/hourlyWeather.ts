import { standardPressure_Pa } from "../matter/moistAir.ts";
import { DomainError, requireFinite } from "../quantity/errors.ts";
import { clearSky_W_per_m2 } from "./clearSky.ts";
import { cloudBehind_frac } from "./cloud.ts";
import { diffuse_W_per_m2 } from "./diffuse.ts";
import { type Place, sunHeight_deg } from "./sun.ts";
import type { Weather } from "./types.ts";
import { between, shineThroughCloud } from "./weather.ts";
import { gridWeather, localDays } from "./weatherGrid.ts";

/** Weather at one moment of an hourly record; null: not recorded. Of `cloud_frac` and `global_W_per_m2` one must be. */
export interface HourRow {
  /** From departure. */
  t_s: number;
  air_C: number;
  dewPoint_C: number;
  wind_m_per_s: number;
  cloud_frac: number | null;
  global_W_per_m2: number | null;
  diffuse_W_per_m2: number | null;
  /** Irradiance is the mean over this long a time before `t_s`; 0: it is of the moment. */
  sunOver_s: number;
  pressure_Pa: number | null;
}

/** Most sun that a horizontal surface is taken to get: half as much again as outside the atmosphere. */
const brightest_W_per_m2 = 2000;

/** A row whose sun, carried on as a share of the clear sky's, would be more than there is. */
export interface BrightRow {
  /** Place of the row in the rows. */
  index: number;
  /** Most that this row may have, W/m². */
  most_W_per_m2: number;
}

/** Rows of the sun that cannot be: one at least. */
export class TooBright extends DomainError {
  readonly rows: readonly BrightRow[];
  constructor(rows: readonly BrightRow[]) {
    super(
      `rows must have a sun that carries on below ${brightest_W_per_m2} W/m², got ${rows.length} brighter`,
    );
    this.rows = rows;
  }
}

/** Below this clear-sky irradiance a record says nothing about the sky. */
const faint_W_per_m2 = 20;

interface Series {
  times: number[];
  values: number[];
}

/**
 * Weather from an hourly record. Air, dew point, wind, cloud and pressure run in straight lines from row to row;
 * recorded sun is carried as a share of the clear sky's, so that it rises and sets with the sun and not with the rows.
 * Cloud that was not recorded is what would leave the recorded share of the sun over the day around.
 * Before the first row and after the last the same hour of the next or previous day stands in.
 *
 * @param rows in order of time, at least two, at most three hours apart within the trip
 * @throws TooBright where recorded sun is a share of the clear sky's that would be too much at the hours around
 * @throws DomainError on other rows
 * @source haurwitz-1945, kasten-czeplak-1980, erbs-1982
 */
export function weatherFromHours(
  rows: readonly HourRow[],
  place: Place,
  departUtc_ms: number,
  duration_s: number,
): Weather {
  checkRows(rows);
  const take = (value: (row: HourRow) => number | null, at = (row: HourRow) => row.t_s): Series => {
    const known = rows.filter((row) => value(row) !== null);
    return { times: known.map(at), values: known.map((row) => value(row)!) };
  };
  const clear = rows.map((row) => clearSkyOver(row, place, departUtc_ms));
  const share = new Map(rows.map((row, i) => [row, clearShare(row, clear[i]!)]));
  const midSun = (row: HourRow): number => row.t_s - row.sunOver_s / 2;
  const air = take((row) => row.air_C);
  const dew = take((row) => Math.min(row.air_C, row.dewPoint_C));
  const wind = take((row) => row.wind_m_per_s);
  const cloud = take((row) => row.cloud_frac ?? cloudAround(rows, clear, row.t_s));
  const pressure = take((row) => row.pressure_Pa ?? standardPressure_Pa(place.elevation_m));
  const bright = take((row) => share.get(row)!, midSun);
  const sunAt = [...rows.keys()].filter((i) => share.get(rows[i]!) !== null);
  const diffuse = take(diffuseShare, midSun);
  const within = wrapDays(rows[0]!.t_s, rows.at(-1)!.t_s);
  const days = localDays(place, departUtc_ms, duration_s, -1, 1);
  const tooBright: BrightRow[] = [];
  const weather = gridWeather(days, place, departUtc_ms, (t_s, height_deg, out) => {
    const t = within(t_s);
    const read = (series: Series): number => between(series.times, series.values, t);
    out.air_C = read(air);
    out.dewPoint_C = read(dew);
    out.wind_m_per_s = read(wind);
    out.cloud_frac = read(cloud);
    out.pressure_Pa = read(pressure);
    const instant_ms = departUtc_ms + t_s * 1000;
    if (bright.times.length === 0) return shineThroughCloud(out, height_deg, instant_ms);
    out.global_W_per_m2 = read(bright) * clearSky_W_per_m2(height_deg);
    if (out.global_W_per_m2 > brightest_W_per_m2) {
      const index = sunAt[brighterBeside(bright, t)]!;
      const most_W_per_m2 = (clear[index]! * brightest_W_per_m2) / clearSky_W_per_m2(height_deg);
      tooBright.push({ index, most_W_per_m2 });
      out.global_W_per_m2 = brightest_W_per_m2;
    }
    out.diffuse_W_per_m2 =
      diffuse.times.length > 0
        ? read(diffuse) * out.global_W_per_m2
        : diffuse_W_per_m2(out.global_W_per_m2, height_deg, instant_ms);
  });
  if (tooBright.length > 0) throw new TooBright(strictest(tooBright));
  return weather;
}

/** Each row once, in order, with the least of what it may have. */
function strictest(found: readonly BrightRow[]): BrightRow[] {
  const sorted = [...found].sort((a, b) => a.index - b.index || a.most_W_per_m2 - b.most_W_per_m2);
  return sorted.filter(({ index }, i) => index !== sorted[i - 1]?.index);
}

/** Of the two values that a moment lies between, the place of the larger. */
function brighterBeside(bright: Series, t_s: number): number {
  const after = bright.times.findIndex((time) => time > t_s);
  const right = after === -1 ? bright.times.length - 1 : after;
  const left = after === -1 ? right : Math.max(0, right - 1);
  return bright.values[left]! > bright.values[right]! ? left : right;
}

/** Clear-sky irradiance as the row would have recorded it. */
function clearSkyOver(row: HourRow, place: Place, departUtc_ms: number): number {
  const n = row.sunOver_s === 0 ? 1 : 6;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const t_s = row.t_s - (row.sunOver_s * (i + 0.5)) / n;
    sum += clearSky_W_per_m2(sunHeight_deg(departUtc_ms + t_s * 1000, place));
  }
  return sum / n;
}

function clearShare(row: HourRow, clear_W_per_m2: number): number | null {
  if (row.global_W_per_m2 === null || clear_W_per_m2 < faint_W_per_m2) return null;
  return row.global_W_per_m2 / clear_W_per_m2;
}

function diffuseShare(row: HourRow): number | null {
  const { global_W_per_m2, diffuse_W_per_m2: diffuse } = row;
  if (diffuse === null || global_W_per_m2 === null || global_W_per_m2 < faint_W_per_m2) return null;
  return Math.min(1, diffuse / global_W_per_m2);
}

/** Cloud that leaves the recorded share of the clear sky's sun within twelve hours on either side. */
function cloudAround(rows: readonly HourRow[], clear: readonly number[], t_s: number): number {
  let recorded = 0;
  let possible = 0;
  rows.forEach((row, i) => {
    if (row.global_W_per_m2 === null || Math.abs(row.t_s - t_s) > 43_200) return;
    recorded += row.global_W_per_m2;
    possible += clear[i]!;
  });
  return possible < faint_W_per_m2 ? 0 : cloudBehind_frac(recorded / possible);
}

/** Moves a time by whole days into the span of the rows; a record shorter than a day is held at its ends. */
function wrapDays(first_s: number, last_s: number): (t_s: number) => number {
  const day_s = 86_400;
  if (last_s - first_s < day_s) return (t_s) => t_s;
  return (t_s) => {
    if (t_s < first_s) return t_s + Math.ceil((first_s - t_s) / day_s) * day_s;
    if (t_s > last_s) return t_s - Math.ceil((t_s - last_s) / day_s) * day_s;
    return t_s;
  };
}

function checkRows(rows: readonly HourRow[]): void {
  if (rows.length < 2) throw new DomainError(`rows must be at least 2, got ${rows.length}`);
  rows.forEach((row, i) => {
    requireFinite("air_C", row.air_C, -90, 70);
    requireFinite("dewPoint_C", row.dewPoint_C, -100, 50);
    requireFinite("wind_m_per_s", row.wind_m_per_s, 0, 120);
    requireFinite("sunOver_s", row.sunOver_s, 0, 10_800);
    if (row.cloud_frac !== null) requireFinite("cloud_frac", row.cloud_frac, 0, 1);
    if (row.global_W_per_m2 !== null) requireFinite("global_W_per_m2", row.global_W_per_m2, 0, 1500);
    if (row.diffuse_W_per_m2 !== null) requireFinite("diffuse_W_per_m2", row.diffuse_W_per_m2, 0, 1500);
    if (row.cloud_frac === null && row.global_W_per_m2 === null) {
      throw new DomainError(`rows must have cloud_frac or global_W_per_m2, got neither at ${row.t_s} s`);
    }
    if (i > 0 && !(row.t_s > rows[i - 1]!.t_s))
      throw new DomainError(`rows must rise in time, got ${row.t_s} s`);
  });
}
