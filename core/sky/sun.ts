import { getPosition, getTimes } from "suncalc";
import { steady } from "../quantity/steady.ts";

/** A point on the Earth with its clock. */
export interface Place {
  latitude_deg: number;
  longitude_deg: number;
  elevation_m: number;
  /** IANA name. */
  timezone: string;
}

/** The sun's day around one solar noon; `rise_ms` and `set_ms` are null where it stays up or down all day. */
export interface SunDay {
  noon_ms: number;
  rise_ms: number | null;
  set_ms: number | null;
  /** Time with the sun up: 0 in polar night, 86400 under the midnight sun. */
  light_s: number;
}

/** Solar constant, W/m²: 0.0820 MJ/m² a minute. @source fao-56 */
export const solarConstant_W_per_m2: number = 1366.7;

/**
 * Height of the sun's centre above a level horizon, degrees, refraction included; negative at night. Mountains and
 * canyon walls are not in it: they belong to `shade`. Within 0.01° of an astronomy library.
 *
 * @source from-memory
 */
export function sunHeight_deg(instant_ms: number, place: Place): number {
  return steady(getPosition(new Date(instant_ms), place.latitude_deg, place.longitude_deg).altitude);
}

/**
 * Sunrise, solar noon and sunset of the solar day nearest to an instant (give local noon to get that date's day).
 * Rise and set are of the sun's upper edge, as in almanacs; within a minute or so below the polar circles.
 *
 * @source from-memory
 */
export function sunDay(instant_ms: number, place: Place): SunDay {
  const times = getTimes(new Date(instant_ms), place.latitude_deg, place.longitude_deg);
  const noon_ms = toSecond_ms(times.solarNoon);
  const rise_ms = times.sunrise ? toSecond_ms(times.sunrise) : null;
  const set_ms = times.sunset ? toSecond_ms(times.sunset) : null;
  if (rise_ms === null || set_ms === null)
    return { noon_ms, rise_ms, set_ms, light_s: times.alwaysUp ? 86_400 : 0 };
  return { noon_ms, rise_ms, set_ms, light_s: (set_ms - rise_ms) / 1000 };
}

/** To the second, for the millisecond depends on the engine. */
const toSecond_ms = (date: Date): number => 1000 * Math.round(date.getTime() / 1000);

/**
 * Irradiance outside the atmosphere on a face normal to the sun, W/m²: the solar constant over the squared relative
 * distance, 1 + 0.033·cos(2πJ/365), eq. 23. J is the day of the year, 1…366, here in UTC with its fraction.
 *
 * @source fao-56
 */
export function extraterrestrialNormal_W_per_m2(instant_ms: number): number {
  const newYear_ms = Date.UTC(new Date(instant_ms).getUTCFullYear(), 0, 1);
  const yearDay = 1 + (instant_ms - newYear_ms) / 86_400_000;
  return solarConstant_W_per_m2 * (1 + 0.033 * steady(Math.cos((2 * Math.PI * yearDay) / 365)));
}

/** Sine of an angle given in degrees. @source derivation */
export function sine_ratio(angle_deg: number): number {
  return steady(Math.sin((angle_deg * Math.PI) / 180));
}
