import { keepSetting, setting } from "../offline/store.ts";
import { table } from "../trip.svelte.ts";

const KEY = "known coolers";

const keyOf = (name: string): string => name.trim().toLowerCase();

/** One trip or test as a history has it; spreads as typed. */
interface RecordTyped {
  trip: string;
  ended?: string;
}

interface HistoryTyped {
  before: object;
  learned: readonly RecordTyped[];
}

const isSame = (one: RecordTyped, other: RecordTyped): boolean =>
  one.trip === other.trip && one.ended === other.ended;

/** What trips and tests taught of the coolers of this device, by their names, as a trip file takes it under `history`. */
class Known {
  #all = $state.raw<Readonly<Record<string, HistoryTyped>>>({});
  #isOpen = false;

  async open(): Promise<void> {
    if (this.#isOpen) return;
    this.#isOpen = true;
    const kept = await setting(KEY).catch(() => undefined);
    if (kept !== undefined)
      this.#all = { ...(JSON.parse(kept) as Record<string, HistoryTyped>), ...this.#all };
  }

  /** What is known of a cooler of that name; null: nothing. */
  of(name: string): HistoryTyped | null {
    return this.#all[keyOf(name)] ?? null;
  }

  /** Every record of this history is kept as it is. */
  has(name: string, history: object): boolean {
    const { learned } = history as HistoryTyped;
    const kept = this.of(name)?.learned ?? [];
    const words = kept.map((one) => JSON.stringify(one));
    return learned.every((one) => words.includes(JSON.stringify(one)));
  }

  /** A trip or test that is kept already is replaced; all others stay. */
  async keep(name: string, history: object): Promise<void> {
    const fresh = history as HistoryTyped;
    const before = this.of(name);
    const others = (before?.learned ?? []).filter(
      (one) => !fresh.learned.some((other) => isSame(one, other)),
    );
    const joined = { before: before?.before ?? fresh.before, learned: [...others, ...fresh.learned] };
    this.#all = { ...this.#all, [keyOf(name)]: joined };
    try {
      await keepSetting(KEY, JSON.stringify(this.#all));
      table.says = `What is known of ${name} is kept on this device.`;
    } catch {
      table.says = `This device keeps nothing more: what is known of ${name} lives in this open page alone. Save its file.`;
    }
  }
}

export const known = new Known();
