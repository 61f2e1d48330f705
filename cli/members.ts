import {
  drainBands,
  ensemble,
  type Forecast,
  type RunHooks,
  type RunTasks,
  type TripSource,
} from "../core/index.ts";
import type { RunFlags } from "./flags.ts";
import { withMembers } from "./memberPool.ts";
import type { OpenTrip } from "./openTrip.ts";
import { Progress } from "./speak.ts";

/** A trip as a worker reads it again; `text` where it is not the file's own. */
export function sourceOf({ file, beside }: OpenTrip, text: string = file.text): TripSource {
  return { text, file: file.name, beside: [...beside].map(([name, other]) => [name, other.text] as const) };
}

/**
 * Runs the members of a trip and puts their bands into its middle case, and into what the other drain habit would do;
 * see `ensemble` and `drainBands`.
 *
 * @param source the trip of this forecast
 * @throws Cancelled after Ctrl-C
 */
export async function banded(middle: Forecast, source: TripSource, flags: RunFlags): Promise<Forecast> {
  const { members, seed } = flags;
  return withProgress([source], flags, async (run, hooks) => {
    const told = await ensemble(middle, run, { members, seed, ...hooks });
    return drainBands(told, run, { members, seed, ...hooks });
  });
}

/** The bands of the other drain habit alone, for a trip that has its others. */
export async function drainBanded(told: Forecast, source: TripSource, flags: RunFlags): Promise<Forecast> {
  const { members, seed } = flags;
  return withProgress([source], flags, (run, hooks) => drainBands(told, run, { members, seed, ...hooks }));
}

/** As `withMembers`, with progress on the terminal and the hooks that core asks for. */
export async function withProgress<T>(
  sources: readonly TripSource[],
  flags: RunFlags,
  work: (run: RunTasks, hooks: Required<RunHooks>) => Promise<T>,
): Promise<T> {
  const progress = new Progress(flags);
  const onProgress = (done_frac: number): void => progress.tellEven(done_frac, "of the runs done");
  try {
    return await withMembers(sources, (run, signal) => work(run, { onProgress, signal }));
  } finally {
    progress.end();
  }
}
