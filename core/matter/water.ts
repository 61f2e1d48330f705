import type { EnthalpyCurve } from "./curve.ts";
import { iceEnthalpy_J_per_kg } from "./ice.ts";

/**
 * Heat capacity of liquid water at one atmosphere, °C and J/kgK. The value at 0 °C agrees with the handbook's
 * 4.218 kJ/kgK; the others are the standard ones from memory.
 *
 * @source handbook-ice, from-memory
 */
const heatCapacities: readonly (readonly [t_C: number, c_J_per_kgK: number])[] = [
  [0, 4219],
  [5, 4205],
  [10, 4196],
  [15, 4189],
  [20, 4184],
  [30, 4180],
  [40, 4180],
  [50, 4182],
  [60, 4185],
  [80, 4197],
  [100, 4216],
];

/**
 * Density of water as a packer needs it: 1000 kg/m³ within 0.5 % from 0 to 30 °C.
 *
 * @source from-memory
 */
export const waterDensity_kg_per_m3: number = 1000;

/**
 * Conductivity of still water near 0 °C, W/mK.
 *
 * @source handbook-ice
 */
export const waterConductivity_W_per_mK: number = 0.56;

/**
 * Enthalpy of a closed container of water, −80…100 °C: ice below 0 °C, one melting plateau at 0 °C, water above. It
 * is not for ice that loses its meltwater.
 *
 * @source handbook-ice, from-memory
 */
export const waterCurve: EnthalpyCurve = closedWater();

function closedWater(): EnthalpyCurve {
  const t_C: number[] = [];
  const h_J_per_kg: number[] = [];
  for (let ice_C = -80; ice_C <= 0; ice_C += 5) {
    t_C.push(ice_C);
    h_J_per_kg.push(iceEnthalpy_J_per_kg(ice_C));
  }
  let h = 0;
  heatCapacities.forEach(([water_C, c], i) => {
    const below = heatCapacities[Math.max(i - 1, 0)]!;
    h += ((c + below[1]) / 2) * (water_C - below[0]);
    t_C.push(water_C);
    h_J_per_kg.push(h);
  });
  return { t_C: Float64Array.from(t_C), h_J_per_kg: Float64Array.from(h_J_per_kg) };
}
