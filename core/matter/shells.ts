import type { Spread } from "./spread.ts";

/** A plastic that skins are made of. */
export interface ShellPlastic {
  readonly k_W_per_mK: number;
  readonly heatCapacity_J_per_kgK: Spread;
  readonly source: string;
}

/**
 * Plastics of shells and liners. Conductivities after EN ISO 10077-2; heat capacities from memory.
 *
 * @source iso-10077-2, from-memory
 */
export const shellPlastics: Readonly<Record<"HDPE" | "PP", ShellPlastic>> = {
  HDPE: {
    k_W_per_mK: 0.5,
    heatCapacity_J_per_kgK: { p10: 1900, p50: 2100, p90: 2300 },
    source: "iso-10077-2",
  },
  PP: {
    k_W_per_mK: 0.22,
    heatCapacity_J_per_kgK: { p10: 1800, p50: 1900, p90: 2000 },
    source: "iso-10077-2",
  },
};

/**
 * Long-wave emittance of a cooler's outside, of foil, and of plastic, food and ice inside.
 *
 * @source engineering-judgement
 */
export const emittances: Readonly<Record<"outside" | "foil" | "inside", Spread>> = {
  outside: { p10: 0.88, p50: 0.92, p90: 0.95 },
  foil: { p10: 0.03, p50: 0.05, p90: 0.15 },
  inside: { p10: 0.85, p50: 0.9, p90: 0.95 },
};

/**
 * Share of the sun that a lid of a colour absorbs, as used and weathered; foil stands for a reflective cover (clean
 * bright foil is published at 0.19, creased and dusty it absorbs more).
 *
 * @source engineering-judgement
 */
export const solarAbsorptances: Readonly<Record<"white" | "light" | "medium" | "dark" | "foil", Spread>> = {
  white: { p10: 0.2, p50: 0.25, p90: 0.35 },
  light: { p10: 0.3, p50: 0.4, p90: 0.5 },
  medium: { p10: 0.5, p50: 0.6, p90: 0.7 },
  dark: { p10: 0.83, p50: 0.88, p90: 0.93 },
  foil: { p10: 0.15, p50: 0.2, p90: 0.3 },
};
