import type { EnsembleOptions } from "../ensemble/ensemble.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import type { RunTasks } from "../ensemble/types.ts";
import type { DrainSwitch } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { runVariants } from "./batch.ts";
import { iceGain_h } from "./gains.ts";
import { drainKey } from "./useHabits.ts";
import { habitKey, variantOf } from "./variants.ts";

/** Differences over the same members settle sooner than the bands themselves. */
const mostMembers = 64;

/**
 * What the other drain habit would do to each cooler, with its band: the same members, once as written and once with
 * meltwater kept or let out instead.
 *
 * @param run the trip of the forecast is its number 0
 * @throws Cancelled when the signal is given
 */
export async function drainBands(
  forecast: Forecast,
  run: RunTasks,
  options: EnsembleOptions,
): Promise<Forecast> {
  const { trip, result } = forecast;
  if (options.members === 0) return forecast;
  const members = Math.min(mostMembers, options.members);
  const to = (i: number): DrainSwitch["to"] => (trip.coolers[i].drain === "keep" ? "open" : "keep");
  const keys = trip.coolers.map((_, i) => habitKey(drainKey(trip, i), to(i) === "keep"));
  const made = keys.map((key) => variantOf(trip, key) !== null);
  const onlyOf = (key: string | null): number[] | undefined =>
    key === null ? undefined : [keys.indexOf(key)];
  const variants = [null, ...keys.filter((_, i) => made[i])];
  const drawsOf = await runVariants(run, variants, { ...options, members, onlyOf });
  const end_h = trip.duration_s / 3600;
  const until = (hours: number): number => (Number.isNaN(hours) ? end_h : hours);
  const coolers = result.coolers.map((cooler, i) => {
    if (!made[i] || cooler.drainSwitch === null) return cooler;
    const [was, is] = [drawsOf(null), drawsOf(keys[i])];
    const [before, after] = [was.coolers[i].overLimit_h, is.coolers[i].overLimit_h];
    const isNever = before.every(Number.isNaN) && after.every(Number.isNaN);
    const food = Array.from(before, (hours, m) => until(after[m]) - until(hours));
    const drainSwitch: DrainSwitch = {
      to: to(i),
      iceGain_h: bandOf(iceGain_h(was, is, i)),
      foodGain_h: isNever ? null : bandOf(food),
    };
    return { ...cooler, drainSwitch };
  });
  return { ...forecast, result: { ...result, coolers } };
}
