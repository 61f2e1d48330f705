import { describe, expect, it } from "vitest";
import { inlineHistory, withoutOwnRecord } from "../../core/camp/historyYaml.ts";
import { bandOf } from "../../core/ensemble/quantiles.ts";
import { runMembers } from "../../core/ensemble/runMembers.ts";
import { forecast } from "../../core/forecast/forecast.ts";
import { forecastText } from "../../core/tell/forecastText.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Trip, TripReading } from "../../core/trip/types.ts";

const history = `coldstow-history: 1
cooler: chest
before: { low: 0.7 W/K, likely: 0.95 W/K, high: 1.3 W/K }
learned:
  - { trip: first, ended: 2026-07-01, low: 0.85 W/K, likely: 0.9 W/K, high: 0.95 W/K }
  - { trip: second, from: ice test, low: 0.86 W/K, likely: 0.92 W/K, high: 0.99 W/K }
`;

function read(cooler: string, file: string | null = history): TripReading {
  const text = `depart: 2027-06-18T08:00
return: 2027-06-21T18:00
weather: { days: [{ high: 26 C, low: 20 C, humidity: 60 %, cloud: 20 %, wind: 2 m/s }] }
legs: [{ where: indoors, air: 22 C }]
coolers: [{ name: chest, size: 45 L, build: standard, openings: { per day: 0 }${cooler} }]
ice: [{ form: block, amount: 12 kg, at: -5 C, in: chest }]
`;
  return readTrip(text, { file: "trip.yaml", readBeside: (name) => (name === "chest.yaml" ? file : null) });
}

function trip(cooler: string): Trip {
  const reading = read(cooler);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

const problemsOf = (reading: TripReading): string =>
  reading.ok ? "" : reading.problems.map(({ path, must, got }) => `${path} ${must} ${got}`).join("\n");

describe("the history of a cooler, beside the trip file", () => {
  it("is where the forecast begins: its middle, and a narrower range of the end of the ice", () => {
    const [known, unknown] = [trip(", history: chest.yaml"), trip("")];
    const { now_W_per_K } = known.coolers[0]!.history!;
    expect(now_W_per_K.p50).toBeGreaterThan(0.88);
    expect(now_W_per_K.p50).toBeLessThan(0.94);
    const middle = forecast(known, { effects: false });
    expect(middle.result.coolers[0]!.conductance_W_per_K).toBeCloseTo(now_W_per_K.p50, 6);
    const endOf = (one: Trip): { p10: number | null; p90: number | null } =>
      bandOf(runMembers(one, { from: 0, to: 64, seed: 1, series: false }).coolers[0]!.iceCarriedOn_h);
    const [narrow, wide] = [endOf(known), endOf(unknown)];
    expect(narrow.p90! / narrow.p10!).toBeLessThan(wide.p90! / wide.p10!);
    const text = forecastText(middle, { units: "metric" }).replace(/\s+/g, " ");
    expect(text).toMatch(/known: 2 earlier trips put its conductance at 0\.9\d W\/K/);
    expect(text).toContain("its range here is narrower for it");
  });

  const written = `{ before: { low: 0.7 W/K, likely: 0.95 W/K, high: 1.3 W/K }, learned: [
    { trip: first, ended: 2026-07-01, low: 0.85 W/K, likely: 0.9 W/K, high: 0.95 W/K },
    { trip: second, from: ice test, low: 0.86 W/K, likely: 0.92 W/K, high: 0.99 W/K }] }`;

  it("is the same written into the trip file itself", () => {
    const { file, ...beside } = trip(", history: chest.yaml").coolers[0]!.history!;
    const inside = trip(`, history: ${written}`).coolers[0]!.history!;
    expect(file).toBe("chest.yaml");
    expect(inside).toEqual({ ...beside, file: null });
  });

  it("tells a mistake of one that is written there at its own place", () => {
    const bad = written.replace("high: 0.95 W/K", "high: 0.8 W/K").replace("low: 0.86 W/K", "low: 86 W/K");
    expect(problemsOf(read(`, history: ${bad}`))).toMatch(
      /coolers\[0\]\.history\.learned\[0\]\.high more than low[\s\S]*coolers\[0\]\.history\.learned\[1\]\.low/,
    );
    expect(problemsOf(read(", history: { before: 3 }"))).toContain("coolers[0].history");
  });

  it("forgets a trip that is told anew, and takes it in once", () => {
    const { history: both } = trip(`, history: ${written}`).coolers[0]!;
    const [first, second] = both!.records;
    const inline = inlineHistory(both!, both!.before_W_per_K, {
      ...second!,
      conductance_W_per_K: first!.conductance_W_per_K,
    });
    expect((inline as { learned: { trip: string; low: string }[] }).learned).toMatchObject([
      { trip: "first", low: "0.85 W/K" },
      { trip: "second", low: "0.85 W/K" },
    ]);
    const text = `coolers:\n  - name: chest\n    history: ${written.replace(/\s+/g, " ")}\n`;
    const without = withoutOwnRecord(text, { trip: "first", ended: "2026-07-01" });
    expect(without).not.toContain("first");
    expect(without).toContain("second");
    expect(withoutOwnRecord(text, { trip: "first", ended: "2026-07-02" })).toBe(text);
  });

  it("gives way to a conductance that is stated", () => {
    const {
      history: none,
      measured_frac,
      body,
    } = trip(", history: chest.yaml, conductance: 0.8 W/K").coolers[0]!;
    expect([none, measured_frac, body.measured_W_per_K]).toEqual([null, null, 0.8]);
  });

  it("tells its mistakes by line, and what is no file beside the trip", () => {
    expect(problemsOf(read(", history: /etc/chest.yaml"))).toContain("coolers[0].history");
    expect(problemsOf(read(", history: other.yaml"))).toContain("a file that can be read");
    const crooked = history.replace("high: 0.95 W/K", "high: 0.8 W/K").replace("likely: 0.95", "likely: 0.5");
    const told = problemsOf(read(", history: chest.yaml", crooked));
    expect(told).toContain("line 5, learned[0].high, more than low, 0.85 W/K 0.8 W/K");
    expect(told).toContain("line 3, before.likely, from low, 0.7 W/K, to high, 1.3 W/K");
    expect(problemsOf(read(", history: chest.yaml", history.replace("likely", "like")))).toContain(
      "before.like",
    );
    const huge = history.replaceAll(/(\d\.\d+) W/g, (_, n: string) => `${10 * Number(n)} W`);
    expect(problemsOf(read(", history: chest.yaml", huge))).toContain("what a body of this size");
  });
});
