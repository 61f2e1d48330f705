import { requireFinite } from "../quantity/errors.ts";

/**
 * Heat that melts a kilogram of ice at 0 °C, J/kg. Handbooks print 333.5…333.7 kJ/kg, older ones 334.9.
 *
 * @source handbook-ice
 */
export const iceLatent_J_per_kg: number = 333_550;

const COLDEST_C = -80;

/** Heat capacity at 0 °C and its rise per kelvin: a line through the handbook's 2.11, 2.03 and 1.96 kJ/kgK. */
const HEAT_CAPACITY_0 = 2110;
const HEAT_CAPACITY_RISE = 7.5;

/**
 * Density of ice without bubbles. Linear through the handbook's values at 0, −10 and −20 °C.
 *
 * @param ice_C −80…0; below −20 it is an extrapolation
 * @source handbook-ice
 */
export function iceDensity_kg_per_m3(ice_C: number): number {
  requireFinite("ice_C", ice_C, COLDEST_C, 0);
  return 916.7 - 0.18 * ice_C;
}

/**
 * Heat capacity of ice. Linear through the handbook's values at 0, −10 and −20 °C.
 *
 * @param ice_C −80…0; below −20 it is an extrapolation
 * @source handbook-ice
 */
export function iceHeatCapacity_J_per_kgK(ice_C: number): number {
  requireFinite("ice_C", ice_C, COLDEST_C, 0);
  return HEAT_CAPACITY_0 + HEAT_CAPACITY_RISE * ice_C;
}

/**
 * Conductivity of ice, after Choi and Okos; it lies between the handbook's 2.14 (0 °C) and the fisheries manual's
 * 2.42 W/mK (−20 °C).
 *
 * @param ice_C −80…0; below −40 it is an extrapolation
 * @source choi-okos-1986
 */
export function iceConductivity_W_per_mK(ice_C: number): number {
  requireFinite("ice_C", ice_C, COLDEST_C, 0);
  return 2.2196 - 6.2489e-3 * ice_C + 1.0154e-4 * ice_C ** 2;
}

/**
 * Enthalpy of solid ice, 0 for liquid water at 0 °C: −L + ∫c dT.
 *
 * @param ice_C −80…0
 * @source handbook-ice
 */
export function iceEnthalpy_J_per_kg(ice_C: number): number {
  requireFinite("ice_C", ice_C, COLDEST_C, 0);
  return -iceLatent_J_per_kg + ice_C * (HEAT_CAPACITY_0 + (HEAT_CAPACITY_RISE / 2) * ice_C);
}
