import { availableParallelism } from "node:os";
import { setImmediate as nextTurn } from "node:timers/promises";
import { Worker } from "node:worker_threads";
import {
  Cancelled,
  type Draws,
  type MemberTask,
  Outstanding,
  type Reply,
  type RunTasks,
  runTask,
  spreadOver,
  type TaskWorker,
  type TripSource,
  tripsOf,
  workersFor,
} from "../core/index.ts";
import { inputError } from "./failure.ts";

const MOST_WORKERS = 8;

/**
 * Runs `work` with a runner of tasks for these trips: in worker threads where that pays, else in this thread. The answers
 * are the same either way. Ctrl-C calls the work off; it then rejects with `Cancelled`. Workers are kept for the next
 * trips, since one that has run is twice as fast as a new one; they do not keep the program from ending.
 */
export async function withMembers<T>(
  sources: readonly TripSource[],
  work: (run: RunTasks, signal: AbortSignal) => Promise<T>,
): Promise<T> {
  const pool = new MemberPool(sources);
  const off = new AbortController();
  const interrupted = (): void => {
    off.abort();
    void pool.stop();
  };
  process.once("SIGINT", interrupted);
  try {
    const answer = await work(pool.run, off.signal);
    pool.leave();
    return answer;
  } finally {
    process.off("SIGINT", interrupted);
    // After a failure nobody knows what they still run.
    await pool.stop();
  }
}

/** Workers that wait for their next trips. */
const idle: Thread[] = [];

/** Starts the workers that will be wanted soon, so that they load while this thread does something else. */
export function warmThreads(): void {
  const wanted = mostThreads();
  if (wanted <= 1) return;
  while (idle.length < wanted) {
    const thread = new Thread();
    thread.rest();
    idle.push(thread);
  }
}

class MemberPool {
  readonly #sources: readonly TripSource[];
  readonly #threads: Thread[] = [];
  #closed = false;

  constructor(sources: readonly TripSource[]) {
    this.#sources = sources;
  }

  readonly run: RunTasks = async (tasks, hooks) => {
    if (this.#closed) throw new Cancelled("called off");
    const wanted = Math.min(mostThreads(), workersFor(tasks));
    if (wanted <= 1) return spreadOver([thisThread(this.#sources)])(tasks, hooks);
    while (this.#threads.length < wanted) {
      const thread = idle.pop() ?? new Thread();
      thread.take(this.#sources);
      this.#threads.push(thread);
    }
    return spreadOver(this.#threads.slice(0, wanted))(tasks, hooks);
  };

  /** Everything has been answered: the workers are free for others. */
  leave(): void {
    this.#closed = true;
    for (const thread of this.#threads.splice(0)) {
      thread.rest();
      idle.push(thread);
    }
  }

  async stop(): Promise<void> {
    this.#closed = true;
    await Promise.all(this.#threads.splice(0).map((thread) => thread.stop()));
  }
}

function thisThread(sources: readonly TripSource[]): TaskWorker {
  const trips = tripsOf(sources);
  return {
    run: async (task) => {
      // Between tasks Ctrl-C is heard and progress is drawn.
      await nextTurn();
      return runTask(trips, task);
    },
  };
}

/** The main thread only hands out and collects, so every core may have a worker. */
function mostThreads(): number {
  const asked = process.env.COLDSTOW_WORKERS;
  if (asked !== undefined && asked !== "") {
    const count = Number(asked);
    if (!/^\d+$/.test(asked) || count < 1 || count > 64)
      throw inputError("the environment", "COLDSTOW_WORKERS", "a whole number from 1 to 64", asked);
    return count;
  }
  return Math.min(availableParallelism(), MOST_WORKERS);
}

/** One worker thread and what it was asked. */
class Thread implements TaskWorker {
  readonly #worker: Worker;
  readonly #outstanding = new Outstanding();

  constructor() {
    this.#worker = new Worker(new URL("./memberWorker.js", import.meta.url));
    this.#worker.on("message", (reply: Reply) => this.#outstanding.answer(reply));
    this.#worker.on("error", (error) => this.#outstanding.end(error));
    this.#worker.on("exit", (status) =>
      this.#outstanding.end(new Error(`a worker ended by itself, status ${status}`)),
    );
  }

  take(sources: readonly TripSource[]): void {
    this.#worker.ref();
    this.#worker.postMessage(sources);
  }

  rest(): void {
    this.#worker.unref();
  }

  run(task: MemberTask): Promise<Draws> {
    return this.#outstanding.ask(() => this.#worker.postMessage(task));
  }

  async stop(): Promise<void> {
    this.#outstanding.end(new Cancelled("called off"));
    await this.#worker.terminate();
  }
}
