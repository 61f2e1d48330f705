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

/** Slopes of temperature against enthalpy of every segment, K·kg/J; reckoned once for a curve. */
export function slopesOf(curve: EnthalpyCurve): Float64Array {
  const known = slopesByCurve.get(curve);
  if (known !== undefined) return known;
  const { t_C, h_J_per_kg } = curve;
  const slopes = new Float64Array(h_J_per_kg.length - 1);
  for (let i = 0; i < slopes.length; i++)
    slopes[i] = (t_C[i + 1] - t_C[i]) / (h_J_per_kg[i + 1] - h_J_per_kg[i]);
  slopesByCurve.set(curve, slopes);
  return slopes;
}

const slopesByCurve = new WeakMap<EnthalpyCurve, Float64Array>();

/** Temperature at a specific enthalpy; a good guess of the segment only saves time. */
export function temperature_C(curve: EnthalpyCurve, h_J_per_kg: number, guess = 0): number {
  const { t_C, h_J_per_kg: h } = curve;
  const i = segmentOf(curve, h_J_per_kg, guess);
  return t_C[i] + ((t_C[i + 1] - t_C[i]) / (h[i + 1] - h[i])) * (h_J_per_kg - h[i]);
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
