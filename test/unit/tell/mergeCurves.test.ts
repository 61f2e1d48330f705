import { describe, expect, it } from "vitest";
import type { Merge } from "../../../core/forecast/planResult.ts";
import { proposeMerges } from "../../../core/plan/merges.ts";
import { mergeCurves, mergeCurvesData } from "../../../core/tell/pictures/mergeCurves.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";
import { toyFood, toyIce } from "../plan/toyTrip.ts";
import { coldCooler, warmTrip } from "../plan/warmTrip.ts";

const LOADED_kg = 16;

function pair(): Trip {
  return warmTrip({
    coolers: [coldCooler("early"), coldCooler("late")],
    food: [toyFood("stew", 0, { start_C: 1 }), toyFood("chili", 1, { start_C: 1 })],
    ice: [toyIce("block", 2, 4, 0), toyIce("block", 2, 4, 1)],
  });
}

function merged(members: number): Merge {
  const { merges } = proposeMerges(pair(), { members, seed: 1 });
  expect(merges).toHaveLength(1);
  return merges[0]!;
}

describe.each([0, 6])("the course of the ice in a merge, %i members", (members) => {
  const { course, at } = merged(members);
  const at_h = (Date.parse(`${at}Z`) - Date.parse(`${pair().depart}Z`)) / 3_600_000;
  const { t_h, apart_kg, joined_kg, from_kg, into_kg } = course;

  it("runs from departure to the return, in order, both values at the moment of the merge", () => {
    expect(t_h[0]).toBe(0);
    expect(t_h.at(-1)).toBeCloseTo(pair().duration_s / 3600, 6);
    expect([...t_h].sort((a, b) => a - b)).toEqual(t_h);
    expect(t_h.filter((t) => Math.abs(t - at_h) < 1e-6)).toHaveLength(2);
    for (const values of [apart_kg.p10, apart_kg.p90, joined_kg.p50, from_kg, into_kg])
      expect(values).toHaveLength(t_h.length);
  });

  it("is one and the same until the merge, since nothing differs before it", () => {
    t_h.forEach((t, i) => {
      if (t >= at_h) return;
      // Bins hold a member's ice to a few hundredths of all that is loaded.
      for (const p of ["p10", "p50", "p90"] as const)
        expect(Math.abs(joined_kg[p][i]! - apart_kg[p][i]!)).toBeLessThan(members === 0 ? 1e-3 : 0.15);
    });
  });

  it("begins with what was loaded and never has more", () => {
    expect(Math.abs(apart_kg.p50[0]! - LOADED_kg)).toBeLessThan(members === 0 ? 0.01 : 1.5);
    for (const p of ["p10", "p50", "p90"] as const) {
      expect(Math.min(...joined_kg[p])).toBeGreaterThanOrEqual(0);
      apart_kg[p].forEach((mass_kg, i) => {
        if (i > 0) expect(mass_kg).toBeLessThanOrEqual(apart_kg[p][i - 1]! + 0.1);
      });
    }
  });

  it("has both coolers in the sum", () => {
    if (members > 0) return expect(apart_kg.p10.every((low, i) => low <= apart_kg.p90[i]!)).toBe(true);
    from_kg.forEach((mass_kg, i) => {
      expect(Math.abs(mass_kg + into_kg[i]! - apart_kg.p50[i]!)).toBeLessThan(2e-3);
    });
  });
});

describe("the picture of a merge", () => {
  const options = { width: 640, units: "metric", id: "one" } as const;
  const rich = plannedForecast();
  const svg = mergeCurves(mergeCurvesData(rich, 0), options);

  it("says when, what it gains and what is left either way", () => {
    const title = /<title[^>]*>([^<]*)/.exec(svg)![1]!;
    expect(title).toContain("frozen into late");
    expect(title).toContain("Wed day 5, 09:00");
    expect(title).toContain("ice +11 h, 6 to 17");
    const desc = /<desc[^>]*>([^<]*)/.exec(svg)![1]!;
    // 11 kg to nothing in 96 h, 35 kg in 120 h; points every two hours.
    expect(desc).toContain("frozen Wed day 5, 07:30");
    expect(desc).toContain("late Thu day 6, 07:30");
  });

  it("tells the lines apart by their strokes, and explains each", () => {
    for (const dash of ["9 5", "1.5 4", "6 3 1.5 3"]) expect(svg).toContain(`stroke-dasharray="${dash}"`);
    for (const told of [">joined, ", ">left apart, both together", ">frozen by itself", ">late by itself"])
      expect(svg).toContain(told);
  });

  it("draws ranges where there are members, and says where there are none", () => {
    expect(svg).toContain('fill="url(#over0-one)"');
    const merge = rich.result.plan!.merges[0]!;
    const { apart_kg, joined_kg } = merge.course;
    const flat = ({ p50 }: { p50: number[] }) => ({ p10: p50, p50, p90: p50 });
    const course = { ...merge.course, apart_kg: flat(apart_kg), joined_kg: flat(joined_kg) };
    const single = plannedForecast({ plan: { merges: [{ ...merge, course }] } });
    const plain = mergeCurves(mergeCurvesData(single, 0), options);
    expect(plain).not.toContain('fill="url(#over0-one)"');
    expect(plain).toContain("One typical run");
  });

  it("is refused where the plan has no such merge", () => {
    expect(() => mergeCurvesData(rich, 1)).toThrow("index must be a merge of the plan");
  });
});
