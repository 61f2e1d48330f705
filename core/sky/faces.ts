import { sine_ratio, solarConstant_W_per_m2 } from "./sun.ts";

/**
 * Irradiance on an upright face, mean over all azimuths it may have, W/m²: beam·sin z/π + diffuse/2 + albedo·global/2.
 *
 * A box is set down at no particular azimuth, so the beam part is the mean of max(cos θ, 0) for cos θ = sin z·cos γ:
 * (1/2π)·∫ sin z·cos γ dγ over −π/2…π/2 = sin z/π. The isotropic sky and the ground each fill half the view.
 * The beam is never taken as stronger than the solar constant, which matters only in the first minutes after sunrise.
 *
 * @param global_W_per_m2 on level ground
 * @param diffuse_W_per_m2 its diffuse part, 0…global
 * @param albedo_frac of the ground around, 0…1
 * @source liu-jordan-1960, derivation
 */
export function uprightSun_W_per_m2(
  global_W_per_m2: number,
  diffuse_W_per_m2: number,
  sunHeight_deg: number,
  albedo_frac: number,
): number {
  if (sunHeight_deg <= 0) return 0;
  const beam = Math.min(
    solarConstant_W_per_m2,
    (global_W_per_m2 - diffuse_W_per_m2) / sine_ratio(sunHeight_deg),
  );
  const sinZenith = sine_ratio(90 - sunHeight_deg);
  return (beam * sinZenith) / Math.PI + diffuse_W_per_m2 / 2 + (albedo_frac * global_W_per_m2) / 2;
}
