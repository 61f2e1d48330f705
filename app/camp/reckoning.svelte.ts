import type { LogFile } from "../../core/index.ts";
import { keepSetting, setting } from "../offline/store.ts";
import { pictureWidth } from "../plan.svelte.ts";
import { table } from "../trip.svelte.ts";
import type { CampAnswer, CampAsk } from "../worker/campAsks.ts";
import { askCamp, CalledOff, TripProblems } from "../worker/hand.ts";

/** What an answer was reckoned from: as long as nothing of it changes, it stands. */
interface Ground {
  file: string;
  entries: string;
  units: string;
}

interface Kept extends Ground {
  answer: CampAnswer;
}

/** What is asked: the log as it is, or as it would be. */
export interface Question {
  trip: string;
  /** The planned trip file. */
  file: string;
  log: LogFile;
  now_s: number;
}

const nameOf = (trip: string): string => `camp answer ${trip}`;

/**
 * What the log changes: first from few members, which is there at once, then in full. One reckoning for each change of the
 * log and none in between, for the battery. The last answer is kept, so that a phone that was switched off shows it again.
 */
class Reckoning {
  /** Of the log as it is; null: not known yet. */
  answer = $state.raw<CampAnswer | null>(null);
  /** Of the log as it would be, beside it; null: nothing is supposed. */
  supposed = $state.raw<CampAnswer | null>(null);
  /** The answer is of few members, and acts were not tried. */
  isRough = $state(false);
  isBusy = $state(false);
  fault = $state<string | null>(null);
  #trip = "";
  #ground: Ground | null = null;
  #turn = 0;

  /** Brings back what was told last of this trip. */
  async open(trip: string): Promise<void> {
    if (trip === this.#trip) return;
    this.#trip = trip;
    this.answer = null;
    this.supposed = null;
    this.#ground = null;
    const kept = await setting(nameOf(trip)).catch(() => undefined);
    if (kept === undefined || this.#trip !== trip || this.answer !== null) return;
    const { answer, ...ground } = JSON.parse(kept) as Kept;
    this.answer = answer;
    this.#ground = ground;
  }

  /** Reckons the log as it is, unless that is what stands. */
  async renew(question: Question): Promise<void> {
    const ground = groundOf(question);
    if (sameGround(ground, this.#ground)) return;
    this.#ground = ground;
    const before = this.answer?.told ?? null;
    const isWhole = await this.#reckon(question, before, (answer) => {
      this.answer = answer;
    });
    if (!isWhole) {
      // What was called off was not reckoned to its end: the next renewal does it.
      if (this.#ground === ground) this.#ground = null;
      return;
    }
    const kept: Kept = { ...ground, answer: this.answer! };
    await keepSetting(nameOf(question.trip), JSON.stringify(kept)).catch(() => {});
  }

  /** Reckons what would be; the log stays as it is. */
  async suppose(question: Question): Promise<void> {
    this.supposed = null;
    await this.#reckon(question, this.answer?.told ?? null, (answer) => {
      this.supposed = answer;
    });
  }

  async #reckon(
    { file, log, now_s }: Question,
    before: CampAsk["before"],
    put: (answer: CampAnswer) => void,
  ): Promise<boolean> {
    const turn = ++this.#turn;
    const ask = { text: file, log, now_s, before, units: table.units, width: pictureWidth() } as const;
    this.isBusy = true;
    // What was to be done before this entry may no longer be.
    this.isRough = true;
    this.fault = null;
    try {
      for (const isRough of [true, false]) {
        const answer = await askCamp({ do: "camp", ...ask, isRough });
        this.isRough = isRough;
        put(answer);
      }
      return true;
    } catch (error) {
      if (!(error instanceof CalledOff)) this.fault = faultOf(error as Error);
      return false;
    } finally {
      if (turn === this.#turn) this.isBusy = false;
    }
  }
}

function groundOf({ file, log }: Question): Ground {
  return { file, entries: JSON.stringify(log.entries), units: table.units };
}

const sameGround = (a: Ground, b: Ground | null): boolean =>
  b !== null && a.file === b.file && a.entries === b.entries && a.units === b.units;

function faultOf(error: Error): string {
  if (!(error instanceof TripProblems))
    return `Something of ours broke: ${error.message}. Your log is kept as it is.`;
  const { path, must, got } = error.problems[0]!;
  return `It cannot be reckoned: ${path} must be ${must}; it is ${got}. Your log is kept as it is.`;
}

export const reckoning = new Reckoning();
