// Check values computed apart from this program, from water's heat capacity and the latent heat of ice: drinks from 75 or
// 80 °F to 38 °F. No publication; sizes and units are what they check.
import { expect, it } from "vitest";
import type { Food } from "../../core/matter/food.ts";
import { foodDensity_kg_per_m3, foodEnthalpy_J_per_kg } from "../../core/matter/foodProperties.ts";
import { foods } from "../../core/matter/foods.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";
import { parseQuantity } from "../../core/quantity/parse.ts";
import type { Dimension } from "../../core/quantity/units.ts";

function si(text: string, dimension: Dimension): number {
  const reading = parseQuantity(text, dimension);
  if (!reading.ok) throw new Error(reading.must);
  return reading.quantity.value;
}

function ice_kg(drink: Food, volume_m3: number, from_C: number): number {
  const to_C = si("38 F", "temperature");
  const mass_kg = volume_m3 * foodDensity_kg_per_m3(drink, 10);
  return (
    (mass_kg * (foodEnthalpy_J_per_kg(drink, from_C) - foodEnthalpy_J_per_kg(drink, to_C))) /
    iceLatent_J_per_kg
  );
}

it.each([
  ["six 12-oz cans from 75 °F", "soft drink", "72 fl oz", "75 F", "1.2 lb"],
  ["a gallon of water from 75 °F", "water", "1 gal", "75 F", "2.15 lb"],
  ["thirty cans from 80 °F", "soft drink", "360 fl oz", "80 F", "6.7 lb"],
])("%s melts the ice that the sum says, ±10 %", (_what, key, volume, from, ice) => {
  // The cans' metal (2 %) is left out, sugar lowers the heat capacity by 7 %.
  const ours = ice_kg(foods[key]!, si(volume, "volume"), si(from, "temperature"));
  expect(Math.abs(ours / si(ice, "mass") - 1)).toBeLessThan(0.1);
});
