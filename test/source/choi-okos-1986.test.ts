// Choi, Y., Okos, M. R. (1986), Effects of temperature and composition on the thermal properties of foods, as printed in
// ASHRAE Handbook—Refrigeration, "Thermal properties of foods". Coefficients read in a copy.
import { expect, it } from "vitest";
import {
  type Component,
  componentConductivity_W_per_mK,
  componentDensity_kg_per_m3,
  componentHeat_J_per_kg,
  componentHeatCapacity_J_per_kgK,
} from "../../core/matter/choiOkos.ts";

// Computed from the printed polynomials by hand; five digits are printed, so 0.1 % is generous to rounding and far below
// the damage of any of the misprints in circulation (4.1289 for water, carbohydrate with the conductivity's numbers).
it.each<[Component, number]>([
  ["water", 4.1759],
  ["protein", 2.0142],
  ["fat", 1.9914],
  ["carbohydrate", 1.5585],
  ["fibre", 1.8549],
  ["ash", 1.102],
])("heat capacity of %s at 5 °C is %d kJ/kgK", (component, c_kJ_per_kgK) => {
  expect(componentHeatCapacity_J_per_kgK(component, 5) / 1000 / c_kJ_per_kgK).toBeCloseTo(1, 3);
});

it("ice at 0 and −20 °C, water at 20 °C", () => {
  expect(componentConductivity_W_per_mK("ice", 0)).toBeCloseTo(2.2196, 4);
  expect(componentDensity_kg_per_m3("ice", 0)).toBeCloseTo(916.89, 2);
  expect(componentHeatCapacity_J_per_kgK("ice", 0)).toBeCloseTo(2062.3, 1);
  expect(componentConductivity_W_per_mK("ice", -20)).toBeCloseTo(2.3852, 4);
  expect(componentDensity_kg_per_m3("ice", -20)).toBeCloseTo(919.5, 1);
  expect(componentHeatCapacity_J_per_kgK("ice", -20)).toBeCloseTo(1940.8, 1);
  expect(componentConductivity_W_per_mK("water", 20)).toBeCloseTo(0.60366, 5);
  expect(componentDensity_kg_per_m3("water", 20)).toBeCloseTo(995.74, 2);
});

it("the density of water at 20 °C misses the true 998.2 kg/m³ by 0.25 %: known, and harmless", () => {
  expect(componentDensity_kg_per_m3("water", 20) / 998.2 - 1).toBeCloseTo(-0.0025, 4);
});

it("heat is the integral of heat capacity", () => {
  const parts: Component[] = ["ice", "protein", "fat", "carbohydrate", "fibre", "ash", "alcohol"];
  for (const component of parts) {
    for (const t of [-30, 25]) {
      const slope = componentHeat_J_per_kg(component, t + 0.01) - componentHeat_J_per_kg(component, t - 0.01);
      expect(slope / 0.02 / componentHeatCapacity_J_per_kgK(component, t)).toBeCloseTo(1, 6);
    }
  }
});
