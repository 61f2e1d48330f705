import { standardPressure_Pa } from "../matter/moistAir.ts";
import { DomainError, requireFinite } from "../quantity/errors.ts";
import { type AirDay, dailyAir_C, dayDewPoint_C } from "./airTemperature.ts";
import { clearSky_W_per_m2 } from "./clearSky.ts";
import { cloudTransmission_frac } from "./cloud.ts";
import { diffuse_W_per_m2 } from "./diffuse.ts";
import type { Place } from "./sun.ts";
import type { Weather, WeatherSample } from "./types.ts";
import { gridWeather, type LocalDay, localDays } from "./weatherGrid.ts";

/** Weather of one local day as a person tells it. */
export interface DayWeather {
  high_C: number;
  low_C: number;
  /** Mean relative humidity of the day, 0.01…1; null: from the low. */
  humidity_frac: number | null;
  cloud_frac: number;
  /** Mean wind at station height. */
  wind_m_per_s: number;
}

/** Shortest and longest day for the curve of air temperature, where the sun hardly rises or hardly sets. */
const shortestDay_s = 4 * 3600;
const longestDay_s = 20 * 3600;

/**
 * Weather from daily figures. The first entry is the local day of departure, the last one repeats; the days before
 * departure are like the first. Cloud and wind hold for the whole day and night; air and dew point run on smoothly.
 * Beyond the polar circles the air keeps a curve of 4 or 20 hours of day around solar noon.
 *
 * Known from the day before departure to the day after return (see `gridWeather`).
 *
 * @param days at least one; low −40…60 and not above high, cloud 0…1, wind 0…75 m/s
 * @param departUtc_ms departure as an instant (see `localInstant_ms`)
 * @throws DomainError out of these ranges
 * @source parton-logan-1981, haurwitz-1945, kasten-czeplak-1980, erbs-1982, fao-56
 */
export function weatherFromDays(
  days: readonly DayWeather[],
  place: Place,
  departUtc_ms: number,
  duration_s: number,
): Weather {
  if (days.length === 0) throw new DomainError("days must hold at least one day, got none");
  for (const day of days) checkDay(day);
  const known = (day: number): DayWeather => days[Math.min(Math.max(day, 0), days.length - 1)]!;
  // One day more on either side than the table spans, so that its first and last nights have both ends.
  const wide = localDays(place, departUtc_ms, duration_s, -2, 2);
  const curve = wide.map((day) => airDay(day, known(day.day)));
  const dews = wide.map(({ day }) =>
    dayDewPoint_C(known(day).low_C, known(day).high_C, known(day).humidity_frac),
  );
  const noons = wide.map((day) => day.noon_s);
  const pressure_Pa = standardPressure_Pa(place.elevation_m);
  const table = wide.slice(1, -1);
  let i = 0;
  return gridWeather(table, place, departUtc_ms, (t_s, sunHeight_deg, out) => {
    while (i + 1 < table.length && t_s >= table[i]!.end_s) i++;
    const today = known(table[i]!.day);
    out.air_C = dailyAir_C(curve, t_s);
    out.dewPoint_C = Math.min(out.air_C, between(noons, dews, t_s));
    out.wind_m_per_s = today.wind_m_per_s;
    out.cloud_frac = today.cloud_frac;
    out.pressure_Pa = pressure_Pa;
    shineThroughCloud(out, sunHeight_deg, departUtc_ms + t_s * 1000);
  });
}

/**
 * Fills in the sun under the cloud that `out` already names.
 *
 * @source haurwitz-1945, kasten-czeplak-1980, erbs-1982
 */
export function shineThroughCloud(out: WeatherSample, sunHeight_deg: number, instant_ms: number): void {
  out.global_W_per_m2 = clearSky_W_per_m2(sunHeight_deg) * cloudTransmission_frac(out.cloud_frac);
  out.diffuse_W_per_m2 = diffuse_W_per_m2(out.global_W_per_m2, sunHeight_deg, instant_ms);
}

/**
 * Value at `t_s` on the broken line through the points, level beyond its ends; `times_s` rise.
 *
 * @source derivation
 */
export function between(times_s: readonly number[], values: readonly number[], t_s: number): number {
  let low = 0;
  let high = times_s.length - 1;
  if (t_s <= times_s[low]!) return values[low]!;
  if (t_s >= times_s[high]!) return values[high]!;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times_s[middle]! <= t_s) low = middle;
    else high = middle;
  }
  const right = (t_s - times_s[low]!) / (times_s[high]! - times_s[low]!);
  return values[low]! + right * (values[high]! - values[low]!);
}

function airDay(day: LocalDay, weather: DayWeather): AirDay {
  const half_s = Math.min(longestDay_s, Math.max(shortestDay_s, day.light_s)) / 2;
  return {
    rise_s: day.noon_s - half_s,
    set_s: day.noon_s + half_s,
    low_C: weather.low_C,
    high_C: weather.high_C,
  };
}

function checkDay(day: DayWeather): void {
  requireFinite("low_C", day.low_C, -40, 60);
  requireFinite("high_C", day.high_C, day.low_C, 60);
  if (day.humidity_frac !== null) requireFinite("humidity_frac", day.humidity_frac, 0.01, 1);
  requireFinite("cloud_frac", day.cloud_frac, 0, 1);
  requireFinite("wind_m_per_s", day.wind_m_per_s, 0, 75);
}
