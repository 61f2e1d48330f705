import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runFleet, type SimulateOptions, startFleet } from "../../core/cooler/fleet.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import type { FleetInput } from "../../core/cooler/types.ts";
import { iceOut_s } from "../../core/forecast/run.ts";
import { type AnyTrip, anyTrip, fleetOf } from "./anyCooler.ts";
import { runs } from "./runs.ts";

function run(input: FleetInput, options: SimulateOptions = {}, stops_s: readonly number[] = []): Fleet {
  const fleet = startFleet(input, options);
  for (const stop_s of stops_s) runFleet(fleet, stop_s);
  runFleet(fleet, input.end_s);
  return fleet;
}

/** Heat of each lot at the end, by its place in the trip, and of the water. */
function heats_J(fleet: Fleet, box: number, place: (id: string) => string): Map<string, number> {
  const out = new Map([["pool", fleet.boxes[box].pool_J]]);
  for (const part of fleet.boxes[box].parts) {
    const key = place(fleet.lots[part.lot].id);
    out.set(key, (out.get(key) ?? 0) + part.skin_J + part.core_J);
  }
  return out;
}

const outOf = (fleet: Fleet, box: number): number => iceOut_s(fleet, box) ?? fleet.input.end_s;

/** To rounding: every lot's heat and every ice-out. */
function expectSame(one: Fleet, two: Fleet, place: (id: string) => string = (id) => id): void {
  one.boxes.forEach((box, i) => {
    const scale_J = box.books.moved_J + 1000;
    const a = heats_J(one, i, (id) => id);
    const b = heats_J(two, i, place);
    expect([...b.keys()].sort()).toEqual([...a.keys()].sort());
    for (const [key, heat] of a)
      expect(Math.abs((b.get(key) ?? Number.NaN) - heat) / scale_J, `heat of ${key}`).toBeLessThan(1e-9);
    expect(Math.abs(outOf(one, i) - outOf(two, i)) / (outOf(one, i) + 1)).toBeLessThan(1e-9);
  });
}

/**
 * To the tolerance of the steps: 0.2 %. Two minutes more, since the last hundredth of a kilogram of ice in a warm box
 * goes within one step.
 */
const share = 0.002;
const moment_s = 120;

function expectNear(one: Fleet, two: Fleet): void {
  one.boxes.forEach((_, i) => {
    const a = outOf(one, i);
    expect(Math.abs(a - outOf(two, i)), `ice-out of box ${i}, ${a} s`).toBeLessThan(share * a + moment_s);
  });
}

/** Makes equals of all food but for what it is: only the matter is left to tell two apart. */
const tied = anyTrip.map((any): AnyTrip => {
  const even = { mass_kg: 1, start_C: 4, depth: 24, thick_m: 0.04, shape: "slab", layer: null } as const;
  return {
    ...any,
    coolers: any.coolers.map((one) => ({ ...one, food: one.food.map((row) => ({ ...row, ...even })) })),
  };
});

describe("the answer does not depend on", () => {
  it("the order in which things are listed", () => {
    fc.assert(
      fc.property(fc.oneof(anyTrip, tied), fc.infiniteStream(fc.nat()), (any, numbers) => {
        const input = fleetOf(any);
        const shuffled = fleetOf(any);
        for (const one of shuffled.coolers) {
          const keyed = one.lots.map((lot) => ({ lot, key: numbers.next().value ?? 0 }));
          Object.assign(one, { lots: keyed.sort((a, b) => a.key - b.key).map(({ lot }) => lot) });
        }
        expectSame(run(input), run(shuffled));
      }),
      runs(60),
    );
  });

  it("what things are called", () => {
    const turned = (id: string): string =>
      [...id].map((c) => String.fromCharCode(158 - c.charCodeAt(0))).join("");
    fc.assert(
      fc.property(fc.oneof(anyTrip, tied), (any) => {
        expectSame(run(fleetOf(any)), run(fleetOf(any, turned)), turned);
      }),
      runs(60),
    );
  });

  it("when one looks: a trip in two parts, or in forty, is the trip", () => {
    fc.assert(
      fc.property(anyTrip, fc.integer({ min: 1, max: 999 }), (any, at) => {
        const whole = run(fleetOf(any));
        expectNear(whole, run(fleetOf(any), {}, [(at / 1000) * any.end_s]));
        const forty = Array.from({ length: 40 }, (_, i) => ((i + 0.37) / 40) * any.end_s);
        expectNear(whole, run(fleetOf(any), {}, forty));
      }),
      runs(40),
    );
  });

  it("the step: half of it moves ice-out by less than 0.2 %", () => {
    fc.assert(
      fc.property(anyTrip, (any) => {
        expectNear(run(fleetOf(any)), run(fleetOf(any), { tolerance: 1 / 8, maxStep_s: 1800 }));
      }),
      runs(40),
    );
  });
});
