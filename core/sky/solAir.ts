import { radiationFilm_W_per_m2K, stefanBoltzmann_W_per_m2K4 } from "../heat/radiation.ts";

/**
 * Sol-air temperature, °C: outdoor air that would give the same heat into an opaque face without sun and sky.
 * A check on the coolers' own face balance, not a part of it.
 *
 * @param absorptanceOverFilm_m2K_per_W the handbook's one number for colour: 0.026 light, 0.052 dark
 * @param skyLoss_K long-wave correction: 3.9 on a level face, 0 on an upright one
 * @source ashrae-fundamentals
 */
export function solAir_C(
  air_C: number,
  sun_W_per_m2: number,
  absorptanceOverFilm_m2K_per_W: number,
  skyLoss_K: number,
): number {
  return air_C + absorptanceOverFilm_m2K_per_W * sun_W_per_m2 - skyLoss_K;
}

/**
 * Steady temperature of a face insulated behind, °C: absorbed sun = convection to air + radiation to sky.
 * Newton on a rising function with one root; ends within 1e-9 K. A check on the coolers' own face balance.
 *
 * @source astm-e1980
 */
export function insulatedSurface_C(
  sun_W_per_m2: number,
  absorptance_frac: number,
  emittance_frac: number,
  air_C: number,
  sky_C: number,
  film_W_per_m2K: number,
): number {
  let face_C = air_C;
  for (let i = 0; i < 50; i++) {
    const radiated = radiationFilm_W_per_m2K(emittance_frac, face_C, sky_C) * (face_C - sky_C);
    const excess = film_W_per_m2K * (face_C - air_C) + radiated - absorptance_frac * sun_W_per_m2;
    const slope = film_W_per_m2K + 4 * emittance_frac * stefanBoltzmann_W_per_m2K4 * cube(face_C + 273.15);
    face_C -= excess / slope;
    if (Math.abs(excess / slope) < 1e-9) break;
  }
  return face_C;
}

const cube = (value: number): number => value * value ** 2;
