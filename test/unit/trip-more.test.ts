import { describe, expect, it } from "vitest";
import { staysOf } from "../../core/forecast/load.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Problem, Trip } from "../../core/trip/types.ts";

const head = "depart: 2027-09-18T08:00\nreturn: 2027-09-22T18:00\ncoolers: [{ name: a, size: 120 L }]\n";

function problems(rest: string): readonly Problem[] {
  const reading = readTrip(head + rest, { file: "trip.yaml" });
  return reading.ok ? [] : reading.problems;
}

function trip(rest: string): Trip {
  const reading = readTrip(head + rest, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

describe("a warm load", () => {
  it("is read with all that is said of it", () => {
    const load = trip(
      "warm load: { name: deer, amount: 60 kg, like: beef, at: 36 C, thick: 150 mm, pieces: 4, bone: out, by: day 3 18:00, into: A }",
    ).warmLoad;
    expect(load).toMatchObject({
      name: "deer",
      amount: "60 kg",
      mass_kg: 60,
      pieces: 4,
      start_C: 36,
      boneIn: false,
      latest_s: 58 * 3600,
      cooler: 0,
    });
    expect(load?.thick_m).toBeCloseTo(0.15, 12);
  });

  it("is taken as slow to cool where nothing is said, and that is listed", () => {
    const { warmLoad, assumed } = trip(
      "warm load: { name: deer, amount: 27 kg, like: beef, by: day 3 18:00 }",
    );
    expect(warmLoad).toMatchObject({ pieces: 1, boneIn: true, start_C: 37, cooler: 0 });
    // A cube of its volume has sides of 0.3 m.
    expect(warmLoad!.thick_m).toBeGreaterThan(0.18);
    expect(warmLoad!.thick_m).toBeLessThan(0.3);
    const keys = ["pieces", "at", "thick", "bone", "into"].map((key) => `warm load.${key}`);
    expect(assumed.map(({ path }) => path)).toEqual(expect.arrayContaining(keys));
  });

  it.each([
    ["{ name: deer, like: beef, by: day 3 18:00 }", "warm load.amount"],
    ["{ name: deer, like: beef, amount: 60 kg }", "warm load.by"],
    ["{ name: deer, amount: 60 kg, by: day 3 18:00, like: stone }", "warm load.like"],
    ["{ name: deer, like: beef, amount: 60, by: day 3 18:00 }", "warm load.amount"],
    ["{ name: deer, like: beef, amount: 60 kg, by: day 9 18:00 }", "warm load.by"],
    ["{ name: deer, like: beef, amount: 60 kg, by: 2027-09-22T18:00 }", "warm load.by"],
    ["{ name: deer, like: beef, amount: 60 kg, by: day 3 18:00, into: b }", "warm load.into"],
    ["{ name: deer, like: beef, amount: 60 kg, by: day 3 18:00, at: 98 C }", "warm load.at"],
    ["{ name: deer, like: beef, amount: 60 kg, by: day 3 18:00, bone: half }", "warm load.bone"],
    ["{ name: deer, like: beef, amount: 60 kg, by: day 3 18:00, thick: 2 m }", "warm load.thick"],
  ])("%s is refused", (load, path) => {
    expect(problems(`warm load: ${load}`).map((problem) => problem.path)).toEqual([path]);
  });
});

describe("rules of the place", () => {
  it("are open questions where nothing is written, and are not assumed", () => {
    const { rules, assumed } = trip("rules: { agency: forest office }");
    expect(rules).toMatchObject({
      agency: "forest office",
      bears: null,
      glass: null,
      locker: null,
      packOut: null,
    });
    expect(assumed.filter(({ path }) => path.startsWith("rules"))).toEqual([]);
    expect(trip("").rules).toBeNull();
  });

  it("are kept", () => {
    const { rules } = trip(
      "rules: { agency: park, read: 2027-09-01, permit: no. 12, bears: locker, locker: { length: 110 cm, width: 40 in, height: 45 cm }, glass: false, fires: none, pack out: all, carcass: not in camp }",
    );
    expect(rules).toEqual({
      agency: "park",
      read: "2027-09-01",
      permit: "no. 12",
      bears: "locker",
      locker: { length_m: 1.1, width_m: 1.016, height_m: 0.45 },
      glass: false,
      fires: "none",
      packOut: "all",
      carcass: "not in camp",
    });
  });

  it.each([
    ["{ bears: canister }", "rules.bears", "container"],
    ["{ glass: no glass }", "rules.glass", null],
    ["{ locker: { length: 1 m, width: 1 m } }", "rules.locker.height", null],
    ["{ locker: { length: 9 m, width: 1 m, height: 1 m } }", "rules.locker.length", null],
    ["{ packout: all }", "rules.packout", "pack out"],
  ])("%s is refused", (rules, path, near) => {
    expect(problems(`rules: ${rules}`).map((problem) => [problem.path, problem.near])).toEqual([
      [path, near],
    ]);
  });
});

describe("fresh air", () => {
  it("of a closed place is kept for legs and for moves", () => {
    const read = trip(
      "legs: [{ where: cabin, until: day 1 12:00, air changes: 4 }, { where: camp }]\nevents: [{ at: day 2 10:00, do: move, cooler: a, to: tent, until: day 2 12:00, air changes: 2 }]",
    );
    expect(staysOf(read, 0).map(({ airChanges_per_h }) => airChanges_per_h)).toEqual([4, null, 2, null]);
  });

  it.each([
    ["{ where: camp, air changes: 4 }", "legs[0].air changes"],
    ["{ where: cabin, air changes: 4 per h }", "legs[0].air changes"],
    ["{ where: cabin, air changes: -1 }", "legs[0].air changes"],
  ])("%s is refused", (leg, path) => {
    expect(problems(`legs: [${leg}]`).map((problem) => problem.path)).toEqual([path]);
  });
});

describe("dry ice", () => {
  it("may have been bought before departure, and silence is listed", () => {
    const { ice, assumed } = trip(
      "ice:\n  - { form: dry ice, amount: 5 kg, bought: 12 h }\n  - { form: dry ice, amount: 5 kg }\n  - { form: block, amount: 5 kg }",
    );
    expect(ice.map(({ boughtBefore_s }) => boughtBefore_s)).toEqual([43_200, 0, 0]);
    expect(assumed.filter(({ path }) => path.endsWith(".bought")).map(({ path }) => path)).toEqual([
      "ice[1].bought",
    ]);
  });

  it.each(["form: cube, bought: 12 h", "form: dry ice, bought: 12", "form: dry ice, bought: 12 d"])(
    "%s is refused",
    (keys) => {
      expect(problems(`ice: [{ ${keys}, amount: 5 kg }]`).map((problem) => problem.path)).toEqual([
        "ice[0].bought",
      ]);
    },
  );
});
