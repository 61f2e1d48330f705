// ncert-physics-xi: NCERT, Physics, Textbook for Class XI, exercise in thermal properties of matter, read in a copy: cubical
// box of side 0.30 m (0.54 m²), wall 5 cm, k 0.01 W/mK, 45 °C outside, 4.0 kg of ice, 6 h, 335 kJ/kg. Printed: 3.687 kg left.
import { expect, it } from "vitest";
import type { Walls } from "../../core/cooler/walls.ts";
import { wallHeat_W } from "../../core/heat/wall.ts";
import { bodyOfConductance, constantAround, melted_kg, meltIn, textbookClosures } from "./textbookBox.ts";

const ua_W_per_K = (0.01 * 0.54) / 0.05;
const cube = { length_m: 0.3, width_m: 0.3, height_m: 0.3 };
const conductance_W_per_K = (walls: Walls) => walls.wall_W_per_K.reduce((a, b) => a + b, 0);

it("closed form: 3.687 kg are left, ±0.003", () => {
  const left_kg = 4 - (wallHeat_W(ua_W_per_K, 45, 0) * 6 * 3600) / 335e3;
  expect(Math.abs(left_kg - 3.687)).toBeLessThan(0.003);
});

it("the simulated box keeps as much, ±0.003", () => {
  // The book's outer face is at the air's temperature: a film of 1000 W/m²K takes 0.02 % of the difference. Our latent
  // heat is 0.4 % below the book's, a gram; the wall's own heat is less.
  const body = bodyOfConductance(cube, 0.05, 0.05, ua_W_per_K, conductance_W_per_K);
  const closures = { ...textbookClosures, stillAir_W_per_m2K: 1000 };
  const fleet = meltIn(body, constantAround(45, 1000, 1e-3), 4, 6 * 3600, closures);
  expect(Math.abs(4 - melted_kg(fleet) - 3.687)).toBeLessThan(0.003);
});
