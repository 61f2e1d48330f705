import { describe, expect, it } from "vitest";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import { isSure, type Standing, standingOf } from "../../../core/plan/standing.ts";
import { sureWays } from "../../../core/plan/sureWays.ts";
import type { Trip, TripFood } from "../../../core/trip/types.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const members = 24;
const options = { members, seed: 1 };

const standing = (trip: Trip): Standing =>
  standingOf(trip, runMembers(trip, { from: 0, to: members, seed: 1, series: false }));

const withFood = (trip: Trip, change: (food: TripFood) => Partial<TripFood>): Trip => ({
  ...trip,
  food: trip.food.map((food) => ({ ...food, ...change(food) })),
});

describe("ways out of a plan that is not sure", () => {
  // Milk whose package lets water in, beside raw chicken whose package gives juice away, in a third of meltwater.
  const soaked = withFood(smallTrip({ ice_kg: 12 }), () => ({ watertight: false }));

  it("tell packages that lie in raw juice apart from food that is not cold enough", () => {
    const { wet, lost } = standing(soaked);
    expect(wet.map(({ item }) => item.name)).toContain("milk");
    expect(lost.map(({ item }) => item.name)).not.toContain("milk");
    expect(standing(withFood(soaked, () => ({ watertight: true }))).wet).toEqual([]);
  });

  it("keep what they promise: packed watertight, nothing is discarded for water", () => {
    const says = sureWays(soaked, standing(soaked), [], options).map((way) => way.says);
    const way = says.find((one) => /^pack .*milk.* watertight: its food is then within/.test(one));
    expect(way).toMatch(/nothing instead of/);
  });

  it("are three at the most, and none for a cooler that was told some, or where it is sure", () => {
    const hot = smallTrip({ ice_kg: 1, high_C: 42 });
    const [head, ...ways] = sureWays(hot, standing(hot), [], options);
    expect(head!.code).toBe("food-unsure");
    expect(ways.length).toBeGreaterThan(0);
    expect(ways.length).toBeLessThanOrEqual(3);
    const told = [{ code: "way-out", says: "", path: "coolers[0]" }];
    expect(sureWays(hot, standing(hot), told, options)).toEqual([]);
    const plenty = smallTrip({ ice_kg: 16, high_C: 22 });
    expect(isSure(standing(plenty))).toBe(true);
    expect(sureWays(plenty, standing(plenty), [], options)).toEqual([]);
  });

  it("are not offered ice for what is lost whatever the ice: two hours warm before it is packed", () => {
    const spoilt = withFood(smallTrip({ ice_kg: 16, high_C: 22 }), ({ name }) =>
      name === "chicken" ? { warmBefore_s: 3 * 3600 } : {},
    );
    const { lost, wet } = standing(spoilt);
    expect(lost).toEqual([]);
    expect(wet).toEqual([]);
  });
});
