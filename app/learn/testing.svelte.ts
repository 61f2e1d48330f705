import { keepSetting, setting } from "../offline/store.ts";
import { pictureWidth } from "../plan.svelte.ts";
import { table } from "../trip.svelte.ts";
import { askIceTest, CalledOff, TripProblems } from "../worker/hand.ts";
import type { IceTestAnswer } from "../worker/learnAsks.ts";

/** One weighing as typed. */
interface Weighed {
  after: string;
  ice: string;
}

/** A home ice test as typed. */
interface TestTyped {
  cooler: string;
  ice: string;
  room: string;
  begun: string;
  weighed: readonly Weighed[];
}

const KEY = "ice test";
/** What tells of a cooler's walls; how it is opened, drained and packed on the trip is no part of a test at home. */
const wallKeys = ["name", "size", "build", "inside", "wall", "weight", "color"] as const;

/** The ice test of this device, kept at every change. */
class Testing {
  typed = $state.raw<TestTyped>({ cooler: "", ice: "", room: "", begun: "", weighed: [] });
  answer = $state.raw<IceTestAnswer | null>(null);
  fault = $state<string | null>(null);
  isBusy = $state(false);
  #isOpen = false;

  async open(): Promise<void> {
    if (this.#isOpen) return;
    this.#isOpen = true;
    const kept = await setting(KEY).catch(() => undefined);
    if (kept !== undefined) this.typed = JSON.parse(kept) as TestTyped;
  }

  change(more: Partial<TestTyped>): void {
    this.typed = { ...this.typed, ...more };
    this.answer = null;
    this.fault = null;
    keepSetting(KEY, JSON.stringify(this.typed)).catch(() => {
      this.fault =
        "This device keeps nothing more: the test lives in this open page alone. Write the weights down.";
    });
  }

  weigh(at: number, more: Partial<Weighed>): void {
    const weighed = [...this.typed.weighed];
    weighed[at] = { ...(weighed[at] ?? { after: "", ice: "" }), ...more };
    this.change({ weighed });
  }

  /** @param cooler as the trip file has it */
  async ask(cooler: Readonly<Record<string, unknown>>): Promise<void> {
    const { ice, room, begun, weighed } = this.typed;
    const walls = Object.fromEntries(
      wallKeys.flatMap((key) => (cooler[key] === undefined ? [] : [[key, cooler[key]]])),
    );
    const filled = weighed.filter(({ after, ice: left }) => after.trim() !== "" || left.trim() !== "");
    const test = {
      title: begun.trim() === "" ? `${cooler.name} at home` : begun.trim(),
      room,
      cooler: walls,
      ice: [{ form: "cube", amount: ice, at: "-2 C" }],
      weighed: filled,
    };
    this.isBusy = true;
    this.fault = null;
    try {
      this.answer = await askIceTest({ do: "iceTest", test, units: table.units, width: pictureWidth() });
      table.says = "The ice test is reckoned.";
    } catch (error) {
      if (!(error instanceof CalledOff)) this.fault = faultOf(error as Error);
    } finally {
      this.isBusy = false;
    }
  }
}

function faultOf(error: Error): string {
  if (!(error instanceof TripProblems))
    return `Something of ours broke: ${error.message}. What you typed is kept.`;
  return error.problems
    .map(({ path, must, got }) => `${placeWords(path)} must be ${must}; it is ${got}.`)
    .join(" ");
}

function placeWords(path: string): string {
  const [, at, key] = /^weighed\[(\d+)\]\.?(\w*)/.exec(path) ?? [];
  if (at !== undefined)
    return `Weighing ${Number(at) + 1}${key === "" ? "" : `, ${key === "after" ? "hours" : "ice left"}`}`;
  return path.startsWith("ice[0]") ? "The ice at first" : path === "room" ? "The room" : path;
}

export const testing = new Testing();
