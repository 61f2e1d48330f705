import {
  Cancelled,
  type Draws,
  type MemberTask,
  Outstanding,
  type Reply,
  type RunTasks,
  spreadOver,
  type TaskWorker,
  type TripSource,
  workersFor,
} from "../../core/index.ts";

const MOST_WORKERS = 8;

/**
 * Runs tasks for these trips in workers of the page, so that the page itself never waits. The answers are the same with
 * any number of workers. Workers are started when they are first needed and stay for the next call; an `AbortSignal`
 * stops them at once, and the call rejects with `Cancelled`.
 */
export class MemberPool {
  #sources: readonly TripSource[];
  readonly #most: number;
  readonly #hands: Hand[] = [];

  /** @param most workers; by default one for every core, up to eight */
  constructor(
    sources: readonly TripSource[],
    most: number = Math.min(navigator.hardwareConcurrency || 1, MOST_WORKERS),
  ) {
    this.#sources = sources;
    this.#most = Math.max(1, most);
  }

  readonly run: RunTasks = async (tasks, hooks) => {
    const wanted = Math.min(this.#most, workersFor(tasks));
    while (this.#hands.length < wanted) this.#hands.push(new Hand(this.#sources));
    const signal = hooks?.signal instanceof AbortSignal ? hooks.signal : null;
    const stop = (): void => this.close();
    signal?.addEventListener("abort", stop);
    try {
      return await spreadOver(this.#hands.slice(0, wanted))(tasks, hooks);
    } catch (error) {
      // What the others still run is of no use to anybody; where it was called off, they end by themselves.
      if (!(error instanceof Cancelled)) this.close();
      throw error;
    } finally {
      signal?.removeEventListener("abort", stop);
    }
  };

  /** Other trips from now on; the workers stay, since one that has run is faster than a new one. */
  take(sources: readonly TripSource[]): void {
    this.#sources = sources;
    for (const hand of this.#hands) hand.take(sources);
  }

  /** Stops every worker; what is running rejects with `Cancelled`. The next call starts new ones. */
  close(): void {
    for (const hand of this.#hands.splice(0)) hand.stop();
  }
}

/** One worker and what it was asked. */
class Hand implements TaskWorker {
  readonly #worker: Worker = new Worker(new URL("./memberWorker.js", import.meta.url), { type: "module" });
  readonly #outstanding = new Outstanding();

  constructor(sources: readonly TripSource[]) {
    this.#worker.addEventListener("message", ({ data }: MessageEvent<Reply>) =>
      this.#outstanding.answer(data),
    );
    this.#worker.addEventListener("error", ({ message }) => {
      // Without a message it is the file itself that could not be loaded.
      this.#outstanding.end(new Error(message || "a worker could not be started"));
    });
    this.take(sources);
  }

  take(sources: readonly TripSource[]): void {
    this.#worker.postMessage(sources);
  }

  run(task: MemberTask): Promise<Draws> {
    return this.#outstanding.ask(() => this.#worker.postMessage(task));
  }

  stop(): void {
    this.#outstanding.end(new Cancelled("called off"));
    this.#worker.terminate();
  }
}
