import * as Y from "yjs";
import { type LogFile, mergeLogs, type SaidEntry } from "../../core/index.ts";
import { table } from "../trip.svelte.ts";
import { askLog } from "../worker/hand.ts";
import type { CampFacts, JoinOnDesk, Logged, LogOnDesk } from "../worker/logAsks.ts";
import { dayAt, doubtfulDays, localIso, shiftTo_ms } from "./campClock.ts";
import { type Draft, entryOf, saidBy } from "./drafts.ts";
import { logIn, putEntries } from "./logDoc.ts";
import { openShelf, type Shelf } from "./shelf.ts";

const EMPTY: LogOnDesk = { problems: [], facts: null, entries: [] };
const HOUR_ms = 3_600_000;

/** Letters and digits that no other phone comes upon, in order of when they were made. */
function newStem(): string {
  const chance = crypto.getRandomValues(new Uint32Array(2));
  const random = [...chance].map((one) => one.toString(36).padStart(7, "0")).join("");
  return `${Date.now().toString(36)}-${random}`;
}

const stemOf = (id: string): string => id.replace(/-\d+$/, "");

/** Which phone this is: two on one trip tell their entries apart by it. It says nothing about its owner. */
function ownHand(kept: string | null): string {
  return kept ?? `phone ${newStem().slice(-4)}`;
}

/**
 * The log of the trip on the table. Every tap is kept: what is being made as a draft, what is done as an entry that is
 * only ever added to. Where the device keeps nothing, the log lives in the page, and that is said.
 */
class CampLog {
  desk = $state.raw<LogOnDesk>(EMPTY);
  draft = $state.raw<Draft | null>(null);
  /** Why nothing is kept; null: it is. */
  storageSays = $state<string | null>(null);
  /** What was done last, to be read out. */
  says = $state("");
  isLoading = $state(true);
  /** Days of which one is to be chosen, since the clock jumped; empty: it goes on. */
  doubtful = $state.raw<readonly number[]>([]);
  /** Nothing of what is logged is kept: a rehearsal on another day. */
  isPractice = $state(false);
  /** Grows with every change, for what hangs on the time of day. */
  turn = $state(0);
  /** Writes that the device has not yet confirmed; a kill before they are loses the last tap at most. */
  #writing = $state(0);
  #doc = new Y.Doc();
  #shelf: Shelf | null = null;
  #trip = "";
  #text = "";
  #hand = "";
  #shift_ms = $state(0);

  get facts(): CampFacts | null {
    return this.desk.facts;
  }

  get hand(): string {
    return this.#hand;
  }

  /** Everything that was tapped so far would outlast a kill. */
  get isKept(): boolean {
    return this.#writing === 0;
  }

  /** Now, on the clock as it was put right. */
  now_ms(): number {
    return Date.now() + this.#shift_ms;
  }

  /** Opens the log of a trip, or reads the open one anew where the trip or the units changed. */
  async open(trip: string, text: string): Promise<void> {
    const isOther = trip !== this.#trip;
    this.#text = text;
    if (isOther) await this.#openOther(trip);
    await this.#read();
    if (isOther) this.#lookAtClock(await this.#kept("seen"));
    this.isLoading = false;
  }

