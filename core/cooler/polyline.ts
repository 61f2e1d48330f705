import type { EnthalpyCurve } from "../matter/curve.ts";

/**
 * The segment of the curve that holds `h`, found from a guess by walking: between two steps a lot hardly moves.
 * The first and last segments reach to infinity.
 */
export function segmentOf(curve: EnthalpyCurve, h_J_per_kg: number, guess: number): number {
  const h = curve.h_J_per_kg;
  const last = h.length - 2;
  let i = Math.min(guess, last);
  while (i < last && h_J_per_kg >= h[i + 1]) i++;
  while (i > 0 && h_J_per_kg < h[i]) i--;
  return i;
}

/** Slope of temperature against enthalpy on a segment, K·kg/J. */
export function slopeOf(curve: EnthalpyCurve, segment: number): number {
  const { t_C, h_J_per_kg } = curve;
  return (t_C[segment + 1] - t_C[segment]) / (h_J_per_kg[segment + 1] - h_J_per_kg[segment]);
}

/** Temperature at a specific enthalpy. */
export function temperature_C(curve: EnthalpyCurve, h_J_per_kg: number): number {
  const i = segmentOf(curve, h_J_per_kg, 0);
  return curve.t_C[i] + slopeOf(curve, i) * (h_J_per_kg - curve.h_J_per_kg[i]);
}

/** Specific enthalpy at a temperature; at a melting plateau the least, that is wholly solid. */
export function enthalpy_J_per_kg(curve: EnthalpyCurve, t_C: number): number {
  const { t_C: t, h_J_per_kg: h } = curve;
  const last = t.length - 2;
  let i = 0;
  while (i < last && t_C > t[i + 1]) i++;
  const width = t[i + 1] - t[i];
  return width <= 0 ? h[i] : h[i] + ((t_C - t[i]) / width) * (h[i + 1] - h[i]);
}
