import { sine_ratio } from "./sun.ts";

/**
 * Global irradiance on level ground under a cloudless sky, W/m²: 1098·sin h·exp(−0.059/sin h); 0 with the sun down.
 *
 * Fitted near sea level in the eastern United States. It knows nothing of haze or height: at 2000 m the sun is some
 * 5–10 % stronger, in smoke far weaker. Reviews print the exponent as 0.059 and as 0.057, 0.2 % apart overhead and
 * 1 % at 10°.
 *
 * @param sunHeight_deg −90…90
 * @source haurwitz-1945
 */
export function clearSky_W_per_m2(sunHeight_deg: number): number {
  if (sunHeight_deg <= 0) return 0;
  const sinHeight = sine_ratio(sunHeight_deg);
  return 1098 * sinHeight * Math.exp(-0.059 / sinHeight);
}
