import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import { failuresOf, judge, type Need } from "../../../core/plan/need.ts";
import { planIce } from "../../../core/plan/planIce.ts";
import { stageFor } from "../../../core/plan/scene.ts";
import { linkedCoolers, onlyCoolers } from "../../../core/trip/oneCooler.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Trip, TripIce } from "../../../core/trip/types.ts";

// The search on the real reckoning: what it says of its own plans is asked again from outside.

function tripOf(text: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

const river = tripOf(readFileSync(new URL("../../../examples/desert-river.yaml", import.meta.url), "utf8"));
const two = tripOf(`coldstow: 1
depart: 2027-07-02T08:00
return: 2027-07-04T08:00
weather: { days: [{ high: 31 C, low: 17 C }] }
coolers:
  - { name: galley, size: 50 L, build: standard, holds: food }
  - { name: bar, size: 30 L, build: thin, holds: drinks }
food:
  - { name: stew, amount: 2 kg, like: chili, state: chilled, watertight: true, eat: day 2 dinner, in: galley }
  - { name: milk, amount: 1 L, like: milk, state: chilled, watertight: true, eat: day 2 breakfast, in: galley }
  - { name: cola, count: 12, each: 355 mL, like: cola, state: ambient, eat: throughout, in: bar }
supply:
  - { form: block, each: 5 kg, at: -10 C, price: 6, where: dock }
  - { form: cube, each: 2 kg, at: -2 C, price: 3, where: dock }
`);

const withIce = (trip: Trip, ice: readonly TripIce[]): Trip => ({ ...trip, ice: [...trip.ice, ...ice] });
const needs = (trip: Trip): Need[] => trip.coolers.map((_, i) => stageFor(trip, i).need);
const holds = (trip: Trip): boolean => {
  const { result } = forecast(trip, { effects: false });
  return needs(trip).every((need) => judge(result, need).outcome === "holds");
};

describe("one cooler by itself", () => {
  // Steps are chosen for all coolers at once, so they fall differently: 0.2 % is what is asked of steps.
  it("has the results that it has within the trip, to the tolerance of the steps", () => {
    const whole = forecast(river, { effects: false }).result;
    const near = (part: number | null, all: number | null): void => {
      if (all === null || part === null) expect(part).toBe(all);
      else expect(Math.abs(part - all)).toBeLessThanOrEqual(0.002 * Math.abs(all) + 1e-9);
    };
    for (const i of river.coolers.keys()) {
      const part = forecast(onlyCoolers(river, linkedCoolers(river, i)), { effects: false }).result;
      const { name, iceOut_h, filled_frac, iceMelted_kg } = whole.coolers[i]!;
      expect(part.coolers.map((cooler) => cooler.name)).toEqual([name]);
      expect(part.coolers[0]!.filled_frac).toBe(filled_frac);
      near(part.coolers[0]!.iceOut_h.p50, iceOut_h.p50);
      near(part.coolers[0]!.iceMelted_kg, iceMelted_kg);
      const foods = whole.food.filter((food) => food.cooler === name);
      expect(part.food.map((food) => [food.name, food.verdict])).toEqual(
        foods.map((food) => [food.name, food.verdict]),
      );
      for (const [k, food] of part.food.entries()) near(food.overLimit_h.p50, foods[k]!.overLimit_h.p50);
    }
  });
});

describe("a plan", () => {
  it("holds, does not fail its reader, and breaks when any one piece is left out", () => {
    for (const aim of ["pieces", "weight", "cost"] as const) {
      const plan = planIce(two, { aim });
      expect(plan.holds).toBe(true);
      expect(failuresOf(plan.forecast.result)).toEqual([]);
      expect(holds(withIce(two, plan.addedIce))).toBe(true);
      for (const lot of plan.addedIce) {
        const pieces = lot.pieces - 1;
        const fewer = plan.addedIce.flatMap((one) => {
          if (one !== lot) return [one];
          return pieces === 0 ? [] : [{ ...one, pieces, mass_kg: (one.mass_kg / one.pieces) * pieces }];
        });
        expect(holds(withIce(two, fewer))).toBe(false);
      }
    }
  });

  it("that counts pieces has the fewest, one that counts money is the cheapest", () => {
    const count = (ice: readonly TripIce[]): number => ice.reduce((sum, { pieces }) => sum + pieces, 0);
    const [pieces, cost] = (["pieces", "cost"] as const).map((aim) => planIce(two, { aim }));
    expect(count(pieces!.addedIce)).toBeLessThanOrEqual(count(cost!.addedIce));
    expect(cost!.forecast.result.plan!.cost!).toBeLessThanOrEqual(pieces!.forecast.result.plan!.cost!);
  });

  it("takes few trials", () => {
    let trials = 0;
    planIce(two, { aim: "pieces", onProgress: () => trials++ });
    expect(trials).toBeLessThan(120);
  });

  it("holds over a merge, and then too no piece can be left out", () => {
    const merged: Trip = {
      ...two,
      events: [{ do: "merge", t_s: 30 * 3600, from: 1, into: 0, path: "events[0]" }],
    };
    const plan = planIce(merged, { aim: "pieces" });
    expect(plan.holds).toBe(true);
    for (const lot of plan.addedIce) {
      const pieces = lot.pieces - 1;
      const fewer = plan.addedIce.flatMap((one) => {
        if (one !== lot) return [one];
        return pieces === 0 ? [] : [{ ...one, pieces, mass_kg: (one.mass_kg / one.pieces) * pieces }];
      });
      expect(holds(withIce(merged, fewer))).toBe(false);
    }
  });

  it("asks for ice before the ice run, not only after it", () => {
    const bare: Trip = { ...two, supply: two.supply, ice: [] };
    const later: TripIce = {
      id: "later",
      path: "events[0]",
      form: "cube",
      mass_kg: 6,
      pieces: 3,
      each: "2 kg",
      start_C: -2,
      liquid_frac: 0,
      cooler: 1,
      layer: "fill",
      price: 3,
      putIn_s: 40 * 3600,
      boughtBefore_s: 0,
    };
    const plan = planIce({ ...bare, ice: [later] }, { aim: "pieces" });
    expect(plan.addedIce.some(({ cooler }) => cooler === 1)).toBe(true);
  });
});
