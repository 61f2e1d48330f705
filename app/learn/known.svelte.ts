import { keepSetting, setting } from "../offline/store.ts";
import { table } from "../trip.svelte.ts";

const KEY = "known coolers";

const keyOf = (name: string): string => name.trim().toLowerCase();

/** What trips and tests taught of the coolers of this device, by their names, as a trip file takes it under `history`. */
class Known {
  #all = $state.raw<Readonly<Record<string, object>>>({});
  #isOpen = false;

  async open(): Promise<void> {
    if (this.#isOpen) return;
    this.#isOpen = true;
    const kept = await setting(KEY).catch(() => undefined);
    if (kept !== undefined) this.#all = { ...(JSON.parse(kept) as Record<string, object>), ...this.#all };
  }

  of(name: string): object | null {
    return this.#all[keyOf(name)] ?? null;
  }

  has(name: string, history: object): boolean {
    return JSON.stringify(this.of(name)) === JSON.stringify(history);
  }

  async keep(name: string, history: object): Promise<void> {
    this.#all = { ...this.#all, [keyOf(name)]: history };
    try {
      await keepSetting(KEY, JSON.stringify(this.#all));
      table.says = `What is known of ${name} is kept on this device.`;
    } catch {
      table.says = `This device keeps nothing more: what is known of ${name} lives in this open page alone. Save its file.`;
    }
  }
}

export const known = new Known();
