// Room that carbon dioxide gas takes: gas law with compressibility 0.9947 at 70 °F and one atmosphere (computed), beside
// trade figures read in copies: a pound makes about 8.8 ft³, ten kilograms about 5.4 m³, solid to gas 845 times.
import { expect, it } from "vitest";
import {
  carbonDioxideGas_m3_per_kg,
  carbonDioxideHeatCapacity_J_per_kgK,
  dryIce_C,
  dryIceDensity_kg_per_m3,
  dryIceSublimation_J_per_kg,
} from "../../core/matter/dryIce.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";

const POUND_KG = 0.45359237;
const CUBIC_FOOT_M3 = 0.3048 ** 3;

it("a pound makes 8.74 cubic feet, ±0.05 between room temperatures", () => {
  expect(Math.abs((carbonDioxideGas_m3_per_kg * POUND_KG) / CUBIC_FOOT_M3 - 8.74)).toBeLessThan(0.05);
});

it("follows the gas law: Z·R·T/(M·p)", () => {
  const law = (0.9947 * 8.314463 * (273.15 + 190 / 9)) / (0.0440095 * 101_325);
  expect(Math.abs(carbonDioxideGas_m3_per_kg / law - 1)).toBeLessThan(0.001);
});

it("ten kilograms make about 5.4 m³, 845 times the solid; blocks are less dense than the solid", () => {
  expect(Math.abs((10 * carbonDioxideGas_m3_per_kg) / 5.4 - 1)).toBeLessThan(0.02);
  expect(Math.abs((carbonDioxideGas_m3_per_kg * 1560) / 845 - 1)).toBeLessThan(0.02);
  expect(dryIceDensity_kg_per_m3).toSatisfy((rho: number) => rho >= 1400 && rho <= 1600);
});

it("is worth 1.71 times ice by the kilogram, 1.89 with its gas warmed to 0 °C (computed)", () => {
  expect(dryIceSublimation_J_per_kg / iceLatent_J_per_kg).toBeCloseTo(1.71, 2);
  const gas = carbonDioxideHeatCapacity_J_per_kgK * (0 - dryIce_C);
  expect((dryIceSublimation_J_per_kg + gas) / iceLatent_J_per_kg).toBeCloseTo(1.89, 1);
});
