import { Cancelled, type Draws, type MemberTask, type RunHooks, type RunTasks } from "./types.ts";

/** Something that runs one task at a time: a thread, a worker, or this very thread. */
export interface TaskWorker {
  run: (task: MemberTask) => Promise<Draws>;
}

/**
 * Hands tasks out to workers, the next one to whoever is free, and gives the answers in the order of the tasks. When one
 * fails or the signal is given, no further task is handed out and the first error is passed on; what is running then is
 * for the caller to stop.
 */
export function spreadOver(workers: readonly TaskWorker[]): RunTasks {
  return async (tasks: readonly MemberTask[], hooks: RunHooks = {}): Promise<readonly Draws[]> => {
    const answers: Draws[] = new Array(tasks.length);
    const total = tasks.reduce((sum, { from, to }) => sum + to - from, 0);
    let next = 0;
    let done = 0;
    const work = async (worker: TaskWorker): Promise<void> => {
      while (next < tasks.length) {
        if (hooks.signal?.aborted) throw new Cancelled("called off");
        const i = next++;
        const task = tasks[i]!;
        try {
          answers[i] = await worker.run(task);
        } catch (error) {
          next = tasks.length;
          throw error;
        }
        done += task.to - task.from;
        hooks.onProgress?.(done / total);
      }
    };
    await Promise.all(workers.map(work));
    if (hooks.signal?.aborted) throw new Cancelled("called off");
    return answers;
  };
}
