/**
 * Conductance of one edge and one corner of a thick-walled box, in metres: multiply by k.
 * Edge 0.54 per metre of inside edge; corner 0.15 of the thickness. For walls thinner than about 5 times
 * the inside edge and of equal thickness on both sides; with unequal walls the mean is taken.
 *
 * @source langmuir-1913
 */
export const edgeShape_frac: number = 0.54;

/** @source langmuir-1913 */
export const cornerShape_frac: number = 0.15;

/** Inside sizes of a box. */
export interface BoxSize {
  length_m: number;
  width_m: number;
  height_m: number;
}

/**
 * Steady conductance of a box of one wall thickness and one material, inside face to outside face, no films:
 * k·(A/t + 0.54·ΣL + 8·0.15·t).
 *
 * @param thickness_m thinner than 5 × the smallest inside edge
 * @source langmuir-1913
 */
export function boxConductance_W_per_K(inside: BoxSize, thickness_m: number, k_W_per_mK: number): number {
  const { length_m: a, width_m: b, height_m: c } = inside;
  const area_m2 = 2 * (a * b + b * c + a * c);
  return (
    k_W_per_mK *
    (area_m2 / thickness_m + edgeShape_frac * 4 * (a + b + c) + cornerShape_frac * 8 * thickness_m)
  );
}

/**
 * Growth of the area through a wall, so that a one-dimensional wall of area A(x) = A_in·exp(g·x/t) has exactly
 * the conductance G: solves g/(1 − e^−g) = G·t/(k·A_in). 0 for a plane wall.
 *
 * @param ratio G·t/(k·A_in), ≥ 1: a wall of a box never conducts less than its plane part
 * @source derivation
 */
export function areaGrowth(ratio: number): number {
  let growth = 2 * (ratio - 1);
  for (let n = 0; n < 50; n++) {
    if (Math.abs(growth) < 1e-9) return 0;
    const e = Math.exp(-growth);
    const value = growth / (1 - e) - ratio;
    const slope = (1 - e - growth * e) / (1 - e) ** 2;
    const next = growth - value / slope;
    if (Math.abs(next - growth) < 1e-12) return next;
    growth = next;
  }
  return growth;
}

/**
 * Heat that a steady wall lets through, W: UA·ΔT.
 *
 * @source derivation
 */
export function wallHeat_W(ua_W_per_K: number, outside_C: number, inside_C: number): number {
  return ua_W_per_K * (outside_C - inside_C);
}

/**
 * Thermal resistance of a package from the ice it melts, m²K/W: R = A·ΔT·t/(m·L).
 * The body's own heat spoils the first hours; this is the steady formula.
 *
 * @source burgess-1999
 */
export function resistanceFromMelt_m2K_per_W(
  area_m2: number,
  rise_K: number,
  time_s: number,
  melted_kg: number,
  latent_J_per_kg: number,
): number {
  return (area_m2 * rise_K * time_s) / (melted_kg * latent_J_per_kg);
}
