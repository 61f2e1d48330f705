// cengel-heat-transfer: Çengel, Heat Transfer, solution 11-44, read in a copy of the solutions: steaks of half thickness
// 0.01 m, k 0.45 W/mK, 0.91e-7 m²/s, film 9 W/m²K, from 25 °C in air of −11 °C. Printed: Biot 0.200, first root 0.4328,
// first coefficient 1.0311, dimensionless time 5.085, 93.1 min until the skin is at 2 °C.
import { expect, it } from "vitest";
import { centreTime_s } from "../../core/heat/conduction.ts";

const volumeHeat = 0.45 / 0.91e-7;
const steak = {
  shape: "slab",
  thick_m: 0.02,
  density_kg_per_m3: 1000,
  curve: {
    t_C: Float64Array.of(-80, 80),
    h_J_per_kg: Float64Array.of((-80 * volumeHeat) / 1000, (80 * volumeHeat) / 1000),
  },
  k_W_per_mK: [0.45, 0.45],
} as const;

it("cools the skin to 2 °C in 93.1 min, ±1 %", () => {
  // With one term the middle is 1/cos(0.4328) times as far from the air as the skin.
  const middle_C = -11 + (2 + 11) / Math.cos(0.4328);
  const time_s = centreTime_s(steak, 25, { t_C: -11, film_W_per_m2K: 9 }, middle_C)!;
  expect(Math.abs(time_s / 60 / 93.1 - 1)).toBeLessThan(0.01);
});
