import { describe, expect, it } from "vitest";
import { linkedCoolers, onlyCoolers } from "../../core/trip/oneCooler.ts";
import { toyCooler, toyFood, toyForecast, toyIce, toyTrip } from "./plan/toyTrip.ts";

const fleet = toyTrip({
  coolers: [toyCooler("bar"), toyCooler("galley"), toyCooler("last days")],
  food: [toyFood("soup", 0), toyFood("stew", 1), toyFood("crackers", null), toyFood("roast", 2)],
  ice: [toyIce("cube", 3, 2, 0), toyIce("cube", 2, 2, 1), toyIce("block", 4, 2, 2)],
  events: [
    { do: "drain", t_s: 3600, cooler: 2, path: "events[0]" },
    { do: "merge", t_s: 7200, from: 0, into: 1, path: "events[1]" },
  ],
});

describe("one part of a trip", () => {
  it("is joined by merges alone", () => {
    expect([...linkedCoolers(fleet, 1)].sort()).toEqual([0, 1]);
    expect([...linkedCoolers(fleet, 2)]).toEqual([2]);
  });

  it("holds what is in those coolers and what happens to them, at their new places", () => {
    const last = onlyCoolers(fleet, new Set([2]));
    expect(last.coolers.map(({ name }) => name)).toEqual(["last days"]);
    expect(last.food.map(({ name, cooler }) => [name, cooler])).toEqual([["roast", 0]]);
    expect(last.ice.map(({ form, cooler }) => [form, cooler])).toEqual([["block", 0]]);
    expect(last.events).toEqual([{ do: "drain", t_s: 3600, cooler: 0, path: "events[0]" }]);
  });

  it("comes out as it does within the whole trip", () => {
    const whole = toyForecast(fleet).result;
    for (const group of [new Set([0, 1]), new Set([2])]) {
      const part = toyForecast(onlyCoolers(fleet, group)).result;
      expect(part.coolers).toEqual(whole.coolers.filter((_, i) => group.has(i)));
    }
  });
});
