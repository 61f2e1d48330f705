/** Logs of one trip join without loss, in any order and however often: the laws of a set. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LogEntryFile, LogFile } from "../../core/camp/logFile.ts";
import { entryLine, logDiff, mergeLogs } from "../../core/camp/mergeLogs.ts";

/** Few ids and few contents, so that the same id often means different things. */
const anyEntry: fc.Arbitrary<LogEntryFile> = fc.record({
  id: fc.constantFrom("a", "b", "c", "a-very-long-id-of-forty-letters-or-so_12"),
  at: fc.constantFrom("2027-07-16T09:00", "day 2 dinner", "day 2 18:00"),
  cooler: fc.constantFrom("chest", "bag"),
  ice: fc.constantFrom("full", "1/2", "water"),
});

const anyLog: fc.Arbitrary<LogFile> = fc
  .record({
    trip: fc.option(fc.constantFrom("One", "Two"), { nil: undefined }),
    all: fc.array(anyEntry, { maxLength: 8 }),
  })
  .map(({ trip, all }) => ({
    "coldstow-log": 1,
    trip,
    // Within one log an id means one thing.
    entries: [...new Map(all.map((entry) => [entry.id, entry])).values()],
  }));

/** What an entry says, whatever its id. */
const said = ({ entries }: LogFile): string[] =>
  [...new Set(entries.map((entry) => entryLine({ ...entry, id: "" })))].sort();

describe("joining logs", () => {
  it("does not depend on which comes first", () => {
    fc.assert(
      fc.property(anyLog, anyLog, (a, b) => {
        expect(mergeLogs(a, b)).toEqual(mergeLogs(b, a));
      }),
    );
  });

  it("does not depend on which two are joined first", () => {
    fc.assert(
      fc.property(anyLog, anyLog, anyLog, (a, b, c) => {
        const whole = mergeLogs(a, b, c);
        expect(mergeLogs(mergeLogs(a, b), c)).toEqual(whole);
        expect(mergeLogs(a, mergeLogs(b, c))).toEqual(whole);
      }),
    );
  });

  it("twice is once", () => {
    fc.assert(
      fc.property(anyLog, anyLog, (a, b) => {
        const once = mergeLogs(a, b);
        expect(mergeLogs(once, b)).toEqual(once);
        expect(mergeLogs(once, once, a)).toEqual(once);
      }),
    );
  });

  it("loses nothing, adds nothing, and gives every entry an id of its own that a log may have", () => {
    fc.assert(
      fc.property(fc.array(anyLog, { maxLength: 4 }), (logs) => {
        const whole = mergeLogs(...logs);
        expect(said(whole)).toEqual([...new Set(logs.flatMap(said))].sort());
        const ids = whole.entries.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        for (const id of ids) expect(id).toMatch(/^[A-Za-z0-9_-]{1,40}$/);
        const lines = new Set(whole.entries.map(entryLine));
        for (const { id } of logs.flatMap(({ entries }) => entries)) expect(ids).toContain(id);
        expect(lines.size).toBe(whole.entries.length);
      }),
    );
  });

  it("told beforehand is what comes", () => {
    fc.assert(
      fc.property(anyLog, anyLog, (own, other) => {
        const had = new Set(mergeLogs(own).entries.map(entryLine));
        const { fresh } = logDiff(own, other);
        const whole = mergeLogs(own, other).entries;
        expect(fresh.every((entry) => !had.has(entryLine(entry)))).toBe(true);
        expect(whole.filter((entry) => had.has(entryLine(entry))).length + fresh.length).toBe(whole.length);
      }),
    );
  });
});
