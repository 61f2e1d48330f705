import { saturationPressure_Pa } from "../matter/moistAir.ts";
import { dayDewPoint_C } from "../sky/airTemperature.ts";
import { readHourlyFile } from "../sky/hourlyFiles.ts";
import { TooBright, weatherFromHours } from "../sky/hourlyWeather.ts";
import type { FileProblem, LinedRow } from "../sky/hourRecord.ts";
import type { Weather } from "../sky/types.ts";
import { type DayWeather, weatherFromDays } from "../sky/weather.ts";
import { besideWords, type ReadBeside, staysBeside } from "./beside.ts";
import type { Calendar } from "./calendar.ts";
import type { DayFile, WeatherFile } from "./file.ts";
import { measures, type Notes } from "./notes.ts";
import type { Trip } from "./types.ts";

/** The weather of the trip, or null where it has a problem or cannot be known yet. */
export function resolveWeather(
  notes: Notes,
  file: WeatherFile | undefined,
  place: Trip["place"],
  calendar: Calendar,
  readBeside: ReadBeside | undefined,
): Weather | null {
  if (file?.days !== undefined && file.hourly !== undefined) {
    notes.refuse("weather.hourly", "left out where days are given", file.hourly);
  }
  if (file?.hourly !== undefined) return hourly(notes, file.hourly.file, place, calendar, readBeside);
  const before = notes.findings.length;
  const days = (file?.days ?? [{}]).map((day, i) => dayWeather(notes, day, `weather.days[${i}]`));
  if (notes.findings.length > before || !known(place, calendar)) return null;
  return weatherFromDays(days, place, calendar.depart_ms, calendar.duration_s);
}

const known = (place: Trip["place"], calendar: Calendar): boolean =>
  !Number.isNaN(calendar.duration_s) && !Number.isNaN(place.elevation_m);

/** No air on earth is damper than this dew point. */
const dampest_C = 45;
/** A wrong clock makes every row of a morning or an evening too bright: these tell enough. */
const mostSunProblems = 10;
/** Usual span between a day's low and high, for the one that is missing. */
const daySpan_K = 12;

/** High and low of a day; without either a warm summer day, without one a usual span from the other. */
function extremes(notes: Notes, day: DayFile, path: string): { high_C: number; low_C: number } {
  const [highAt, lowAt] = [`${path}.high`, `${path}.low`];
  const highGiven_C = notes.siOrNull(highAt, day.high, measures.outdoors);
  const lowGiven_C = notes.siOrNull(lowAt, day.low, measures.outdoors);
  const typed = (t_C: number): string => `${Math.max(-40, Math.min(60, Math.round(t_C)))} C`;
  const missing = (at: string, usual_C: number, why: string): number => {
    const most_C = at === lowAt ? dampest_C : 60;
    const range = [typed(usual_C - 6), typed(Math.min(usual_C + 6, Math.max(usual_C, most_C)))] as const;
    return Number.isNaN(usual_C)
      ? usual_C
      : notes.si(at, notes.assume(at, typed(usual_C), why, range), measures.outdoors);
  };
  const apart = `not given: ${daySpan_K} K from the other`;
  const summer = "no weather given: a warm summer day";
  const high_C =
    highGiven_C ??
    missing(highAt, lowGiven_C === null ? 30 : lowGiven_C + daySpan_K, lowGiven_C === null ? summer : apart);
  const low_C = lowGiven_C ?? missing(lowAt, high_C - daySpan_K, highGiven_C === null ? summer : apart);
  if (low_C > high_C) notes.refuse(lowAt, `at most the high, ${day.high}`, day.low);
  return { high_C, low_C };
}

