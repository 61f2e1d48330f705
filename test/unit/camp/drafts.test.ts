import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { clockWords, dayAt, doubtfulDays, localIso, shiftTo_ms } from "../../../app/camp/campClock.ts";
import { type Act, acts, coolerActs, type Draft, entryOf, saidBy } from "../../../app/camp/drafts.ts";
import { type Asking, isComplete, stepsOf } from "../../../app/camp/steps.ts";
import type { CampFacts, LogOnDesk } from "../../../app/worker/logAsks.ts";
import { logAnswer } from "../../../app/worker/logDesk.ts";
import type { LogEntryFile } from "../../../core/camp/logFile.ts";

/** The family's trip, with a shop on the way. */
const text = readFileSync(
  new URL("../../../examples/family-three-days.yaml", import.meta.url),
  "utf8",
).replace("\nsupply:\n", "\nsupply:\n  - { form: cube, each: 5 lb, where: camp store, when: day 2 09:00 }\n");
const NOW_ms = Date.parse("2027-07-17T11:05:00Z");

const deskOf = (entries: LogEntryFile[]): LogOnDesk =>
  logAnswer({ do: "log", text, log: { "coldstow-log": 1, entries }, units: "us" }) as LogOnDesk;

const facts = deskOf([]).facts as CampFacts;

/** Every way to answer the questions of an act, each option once. */
function answered(act: Act, asking: Asking): Draft[] {
  const drafts: Draft[] = [];
  const go = (draft: Draft): void => {
    if (isComplete(draft, asking)) {
      drafts.push(draft);
      return;
    }
    const step = stepsOf(draft, asking)[draft.picks.length]!;
    const unit = step.kind === "dial" && step.unit !== "" ? ` ${step.unit}` : "";
    const picks =
      step.kind === "dial"
        ? [step.low, step.from, step.high].map((value) => `${value}${unit}`)
        : step.options.map(({ value }) => value);
    for (const pick of picks) go({ ...draft, picks: [...draft.picks, pick] });
  };
  const isOfTrip = !(coolerActs as readonly Act[]).includes(act);
  go({ cooler: isOfTrip ? null : facts.coolers[0]!, act, picks: [], dial: null, earlier_h: 0 });
  return drafts;
}

describe("what can be tapped together", () => {
  it.each(acts.flatMap((act) => (["us", "metric"] as const).map((units) => [act, units] as const)))(
    "is an entry that a log may hold: %s in %s units",
    (act, units) => {
      const drafts = answered(act, { facts, units, likely_C: 4.4, now_ms: NOW_ms });
      expect(drafts.length).toBeGreaterThan(0);
      const entries = drafts
        .flatMap((draft) => saidBy(draft, 2))
        .map((said, i) => entryOf(said, { id: `e${i}`, at: "2027-07-17T07:05:00", by: "phone" }));
      const desk = deskOf(entries);
      expect(desk.problems).toEqual([]);
      expect(desk.entries).toHaveLength(entries.length);
      for (const { says } of desk.entries) expect(says).not.toMatch(/undefined|null|NaN/);
    },
  );

  it("takes four taps at most for the ice of a cooler, the cooler and the last word counted", () => {
    const asking: Asking = { facts, units: "us", likely_C: 4.4, now_ms: NOW_ms };
    for (const draft of answered("ice", asking)) expect(1 + draft.picks.length + 1).toBeLessThanOrEqual(4);
  });
});

describe("the clock at camp", () => {
  const at = (utc: string): number => Date.parse(utc);

  it("shows the place's time, whatever the phone's zone", () => {
    expect(localIso(at("2027-07-17T03:59:07Z"), "America/New_York")).toBe("2027-07-16T23:59:07");
    expect(localIso(at("2027-01-01T00:00:00Z"), "Asia/Kolkata")).toBe("2027-01-01T05:30:00");
    expect(clockWords(at("2027-07-17T23:05:00Z"), "America/New_York")).toBe("7:05 pm");
    expect(clockWords(at("2027-07-17T04:00:00Z"), "America/New_York")).toBe("12 am");
  });

  it("counts days by the place's midnights, from the day of departure", () => {
    expect(dayAt(at("2027-07-16T13:00:00Z"), facts)).toBe(1);
    expect(dayAt(at("2027-07-17T03:59:00Z"), facts)).toBe(1);
    expect(dayAt(at("2027-07-17T04:00:00Z"), facts)).toBe(2);
    expect(dayAt(at("2027-07-15T13:00:00Z"), facts)).toBe(0);
  });

  it("asks for the day only where the clock went back or was long unseen", () => {
    const seen = at("2027-07-17T11:00:00Z");
    expect(doubtfulDays(seen + 60_000, seen, facts)).toEqual([]);
    expect(doubtfulDays(seen - 5 * 60_000, seen, facts)).toEqual([]);
    expect(doubtfulDays(seen, null, facts)).toEqual([]);
    expect(doubtfulDays(seen - 3_600_000, seen, facts)).toEqual([2, 3, 4]);
    expect(doubtfulDays(at("1970-01-01T00:00:00Z"), seen, facts)).toEqual([2, 3, 4]);
    expect(doubtfulDays(seen + 40 * 3_600_000, seen, facts)).toContain(4);
  });

  it("is put right by whole days, its hour believed", () => {
    const wrong = at("1970-01-01T12:00:00Z");
    const right = wrong + shiftTo_ms(3, wrong, facts);
    expect(dayAt(right, facts)).toBe(3);
    expect(localIso(right, "UTC").slice(11)).toBe("12:00:00");
  });
});
