import { describe, expect, it } from "vitest";
import type { DrinkAdvice } from "../../../core/forecast/planResult.ts";
import { findFood } from "../../../core/matter/foods.ts";
import { drinkAdvice, warmPrice_kg } from "../../../core/plan/drinks.ts";
import type { TripFood } from "../../../core/trip/types.ts";
import { toyCooler, toyFood, toyForecast, toyIce, toyTrip } from "./toyTrip.ts";

const found = findFood("soft drink");
if (!("food" in found)) throw new Error("soft drink");
const like = found.food;
const cans: Partial<TripFood> = {
  like,
  amount: "30 × 355 mL",
  pieces: 30,
  mass_kg: 30 * 0.369,
  thick_m: 0.066,
  shape: "cylinder",
  state: "ambient",
  start_C: (80 - 32) / 1.8,
};

function advice(more: Partial<TripFood>, ice_kg = 10): DrinkAdvice {
  const food = [toyFood("cans", 0, { ...cans, ...more })];
  const ice = ice_kg === 0 ? [] : [toyIce("cube", 2, ice_kg / 2)];
  const trip = toyTrip({ coolers: [toyCooler("bar", { holds: "drinks" })], food, ice });
  return drinkAdvice(trip, toyForecast(trip))[0]!;
}

describe("warm drinks", () => {
  it("a 30-can case at 80 °F costs about 7 lb of ice", () => {
    // By hand: 30 × 0.355 L of sweet water, 3.9 kJ/kgK, 24.7 K, over 333.55 kJ/kg: 3.2 kg, 7.0 lb.
    const { eachIce_kg, count, says } = advice({});
    expect((eachIce_kg * count) / 0.45359237).toBeGreaterThan(6.6);
    expect((eachIce_kg * count) / 0.45359237).toBeLessThan(7.6);
    expect(says).toMatch(/cost 7(\.\d)? lb/);
  });

  it("cost more the warmer they come, and nothing where they come cold", () => {
    const at = (t_C: number): number => warmPrice_kg({ like, mass_kg: 1, pieces: 1 }, t_C);
    expect(at(2)).toBe(0);
    expect(at(1)).toBe(0);
    expect(at(35)).toBeGreaterThan(at(25));
  });

  it("that were chilled are priced as if they came as warm as the air outside", () => {
    const chilled = advice({ state: "chilled", start_C: 4 });
    const warm = advice({ state: "ambient", start_C: 25 });
    expect(chilled.eachIce_kg).toBeCloseTo(warm.eachIce_kg, 9);
  });

  it("are cold in an hour or a few, sooner where they are thin", () => {
    const { cold_h } = advice({});
    expect(cold_h).toBeGreaterThan(0.3);
    expect(cold_h).toBeLessThan(5);
    expect(advice({ thick_m: 0.03 }).cold_h).toBeLessThan(cold_h);
    expect(advice({}, 0).cold_h).toBeGreaterThan(cold_h);
  });

  it("say how many go in every evening", () => {
    expect(advice({}).says).toMatch(/put \d+ in every evening|drunk within a day/);
  });

  it("are no advice in a dry box, and food is none either", () => {
    const trip = toyTrip({ food: [toyFood("cans", null, cans), toyFood("stew", 0)] });
    expect(drinkAdvice(trip, toyForecast(trip))).toEqual([]);
  });
});
