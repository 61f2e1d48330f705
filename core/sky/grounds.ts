import type { Spread } from "../matter/spread.ts";
import type { SkyClosures } from "./closures.ts";
import type { GroundKind, WeatherSample } from "./types.ts";

/** What a base stands on. */
export interface Ground {
  /** Contact and spreading resistance between base and ground, m²K/W. */
  resistance_m2K_per_W: Spread;
  /** Reflected share of the sun, seen by upright faces. */
  albedo_frac: number;
  /** How its temperature is found. */
  like: "earth" | "floor" | "water" | "snow";
  /** Of the resistance; albedos are from memory. */
  source: "engineering-judgement";
}

const judged = (
  p50: number,
  p10: number,
  p90: number,
  albedo_frac: number,
  like: Ground["like"],
): Ground => ({
  resistance_m2K_per_W: { p50, p10, p90 },
  albedo_frac,
  like,
  source: "engineering-judgement",
});

/**
 * Grounds. Boards are also a boat's or a raft's floor, a truck's bed, a roof; water is reached through such a floor.
 *
 * @source engineering-judgement, from-memory
 */
export const grounds: Readonly<Record<GroundKind, Ground>> = {
  soil: judged(0.2, 0.06, 0.5, 0.22, "earth"),
  sand: judged(0.2, 0.06, 0.5, 0.35, "earth"),
  grass: judged(0.25, 0.1, 0.5, 0.22, "earth"),
  rock: judged(0.12, 0.05, 0.3, 0.22, "earth"),
  snow: judged(0.15, 0.05, 0.4, 0.75, "snow"),
  carpet: judged(0.3, 0.15, 0.6, 0.22, "floor"),
  boards: judged(0.1, 0.05, 0.25, 0.22, "floor"),
  water: judged(0.1, 0.05, 0.25, 0.08, "water"),
};

/** How far still or running water lies below the day's mean air when nobody has measured it. */
const waterBelowAir_K = 5;

/**
 * Temperature of unmeasured water, °C; never below freezing.
 *
 * @source engineering-judgement
 */
export function unmeasuredWater_C(dayMean_C: number): number {
  return Math.max(0, dayMean_C - waterBelowAir_K);
}

/**
 * Temperature of the ground's surface, °C: earth in shade stays near the day's mean, in the sun it runs ahead of the
 * air; a floor is at the air's temperature in shade; snow at the air's or at 0; water as measured or as guessed.
 *
 * @param lit_frac share of the sun that reaches the ground, 0…1
 * @param air_C air over this ground
 * @source engineering-judgement
 */
export function ground_C(
  kind: GroundKind,
  lit_frac: number,
  air_C: number,
  dayMean_C: number,
  water_C: number | null,
  sky: WeatherSample,
  closures: SkyClosures,
): number {
  const { like } = grounds[kind];
  if (like === "water") return water_C ?? unmeasuredWater_C(dayMean_C);
  if (like === "snow") return Math.min(0, air_C);
  const sunlit = air_C + closures.sunlitGround_K_m2_per_W * sky.global_W_per_m2;
  const shaded = like === "earth" ? dayMean_C + closures.shadedGround_K : air_C;
  return lit_frac * sunlit + (1 - lit_frac) * shaded;
}
