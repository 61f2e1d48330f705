import { dewPoint_C } from "../matter/moistAir.ts";
import { steady } from "../quantity/steady.ts";

/** One day of the air's curve: its own low at sunrise, its own high after noon. Times count from departure. */
export interface AirDay {
  rise_s: number;
  set_s: number;
  low_C: number;
  high_C: number;
}

/** Hours by which the warmest moment follows solar noon, for air 1.5 m above ground. @source parton-logan-1981 */
const peakLag_s = 1.86 * 3600;

/** How fast the night cools, over its own length. @source parton-logan-1981 */
const nightDecay_ratio = 2.2;

/**
 * Air temperature between daily lows and highs, °C: by day a sine from the low at sunrise through the high 1.86 h after
 * solar noon, by night an exponential from sunset down to the next day's low at the next sunrise.
 *
 * Two things differ from the paper: its night curve stops 11 % short of the low and jumps at sunrise, so here the
 * exponential is stretched to end on it, which makes the curve continuous from day to day; and its lag of the minimum
 * (10 minutes before sunrise) is left out.
 *
 * @param days in order of time, with the day that holds `t_s` and the one after it; 0 < set − rise < time to the next rise
 * @param t_s from the first sunrise on, before the last
 * @source parton-logan-1981
 */
export function dailyAir_C(days: readonly AirDay[], t_s: number): number {
  let i = 0;
  while (i + 2 < days.length && t_s >= days[i + 1]!.rise_s) i++;
  const today = days[i]!;
  const next = days[i + 1]!;
  if (t_s <= today.set_s) return daytime_C(today, t_s);
  const sunset_C = daytime_C(today, today.set_s);
  const past_frac = (t_s - today.set_s) / (next.rise_s - today.set_s);
  const end = Math.exp(-nightDecay_ratio);
  return next.low_C + ((sunset_C - next.low_C) * (Math.exp(-nightDecay_ratio * past_frac) - end)) / (1 - end);
}

function daytime_C(day: AirDay, t_s: number): number {
  const phase = (t_s - day.rise_s) / (day.set_s - day.rise_s + 2 * peakLag_s);
  return day.low_C + (day.high_C - day.low_C) * steady(Math.sin(Math.PI * phase));
}

/**
 * Dew point of a day, °C, taken as constant through it: vapour changes little in a day, relative humidity much.
 *
 * A stated humidity is the day's mean relative humidity and is applied at the mean of low and high. Without one, the
 * dew point is the daily low (FAO-56, where data are missing). In dry country that is 2–3 K too high or more, so that
 * openings come out a little dearer and a wet cloth worth less than they are: the cautious side.
 *
 * @param humidity_frac 0.01…1, or null
 * @source fao-56
 */
export function dayDewPoint_C(low_C: number, high_C: number, humidity_frac: number | null): number {
  return humidity_frac === null ? low_C : dewPoint_C((low_C + high_C) / 2, humidity_frac);
}
