import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";

/** Where a trip stands among the states that undo and redo lead to: numbers of the steps that are kept. */
export interface Past {
  from: number;
  here: number;
  to: number;
}

/** One trip as it is kept on the device. */
export interface KeptTrip {
  id: string;
  title: string;
  /** The trip file. */
  text: string;
  /** Ids of what was ticked off: acts of the countdown, pieces packed. */
  ticks: string[];
  changed_ms: number;
  /** Grows with every write, so that a window sees that another one wrote in between. */
  rev: number;
  past: Past;
}

interface Step {
  trip: string;
  n: number;
  text: string;
}

interface Kept extends DBSchema {
  trips: { key: string; value: KeptTrip };
  settings: { key: string; value: string };
  /** States of the trips that undo and redo lead to, without the one that is shown. */
  steps: { key: [trip: string, n: number]; value: Step };
}

const NAME = "coldstow";
/** Raised with every change of what is kept; `upgrade` then carries older content over, step by step. */
const VERSION = 2;

/** A trip that was never changed here. */
export const freshTrip = (trip: Omit<KeptTrip, "rev" | "past">): KeptTrip => ({
  ...trip,
  rev: 0,
  past: { from: 0, here: 0, to: 0 },
});

let opened: Promise<IDBPDatabase<Kept>> | null = null;

function base(): Promise<IDBPDatabase<Kept>> {
  opened ??= openDB<Kept>(NAME, VERSION, {
    upgrade: (db, from, _to, change) => upgrade(db, from, change),
    // Another window wants a newer version: let go of the old one. What this one then asks for is refused, and said.
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      opened = null;
    },
    terminated: () => {
      opened = null;
    },
  });
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

type Change = IDBPTransaction<Kept, ("trips" | "settings" | "steps")[], "versionchange">;

/** Each step goes from one version to the next; nothing but requests to the base may be awaited here. */
async function upgrade(db: IDBPDatabase<Kept>, from: number, change: Change): Promise<void> {
  if (from < 1) {
    db.createObjectStore("trips", { keyPath: "id" });
    db.createObjectStore("settings");
  }
  if (from < 2) {
    db.createObjectStore("steps", { keyPath: ["trip", "n"] });
    const trips = change.objectStore("trips");
    for (const trip of await trips.getAll()) await trips.put(freshTrip(trip));
  }
}

/** Trips, the one changed last first. Rejects where the browser keeps nothing. */
export async function keptTrips(): Promise<KeptTrip[]> {
  const all = await (await base()).getAll("trips");
  return all.sort((a, b) => b.changed_ms - a.changed_ms);
}

const stepsBefore = (id: string, n: number): IDBKeyRange =>
  IDBKeyRange.bound([id, Number.NEGATIVE_INFINITY], [id, n], false, true);

/**
 * Keeps a trip with steps of its past, all or nothing, unless another window wrote it since.
 *
 * @param trip as it is to be, with the `rev` that it was seen with
 * @returns null: it is kept, with one `rev` more; else what the other window wrote, and nothing was changed
 */
export async function keepTrip(
  trip: KeptTrip,
  steps: ReadonlyMap<number, string> = new Map(),
): Promise<KeptTrip | null> {
  const change = (await base()).transaction(["trips", "steps"], "readwrite", { durability: "strict" });
  const { done } = change;
  // Where a request fails, that is told; its transaction then fails too.
  done.catch(() => {});
  const there = await change.objectStore("trips").get(trip.id);
  if (there !== undefined && there.rev !== trip.rev) {
    await done;
    return there;
  }
  const own = change.objectStore("steps");
  await Promise.all([
    change.objectStore("trips").put({ ...trip, rev: trip.rev + 1 }),
    ...[...steps].map(([n, text]) => own.put({ trip: trip.id, n, text })),
    own.delete(stepsBefore(trip.id, trip.past.from)),
    done,
  ]);
  tell(trip.id);
  return null;
}

/** A state of the past; undefined: it is not kept. */
export async function stepText(id: string, n: number): Promise<string | undefined> {
  return (await (await base()).get("steps", [id, n]))?.text;
}

export async function forgetTrip(id: string): Promise<void> {
  const change = (await base()).transaction(["trips", "steps"], "readwrite");
  await Promise.all([
    change.objectStore("trips").delete(id),
    change.objectStore("steps").delete(stepsBefore(id, Number.POSITIVE_INFINITY)),
    change.done,
  ]);
  tell(id);
}

export async function setting(name: string): Promise<string | undefined> {
  return (await base()).get("settings", name);
}

export async function keepSetting(name: string, value: string): Promise<void> {
  await (await base()).put("settings", value, name);
}

const channel = new BroadcastChannel("coldstow-trips");
const tell = (id: string): void => channel.postMessage(id);

/** Hears of trips that another window kept or forgot. */
export function onKeptElsewhere(hear: (id: string) => void): void {
  channel.addEventListener("message", ({ data }) => hear(String(data)));
}
