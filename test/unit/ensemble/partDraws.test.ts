import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { changedCoolers, withFresh } from "../../../core/ensemble/partDraws.ts";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Trip } from "../../../core/trip/types.ts";

/** Three coolers with ice, of which the first is emptied into the second on the second day. */
function threeCoolers(): Trip {
  const text = readFileSync(new URL("../../../examples/family-three-days.yaml", import.meta.url), "utf8");
  const reading = readTrip(text, { file: "family" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { trip } = reading;
  const [first, second] = trip.coolers;
  const third = { ...second!, name: "third" };
  const placed = trip.food.map((food, i) => ({ ...food, cooler: food.state === "dry" ? null : i % 3 }));
  const block = {
    ...trip.ice[0]!,
    form: "block" as const,
    path: "",
    mass_kg: 4,
    pieces: 1,
    liquid_frac: 0,
    layer: null,
  };
  const ice = [0, 1, 2].map((cooler) => ({ ...block, id: `block ${cooler}`, cooler, putIn_s: null }));
  const merge = { do: "merge" as const, t_s: 30 * 3600, from: 0, into: 1, path: "" };
  return { ...trip, coolers: [first!, second!, third], food: placed, ice, events: [merge] };
}

const trip = threeCoolers();
const task = { from: 0, to: 6, seed: 3, series: true };
const whole = runMembers(trip, task);
const apart: Trip = { ...trip, events: [] };
const wholeApart = runMembers(apart, task);

describe("members of some coolers", () => {
  it("are those of the whole trip, to the last bit, for a cooler alone", () => {
    const part = runMembers(apart, { ...task, only: [2] });
    expect(part.coolers[2]).toEqual(wholeApart.coolers[2]);
    expect(part.series![2]).toEqual(wholeApart.series![2]);
    expect(part.coolers[0]!.iceCarriedOn_h.every(Number.isNaN)).toBe(true);
    expect(wholeApart.coolers[0]!.iceCarriedOn_h.some(Number.isNaN)).toBe(false);
  });

  it("differ by less than the step tolerance where a merge of two others makes all halt", () => {
    const part = runMembers(trip, { ...task, only: [2] });
    const was = whole.coolers[2]!.iceCarriedOn_h;
    part.coolers[2]!.iceCarriedOn_h.forEach((hour, m) => {
      expect(Math.abs(hour / was[m]! - 1)).toBeLessThan(0.002);
    });
  });

  it("take along what a merge joins to it", () => {
    const part = runMembers(trip, { ...task, only: [1] });
    for (const i of [0, 1]) expect(part.coolers[i]).toEqual(whole.coolers[i]);
    const inCoolers = trip.food.filter(({ cooler }) => cooler !== null);
    inCoolers.forEach(({ cooler }, k) => {
      if (cooler === 2) expect(part.food[k]!.warm_h.every(Number.isNaN)).toBe(true);
      else expect(part.food[k]).toEqual(whole.food[k]);
    });
  });

  it("make a whole again with those of the others, as if all had been run anew", () => {
    const heavier = trip.ice.map((ice) => (ice.cooler === 2 ? { ...ice, mass_kg: 6, pieces: 2 } : ice));
    const changed = { ...apart, ice: heavier };
    const only = changedCoolers(apart, changed);
    expect(only).toEqual([2]);
    const fresh = runMembers(changed, { ...task, series: false, only });
    const before = { ...wholeApart, series: null };
    expect(withFresh(changed, before, fresh, only)).toEqual(runMembers(changed, { ...task, series: false }));
  });
});

describe("coolers that changed", () => {
  it("are none where only ids and paths differ", () => {
    const same = { ...trip, ice: trip.ice.map((ice) => ({ ...ice, id: `${ice.id} again`, path: "plan" })) };
    expect(changedCoolers(trip, same)).toEqual([]);
  });

  it("are both sides of a merge that is taken away, and what a merge joins to a changed one", () => {
    expect(changedCoolers(trip, { ...trip, events: [] })).toEqual([0, 1]);
    const warmer = trip.ice.map((ice) => (ice.cooler === 1 ? { ...ice, start_C: -1 } : ice));
    expect(changedCoolers(trip, { ...trip, ice: warmer })).toEqual([0, 1]);
  });

  it("are those, too, whose alike ice gets another number, since its weight is then drawn otherwise", () => {
    const one = trip.ice[0]!;
    const more = { ...trip, ice: [{ ...one, id: "new" }, ...trip.ice] };
    expect(changedCoolers(trip, more)).toEqual([0, 1, 2]);
  });
});
