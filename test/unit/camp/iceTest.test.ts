import { readFileSync } from "node:fs";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { withRecord } from "../../../core/camp/historyYaml.ts";
import { iceTest } from "../../../core/camp/iceTest.ts";
import { IceTestModel } from "../../../core/camp/iceTestModel.ts";
import { iceTestResultSchema } from "../../../core/camp/iceTestResult.ts";
import { type IceTest, readIceTest } from "../../../core/camp/readIceTest.ts";
import { iceTestText } from "../../../core/tell/iceTestText.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";

const head = `coldstow-test: 1
title: Box at home
room: 24 C
scale: 0.1 kg
body: 24 C
cooler: { name: box, size: 45 L, build: standard }
ice: [{ form: cube, amount: 10 kg, at: -2 C }]
`;

function read(more: string, beside: Record<string, string> = {}, from = head): IceTest {
  const reading = readIceTest(from + more, (name) => beside[name] ?? null);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.test;
}

function problems(text: string): string[] {
  const reading = readIceTest(text);
  return reading.ok ? [] : reading.problems.map(({ path, must }) => `${path}: ${must}`);
}

/** Weighings as the model itself has them for a conductance so many scores from the middle of its kind. */
function weighedBy(
  score: number,
  hours: readonly number[],
  spoil: (kg: number, i: number) => number = (kg) => kg,
): IceTest {
  const lines = hours.map((h) => `  - { after: ${h} h, ice: 1 kg }`).join("\n");
  const test = read(`weighed:\n${lines}\n`);
  const kg = new IceTestModel(test).predict_kg(test.weighed, [score, 0]);
  return { ...test, weighed: test.weighed.map((one, i) => ({ ...one, mass_kg: spoil(kg[i]!, i) })) };
}

describe("an ice test as written", () => {
  it("tells all mistakes at once, each with its place", () => {
    const told = problems(`${head}weighed:
  - { after: 24 h, ice: 6 kg }
  - { after: 12 h, ice: 5 kg }
  - { after: 30 h }
  - { after: 36 h, ice: 4 kg, drained: 1 L }
  - { after: 400 h, ice: 4 lbs of it }
`);
    expect(told.map((one) => one.split(":")[0])).toEqual([
      "weighed[2]",
      "weighed[3]",
      "weighed[4].after",
      "weighed[4].ice",
      "weighed[1].after",
    ]);
  });

  it("takes a room of its own in a CSV, in either unit, and names a line that is none", () => {
    const csv = "hours,F\n0,68\n12,86\n48,68\n";
    const { room } = read("", { "room.csv": csv }, head.replace("room: 24 C", "room: { file: room.csv }"));
    expect(room.map(({ room_C }) => room_C)).toEqual([20, 30, 20]);
    const bad = readIceTest(
      head.replace("room: 24 C", "room: { file: room.csv }"),
      () => "hours,C\n0,20\n0,21\n",
    );
    expect(bad.ok ? [] : bad.problems).toMatchObject([{ path: "room.file", got: "line 3: 0,21" }]);
    const long = `${head.replace("room: 24 C", "room: { file: room.csv }")}weighed: [{ after: 60 h, ice: 3 kg }]\n`;
    const short = readIceTest(long, () => csv);
    expect(short.ok ? [] : short.problems).toMatchObject([{ path: "room.file", got: "up to 48 h" }]);
  });

  it("lists what was assumed", () => {
    const bare = head.replace("scale: 0.1 kg\n", "").replace("body: 24 C\n", "");
    expect(read("", {}, bare).assumed.map(({ path }) => path)).toEqual(["humidity", "scale", "body"]);
  });
});

