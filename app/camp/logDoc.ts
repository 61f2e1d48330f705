import type * as Y from "yjs";
import { entryLine, type LogEntryFile, type LogFile, mergeLogs } from "../../core/index.ts";

/*
 * A log as a document that several phones and windows may add to. Its map is keyed by the whole entry, not by its id
 * alone: two phones that use one id for two things then keep both, where a map by id would keep the later one.
 */

const MAP = "entries";

/** Adds what is not there yet, and tells whether anything was. */
export function putEntries(doc: Y.Doc, entries: readonly LogEntryFile[]): boolean {
  const map = doc.getMap<true>(MAP);
  const fresh = entries.map(entryLine).filter((line) => !map.has(line));
  doc.transact(() => {
    for (const line of fresh) map.set(line, true);
  });
  return fresh.length > 0;
}

/** The log that a document holds: ids that clash are parted as everywhere. */
export function logIn(doc: Y.Doc, title: string): LogFile {
  const entries = [...doc.getMap<true>(MAP).keys()].map((line) => JSON.parse(line) as LogEntryFile);
  const merged = mergeLogs({ "coldstow-log": 1, entries });
  return { ...merged, trip: title };
}
