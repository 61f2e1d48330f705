import type { Assumed, Problem, TripEdit, UnitSystem } from "../core/index.ts";
import {
  forgetTrip,
  freshTrip,
  type KeptTrip,
  keepSetting,
  keepTrip,
  keptTrips,
  onKeptElsewhere,
  type Past,
  setting,
  stepText,
} from "./offline/store.ts";
import type { TripOnDesk } from "./worker/asks.ts";
import { editOnDesk, readOnDesk } from "./worker/hand.ts";

/** Changes that can be taken back. */
const MOST_UNDO = 100;
/** Another window would have to write between each look and each try. */
const MOST_TRIES = 20;

/** What a change makes of a trip, whichever window changed it last. */
type Make = (text: string, ticks: readonly string[]) => Promise<Made>;
interface Made {
  desk: TripOnDesk;
  ticks: readonly string[];
}

const NO_PAST: Past = { from: 0, here: 0, to: 0 };

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
 * once, with what undo needs; where that is refused, it is said and the trip stays in the page. Windows that show the same
 * trip follow each other: a change is made again on top of what another window wrote in between, so that none is lost.
 */
class TripOnTable {
  desk = $state.raw<TripOnDesk>(EMPTY);
  id = $state<string | null>(null);
  ticks = $state.raw<readonly string[]>([]);
  /** All that are kept, the one changed last first. */
  kept = $state.raw<readonly KeptTrip[]>([]);
  /** Why nothing can be kept; null: it can. */
  storageSays = $state<string | null>(null);
  /** What was done last, for the one line that is read out. */
  says = $state("");
  units = $state<UnitSystem>("metric");
  /** Nothing has been read from the device yet. */
  isLoading = $state(true);
  #past = $state.raw<Past>(NO_PAST);
  #rev = 0;
  /** States of the past that this window knows, and which of them the device has not got. */
  #steps = new Map<number, string>();
  readonly #unsaved = new Set<number>();
  #queue: Promise<unknown> = Promise.resolve();

  get canUndo(): boolean {
    return this.#past.here > this.#past.from;
  }

  get canRedo(): boolean {
    return this.#past.here < this.#past.to;
  }

  get problems(): readonly Problem[] {
    return this.desk.problems;
  }

  get assumed(): readonly Assumed[] {
    return this.desk.assumed;
  }