describe("what an ice test teaches", () => {
  it("finds the conductance that the weights were made with, well inside its range", () => {
    for (const score of [-1.5, 0, 1.2]) {
      const test = weighedBy(score, [12, 24, 36, 48]);
      const result = iceTest(test);
      const truth = new IceTestModel(test).conductance_W_per_K(score);
      const { p10, p50, p90 } = result.conductance_W_per_K;
      expect(truth).toBeGreaterThan(p10);
      expect(truth).toBeLessThan(p90);
      // The prior draws it a little to the middle.
      expect(Math.abs(p50 / truth - 1)).toBeLessThan(0.06);
      expect(result.odd).toEqual([]);
      expect(result.tells).toBe(true);
      expect(v.is(iceTestResultSchema, JSON.parse(JSON.stringify(result)))).toBe(true);
    }
  });

  it("melts a day what its conductance lets in, by the latent heat of ice", () => {
    const { loss_kg_per_day: loss, conductance_W_per_K: c } = iceTest(weighedBy(0, [24, 48]));
    expect(loss.at_C).toBe(24);
    expect(loss.p50).toBeCloseTo((c.p50 * 24 * 86_400) / 333_600, 1);
  });

  it("knows more, the longer it is weighed, and never less by one weighing more", () => {
    const width = (hours: number[]): number => {
      const { p10, p90 } = iceTest(weighedBy(0, hours)).conductance_W_per_K;
      return Math.log(p90 / p10);
    };
    const widths = [[6], [6, 24], [6, 24, 48], [6, 24, 48, 72]].map(width);
    for (let i = 1; i < widths.length; i++) expect(widths[i]!).toBeLessThan(widths[i - 1]! + 1e-3);
  });

  it("does not tell after an hour, and says where to weigh instead", () => {
    const result = iceTest(weighedBy(0, [1]));
    expect(result.tells).toBe(false);
    expect(result.learned_W_per_K).toBe(null);
    expect(result.next[0]!.width_frac).toBeLessThan(0.7);
    expect(iceTestText(result, { units: "metric" })).toMatch(/too little to tell/);
  });

  it("is a plan where nothing is weighed yet", () => {
    const result = iceTest(read(""));
    expect(result.conductance_W_per_K).toEqual(result.class_W_per_K);
    expect(result.next.length).toBeGreaterThan(0);
    expect(iceTestText(result, { units: "metric" })).toMatch(/1\. Let the empty cooler/);
  });

  it("learns from water let out as from ice that is left", () => {
    const test = read("weighed:\n  - { after: 24 h, drained: 1 L }\n  - { after: 48 h, drained: 1 L }\n");
    const model = new IceTestModel(test);
    const kg = model.predict_kg(test.weighed, [1, 0]);
    const seen = { ...test, weighed: test.weighed.map((one, i) => ({ ...one, mass_kg: kg[i]! })) };
    const { conductance_W_per_K: c, tells } = iceTest(seen);
    expect(tells).toBe(true);
    expect(Math.abs(c.p50 / model.conductance_W_per_K(1) - 1)).toBeLessThan(0.06);
  });

  it("goes into a history that a trip takes", () => {
    const result = iceTest(weighedBy(-1, [24, 48]));
    const record = {
      trip: "Box at home",
      ended: null,
      from: "ice test",
      conductance_W_per_K: result.learned_W_per_K!,
    } as const;
    const history = withRecord(null, "box", result.class_W_per_K, record);
    const family = readFileSync(new URL("../../../examples/family-three-days.yaml", import.meta.url), "utf8");
    const named = family.replace(/^( +)size: /m, "$1history: box.yaml\n$1size: ");
    const reading = readTrip(named, { file: "family", readBeside: () => history });
    expect(reading.ok ? [] : reading.problems).toEqual([]);
    const known = reading.ok ? reading.trip.coolers[0]!.history : null;
    expect(known!.now_W_per_K.p90 / known!.now_W_per_K.p10).toBeLessThan(
      0.8 * (result.class_W_per_K.p90 / result.class_W_per_K.p10),
    );
  });
});

describe("an odd test", () => {
  const kinds = (test: IceTest): string[] => iceTest(test).odd.map(({ kind }) => kind);

  it("has ice that grew: the later weight is left out", () => {
    const test = weighedBy(0, [12, 24, 36], (kg, i) => (i === 2 ? kg + 3.5 : kg));
    const result = iceTest(test);
    expect(result.odd).toMatchObject([{ kind: "ice grew", weighings: [2] }]);
    expect(result.weighings.map(({ isCounted }) => isCounted)).toEqual([true, true, false]);
  });

  it("has one weight that does not fit the others", () => {
    expect(kinds(weighedBy(0, [12, 24, 36, 48], (kg, i) => (i === 1 ? kg - 1.5 : kg)))).toEqual([
      "one weighing",
    ]);
  });

  it("lost ice at once: the fit lets it go and still finds the cooler", () => {
    const test = weighedBy(0, [6, 12, 18, 24, 30, 36, 42], (kg, i) => (i >= 3 ? kg - 2 : kg));
    const result = iceTest(test);
    expect(result.odd).toMatchObject([{ kind: "lost at once", weighings: [3, 4, 5, 6] }]);
    const truth = new IceTestModel(test).conductance_W_per_K(0);
    expect(truth).toBeGreaterThan(result.conductance_W_per_K.p10);
    expect(truth).toBeLessThan(result.conductance_W_per_K.p90);
  });

  it("is of a cooler that is none of its kind", () => {
    expect(kinds(weighedBy(5, [12, 24]))).toContain("unlike its kind");
  });

  it("stood in a room that swings", () => {
    const room = "hours,C\n0,18\n12,28\n24,18\n36,28\n48,18\n";
    const test = read("", { "room.csv": room }, head.replace("room: 24 C", "room: { file: room.csv }"));
    expect(iceTest(test).odd.map(({ kind }) => kind)).toEqual(["swings"]);
  });
});
