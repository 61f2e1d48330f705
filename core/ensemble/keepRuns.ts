import type { Draws, MemberTask, RunHooks, RunTasks } from "./types.ts";

/** What tells one stretch of drawn members from another. */
const keyOf = ({ trip, variant, from, to, seed, series }: MemberTask): string =>
  JSON.stringify([trip, variant, from, to, seed, series]);

/**
 * A runner that remembers what drawn members did, so that a further look into the same coolers costs no run. Members with
 * scores of their own are run each time: they belong to one question alone. Good for as long as the trips of the runner
 * are the same.
 */
export function keepRuns(run: RunTasks): RunTasks {
  const known = new Map<string, Draws>();
  return async (tasks: readonly MemberTask[], hooks: RunHooks = {}): Promise<readonly Draws[]> => {
    const isNew = (task: MemberTask): boolean => task.scores !== undefined || !known.has(keyOf(task));
    const missing = tasks.filter(isNew);
    const answers = missing.length === 0 ? [] : await run(missing, hooks);
    const fresh = new Map(missing.map((task, i) => [task, answers[i]!]));
    for (const [task, draws] of fresh) if (task.scores === undefined) known.set(keyOf(task), draws);
    return tasks.map((task) => fresh.get(task) ?? known.get(keyOf(task))!);
  };
}
