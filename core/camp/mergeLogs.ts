import type { LogEntryFile, LogFile } from "./logFile.ts";

/** An entry as one line that is the same wherever it was made: keys in order, nothing that is not there. */
export function entryLine(entry: LogEntryFile): string {
  return JSON.stringify(ordered(entry));
}

/** Whether two entries say the same, whatever the order of their keys. */
export function sameEntry(a: LogEntryFile, b: LogEntryFile): boolean {
  return entryLine(a) === entryLine(b);
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== "object" || value === null) return value;
  const pairs = Object.entries(value).filter(([, part]) => part !== undefined);
  pairs.sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(pairs.map(([key, part]) => [key, ordered(part)]));
}

/**
 * One log of several of the same trip: every entry of each, those that stand in more than one once. Logs are sets of
 * entries, so neither the order nor how often one is given changes anything, and nothing is lost. Where two logs use one
 * id for different entries, as hand-written ones may, the entry whose line comes first by its letters keeps the id and
 * the others get one with a hash of what they say; a withdrawal takes back the one that keeps it. Of several titles the
 * first by its letters stays.
 */
export function mergeLogs(...files: readonly LogFile[]): LogFile {
  const told = new Map<string, Map<string, LogEntryFile>>();
  const waiting = files.flatMap(({ entries }) => [...entries]);
  for (let entry = waiting.pop(); entry !== undefined; entry = waiting.pop()) {
    const same = told.get(entry.id) ?? new Map<string, LogEntryFile>();
    same.set(entryLine(entry), entry);
    told.set(entry.id, same);
    if (same.size < 2) continue;
    const [first, ...others] = [...same.keys()].sort();
    for (const line of others) {
      const moved = { ...same.get(line)!, id: renamed(entry.id, line) };
      same.delete(line);
      waiting.push(moved);
    }
    told.set(entry.id, new Map([[first!, same.get(first!)!]]));
  }
  const entries = [...told.values()].flatMap((same) => [...same.values()]);
  const titles = files.flatMap(({ trip }) => (trip === undefined ? [] : [trip])).sort();
  return {
    "coldstow-log": 1,
    ...(titles[0] === undefined ? {} : { trip: titles[0] }),
    entries: inTime(entries),
  };
}

/** What one log has that another has not, and how many of these use an id that means something else there. */
export function logDiff(own: LogFile, other: LogFile): { fresh: LogEntryFile[]; nClashes: number } {
  const had = new Set(mergeLogs(own).entries.map(entryLine));
  const fresh = mergeLogs(own, other).entries.filter((entry) => !had.has(entryLine(entry)));
  const byId = new Map(own.entries.map((entry) => [entry.id, entry]));
  const isClash = (entry: LogEntryFile): boolean => {
    const known = byId.get(entry.id);
    return known !== undefined && !sameEntry(known, entry);
  };
  return { fresh, nClashes: other.entries.filter(isClash).length };
}

/** Entries by moment as written, then by id: calendar dates first, then moments by day of the trip. */
export function inTime(entries: readonly LogEntryFile[]): LogEntryFile[] {
  return [...entries].sort(inOrder);
}

function inOrder(a: LogEntryFile, b: LogEntryFile): number {
  const [first, second] = [moment(a.at), moment(b.at)];
  if (first !== second) return first < second ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

function moment(typed: string): string {
  const day = /^day\s+(\d+)\s+(\S+)$/i.exec(typed.trim());
  if (day === null) return typed.trim().replace(" ", "T");
  const word = day[2]!.toLowerCase();
  // Meals stand in for hours about which they are usual; the true order is that of `readLog`, which knows the hours.
  const clock = { breakfast: "07", lunch: "12", dinner: "18" }[word] ?? word.padStart(5, "0");
  return `day ${day[1]!.padStart(3, "0")} ${clock}`;
}

function renamed(id: string, line: string): string {
  return `${id.slice(0, 31)}-${hash(line)}`;
}

/** Eight characters that a text always gives (32-bit FNV-1a over its code units, from memory); no secret rests on it. */
function hash(text: string): string {
  let state = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    state ^= text.charCodeAt(i);
    state = Math.imul(state, 0x01000193);
  }
  return (state >>> 0).toString(16).padStart(8, "0");
}