function dayWeather(notes: Notes, day: DayFile, path: string): DayWeather {
  const { high_C, low_C } = extremes(notes, day, path);
  if (day.humidity === undefined && low_C <= high_C) assumeHumidity(notes, path, low_C, high_C);
  const cloud = day.cloud ?? notes.assume(`${path}.cloud`, "25 %", "not given: mostly fair", ["0 %", "60 %"]);
  const wind =
    day.wind ?? notes.assume(`${path}.wind`, "2 m/s", "not given: a light breeze", ["1 m/s", "5 m/s"]);
  const humidity_frac = notes.siOrNull(`${path}.humidity`, day.humidity, measures.humidity);
  const told = [high_C, low_C, humidity_frac].every((value) => !Number.isNaN(value)) && low_C <= high_C;
  if (told && dayDewPoint_C(low_C, high_C, humidity_frac) > dampest_C) {
    notes.refuse(`${path}.humidity`, `such that the dew point is at most ${dampest_C} C`, day.humidity);
  }
  return {
    high_C,
    low_C,
    humidity_frac,
    cloud_frac: notes.si(`${path}.cloud`, cloud, measures.share),
    wind_m_per_s: notes.si(`${path}.wind`, wind, measures.wind),
  };
}

/** Lists the humidity that follows when dew forms at the daily low; the weather itself then goes by the low. */
function assumeHumidity(notes: Notes, path: string, low_C: number, high_C: number): void {
  const mean_Pa = saturationPressure_Pa((low_C + high_C) / 2);
  const share = saturationPressure_Pa(low_C) / mean_Pa;
  const most = Math.max(share, Math.min(0.98, saturationPressure_Pa(dampest_C) / mean_Pa - 0.01));
  const typed = (percent: number): string => `${Math.round(Math.min(100 * most, Math.max(3, percent)))} %`;
  const range = [typed(100 * share - 25), typed(100 * share + 20)] as const;
  notes.assume(
    `${path}.humidity`,
    typed(100 * share),
    "not given: as if dew formed at the daily low",
    range,
    "fao-56",
  );
}

function hourly(
  notes: Notes,
  name: string,
  place: Trip["place"],
  calendar: Calendar,
  readBeside: ReadBeside | undefined,
): Weather | null {
  const path = "weather.hourly.file";
  if (!staysBeside(name)) {
    notes.refuse(path, besideWords, name);
    return null;
  }
  if (!/\.(epw|csv)$/i.test(name)) {
    notes.refuse(path, "the name of an .epw or .csv file", name);
    return null;
  }
  if (!known(place, calendar)) return null;
  const text = readBeside?.(name) ?? null;
  if (text === null) {
    notes.refuse(path, "a file that can be read beside the trip file", name);
    return null;
  }
  const { depart_ms: departUtc_ms, duration_s } = calendar;
  const reading = readHourlyFile(name, text, { departUtc_ms, duration_s, timezone: place.timezone });
  const problems = reading.ok ? [] : [...reading.problems];
  if (reading.ok) {
    try {
      return weatherFromHours(reading.rows, place, departUtc_ms, duration_s);
    } catch (mistake) {
      if (!(mistake instanceof TooBright)) throw mistake;
      problems.push(...sunProblems(mistake, reading.lined));
    }
  }
  for (const problem of problems) notes.refuse(path, fileWords(problem), problem.got);
  return null;
}

/** Rows whose sun is more than the sky can give: often the clock of the file is not the one it says. */
function sunProblems({ rows: bright }: TooBright, lined: readonly LinedRow[]): FileProblem[] {
  return bright.slice(0, mostSunProblems).map(({ index, most_W_per_m2 }) => ({
    line: lined[index]!.line,
    must: `be a global irradiance that the sun can give at that hour, at most ${Math.floor(most_W_per_m2)} W/m² (is the time zone right?)`,
    got: String(lined[index]!.row.global_W_per_m2),
  }));
}

/** Weather files word their mistakes after "it must"; problems of a trip file come after "must be". */
function fileWords({ line, must }: FileProblem): string {
  const words = must.startsWith("be ") ? must.slice(3) : `a file to ${must}`;
  return line === null ? words : `in its line ${line}, ${words}`;
}
