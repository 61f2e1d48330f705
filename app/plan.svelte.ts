import type { Aim } from "../core/index.ts";
import { newsOf } from "./decide/news.ts";
import { table } from "./trip.svelte.ts";
import type { PlanView, Study } from "./worker/asks.ts";
import { CalledOff, reckon, stopReckoning, type Tell, TripProblems } from "./worker/hand.ts";

/** Members of the full answer; the first answer is the middle case alone. */
const MEMBERS = 256;

/**
 * CSS pixels that pictures are drawn for: the room of a column, so that their letters are as large as they were drawn. What
 * stands beside them is as in frame.css and App.svelte.
 */
export function pictureWidth(): number {
  const isPhone = innerWidth < 480;
  const places = innerWidth < 900 ? 0 : 176;
  const inside = Math.min(1240, innerWidth - places) - (isPhone ? 22 : 64);
  const column = innerWidth < 1000 ? inside : (inside - 20) / 2;
  return Math.round(Math.max(320, Math.min(760, column - (isPhone ? 18 : 34))));
}

/** The plan on the table, how far it is, and what went wrong. */
class PlanOnTable {
  view = $state.raw<PlanView | null>(null);
  /** The text that `view` was planned from. */
  madeFrom = $state("");
  /** null: nothing is being reckoned. */
  busy = $state.raw<{ done_frac: number; says: string } | null>(null);
  fault = $state<string | null>(null);
  aim = $state<Aim>("pieces");
  /** Runs that a full answer is made of. */
  readonly members: number = MEMBERS;
  #isGone = false;
  /** The last plan with its doubt: what a new one is told against. */
  #told: PlanView | null = null;
  /** Quarters of the work that were read out. */
  #quarter = 0;
  habits = $state.raw<Study | null>(null);
  stress = $state.raw<Study | null>(null);

  /** The plan is of an older state of the trip. */
  get isOld(): boolean {
    return this.view !== null && this.madeFrom !== table.desk.text;
  }

  /** The middle case first, which is there at once, then the whole with its doubt. */
  async make(): Promise<void> {
    if (this.busy !== null) this.stop();
    const { text } = table.desk;
    this.fault = null;
    this.habits = null;
    this.stress = null;
    for (const members of [0, MEMBERS]) {
      const ask = {
        do: "plan",
        text,
        units: table.units,
        members,
        aim: this.aim,
        width: pictureWidth(),
      } as const;
      const view = await this.#run(() => reckon<"plan">(ask, this.#tell));
      if (view === null) return;
      this.#isGone = false;
      this.view = view;
      this.madeFrom = text;
      if (members === 0) continue;
      table.says = newsOf(this.#told, view, table.units);
      this.#told = view;
    }
  }

  /** The same plan in the units that are asked for now. */
  async show(): Promise<void> {
    if (this.view === null || this.busy !== null) return;
    // What was called off took the plan that the worker held with it.
    if (this.#isGone) return this.make();
    const view = await this.#run(() =>
      reckon<"show">({ do: "show", units: table.units, width: pictureWidth() }),
    );
    if (view !== null) this.view = view;
  }

  /** Other work of the reckoner, with the same progress and the same Stop; null: it came to nothing, and why is told. */
  work<T>(ask: (tell: Tell) => Promise<T>): Promise<T | null> {
    return this.#run(() => ask(this.#tell));
  }

  async study(what: "habits" | "stress"): Promise<void> {
    if (this.view === null) return;
    const ask = { text: this.view.file, units: table.units, members: 64, width: pictureWidth() };
    const made = await this.#run(() => reckon<typeof what>({ do: what, ...ask }, this.#tell));
    if (made !== null) this[what] = made;
  }

  /** Another trip comes on the table. */
  clear(): void {
    if (this.busy !== null) this.stop();
    this.view = null;
    this.madeFrom = "";
    this.#told = null;
    this.habits = null;
    this.stress = null;
    this.fault = null;
  }

  stop(): void {
    stopReckoning();
    this.#isGone = true;
    if (this.busy !== null) table.says = "Stopped. What was known before stays.";
    this.busy = null;
  }

  readonly #tell = (done_frac: number, says: string): void => {
    this.busy = { done_frac, says };
    const quarter = Math.floor(done_frac * 4);
    if (quarter > this.#quarter && quarter < 4) table.says = `${quarter * 25} % of it is reckoned.`;
    this.#quarter = quarter;
  };

  async #run<T>(work: () => Promise<T>): Promise<T | null> {
    this.busy = { done_frac: 0, says: "reading the trip" };
    this.#quarter = 0;
    try {
      const answer = await work();
      this.busy = null;
      return answer;
    } catch (error) {
      if (error instanceof CalledOff) return null;
      this.busy = null;
      this.fault =
        error instanceof TripProblems
          ? "The trip has mistakes: see the list on Describe."
          : `Something of ours broke: ${(error as Error).message}. Your trip is kept as it is.`;
      return null;
    }
  }
}

export const plan = new PlanOnTable();
