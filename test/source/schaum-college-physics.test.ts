// schaum-college-physics: Schaum's Outline of College Physics, ch. 19, problem 4, read in a copy: cubical box, 42 cm inside,
// wall 3.0 cm, k 0.050 W/mK, 20 °C outside, ice inside. Printed: 35.3 W and 0.38 kg of ice an hour.
import { expect, it } from "vitest";
import type { Walls } from "../../core/cooler/walls.ts";
import { wallHeat_W } from "../../core/heat/wall.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";
import { bodyOfConductance, constantAround, melted_kg, meltIn, textbookClosures } from "./textbookBox.ts";

const ua_W_per_K = (0.05 * 6 * 0.42 ** 2) / 0.03;
const cube = { length_m: 0.42, width_m: 0.42, height_m: 0.42 };
const conductance_W_per_K = (walls: Walls) => walls.wall_W_per_K.reduce((a, b) => a + b, 0);

it("closed form: 35.3 W, 0.38 kg an hour", () => {
  const heat_W = wallHeat_W(ua_W_per_K, 20, 0);
  expect(Math.abs(heat_W - 35.3)).toBeLessThan(0.05);
  expect(Math.abs((heat_W * 3600) / iceLatent_J_per_kg - 0.38)).toBeLessThan(0.005);
});

it("the simulated box melts 0.38 kg an hour, ±0.005", () => {
  // Over ten hours, so that the quarter hour in which the wall warms is not seen.
  const body = bodyOfConductance(cube, 0.03, 0.03, ua_W_per_K, conductance_W_per_K);
  const closures = { ...textbookClosures, stillAir_W_per_m2K: 1000 };
  const fleet = meltIn(body, constantAround(20, 1000, 1e-3), 20, 10 * 3600, closures);
  expect(Math.abs(melted_kg(fleet) / 10 - 0.38)).toBeLessThan(0.005);
});
