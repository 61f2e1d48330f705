import type { EnthalpyCurve } from "../matter/curve.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import type { Books } from "./books.ts";
import type { Closures } from "./closures.ts";
import type { CoolerInput, Cover } from "./types.ts";
import type { Walls } from "./walls.ts";

/** How a part takes up room and gives up mass. */
export type PartForm = "block" | "cube" | "crushed" | "closed ice" | "food" | "dry ice";

/**
 * A lot, or the share of a lot that lies in one layer: the thing with one enthalpy (skin and core where it is thick).
 * Loose ice and dry ice lose mass; everything else keeps it.
 */
export interface Part {
  /** Index into the fleet's lots. */
  lot: number;
  form: PartForm;
  layer: number;
  curve: EnthalpyCurve;
  mass_kg: number;
  /** Mass and surface when put in; the surface of loose ice shrinks with the mass to the power 2/3. */
  firstMass_kg: number;
  firstArea_m2: number;
  density_kg_per_m3: number;
  /** From the surface to where the heat goes, m²K/W. */
  inner_m2K_per_W: number;
  /** Between skin and core per kilogram of the part; 0 where one node is enough. */
  core_W_per_kgK: number;
  /** Ice and packs: specific enthalpies at which they are wholly frozen and wholly molten; 0, 0 for the rest. */
  frozen_J_per_kg: number;
  molten_J_per_kg: number;
  /** Enthalpy of all of it, or of the outer half by mass where there is a core. */
  skin_J: number;
  core_J: number;
}

/** One cooler on its way through time. */
export interface Box {
  index: number;
  input: CoolerInput;
  closures: Readonly<Closures>;
  walls: Walls;
  wall_C: Float64Array;
  parts: Part[];
  layers: number;
  pool_kg: number;
  /** Enthalpy of the water in the box, 0 at 0 °C; below 0 part of it is frozen. */
  pool_J: number;
  cover: Cover;
  /** Water left in a wet cloth outside. */
  cloth_kg: number;
  /** Moment of this state, and how fast the cloth was drying then. */
  t_s: number;
  clothLoss_kg_per_s: number;
  /** Water now trickling down from each layer, and gas from dry ice, of the last step. */
  melt_kg_per_s: Float64Array;
  gas_kg_per_s: Float64Array;
  /** Moments in which the lid stands open by an act: until this time. */
  openUntil_s: number;
  /** Air that the open lid still exchanges per second, m³/s. */
  openAir_m3_per_s: number;
  books: Books;
}

export const coreShare_frac = 0.5;
export const hasCore = (part: Part): boolean => part.core_W_per_kgK > 0;
export const isLoose = (form: PartForm): boolean => form === "block" || form === "cube" || form === "crushed";

/** Water ice and packs by what of them is frozen; 0 for food and dry ice. */
export function frozen_kg(part: Part): number {
  if (part.form === "food" || part.form === "dry ice" || part.mass_kg <= 0) return 0;
  const h = part.skin_J / part.mass_kg;
  const share = (part.molten_J_per_kg - h) / (part.molten_J_per_kg - part.frozen_J_per_kg);
  return part.mass_kg * Math.min(1, Math.max(0, share));
}

/** Solid mass of a part at an enthalpy: what of loose ice has not melted; the whole of anything else. */
export function solid_kg(part: Part, skin_J: number): number {
  if (!isLoose(part.form)) return part.mass_kg;
  const solid = -skin_J / iceLatent_J_per_kg;
  return solid >= part.mass_kg ? part.mass_kg : Math.max(solid, 0);
}
