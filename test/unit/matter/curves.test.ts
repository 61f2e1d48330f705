import { describe, expect, it } from "vitest";
import type { EnthalpyCurve } from "../../../core/matter/curve.ts";
import type { Food } from "../../../core/matter/food.ts";
import {
  foodConductivity_W_per_mK,
  foodCurve,
  foodDensity_kg_per_m3,
  foodEnthalpy_J_per_kg,
  foodHeatCapacity_J_per_kgK,
  foodIce_frac,
} from "../../../core/matter/foodProperties.ts";
import { foods } from "../../../core/matter/foods.ts";
import { iceEnthalpy_J_per_kg, iceHeatCapacity_J_per_kgK } from "../../../core/matter/ice.ts";
import { packs } from "../../../core/matter/packs.ts";
import { waterCurve } from "../../../core/matter/water.ts";
import { DomainError } from "../../../core/quantity/errors.ts";

const all: Food[] = Object.values(foods);

function read_J_per_kg({ t_C, h_J_per_kg }: EnthalpyCurve, at_C: number): number {
  const i = Math.max(
    1,
    t_C.findIndex((t) => t >= at_C),
  );
  const share = (at_C - t_C[i - 1]!) / (t_C[i]! - t_C[i - 1]!);
  return h_J_per_kg[i - 1]! + share * (h_J_per_kg[i]! - h_J_per_kg[i - 1]!);
}

function expectWellFormed({ t_C, h_J_per_kg }: EnthalpyCurve): void {
  expect(t_C.length).toBe(h_J_per_kg.length);
  for (let i = 1; i < t_C.length; i++) {
    expect(h_J_per_kg[i]! - h_J_per_kg[i - 1]!).toBeGreaterThan(0);
    expect(t_C[i]! - t_C[i - 1]!).toBeGreaterThanOrEqual(0);
  }
}

describe("curves of enthalpy", () => {
  it.each(all.map((food) => [food.key, food] as const))(
    "%s: rises, and lies within 0.3 kJ/kg of its law",
    (_k, food) => {
      const curve = foodCurve(food);
      expectWellFormed(curve);
      expect(foodCurve(food)).toBe(curve);
      for (let t = -79.97; t < 80; t += 0.23) {
        expect(Math.abs(read_J_per_kg(curve, t) - foodEnthalpy_J_per_kg(food, t))).toBeLessThan(300);
      }
    },
  );

  it("water and packs are well formed, and 0 for the liquid at 0 °C", () => {
    for (const curve of [waterCurve, packs["gel pack"].curve, packs["eutectic pack"].curve]) {
      expectWellFormed(curve);
      const liquid = [...curve.t_C].lastIndexOf(0);
      if (liquid >= 0) expect(curve.h_J_per_kg[liquid]).toBe(0);
      else expect(read_J_per_kg(curve, 0)).toBeCloseTo(0, 6);
    }
  });

  it("an ice curve agrees with the closed form, and its slope with the heat capacity", () => {
    for (const t of [-75, -33, -18, -4]) {
      expect(Math.abs(read_J_per_kg(waterCurve, t) - iceEnthalpy_J_per_kg(t))).toBeLessThan(30);
      const slope = (iceEnthalpy_J_per_kg(t + 0.5) - iceEnthalpy_J_per_kg(t - 0.5)) / 1;
      expect(slope).toBeCloseTo(iceHeatCapacity_J_per_kgK(t), 6);
    }
  });

  it("a pack melts where it says, with less heat than ice", () => {
    for (const pack of Object.values(packs)) {
      const below = read_J_per_kg(pack.curve, pack.melts_C - 0.6);
      const above = read_J_per_kg(pack.curve, pack.melts_C + 0.1);
      expect(above - below).toSatisfy((h: number) => h > 0.6 * 333_550 && h < 333_550);
    }
  });
});

describe("properties of foods", () => {
  it("ice grows from nothing as it gets colder, and never takes the bound water", () => {
    for (const food of all) {
      let last = 0;
      for (let t = food.freezes_C ?? 0; t >= -80; t -= 0.5) {
        const ice = foodIce_frac(food, t);
        expect(ice).toBeGreaterThanOrEqual(last);
        expect(ice).toBeLessThanOrEqual(Math.max(0, food.water_frac - 0.4 * food.protein_frac));
        last = ice;
      }
    }
  });

  it("enthalpy is continuous at the freezing point and 0 at 0 °C", () => {
    for (const food of all.filter((f) => f.freezes_C !== 0)) {
      const t = food.freezes_C ?? -1;
      expect(foodEnthalpy_J_per_kg(food, t) - foodEnthalpy_J_per_kg(food, t - 1e-9)).toBeLessThan(0.1);
      expect(Math.abs(foodEnthalpy_J_per_kg(food, 0))).toBe(0);
    }
  });

  it("drier food has less heat capacity; frozen food conducts better; air inside makes it light", () => {
    const at = (key: string) => foods[key]!;
    expect(foodHeatCapacity_J_per_kgK(at("cheddar"), 5)).toBeLessThan(
      foodHeatCapacity_J_per_kgK(at("milk"), 5),
    );
    expect(foodConductivity_W_per_mK(at("cod"), -18)).toBeGreaterThan(
      3 * foodConductivity_W_per_mK(at("cod"), 4),
    );
    expect(foodDensity_kg_per_m3(at("bread"), 20)).toBeLessThan(400);
    expect(foodDensity_kg_per_m3(at("wine"), 10)).toSatisfy((rho: number) => rho > 970 && rho < 1000);
  });

  it("refuses a temperature outside its range", () => {
    expect(() => foodEnthalpy_J_per_kg(foods.milk!, -81)).toThrow(DomainError);
    expect(() => foodHeatCapacity_J_per_kgK(foods.milk!, -5)).toThrow(DomainError);
    expect(() => foodConductivity_W_per_mK(foods.milk!, Number.NaN)).toThrow(DomainError);
    expect(() => iceEnthalpy_J_per_kg(0.1)).toThrow(DomainError);
  });
});
