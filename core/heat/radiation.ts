/**
 * Stefan–Boltzmann constant (exact in the 2019 SI, to the digits given).
 *
 * @source derivation
 */
export const stefanBoltzmann_W_per_m2K4: number = 5.670374419e-8;

/** 0 °C on the absolute scale. */
const zero_K = 273.15;

/**
 * Radiative film between two surfaces, exact secant of σ·ε·(T₁⁴ − T₂⁴): multiply by the temperature difference.
 * It is not a linearisation: with both temperatures given, the heat is exact.
 *
 * @param emittance_frac effective emittance of the pair, 0…1
 * @source derivation
 */
export function radiationFilm_W_per_m2K(emittance_frac: number, a_C: number, b_C: number): number {
  const a = a_C + zero_K;
  const b = b_C + zero_K;
  return emittance_frac * stefanBoltzmann_W_per_m2K4 * (a * a + b * b) * (a + b);
}

/**
 * View factor between two equal, aligned, parallel rectangles `length × width`, `apart` from each other.
 * Used for what the lid sees of the top of the contents; the rest of its view is the walls between.
 *
 * Closed form as in heat-transfer texts (aligned parallel rectangles). 1 when touching, → 0 far apart.
 *
 * @source from-memory
 */
export function parallelViewFactor_frac(length_m: number, width_m: number, apart_m: number): number {
  if (apart_m < 1e-6) return 1;
  const x = length_m / apart_m;
  const y = width_m / apart_m;
  const rootX = Math.sqrt(1 + x * x);
  const rootY = Math.sqrt(1 + y * y);
  const sum =
    0.5 * Math.log(((1 + x * x) * (1 + y * y)) / (1 + x * x + y * y)) +
    x * rootY * Math.atan(x / rootY) +
    y * rootX * Math.atan(y / rootX) -
    x * Math.atan(x) -
    y * Math.atan(y);
  return Math.min(1, Math.max(0, (2 / (Math.PI * x * y)) * sum));
}
