import type { TripEdit } from "../../core/index.ts";
import { pictureWidth, plan } from "../plan.svelte.ts";
import { table } from "../trip.svelte.ts";
import type { CompareView, NamedFile } from "../worker/asks.ts";
import { editOnDesk, reckon } from "../worker/hand.ts";

/** The plan on the table and two beside it. */
const MOST = 3;

/** A plan beside the one on the table. */
interface Other {
  says: string;
  /** The trip that it was planned from. */
  text: string;
  /** That trip with everything planned written into it. */
  file: string;
}

/** Plans to be weighed against the one on the table, which is always A. */
class OtherPlans {
  list = $state.raw<readonly Other[]>([]);
  compared = $state.raw<CompareView | null>(null);
  /** What a pin costs, by item, in sentences, and the plan that they are about. */
  #pins = $state.raw<Readonly<Record<string, { of: string; says: readonly string[] }>>>({});
  #trip: string | null = null;
  /** The plan that `compared` is about; another one makes it old. */
  #of = "";

  get isFull(): boolean {
    return this.list.length >= MOST - 1;
  }

  /** What the pin of an item costs in the plan on the table; null: not asked yet. */
  pinOf(item: string): readonly string[] | null {
    const pin = this.#pins[item];
    return pin !== undefined && pin.of === plan.view?.file ? pin.says : null;
  }

  /** Plans of another trip are put away. */
  belongTo(trip: string | null): void {
    if (trip !== this.#trip) this.clear();
    this.#trip = trip;
  }

  get isOld(): boolean {
    return this.compared !== null && plan.view?.file !== this.#of;
  }

  /** Plans the trip with something done otherwise, and sets all plans side by side. */
  async add(says: string, edits: readonly TripEdit[]): Promise<void> {
    const other = await this.#planned(says, edits);
    if (other === null || this.isFull) return;
    this.list = [...this.list, other];
    await this.compare();
  }

  /** Puts the plan as it is now aside, to change the trip itself. */
  keep(): void {
    const { view } = plan;
    if (view === null || this.isFull) return;
    this.list = [...this.list, { says: "before my change", text: plan.madeFrom, file: view.file }];
    this.compared = null;
  }

  async compare(): Promise<void> {
    const { view } = plan;
    if (view === null || this.list.length === 0) return;
    const files = [{ says: "this plan", text: view.file }, ...this.#files()];
    const compared = await this.#compare(files);
    if (compared === null) return;
    this.#of = view.file;
    this.compared = compared;
    table.says = `Set side by side: ${compared.pairs.join(" ")}`;
  }

  async drop(i: number): Promise<void> {
    this.list = this.list.filter((_, at) => at !== i);
    this.compared = null;
    await this.compare();
  }

  /** The trip of another plan comes on the table; it can be taken back like any change. */
  async take(i: number): Promise<void> {
    const other = this.list[i];
    if (other === undefined) return;
    this.clear();
    await table.replace(other.text, `Taken: ${other.says}.`);
    await plan.make();
  }

  /** Plans the trip without one pin, and says what the pin costs. */
  async priceOfPin(item: string, edits: readonly TripEdit[]): Promise<void> {
    const free = await this.#planned(`${item} where it is best`, edits);
    const { view } = plan;
    if (free === null || view === null) return;
    const told = await this.#compare([
      { says: "pinned", text: view.file },
      { says: free.says, text: free.file },
    ]);
    if (told === null) return;
    const changed = told.rows.filter(({ cells }) => cells[0] !== cells[1]);
    const says = [
      ...told.pairs.map((pair) => pair.replace(/^From A to B/, "Without the pin")),
      ...changed.map(({ what, cells }) => `${what}: ${cells[1]} without it, ${cells[0]} with it.`),
    ];
    this.#pins = { ...this.#pins, [item]: { of: view.file, says } };
    table.says = `What the pin of ${item} costs: ${says.join(" ")}`;
  }

  clear(): void {
    this.list = [];
    this.compared = null;
    this.#pins = {};
  }

  #files(): NamedFile[] {
    return this.list.map(({ says, file }) => ({ says, text: file }));
  }

  #compare(files: readonly NamedFile[]): Promise<CompareView | null> {
    const ask = {
      do: "compare",
      files,
      members: plan.members,
      units: table.units,
      width: pictureWidth(),
    } as const;
    return plan.work((tell) => reckon<"compare">(ask, tell));
  }

  async #planned(says: string, edits: readonly TripEdit[]): Promise<Other | null> {
    const { text, problems } = await editOnDesk(plan.madeFrom, edits);
    if (problems.length > 0) {
      table.says = `${says}: that cannot be tried on this trip.`;
      return null;
    }
    const order = { do: "beside", text, members: plan.members, aim: plan.aim } as const;
    const made = await plan.work((tell) => reckon<"beside">(order, tell));
    return made === null ? null : { says, text, file: made.file };
  }
}

export const others = new OtherPlans();
