import { type Box, isLoose } from "./box.ts";

/** The books of one box read out: heat by cause into the cold store, and what is left over. */
export interface Balance {
  lid_J: number;
  sides_J: number;
  base_J: number;
  seal_J: number;
  openingAir_J: number;
  openingExposure_J: number;
  /** Heat that food and drink gave up, from when they came in until they left or now. */
  warmItems_J: number;
  /** Heat that the walls gave up. */
  body_J: number;
  sun_J: number;
  gas_J: number;
  /** Change of ice, packs and water, less what was put in, plus what drained, left or went with gas. */
  coldStore_J: number;
  residual_J: number;
  /** Residual / sum of absolute flows. */
  energy_rel: number;
  /** Water that is neither in the box nor booked out of it, kg. */
  waterLost_kg: number;
}

/** Heat of the walls, from 0 °C. */
function wallHeat_J(box: Box): number {
  let sum = 0;
  for (let i = 0; i < box.wall_C.length; i++) sum += box.walls.heat_J_per_K[i] * box.wall_C[i];
  return sum;
}

/**
 * Closes the books of a box: heat through the border = change of walls and contents + what left. The first law, not a
 * closure; a residual is a bug.
 */
export function balanceOf(box: Box): Balance {
  const { books } = box;
  let food = 0;
  let ice = box.pool_J;
  let loose_kg = 0;
  for (const part of box.parts) {
    const heat = part.skin_J + part.core_J;
    if (part.form === "food") food += heat;
    else ice += heat;
    if (isLoose(part.form)) loose_kg += part.mass_kg;
  }
  const border =
    books.lid_J + books.sides_J + books.base_J + books.seal_J + books.openingAir_J + books.openingExposure_J;
  const warmItems_J = books.foodIn_J - books.foodOut_J - food;
  const body_J = books.wallStart_J - wallHeat_J(box);
  const iceIn = books.putIn_J - books.foodIn_J;
  const iceOut = books.tookOut_J - books.foodOut_J;
  const coldStore_J = ice - iceIn + iceOut + books.drained_J - books.gas_J;
  const residual_J = border + warmItems_J + body_J - coldStore_J;
  return {
    lid_J: books.lid_J,
    sides_J: books.sides_J,
    base_J: books.base_J,
    seal_J: books.seal_J,
    openingAir_J: books.openingAir_J,
    openingExposure_J: books.openingExposure_J,
    warmItems_J,
    body_J,
    sun_J: books.sun_J,
    gas_J: books.gas_J,
    coldStore_J,
    residual_J,
    energy_rel: residual_J / Math.max(1, books.moved_J),
    waterLost_kg:
      books.waterIn_kg + books.condensed_kg - books.waterOut_kg - books.drained_kg - loose_kg - box.pool_kg,
  };
}
