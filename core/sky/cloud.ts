/**
 * Share of the clear-sky irradiance left under cloud: 1 − 0.75·n^3.4, n the share of sky covered, 0…1.
 * Hamburg, ten years, mean over cloud kinds: thin high cloud takes less, thunderstorms more. Overcast leaves a quarter.
 *
 * @source kasten-czeplak-1980
 */
export function cloudTransmission_frac(cloud_frac: number): number {
  return 1 - 0.75 * Math.exp(3.4 * Math.log(cloud_frac));
}

/**
 * Cloud share that `cloudTransmission_frac` needs to leave such a share of the sun; 0 when more than the clear sky's
 * comes through (thin air, reflection from cloud edges), 1 below a quarter. For sky radiation where only the sun was
 * measured.
 *
 * @source kasten-czeplak-1980
 */
export function cloudBehind_frac(transmission_frac: number): number {
  if (transmission_frac >= 1) return 0;
  if (transmission_frac <= 0.25) return 1;
  return Math.exp(Math.log((1 - transmission_frac) / 0.75) / 3.4);
}
