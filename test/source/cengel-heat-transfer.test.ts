// cengel-heat-transfer: Çengel, Y. A., Heat Transfer, ice-chest problem (3-162 / 10-151), the arithmetic read in a copy:
// chest 0.30 × 0.40 × 0.50 m outside, 3 cm of foam (k 0.033 W/mK) on lid and sides, base adiabatic, film 18 W/m²K, air 28 °C,
// inside face 0 °C, 50 kg of ice, 333.7 kJ/kg. Printed: 1.5927 + 0.07508 = 1.6678 K/W, 16.79 W, 276 h. (The header
// misprints mass and thickness.)
import { expect, it } from "vitest";
import { baseChain, type Walls } from "../../core/cooler/walls.ts";
import { iceOut_s } from "../../core/forecast/run.ts";
import { wallHeat_W } from "../../core/heat/wall.ts";
import { bodyOfConductance, constantAround, meltIn } from "./textbookBox.ts";

const film_W_per_m2K = 18;
const inside = { length_m: 0.44, width_m: 0.34, height_m: 0.27 };

/** Lid and sides only: the base is adiabatic. */
function conductance_W_per_K(walls: Walls): number {
  let sum = 0;
  for (let chain = 0; chain < baseChain; chain++)
    sum += 1 / (1 / walls.wall_W_per_K[chain]! + 1 / (film_W_per_m2K * walls.outside_m2[chain]!));
  return sum;
}

it("1.6678 K/W under 28 K lets 16.79 W in", () => {
  const resistance = 0.03 / (0.033 * 0.5708) + 1 / (18 * 0.74);
  expect(Math.abs(resistance / 1.6678 - 1)).toBeLessThan(5e-4);
  expect(Math.abs(wallHeat_W(1 / resistance, 28, 0) / 16.79 - 1)).toBeLessThan(1e-3);
});

it("the simulated chest has the printed areas, and half the ice goes in half of 276 h, ±0.5 %", () => {
  // A base of half a millimetre stands for none. 50 kg of ice do not fit into 40 litres; time goes with the mass.
  // Ice counts as gone at a hundredth: the last of it is reckoned by the same rate.
  const body = bodyOfConductance(inside, 0.03, 0.0005, 1 / 1.6678, conductance_W_per_K);
  const fleet = meltIn(body, constantAround(28, film_W_per_m2K, 1e9), 25, 160 * 3600);
  const { inside_m2, outside_m2 } = fleet.boxes[0]!.walls;
  const sum = (areas: Float64Array) => areas.subarray(0, baseChain).reduce((a, b) => a + b, 0);
  expect(sum(inside_m2)).toBeCloseTo(0.5708, 4);
  expect(Math.abs(sum(outside_m2) / 0.74 - 1)).toBeLessThan(0.002);
  const all_h = iceOut_s(fleet, 0)! / 0.99 / 3600;
  expect(Math.abs(all_h / (276 / 2) - 1)).toBeLessThan(0.005);
});
