import type { Food } from "../matter/food.ts";
import {
  foodConductivity_W_per_mK,
  foodDensity_kg_per_m3,
  foodEnthalpy_J_per_kg,
} from "../matter/foodProperties.ts";
import { requireFinite } from "../quantity/errors.ts";

/**
 * Where heat leaves a piece. `dimensions_ratio` is the mean conducting path dimension: 1 for a slab, 2 for a long
 * cylinder, 3 for a ball, and in between for a brick.
 */
export interface Shape {
  /** Least dimension. */
  thick_m: number;
  dimensions_ratio: number;
}

/** What freezes or thaws at one temperature; `k_W_per_mK` is that of the part that heat goes through. */
export interface PlankStuff {
  density_kg_per_m3: number;
  latent_J_per_kg: number;
  k_W_per_mK: number;
}

/** What freezes, in numbers per kilogram; latent heat is that of its own water. */
export interface FreezingStuff {
  density_kg_per_m3: number;
  unfrozen_J_per_kgK: number;
  frozen_J_per_kgK: number;
  latent_J_per_kg: number;
  kFrozen_W_per_mK: number;
  /** A pure substance freezes at one temperature; null: a food, whose mean freezing temperature is Pham's. */
  pureFreezes_C: number | null;
}

/**
 * Mean conducting path dimension of a brick: 1 and a part for each of its two longer sides. It is not exact for pieces
 * that are round at the corners.
 *
 * @param biot_ratio film × half the least side / conductivity of the frozen piece
 * @param sides_m the three sides in any order
 * @source from-memory
 */
export function brickDimensions_ratio(
  biot_ratio: number,
  sides_m: readonly [number, number, number],
): number {
  const [least, middle, longest] = [...sides_m].sort((a, b) => a - b) as [number, number, number];
  requireFinite("biot_ratio", biot_ratio, 1e-6, 1e6);
  requireFinite("least side, m", least, 1e-4, 10);
  const part = (side_m: number): number => {
    const beta = side_m / least;
    return (1 + 2 / biot_ratio) / (beta ** 2 + (2 * beta) / biot_ratio);
  };
  return 1 + part(middle) + part(longest);
}

/**
 * Plank's time in which a piece that stands at its freezing point freezes, or thaws, through: all heat leaves at one
 * temperature, none before or after. It is the law that Pham's builds on, and a lower bound where there is heat before
 * and after. For thawing, conductivity is that of the thawed piece.
 *
 * @param drive_K difference of the freezing point and the air, above 0
 * @source plank-1913
 */
export function plankFreezing_s(
  stuff: PlankStuff,
  drive_K: number,
  shape: Shape,
  film_W_per_m2K: number,
): number {
  requireFinite("drive_K", drive_K, 1e-3, 200);
  requireFinite("film_W_per_m2K", film_W_per_m2K, 0.1, 5000);
  requireFinite("thick_m", shape.thick_m, 1e-4, 10);
  requireFinite("dimensions_ratio", shape.dimensions_ratio, 1, 3);
  const half_m = shape.thick_m / 2;
  const heat = stuff.density_kg_per_m3 * stuff.latent_J_per_kg * half_m;
  const perArea_s = heat / (shape.dimensions_ratio * film_W_per_m2K * drive_K);
  return perArea_s * (1 + (film_W_per_m2K * half_m) / stuff.k_W_per_mK / 2);
}

/**
 * Freezing time by Pham's simplified method of 1986: cooling and freezing each as one period with its own mean
 * driving difference, the mean freezing temperature 1.8 + 0.263·t_centre + 0.105·t_air °C. About ±10 % for moist food in
 * −45…−15 °C air with films of 10…500 W/m²K; a still freezer's 6…10 lie just outside. Pure water keeps its own freezing point.
 *
 * @param from_C 0…60, the whole piece
 * @param air_C −60…−5
 * @param centre_C what the middle must come down to, above `air_C` and below the freezing point
 * @source pham-1986
 */
export function phamFreezing_s(
  stuff: FreezingStuff,
  shape: Shape,
  from_C: number,
  air_C: number,
  centre_C: number,
  film_W_per_m2K: number,
): number {
  requireFinite("from_C", from_C, 0, 60);
  requireFinite("air_C", air_C, -60, -5);
  requireFinite("centre_C", centre_C, air_C + 0.1, -0.5);
  const mean_C = stuff.pureFreezes_C ?? 1.8 + 0.263 * centre_C + 0.105 * air_C;
  const cooling_K = (from_C + mean_C) / 2 - air_C;
  const cooling_J_per_kg = stuff.unfrozen_J_per_kgK * (from_C - mean_C);
  const freezing_J_per_kg = stuff.latent_J_per_kg + stuff.frozen_J_per_kgK * (mean_C - centre_C);
  const period_s = (latent_J_per_kg: number, drive_K: number): number => {
    const { density_kg_per_m3, kFrozen_W_per_mK: k_W_per_mK } = stuff;
    return plankFreezing_s(
      { density_kg_per_m3, latent_J_per_kg, k_W_per_mK },
      drive_K,
      shape,
      film_W_per_m2K,
    );
  };
  return period_s(cooling_J_per_kg, cooling_K) + period_s(freezing_J_per_kg, mean_C - air_C);
}

/** Where food in a home freezer is taken to be frozen; conductivity and heat capacities are read there. */
const FROZEN_C = -10;
/** Warmest at which the unfrozen heat capacity is read. */
const COOL_C = 5;

/**
 * A food as stuff that freezes: heat capacities as mean slopes of its enthalpy, latent heat as what is left between them.
 * A food that has no freezing point has none.
 *
 * @source choi-okos-1986, miles-1974
 */
export function freezingStuff(food: Food): FreezingStuff | null {
  if (food.freezes_C === null || food.freezes_C < FROZEN_C + 1) return null;
  const h = (t_C: number): number => foodEnthalpy_J_per_kg(food, t_C);
  const frozen_J_per_kgK = (h(-30) - h(-40)) / 10;
  const start_C = food.freezes_C;
  const whole_J_per_kg = h(Math.max(start_C, 0)) - h(-30);
  return {
    density_kg_per_m3: foodDensity_kg_per_m3(food, COOL_C),
    unfrozen_J_per_kgK: (h(30) - h(COOL_C)) / (30 - COOL_C),
    frozen_J_per_kgK,
    latent_J_per_kg: whole_J_per_kg - frozen_J_per_kgK * 30,
    kFrozen_W_per_mK: foodConductivity_W_per_mK(food, FROZEN_C),
    pureFreezes_C: start_C === 0 ? 0 : null,
  };
}
