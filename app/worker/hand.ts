import type { Problem, TripEdit } from "../../core/index.ts";
import type { Asked, DeskAsk, MenuOnDesk, ReckonAnswers, ReckonAsk, Said, TripOnDesk } from "./asks.ts";
import type { CampAnswer, CampAsk } from "./campAsks.ts";
import type { CloseOutAsk, IceTestAnswer, IceTestAsk, LearnAnswer, LearnAsk } from "./learnAsks.ts";
import type { LogAnswers, LogAsk } from "./logAsks.ts";

export type Tell = (done_frac: number, says: string) => void;

/** A trip file that cannot be reckoned with: the person's mistakes, not ours. */
export class TripProblems extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super("the trip has mistakes");
    this.problems = problems;
  }
}

/** What was asked was called off, by a newer question or by the person. */
export class CalledOff extends Error {}

interface Waiting {
  resolve: (answer: unknown) => void;
  reject: (error: Error) => void;
  tell: Tell;
}

/** One worker of the page and the questions that it has not answered yet. */
class Hand<Ask extends { do: string }> {
  readonly #start: () => Worker;
  readonly #waiting = new Map<number, Waiting>();
  #worker: Worker | null = null;
  #nextId = 0;

  constructor(start: () => Worker) {
    this.#start = start;
  }

  ask<Answer>(ask: Ask, tell: Tell = () => {}): Promise<Answer> {
    this.#worker ??= this.#begun();
    const id = this.#nextId++;
    const answer = new Promise<unknown>((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject, tell });
    });
    this.#worker.postMessage({ id, ask } satisfies Asked<Ask>);
    return answer as Promise<Answer>;
  }

  /** Ends the worker with everything that it works at; the next question starts a new one. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#fail(new CalledOff("called off"));
  }

  #begun(): Worker {
    const worker = this.#start();
    worker.addEventListener("message", ({ data }: MessageEvent<Said>) => this.#hear(data));
    worker.addEventListener("error", ({ message }) => {
      this.#worker = null;
      this.#fail(new Error(message || "a part of the app could not be loaded"));
    });
    return worker;
  }

  #hear(said: Said): void {
    const waiting = this.#waiting.get(said.id);
    if (waiting === undefined) return;
    if ("says" in said) {
      waiting.tell(said.done_frac, said.says);
      return;
    }
    this.#waiting.delete(said.id);
    if ("answer" in said) waiting.resolve(said.answer);
    else if ("isOld" in said) waiting.reject(new CalledOff("a newer question came"));
    else if ("problems" in said) waiting.reject(new TripProblems(said.problems));
    else waiting.reject(new Error(said.fault));
  }

  #fail(error: Error): void {
    const all = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of all) reject(error);
  }
}

const desk = new Hand<DeskAsk | LogAsk>(
  () => new Worker(new URL("./deskWorker.js", import.meta.url), { type: "module" }),
);
const reckoner = new Hand<ReckonAsk>(
  () => new Worker(new URL("./reckonWorker.js", import.meta.url), { type: "module" }),
);

const camper = new Hand<CampAsk>(
  () => new Worker(new URL("./campWorker.js", import.meta.url), { type: "module" }),
);

const learner = new Hand<LearnAsk>(
  () => new Worker(new URL("./learnWorker.js", import.meta.url), { type: "module" }),
);

export const readOnDesk = (text: string): Promise<TripOnDesk> => desk.ask({ do: "read", text });
export const editOnDesk = (text: string, edits: readonly TripEdit[]): Promise<TripOnDesk> =>
  desk.ask({ do: "edit", text, edits });

/** What a menu from a spreadsheet would add to a trip file. */
export const readMenu = (text: string, menu: string): Promise<MenuOnDesk> =>
  desk.ask({ do: "menu", text, menu });

/** Names that `like` knows. */
export const knownFoods = (): Promise<readonly string[]> => desk.ask({ do: "foods" });

/** Asks the desk about a camp log. */
export const askLog = <K extends LogAsk["do"]>(ask: Extract<LogAsk, { do: K }>): Promise<LogAnswers[K]> =>
  desk.ask(ask);

/** Asks what a log changes. Rejects with `TripProblems`, or with `CalledOff` where a newer question came. */
export const askCamp = (ask: CampAsk): Promise<CampAnswer> => camper.ask(ask);

/** Asks what a trip taught. Rejects with `TripProblems`, or with `CalledOff` after `stopLearning`. */
export const askLearn = (ask: CloseOutAsk, tell: Tell): Promise<LearnAnswer> => learner.ask(ask, tell);

/** Asks what a home ice test tells. Rejects with `TripProblems`. */
export const askIceTest = (ask: IceTestAsk): Promise<IceTestAnswer> => learner.ask(ask);

/** Ends what is being learned. */
export const stopLearning = (): void => learner.stop();

/** Asks the reckoner; `tell` hears how far it is. Rejects with `TripProblems` or `CalledOff`. */
export function reckon<K extends ReckonAsk["do"]>(
  ask: Extract<ReckonAsk, { do: K }>,
  tell?: Tell,
): Promise<ReckonAnswers[K]> {
  return reckoner.ask(ask, tell);
}

/** Ends what is being reckoned. */
export function stopReckoning(): void {
  reckoner.stop();
}
