// Graham, J., Johnston, W. A., Nicholson, F. J. (1992), Ice in fisheries, FAO Fisheries Technical Paper 331, ch. 3
// eq. 4–5: ice to cool lean fish, with 0.8 kcal/kgK and 80 kcal/kg; ice melted through a wall, 0.01079 kg/h and 0.259 kg a
// day for each W/K and kelvin. Read in a copy.
import { expect, it } from "vitest";
import { wallHeat_W } from "../../core/heat/wall.ts";
import { foodHeatCapacity_J_per_kgK } from "../../core/matter/foodProperties.ts";
import { foods } from "../../core/matter/foods.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";

it("lean fish needs 0.0100…0.0125 kg of ice per kilogram and kelvin", () => {
  // The manual's own rule gives 0.0100, another practice rule 0.0114; the band adds a tenth for fatter or wetter fish.
  const perKelvin = foodHeatCapacity_J_per_kgK(foods.cod!, 10) / iceLatent_J_per_kg;
  expect(perKelvin).toBeGreaterThanOrEqual(0.01);
  expect(perKelvin).toBeLessThanOrEqual(0.0125);
});

it("each W/K melts 0.01079 kg an hour and 0.259 kg a day per kelvin", () => {
  const hourly_kg = (wallHeat_W(1, 1, 0) * 3600) / iceLatent_J_per_kg;
  // 80 kcal/kg are 334.9 kJ/kg: 0.4 % above the heat taken here; the rest is the last printed digit.
  expect(Math.abs(hourly_kg / 0.01079 - 1)).toBeLessThan(0.005);
  expect(Math.abs((24 * hourly_kg) / 0.259 - 1)).toBeLessThan(0.005);
});
