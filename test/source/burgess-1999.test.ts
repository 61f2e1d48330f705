// burgess-1999: Burgess, G. (1999), Practical thermal resistance and ice requirement calculations for insulating packages,
// Packag. Technol. Sci. 12:75–80, abstract only: a package's resistance is read off the ice it melts, R = A·ΔT·t/(m·L).
import { expect, it } from "vitest";
import type { Walls } from "../../core/cooler/walls.ts";
import { resistanceFromMelt_m2K_per_W } from "../../core/heat/wall.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";
import { bodyOfConductance, constantAround, melted_kg, meltIn, textbookClosures } from "./textbookBox.ts";

const box = { length_m: 0.44, width_m: 0.34, height_m: 0.27 };
const area_m2 = 2 * (0.44 * 0.34 + 0.44 * 0.27 + 0.34 * 0.27);
const conductance_W_per_K = (walls: Walls) => walls.wall_W_per_K.reduce((a, b) => a + b, 0);

it.each([0.3, 0.9, 2.5])("a box of %d m²K/W gives its resistance back from the ice it melts, ±1 %", (r) => {
  const body = bodyOfConductance(box, 0.03, 0.03, area_m2 / r, conductance_W_per_K);
  const time_s = 24 * 3600;
  const closures = { ...textbookClosures, stillAir_W_per_m2K: 1000 };
  const fleet = meltIn(body, constantAround(28, 1000, 1e-3), 24, time_s, closures);
  const found = resistanceFromMelt_m2K_per_W(area_m2, 28, time_s, melted_kg(fleet), iceLatent_J_per_kg);
  // What is left is the wall's own heat of the first hour and the film of 1000 W/m²K.
  expect(Math.abs(found / r - 1)).toBeLessThan(0.01);
});
