import type { Spread } from "./spread.ts";

/** One insulating material in the wall of a cooler; no thickness, no skins. */
export interface Insulation {
  /** Conductivity at 10 °C, as in use (aged, edges of panels included); null: the gap follows its own law of heat. */
  readonly k10_W_per_mK: Spread | null;
  /** Rise of the conductivity per kelvin: k(T) = k10 + dk/dT · (T − 10 °C), T the mean of the two faces. */
  readonly dk_dT_W_per_mK2: Spread;
  readonly density_kg_per_m3: number;
  readonly heatCapacity_J_per_kgK: number;
  readonly source: string;
}

type InsulationName = "polyurethane" | "EPS" | "XPS" | "vacuum panel" | "soft foam" | "air";

const rising: Spread = { p10: 0.5e-4, p50: 1e-4, p90: 1.5e-4 };
const level: Spread = { p10: 0, p50: 0, p90: 0 };

/**
 * What stands between the skins of a cooler. Conductivities are medians with 10–90 % ranges, set within published
 * spans (polyurethane 0.028 W/mK, 30 kg/m³, 1470 J/kgK in CIBSE Guide A; others from memory) by judgement. Density and
 * heat capacity of the others are from memory; a wall's insulation stores little beside its skins.
 *
 * An air gap has no conductivity of its own here: buoyancy and radiation carry the heat.
 *
 * @source cibse-guide-a, engineering-judgement, from-memory
 */
export const insulations: Readonly<Record<InsulationName, Insulation>> = {
  polyurethane: {
    k10_W_per_mK: { p10: 0.023, p50: 0.026, p90: 0.03 },
    dk_dT_W_per_mK2: rising,
    density_kg_per_m3: 30,
    heatCapacity_J_per_kgK: 1470,
    source: "cibse-guide-a",
  },
  EPS: {
    k10_W_per_mK: { p10: 0.033, p50: 0.036, p90: 0.04 },
    dk_dT_W_per_mK2: rising,
    density_kg_per_m3: 20,
    heatCapacity_J_per_kgK: 1300,
    source: "from-memory",
  },
  XPS: {
    k10_W_per_mK: { p10: 0.027, p50: 0.029, p90: 0.033 },
    dk_dT_W_per_mK2: rising,
    density_kg_per_m3: 33,
    heatCapacity_J_per_kgK: 1400,
    source: "from-memory",
  },
  "vacuum panel": {
    k10_W_per_mK: { p10: 0.008, p50: 0.011, p90: 0.016 },
    dk_dT_W_per_mK2: rising,
    density_kg_per_m3: 190,
    heatCapacity_J_per_kgK: 800,
    source: "from-memory",
  },
  "soft foam": {
    k10_W_per_mK: { p10: 0.036, p50: 0.04, p90: 0.046 },
    dk_dT_W_per_mK2: rising,
    density_kg_per_m3: 30,
    heatCapacity_J_per_kgK: 2100,
    source: "from-memory",
  },
  air: {
    k10_W_per_mK: null,
    dk_dT_W_per_mK2: level,
    density_kg_per_m3: 1.25,
    heatCapacity_J_per_kgK: 1006,
    source: "from-memory",
  },
};
