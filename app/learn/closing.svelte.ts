import type { IceLevel } from "../../core/index.ts";
import { keepSetting, setting } from "../offline/store.ts";
import { pictureWidth } from "../plan.svelte.ts";
import { table } from "../trip.svelte.ts";
import { askLearn, CalledOff, stopLearning, TripProblems } from "../worker/hand.ts";
import type { LearnAnswer, SeenAtReturn } from "../worker/learnAsks.ts";

/** What came of one thing to eat: a share in the bin, or never opened. Who says nothing ate it, or kept it. */
export type Fate = "25 %" | "50 %" | "100 %" | "never opened";

interface Seen {
  ice: Readonly<Record<string, IceLevel>>;
  food: Readonly<Record<string, Fate>>;
  why: Readonly<Record<string, string>>;
  wrong: string;
}

interface Kept {
  seen: Seen;
  past: readonly Seen[];
}

const NOTHING: Seen = { ice: {}, food: {}, why: {}, wrong: "" };
const MOST_UNDO = 100;
const nameOf = (trip: string): string => `close-out ${trip}`;

/** The close-out of the trip on the table, kept at every change with what undo needs. */
class Closing {
  seen = $state.raw<Seen>(NOTHING);
  answer = $state.raw<LearnAnswer | null>(null);
  /** null: nothing is being reckoned. */
  done_frac = $state<number | null>(null);
  fault = $state<string | null>(null);
  storageSays = $state<string | null>(null);
  /** Everything so far would outlive a kill. */
  isKept = $state(true);
  #trip = "";
  #past = $state.raw<readonly Seen[]>([]);
  #turn = 0;

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  async open(trip: string): Promise<void> {
    if (trip === this.#trip) return;
    this.stop();
    this.#trip = trip;
    this.#put(NOTHING, []);
    const kept = await setting(nameOf(trip)).catch(() => undefined);
    if (kept === undefined || this.#trip !== trip || this.canUndo) return;
    const { seen, past } = JSON.parse(kept) as Kept;
    this.#put(seen, past);
  }

  change(more: Partial<Seen>): void {
    this.#put({ ...this.seen, ...more }, [...this.#past, this.seen].slice(-MOST_UNDO));
    void this.#keep();
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (before === undefined) return;
    this.#put(before, this.#past.slice(0, -1));
    table.says = "Last change of the close-out taken back.";
    void this.#keep();
  }

  /** @param file the planned trip */
  async learn(file: string): Promise<void> {
    this.stop();
    this.fault = null;
    this.done_frac = 0;
    const ask = {
      do: "closeOut",
      text: file,
      seen: fileOf(this.seen),
      units: table.units,
      width: pictureWidth(),
    } as const;
    try {
      const answer = await askLearn(ask, (done_frac) => (this.done_frac = done_frac));
      this.done_frac = null;
      this.answer = answer;
      table.says = "What the trip taught is reckoned.";
    } catch (error) {
      if (error instanceof CalledOff) return;
      this.done_frac = null;
      this.fault = faultOf(error as Error);
    }
  }

  stop(): void {
    if (this.done_frac !== null) stopLearning();
    this.done_frac = null;
  }

  /** An answer to something else than what is shown is taken away. */
  #put(seen: Seen, past: readonly Seen[]): void {
    this.stop();
    this.seen = seen;
    this.#past = past;
    this.answer = null;
  }

  async #keep(): Promise<void> {
    const turn = ++this.#turn;
    this.isKept = false;
    try {
      await keepSetting(
        nameOf(this.#trip),
        JSON.stringify({ seen: this.seen, past: this.#past } satisfies Kept),
      );
      if (turn !== this.#turn) return;
      this.isKept = true;
      this.storageSays = null;
    } catch {
      this.storageSays = "This device keeps nothing more: the close-out lives in this open page alone.";
    }
  }
}

function fileOf({ ice, food, why, wrong }: Seen): SeenAtReturn {
  const fates = Object.entries(food);
  return {
    trip: table.desk.title,
    coolers: Object.entries(ice).map(([name, level]) => ({ name, ice: level })),
    binned: fates
      .filter(([, fate]) => fate !== "never opened")
      .map(([item, share]) => ({ item, share, why: why[item] ?? "other" })),
    "never opened": fates.filter(([, fate]) => fate === "never opened").map(([item]) => item),
    wrong: wrong.trim() === "" ? [] : [wrong.trim()],
  };
}

function faultOf(error: Error): string {
  if (!(error instanceof TripProblems))
    return `Something of ours broke: ${error.message}. What you noted is kept as it is.`;
  const { path, must, got } = error.problems[0]!;
  return `It cannot be reckoned: ${path} must be ${must}; it is ${got}. What you noted is kept as it is.`;
}

export const closing = new Closing();
