import type { Forecast } from "../forecast/types.ts";
import { joinDraws } from "./joinDraws.ts";
import { tasksFor } from "./tasks.ts";
import type { RunHooks, RunTasks } from "./types.ts";
import { withBands } from "./withBands.ts";

export interface EnsembleOptions extends RunHooks {
  members: number;
  seed: number;
}

/**
 * How sure a forecast is: runs the members of its trip, wherever `run` runs them, and puts their bands into it. With 0
 * members it stays the middle case.
 *
 * @param run the trip of the forecast is its number 0
 * @throws Cancelled when the signal is given
 */
export async function ensemble(
  forecast: Forecast,
  run: RunTasks,
  options: EnsembleOptions,
): Promise<Forecast> {
  const { members, seed, ...hooks } = options;
  if (members === 0) return forecast;
  const parts = await run(tasksFor(0, null, members, seed, true), hooks);
  return withBands(forecast, joinDraws(parts), seed);
}