  /** Opens the trip that was open last. */
  async begin(): Promise<void> {
    onKeptElsewhere((id) => void this.#next(() => this.#heard(id)));
    try {
      this.kept = await keptTrips();
      const [units, id] = [await setting("units"), await setting("open")];
      const last = this.kept.find((trip) => trip.id === id) ?? this.kept[0];
      if (last !== undefined) await this.open(last);
      if (units === "us" || units === "metric") this.units = units;
    } catch (error) {
      this.#refused(error);
    }
    this.isLoading = false;
  }

  open(trip: KeptTrip): Promise<void> {
    return this.#next(async () => {
      await this.#show(trip);
      this.units = this.desk.units;
      // Which one was open last is a comfort, no more.
      await keepSetting("open", trip.id).catch(() => {});
    });
  }

  /** A new trip from a text: a template, a file, or what another device sent, whose id it then keeps. */
  async take(text: string, id: string = crypto.randomUUID()): Promise<void> {
    await this.open(freshTrip({ id, title: "", text, ticks: [], changed_ms: 0 }));
    await this.#next(async () => void (await this.#keep()));
  }

  /** Edits queue up, so that none is lost to the one after it. */
  edit(edits: readonly TripEdit[], says = ""): Promise<void> {
    return this.#change(async (text, ticks) => ({ desk: await editOnDesk(text, edits), ticks }), says);
  }

  /** Another text for the same trip, as one change. */
  replace(text: string, says: string): Promise<void> {
    return this.#change(async (_before, ticks) => ({ desk: await readOnDesk(text), ticks }), says);
  }

  tick(id: string, isDone: boolean): void {
    void this.#change(async (text, ticks) => ({
      desk: text === this.desk.text ? this.desk : await readOnDesk(text),
      ticks: [...ticks.filter((one) => one !== id), ...(isDone ? [id] : [])],
    }));
  }

  undo(): Promise<void> {
    return this.#step(-1, "Last change taken back.");
  }

  redo(): Promise<void> {
    return this.#step(1, "Change made again.");
  }

  /** Puts the trip away, without deleting it. */
  clear(): void {
    this.id = null;
    this.desk = EMPTY;
    this.ticks = [];
    this.#past = NO_PAST;
  }

  /** What was put on the device by another way than this table. */
  async reload(): Promise<void> {
    this.kept = await keptTrips();
    const own = this.kept.find(({ id }) => id === this.id);
    if (own !== undefined && own.rev !== this.#rev) await this.#next(() => this.#show(own));
  }

  async forget(id: string): Promise<void> {
    await forgetTrip(id);
    this.kept = this.kept.filter((trip) => trip.id !== id);
  }

  /** Another window kept or forgot a trip. One that it forgot stays open here, and the next change keeps it again. */
  async #heard(id: string): Promise<void> {
    this.kept = await keptTrips();
    const own = this.kept.find((trip) => trip.id === id);
    if (id !== this.id || own === undefined || own.rev <= this.#rev || this.storageSays !== null) return;
    await this.#show(own);
    this.says = "Changed in another window.";
  }

  async #show({ id, text, ticks, past, rev }: KeptTrip): Promise<void> {
    const desk = id === this.id && text === this.desk.text ? this.desk : await readOnDesk(text);
    this.id = id;
    this.desk = desk;
    this.ticks = ticks;
    this.#past = past;
    this.#rev = rev;
    this.#steps = new Map();
    this.#unsaved.clear();
  }

  #change(make: Make, says = ""): Promise<void> {
    return this.#next(async () => {
      const { id } = this;
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        const made = await make(this.desk.text, this.ticks);
        if (this.id !== id || id === null) return;
        const isSame = made.desk.text === this.desk.text;
        if (isSame && made.ticks.join() === this.ticks.join()) return;
        if (!isSame) this.#advance();
        this.desk = made.desk;
        this.ticks = made.ticks;
        if (says !== "") this.says = says;
        const other = await this.#keep();
        if (other === null) return;
        if (this.storageSays !== null) return this.#keepBeside();
        // Another window was first: its change stands, and ours is made on top of it.
        await this.#show(other);
      }
    });
  }

  /** Changes that lived in this page alone, and another window went on meanwhile: both are kept, as two trips. */
  async #keepBeside(): Promise<void> {
    this.id = crypto.randomUUID();
    this.#rev = 0;
    await this.#keep();
    this.says = "Another window has changed the trip meanwhile: yours is kept beside it.";
  }

  /** The state that is shown becomes a step of the past. */
  #advance(): void {
    const { from, here } = this.#past;
    this.#note(here, this.desk.text);
    this.#past = { from: Math.max(from, here + 1 - MOST_UNDO), here: here + 1, to: here + 1 };
  }

  #note(n: number, text: string): void {
    this.#steps.set(n, text);
    this.#unsaved.add(n);
  }

  #step(by: 1 | -1, says: string): Promise<void> {
    return this.#next(async () => {
      const { id } = this;
      const { from, here, to } = this.#past;
      const there = here + by;
      if (id === null || there < from || there > to) return;
      const text = this.#steps.get(there) ?? (await stepText(id, there).catch(() => undefined));
      if (text === undefined) {
        this.says = "That state of the trip is not kept any more. Nothing was changed.";
        return;
      }
      const desk = await readOnDesk(text);
      if (this.id !== id) return;
      this.#note(here, this.desk.text);
      this.desk = desk;
      this.#past = { from, here: there, to };
      this.says = says;
      const other = await this.#keep();
      if (other === null) return;
      await this.#show(other);
      this.says = "Another window has changed the trip meanwhile; that is shown, and nothing was taken back.";
    });
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

  /** null: it is kept, or the device refuses, which is said; else what another window wrote first. */
  async #keep(): Promise<KeptTrip | null> {
    if (this.id === null || this.desk.text === "") return null;
    const trip: KeptTrip = {
      id: this.id,
      title: this.desk.title,
      text: this.desk.text,
      ticks: [...this.ticks],
      changed_ms: Date.now(),
      rev: this.#rev,
      past: this.#past,
    };
    const { from, to } = trip.past;
    const fresh = [...this.#unsaved].filter((n) => n >= from && n <= to && n !== trip.past.here);
    try {
      const other = await keepTrip(trip, new Map(fresh.map((n) => [n, this.#steps.get(n)!])));
      if (other !== null) return other;
      this.#rev++;
      this.#unsaved.clear();
      this.storageSays = null;
    } catch (error) {
      this.#refused(error);
    }
    this.kept = [{ ...trip, rev: this.#rev }, ...this.kept.filter(({ id }) => id !== trip.id)];
    return null;
  }

  #refused(error: unknown): void {
    const name = error instanceof DOMException ? error.name : "";
    if (name === "VersionError") {
      this.storageSays =
        "A newer Coldstow keeps your trips now, in another window. Load this page anew to go on; what you change here until then lives in this open page alone.";
      return;
    }
    const why =
      name === "QuotaExceededError"
        ? "The device has no room left"
        : "This browser keeps nothing for this page";
    this.storageSays = `${why}: your trip lives in this open page alone. Save it as a file before you close it.`;
  }
}

export const table = new TripOnTable();
