import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { waterDensity_kg_per_m3 } from "../matter/water.ts";
import type { Box } from "./box.ts";

/** Water that stays on the floor of a drained box, kg. */
export const drainFilm_kg = (box: Box): number =>
  box.closures.drainFilm_m * box.walls.floor_m2 * waterDensity_kg_per_m3;

/** Lets water out down to `keep_kg`, at the pool's own temperature; ice in the pool stays. */
export function drainTo(box: Box, keep_kg: number): void {
  const ice = box.pool_J < 0 ? Math.min(box.pool_kg, -box.pool_J / iceLatent_J_per_kg) : 0;
  const out = box.pool_kg - ice - keep_kg;
  if (out <= 0) return;
  const heat = box.pool_J > 0 ? (box.pool_J * out) / box.pool_kg : 0;
  box.pool_J -= heat;
  box.pool_kg -= out;
  box.books.drained_J += heat;
  box.books.drained_kg += out;
}
