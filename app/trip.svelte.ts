import type { Assumed, Problem, TripEdit, UnitSystem } from "../core/index.ts";
import { forgetTrip, type KeptTrip, keepSetting, keepTrip, keptTrips, setting } from "./offline/store.ts";
import type { TripOnDesk } from "./worker/asks.ts";
import { editOnDesk, readOnDesk } from "./worker/hand.ts";

/** Changes that can be taken back. */
const MOST_UNDO = 100;

const EMPTY: TripOnDesk = {
  text: "",
  typed: null,
  title: "",
  problems: [],
  assumed: [],
  units: "metric",
  hours: null,
  meals: null,
  span_ms: null,
};

/**
 * The trip on the table: its file, what the file says, and what was done to it. Every change is kept on the device at
 * once; where that is refused, it is said and the trip stays in the page.
 */
class TripOnTable {
  desk = $state.raw<TripOnDesk>(EMPTY);
  id = $state<string | null>(null);
  ticks = $state<string[]>([]);
  /** All that are kept, the one changed last first. */
  kept = $state.raw<readonly KeptTrip[]>([]);
  /** Why nothing can be kept; null: it can. */
  storageSays = $state<string | null>(null);
  /** What was done last, for the one line that is read out. */
  says = $state("");
  units = $state<UnitSystem>("metric");
  /** Nothing has been read from the device yet. */
  isLoading = $state(true);
  #undo = $state.raw<readonly string[]>([]);
  #redo = $state.raw<readonly string[]>([]);
  #queue: Promise<unknown> = Promise.resolve();

  get canUndo(): boolean {
    return this.#undo.length > 0;
  }

  get canRedo(): boolean {
    return this.#redo.length > 0;
  }

  get problems(): readonly Problem[] {
    return this.desk.problems;
  }

  get assumed(): readonly Assumed[] {
    return this.desk.assumed;
  }

  /** Opens the trip that was open last. */
  async begin(): Promise<void> {
    try {
      this.kept = await keptTrips();
      const units = await setting("units");
      const [last] = this.kept;
      if (last !== undefined) await this.open(last);
      if (units === "us" || units === "metric") this.units = units;
    } catch (error) {
      this.#refused(error);
    }
    this.isLoading = false;
  }

  async open({ id, text, ticks }: KeptTrip): Promise<void> {
    const desk = await readOnDesk(text);
    this.id = id;
    this.ticks = ticks;
    this.#undo = [];
    this.#redo = [];
    this.desk = desk;
    this.units = desk.units;
    void this.#keep();
  }

  /** A new trip from a text: a template, a file, or what another device sent, whose id it then keeps. */
  async take(text: string, id: string = crypto.randomUUID()): Promise<void> {
    await this.open({ id, title: "", text, ticks: [], changed_ms: 0 });
  }

  /** Edits queue up, so that none is lost to the one after it. */
  edit(edits: readonly TripEdit[], says = ""): Promise<void> {
    return this.#next(async () => {
      const before = this.desk.text;
      const desk = await editOnDesk(before, edits);
      if (desk.text === before) return;
      this.#undo = [...this.#undo, before].slice(-MOST_UNDO);
      this.#redo = [];
      this.desk = desk;
      this.says = says;
      await this.#keep();
    });
  }

  /** Another text for the same trip, as one change. */
  replace(text: string, says: string): Promise<void> {
    return this.#next(async () => {
      const before = this.desk.text;
      if (text === before) return;
      this.#undo = [...this.#undo, before].slice(-MOST_UNDO);
      this.#redo = [];
      this.desk = await readOnDesk(text);
      this.says = says;
      await this.#keep();
    });
  }

  undo(): Promise<void> {
    return this.#next(async () => {
      const text = this.#undo.at(-1);
      if (text === undefined) return;
      this.#redo = [...this.#redo, this.desk.text];
      this.#undo = this.#undo.slice(0, -1);
      this.desk = await readOnDesk(text);
      this.says = "Last change taken back.";
      await this.#keep();
    });
  }

  redo(): Promise<void> {
    return this.#next(async () => {
      const text = this.#redo.at(-1);
      if (text === undefined) return;
      this.#undo = [...this.#undo, this.desk.text];
      this.#redo = this.#redo.slice(0, -1);
      this.desk = await readOnDesk(text);
      this.says = "Change made again.";
      await this.#keep();
    });
  }

  tick(id: string, isDone: boolean): void {
    this.ticks = isDone ? [...this.ticks, id] : this.ticks.filter((one) => one !== id);
    void this.#keep();
  }

  /** Puts the trip away, without deleting it. */
  clear(): void {
    this.id = null;
    this.desk = EMPTY;
    this.ticks = [];
    this.#undo = [];
    this.#redo = [];
  }

  /** What was put on the device by another way than this table. */
  async reload(): Promise<void> {
    this.kept = await keptTrips();
    const own = this.kept.find(({ id }) => id === this.id);
    if (own !== undefined && own.text !== this.desk.text) await this.open(own);
  }

  async forget(id: string): Promise<void> {
    await forgetTrip(id);
    this.kept = this.kept.filter((trip) => trip.id !== id);
  }

  toggleUnits(): void {
    this.units = this.units === "us" ? "metric" : "us";
    keepSetting("units", this.units).catch((error: unknown) => this.#refused(error));
  }

  #next(work: () => Promise<void>): Promise<void> {
    const done = this.#queue.then(work);
    this.#queue = done.catch(() => {});
    return done;
  }

  async #keep(): Promise<void> {
    if (this.id === null || this.desk.text === "") return;
    const trip: KeptTrip = {
      id: this.id,
      title: this.desk.title,
      text: this.desk.text,
      ticks: [...this.ticks],
      changed_ms: Date.now(),
    };
    this.kept = [trip, ...this.kept.filter(({ id }) => id !== trip.id)];
    try {
      await keepTrip(trip);
      this.storageSays = null;
    } catch (error) {
      this.#refused(error);
    }
  }

  #refused(error: unknown): void {
    const why =
      error instanceof DOMException && error.name === "QuotaExceededError"
        ? "The device has no room left"
        : "This browser keeps nothing for this page";
    this.storageSays = `${why}: your trip lives in this open page alone. Save it as a file before you close it.`;
  }
}

export const table = new TripOnTable();
