import { extraterrestrialNormal_W_per_m2, sine_ratio } from "./sun.ts";

/**
 * Diffuse share of global irradiance from the hourly clearness index (global over extraterrestrial on level ground).
 * Three pieces that nearly meet: at 0.22 they differ by 0.006, at 0.80 by 0.001.
 *
 * @param clearness_frac 0…; above 1 it is not physical but gives 0.165
 * @source erbs-1982
 */
export function diffuseShare_frac(clearness_frac: number): number {
  const k = clearness_frac;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
}

/**
 * Diffuse irradiance on level ground, W/m², for a global one; 0 with the sun down.
 *
 * @source erbs-1982
 */
export function diffuse_W_per_m2(global_W_per_m2: number, sunHeight_deg: number, instant_ms: number): number {
  if (sunHeight_deg <= 0) return 0;
  const outside = extraterrestrialNormal_W_per_m2(instant_ms) * sine_ratio(sunHeight_deg);
  return global_W_per_m2 * diffuseShare_frac(global_W_per_m2 / outside);
}
