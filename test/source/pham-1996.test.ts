// Pham, Q. T. (1996), Prediction of calorimetric properties and freezing time of foods from composition data, J. Food Eng.
// 30:95–107: initial freezing point of meat. Formula read in a copy.
import { expect, it } from "vitest";
import { foods } from "../../core/matter/foods.ts";
import { phamFreezing_C } from "../../core/matter/iceFraction.ts";

it("gives lean sirloin and milk within 0.5 K of the handbook's printed freezing points", () => {
  // The formula's own scatter on published foods is about half a kelvin.
  expect(Math.abs(phamFreezing_C(0.717, 0.044, 0.0108) - -1.7)).toBeLessThan(0.5);
  expect(Math.abs(phamFreezing_C(0.88, 0.033, 0.007) - -0.6)).toBeLessThan(0.5);
});

function gap_K(key: string): number {
  const food = foods[key]!;
  return phamFreezing_C(food.water_frac, food.fat_frac, food.ash_frac) - food.freezes_C!;
}

it("stands by the table's freezing points of lean meat and fish, estimates included, within 0.6 K", () => {
  for (const key of ["beef steak", "lamb", "pork", "salmon", "trout", "cod", "shrimp", "game meat"]) {
    expect(Math.abs(gap_K(key)), key).toBeLessThan(0.6);
  }
});

it("misses poultry: printed at −2.8 °C, by composition it freezes 0.4 to 1.1 K warmer", () => {
  for (const key of ["chicken breast", "chicken thigh", "ground turkey"]) {
    expect(gap_K(key), key).toSatisfy((gap: number) => gap > 0.4 && gap < 1.1);
  }
});