  async #openOther(trip: string): Promise<void> {
    this.isLoading = true;
    this.#trip = trip;
    await this.#shelf?.close();
    this.#shelf = null;
    this.#doc.destroy();
    this.#doc = new Y.Doc();
    this.isPractice = false;
    this.draft = null;
    try {
      this.#shelf = await openShelf(trip, this.#doc);
    } catch {
      this.#refused();
    }
    this.#hand = ownHand(await this.#kept("hand"));
    this.#shift_ms = Number((await this.#kept("shift")) ?? 0);
    this.draft = JSON.parse((await this.#kept("draft")) ?? "null") as Draft | null;
    await this.#keep("hand", this.#hand);
  }

  get log(): LogFile {
    return logIn(this.#doc, this.desk.facts?.title ?? table.desk.title);
  }

  async #read(): Promise<void> {
    const ask = { do: "log", text: this.#text, log: this.log, units: table.units } as const;
    this.desk = await askLog<"log">(ask);
    const about = this.draft?.cooler ?? null;
    if (about !== null && this.facts !== null && !this.facts.coolers.includes(about)) this.draft = null;
    this.turn++;
  }

  #lookAtClock(seen: string | null): void {
    if (this.facts === null) return;
    this.doubtful = doubtfulDays(this.now_ms(), seen === null ? null : Number(seen), this.facts);
  }

  /** The person says which day it is; the clock's hour is believed. */
  async setDay(day: number): Promise<void> {
    if (this.facts === null) return;
    this.#shift_ms = shiftTo_ms(day, Date.now(), this.facts);
    this.doubtful = [];
    this.turn++;
    await Promise.all([
      this.#keep("shift", String(this.#shift_ms)),
      this.#keep("seen", String(this.now_ms())),
    ]);
  }

  async take(draft: Draft | null): Promise<void> {
    this.draft = draft;
    await Promise.all([
      this.#keep("draft", JSON.stringify(draft)),
      this.#keep("seen", String(this.now_ms())),
    ]);
  }

  /** Makes entries of the draft. They are there before the draft goes: a kill in between leaves the draft, not a gap. */
  async done(): Promise<Logged[]> {
    const { draft, facts } = this;
    if (draft === null || facts === null) return [];
    const at_ms = this.now_ms() - draft.earlier_h * HOUR_ms;
    const at = localIso(at_ms, facts.timezone);
    const made = await this.#add(saidBy(draft, dayAt(at_ms, facts)), at);
    await this.take(null);
    this.says = `Logged: ${made.map(({ says }) => says).join(", ")}.`;
    return made;
  }

  /** The log as it would be with the draft in it; nothing is kept of it. */
  logWithDraft(): LogFile {
    const { draft, facts, log } = this;
    if (draft === null || facts === null) return log;
    const at_ms = this.now_ms() - draft.earlier_h * HOUR_ms;
    const at = localIso(at_ms, facts.timezone);
    const made = saidBy(draft, dayAt(at_ms, facts)).map((one, i) =>
      entryOf(one, { id: `supposed-${i + 1}`, at, by: this.#hand }),
    );
    return { ...log, entries: [...log.entries, ...made] };
  }

  /** Logs what the answer said to do, once it was done. */
  async didIt(said: readonly SaidEntry[]): Promise<Logged[]> {
    if (this.facts === null) return [];
    const made = await this.#add(said, localIso(this.now_ms(), this.facts.timezone));
    this.says = `Logged: ${made.map(({ says }) => says).join(", ")}.`;
    return made;
  }

  async #add(said: readonly SaidEntry[], at: string): Promise<Logged[]> {
    const stem = newStem();
    const entries = said.map((one, i) => entryOf(one, { id: `${stem}-${i + 1}`, at, by: this.#hand }));
    putEntries(this.#doc, entries);
    await this.#settle();
    await this.#read();
    return this.desk.entries.filter(({ id }) => stemOf(id) === stem);
  }

  /** What undo would take back: what this phone logged last on this day. */
  get last(): readonly Logged[] {
    const { entries, facts } = this.desk;
    if (facts === null || this.turn < 0) return [];
    const own = entries.filter(
      (one) => one.by === this.#hand && !one.isWithdrawn && !("withdraws" in one.file),
    );
    const newest = own
      .map(({ id }) => stemOf(id))
      .sort()
      .at(-1);
    if (newest === undefined) return [];
    const made_ms = Number.parseInt(newest.split("-")[0]!, 36) + this.#shift_ms;
    const isToday = dayAt(made_ms, facts) === dayAt(this.now_ms(), facts);
    return isToday ? own.filter(({ id }) => stemOf(id) === newest) : [];
  }

  /** Takes the last back by entries that withdraw it: what was logged stays in the log. */
  async undo(): Promise<void> {
    const { last, facts } = this;
    if (facts === null || last.length === 0) return;
    await this.#add(
      last.map(({ id }) => ({ withdraws: id })),
      localIso(this.now_ms(), facts.timezone),
    );
    this.says = `Taken back: ${last[0]!.cooler ?? ""} ${last.map(({ says }) => says).join(", ")}.`;
  }

  /** What another log would add. */
  compare(other: string): Promise<JoinOnDesk> {
    return askLog<"join">({ do: "join", text: this.#text, log: this.log, other, units: table.units });
  }

  async join(other: LogFile): Promise<void> {
    if (putEntries(this.#doc, mergeLogs(this.log, other).entries)) await this.#settle();
    await this.#read();
    this.says = "The logs are one now.";
  }

  asText(): Promise<string> {
    return askLog<"writeLog">({ do: "writeLog", log: this.log });
  }

  /** A rehearsal: the morning of the second day, nothing is kept, the trip's own log is laid aside. */
  async practise(): Promise<void> {
    const { facts } = this;
    if (facts === null) return;
    await this.#shelf?.close();
    this.#shelf = null;
    this.#doc = new Y.Doc();
    this.isPractice = true;
    this.storageSays = null;
    this.#shift_ms = Math.min(facts.depart_ms + 24 * HOUR_ms, facts.return_ms) - Date.now();
    await this.#read();
  }

  async endPractice(): Promise<void> {
    const [trip, text] = [this.#trip, this.#text];
    this.#trip = "";
    await this.open(trip, text);
  }

  async #kept(name: string): Promise<string | null> {
    return this.#shelf === null ? null : this.#shelf.get(name).catch(() => null);
  }

  async #keep(name: string, value: string): Promise<void> {
    this.#writing++;
    await this.#shelf?.set(name, value).catch(() => this.#refused());
    this.#writing--;
  }

  async #settle(): Promise<void> {
    this.#writing++;
    await this.#shelf?.kept().catch(() => this.#refused());
    this.#writing--;
  }

  #refused(): void {
    this.storageSays =
      "This log lives in this open page alone: the device keeps nothing, or has no room left. Save it as a file.";
  }
}

export const camp = new CampLog();
