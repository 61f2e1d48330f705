/**
 * Convection from outside air to a face of the box, still air or wind, whichever is larger.
 *
 * h = max(still, 2.8 + 3.0·v). Ranges: still 2–4.5, the whole × 0.7–1.4; v is the wind at the box, 0…15 m/s.
 * It has no direction: a box stands at no particular azimuth.
 *
 * @source engineering-judgement
 */
export function outsideFilm_W_per_m2K(wind_m_per_s: number, still_W_per_m2K: number): number {
  return Math.max(still_W_per_m2K, 2.8 + 3.0 * wind_m_per_s);
}

/**
 * An air layer closed between two plastic skins, as in a hollow lid: conduction and radiation together.
 * Heated from above nothing stirs it; from a side or below it convects and this is a lower bound.
 *
 * h = k/d + 4σT³/(1/ε₁ + 1/ε₂ − 1): about 5.6 W/m²K for 25 mm of plastic near 15 °C. It is not an insulator
 * of k = 0.025.
 *
 * @source derivation
 */
export function airLayer_W_per_m2K(gap_m: number, emittance_frac: number, mean_C: number): number {
  const still_W_per_mK = 0.0241 + 7.0e-5 * mean_C;
  const absolute = mean_C + 273.15;
  const pair = 1 / (2 / emittance_frac - 1);
  return still_W_per_mK / gap_m + 4 * 5.670374419e-8 * absolute * absolute ** 2 * pair;
}

/**
 * Mass of water that leaves (positive) or settles on (negative) a wet face per second and square metre, by the Lewis
 * relation: (h/c_p)·(W_surface − W_air), Lewis number 1 (real value 0.87 to the power 2/3: 9 % more).
 *
 * @source engineering-judgement
 */
export function evaporation_kg_per_m2s(
  film_W_per_m2K: number,
  surface_kg_per_kg: number,
  air_kg_per_kg: number,
): number {
  return (film_W_per_m2K / 1006) * (surface_kg_per_kg - air_kg_per_kg);
}
