import { IndexeddbPersistence } from "y-indexeddb";
import type * as Y from "yjs";

/** Name of the base that holds the log of a trip. */
const logBase = (trip: string): string => `coldstow-log-${trip}`;

/** Where a log is kept on the device, with the entry that is being made. */
export interface Shelf {
  /** Text kept by a name beside the log: a draft, the clock. Rejects where the device has no room. */
  get(name: string): Promise<string | null>;
  /** Settles when a kill would no longer lose it. */
  set(name: string, value: string): Promise<void>;
  /** Settles when everything that was added so far is kept; rejects where it is not. */
  kept(): Promise<void>;
  close(): Promise<void>;
}

/**
 * Loads what is kept of a trip's log into the document and keeps what is added to it from then on.
 *
 * @throws DOMException where the browser keeps nothing for this page
 */
export async function openShelf(trip: string, doc: Y.Doc): Promise<Shelf> {
  const name = logBase(trip);
  // The package under this one leaves a refusal unheard, so it is provoked here first.
  await mayOpen(name);
  const base = new IndexeddbPersistence(name, doc);
  await base.whenSynced;
  let last = await lastKey(base.db!);
  return {
    get: async (key) => ((await base.get(key)) as string | undefined) ?? null,
    set: async (key, value) => {
      await base.set(key, value);
      // A read waits for the write before it to be committed; the write itself says only that it was taken.
      await base.get(key);
    },
    kept: async () => {
      // Runs after the writes before it; where one of them failed, nothing was added.
      const now = await lastKey(base.db!);
      if (now <= last) throw new DOMException("nothing was kept", "QuotaExceededError");
      last = now;
    },
    close: () => base.destroy() as Promise<void>,
  };
}

function mayOpen(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(name);
    asked.onupgradeneeded = () => {
      // As the package makes them, for the base is there once it was asked for.
      asked.result.createObjectStore("updates", { autoIncrement: true });
      asked.result.createObjectStore("custom");
    };
    asked.onerror = () => reject(asked.error);
    asked.onsuccess = () => {
      asked.result.close();
      resolve();
    };
  });
}

/** Keys only grow, so that a greater last one means that something was added. */
function lastKey(db: IDBDatabase): Promise<number> {
  return new Promise((resolve, reject) => {
    const asked = db.transaction("updates").objectStore("updates").openKeyCursor(null, "prev");
    asked.onsuccess = () => resolve(Number(asked.result?.key ?? 0));
    asked.onerror = () => reject(asked.error);
  });
}
