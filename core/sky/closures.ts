import type { Spread } from "../matter/spread.ts";

/**
 * Coefficients of the surroundings that are a judgement and not a law; a run takes one number of each.
 *
 * @source engineering-judgement
 */
export interface SkyClosures {
  /** How far a cloudless sky's black-body temperature lies below the air's, mean over the sky. */
  clearSkyDepression_K: number;
  /** Wind at the box / wind at the station. */
  windAtBox_frac: number;
  /** Bare shaded ground above the day's mean air. */
  shadedGround_K: number;
  /** Sunlit ground above the air, per W/m² of global irradiance. */
  sunlitGround_K_m2_per_W: number;
  /** Factor on the resistance between base and ground. */
  groundResistance_frac: number;
  /** Factor on the albedo of the ground around. */
  albedo_frac: number;
  /** Factor on how far a parked car, a trunk or a tent warms above the outdoor air. */
  warming_frac: number;
  /** Added to the share of shade; the sum is held within 0…1, which whoever samples it must report. */
  shadeShift_frac: number;
}

export type SkyClosureKey = keyof SkyClosures;

/**
 * Medians and 10–90 % ranges. Replace a row when a published value is found.
 *
 * @source engineering-judgement
 */
export const skyPriors: Readonly<Record<SkyClosureKey, Spread & { source: "engineering-judgement" }>> = {
  clearSkyDepression_K: { p50: 14, p10: 8, p90: 20, source: "engineering-judgement" },
  windAtBox_frac: { p50: 0.4, p10: 0.2, p90: 0.7, source: "engineering-judgement" },
  shadedGround_K: { p50: 2, p10: -2, p90: 5, source: "engineering-judgement" },
  sunlitGround_K_m2_per_W: { p50: 0.015, p10: 0.008, p90: 0.022, source: "engineering-judgement" },
  groundResistance_frac: { p50: 1, p10: 0.4, p90: 2.4, source: "engineering-judgement" },
  albedo_frac: { p50: 1, p10: 0.7, p90: 1.6, source: "engineering-judgement" },
  warming_frac: { p50: 1, p10: 0.7, p90: 1.4, source: "engineering-judgement" },
  shadeShift_frac: { p50: 0, p10: -0.25, p90: 0.1, source: "engineering-judgement" },
};

/** The middle case: every coefficient at its median. @source engineering-judgement */
export const medianSky: Readonly<SkyClosures> = Object.fromEntries(
  Object.entries(skyPriors).map(([key, prior]) => [key, prior.p50]),
) as unknown as SkyClosures;
