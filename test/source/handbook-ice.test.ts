// Handbook table of the properties of ice: density 916.7 / 918.7 / 920.3 kg/m³, heat capacity 2.11 / 2.03 / 1.96 kJ/kgK,
// conductivity 2.14 / 2.3 / 2.4 W/mK at 0 / −10 / −20 °C; latent heat 333.6 kJ/kg; water at 0 °C 4.218 kJ/kgK. Read.
// Beside it: FAO Fisheries Technical Paper 331 (1992), ch. 12: conductivity 2.22 / 2.31 / 2.42, heat capacity 2.05 / 1.93,
// latent heat 334.9. Read.
import { describe, expect, it } from "vitest";
import {
  iceConductivity_W_per_mK,
  iceDensity_kg_per_m3,
  iceEnthalpy_J_per_kg,
  iceHeatCapacity_J_per_kgK,
  iceLatent_J_per_kg,
} from "../../core/matter/ice.ts";
import { waterCurve } from "../../core/matter/water.ts";

const within = (ours: number, printed: number, share: number) =>
  expect(Math.abs(ours / printed - 1)).toBeLessThan(share);

describe.each([
  [0, 916.7, 2110, 2.14, 2.22],
  [-10, 918.7, 2030, 2.3, 2.31],
  [-20, 920.3, 1960, 2.4, 2.42],
])("ice at %d °C", (t, density, c, k, kFao) => {
  // A straight line through three printed values: it misses the middle one by less than its last digit matters.
  it("density and heat capacity", () => {
    within(iceDensity_kg_per_m3(t), density, 0.0005);
    within(iceHeatCapacity_J_per_kgK(t), c, 0.005);
  });

  it("conductivity: within 2 % of FAO, and of the handbook but for 0 °C, where they differ by 4 %", () => {
    within(iceConductivity_W_per_mK(t), kFao, 0.02);
    within(iceConductivity_W_per_mK(t), k, t === 0 ? 0.04 : 0.02);
  });
});

it("latent heat lies between the handbook's 333.6 and the last century's 334.9 by less than 0.5 %", () => {
  within(iceLatent_J_per_kg, 333_600, 0.0005);
  within(iceLatent_J_per_kg, 334_900, 0.005);
});

it("FAO's mean heat capacities of ice differ from ours by up to 4 %, as from the handbook", () => {
  within(iceHeatCapacity_J_per_kgK(0), 2050, 0.04);
  within(iceHeatCapacity_J_per_kgK(-20), 1930, 0.02);
});

it("water begins with the printed heat capacity", () => {
  const zero = [...waterCurve.t_C].lastIndexOf(0);
  const first = (waterCurve.h_J_per_kg[zero + 1]! - waterCurve.h_J_per_kg[zero]!) / waterCurve.t_C[zero + 1]!;
  within(first, 4218, 0.003);
});

it("ice at −18 °C is worth 11 % more than ice at 0 °C (computed check value)", () => {
  within(iceEnthalpy_J_per_kg(-18) / iceEnthalpy_J_per_kg(0), 1.11, 0.003);
});
