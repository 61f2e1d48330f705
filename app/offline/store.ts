import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** One trip as it is kept on the device. */
export interface KeptTrip {
  id: string;
  title: string;
  /** The trip file. */
  text: string;
  /** Ids of what was ticked off: acts of the countdown, pieces packed. */
  ticks: string[];
  changed_ms: number;
}

interface Kept extends DBSchema {
  trips: { key: string; value: KeptTrip };
  settings: { key: string; value: string };
}

const NAME = "coldstow";
/** Raised with every change of what is kept; `upgrade` then carries older content over, step by step. */
const VERSION = 1;

let opened: Promise<IDBPDatabase<Kept>> | null = null;

function base(): Promise<IDBPDatabase<Kept>> {
  opened ??= openDB<Kept>(NAME, VERSION, {
    upgrade(db, from) {
      if (from < 1) {
        db.createObjectStore("trips", { keyPath: "id" });
        db.createObjectStore("settings");
      }
    },
    // Another tab wants a newer version: let go of the old one.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    terminated: () => {
      opened = null;
    },
  });
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

/** Trips, the one changed last first. Rejects where the browser keeps nothing. */
export async function keptTrips(): Promise<KeptTrip[]> {
  const all = await (await base()).getAll("trips");
  return all.sort((a, b) => b.changed_ms - a.changed_ms);
}

export async function keepTrip(trip: KeptTrip): Promise<void> {
  await (await base()).put("trips", trip);
}

export async function forgetTrip(id: string): Promise<void> {
  await (await base()).delete("trips", id);
}

export async function setting(name: string): Promise<string | undefined> {
  return (await base()).get("settings", name);
}

export async function keepSetting(name: string, value: string): Promise<void> {
  await (await base()).put("settings", value, name);
}
