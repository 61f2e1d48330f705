import { requireFinite } from "../quantity/errors.ts";

/** What the ice fraction of a food depends on: shares of the whole food before freezing, and where freezing begins. */
export interface Freezing {
  readonly water_frac: number;
  readonly protein_frac: number;
  /** Initial freezing point, −40…0. */
  readonly freezes_C: number;
}

/**
 * Latent heat that the food handbook's equations are written with, J/kg.
 *
 * @source ashrae-refrigeration
 */
export const foodLatent_J_per_kg: number = 333_600;

/**
 * Water bound to protein, which never freezes: 0.4 of the protein, as a share of the food.
 *
 * @source schwartzberg-1976
 */
export function boundWater_frac(protein_frac: number): number {
  return 0.4 * requireFinite("protein_frac", protein_frac, 0, 1);
}

/**
 * Share of the food that is ice, by Miles: an ideal solution that concentrates as it freezes. The reckoning uses this
 * one.
 *
 * @param t_C −80…100; 0 at and above the freezing point
 * @source miles-1974, schwartzberg-1976
 */
export function milesIce_frac(food: Freezing, t_C: number): number {
  requireFinite("t_C", t_C, -80, 100);
  const freezes_C = requireFinite("freezes_C", food.freezes_C, -40, 0);
  if (t_C >= freezes_C) return 0;
  const free = Math.max(food.water_frac - boundWater_frac(food.protein_frac), 0);
  return free * (1 - freezes_C / t_C);
}

/**
 * Share of the food that is ice, by Tchigeov's fit; a peer of Miles.
 *
 * @param t_C −45…100; 0 at and above the freezing point
 * @source tchigeov-1979
 */
export function tchigeovIce_frac(food: Freezing, t_C: number): number {
  requireFinite("t_C", t_C, -45, 100);
  if (t_C >= food.freezes_C) return 0;
  return (1.105 * food.water_frac) / (1 + 0.7138 / Math.log(food.freezes_C - t_C + 1));
}

const GAS_J_PER_MOLK = 8.314;
const MELTING_K = 273.15;

/**
 * Share of the food that is ice, by Chen: as Miles, written with the molar mass that the soluble solids would need; a
 * peer of Miles.
 *
 * @param t_C −80…100; 0 at and above the freezing point
 * @param soluteMolarMass_kg_per_mol of the solids; see `chenMolarMass_kg_per_mol`
 * @source chen-1985
 */
export function chenIce_frac(food: Freezing, t_C: number, soluteMolarMass_kg_per_mol: number): number {
  requireFinite("t_C", t_C, -80, 100);
  if (t_C >= food.freezes_C) return 0;
  const solids = 1 - food.water_frac;
  const strength =
    (solids * GAS_J_PER_MOLK * MELTING_K ** 2) / (soluteMolarMass_kg_per_mol * foodLatent_J_per_kg);
  return (strength * (food.freezes_C - t_C)) / (food.freezes_C * t_C);
}

/**
 * Molar mass of the solids that makes the food freeze where it does.
 *
 * @source chen-1985
 */
export function chenMolarMass_kg_per_mol(food: Freezing): number {
  const free = food.water_frac - boundWater_frac(food.protein_frac);
  const solids = 1 - food.water_frac;
  return (solids * GAS_J_PER_MOLK * MELTING_K ** 2) / (-free * foodLatent_J_per_kg * food.freezes_C);
}

/**
 * Initial freezing point of meat from its composition, by Pham; within about 0.5 K of published ones. A check on the
 * table of foods.
 *
 * @param water_frac, fat_frac, ash_frac shares by mass, 0…1
 * @source pham-1996
 */
export function phamFreezing_C(water_frac: number, fat_frac: number, ash_frac: number): number {
  requireFinite("water_frac", water_frac, 0.01, 1);
  const others =
    1 - water_frac - requireFinite("fat_frac", fat_frac, 0, 1) - requireFinite("ash_frac", ash_frac, 0, 1);
  return (-4.66 * others - 46.4 * ash_frac) / water_frac;
}
