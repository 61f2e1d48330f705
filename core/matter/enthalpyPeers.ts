import { requireFinite } from "../quantity/errors.ts";
import { boundWater_frac, type Freezing, foodLatent_J_per_kg } from "./iceFraction.ts";

/**
 * Enthalpy of a food by Chen, 0 at −40 °C; a peer of the component method.
 *
 * @param t_C −40…100
 * @source chen-1985
 */
export function chenEnthalpy_J_per_kg(food: Freezing, t_C: number): number {
  requireFinite("t_C", t_C, -40, 100);
  const solids = 1 - food.water_frac;
  if (t_C > food.freezes_C) {
    const unfrozen = 1000 * (4.19 - 2.3 * solids - 0.628 * solids ** 3);
    return frozenChen_J_per_kg(food, food.freezes_C) + (t_C - food.freezes_C) * unfrozen;
  }
  return frozenChen_J_per_kg(food, t_C);
}

function frozenChen_J_per_kg(food: Freezing, t_C: number): number {
  const solids = 1 - food.water_frac;
  const free = food.water_frac - boundWater_frac(food.protein_frac);
  const melting = (free * foodLatent_J_per_kg * food.freezes_C) / (-40 * t_C);
  return (t_C + 40) * (1550 + 1260 * solids - melting);
}

const ZERO_K = 227.6;

/**
 * Enthalpy of a frozen food by Chang and Tao, 0 at 227.6 K (−45.6 °C), up to its freezing point; a peer of the component
 * method, from memory.
 *
 * @param water_frac 0.73…0.94
 * @param t_C −45.5 up to the freezing point that the correlation itself gives
 * @returns enthalpy at `t_C`, and the correlation's freezing point with the enthalpy there
 * @source chang-tao-1981
 */
export function changTaoEnthalpy_J_per_kg(
  kind: "meat" | "fruit or vegetable" | "juice",
  water_frac: number,
  t_C: number,
): { h_J_per_kg: number; freezes_C: number; atFreezing_J_per_kg: number } {
  const w = requireFinite("water_frac", water_frac, 0.73, 0.94);
  const d = w - 0.73;
  const meat = kind === "meat";
  const y = meat ? 0.316 - 0.247 * d - 0.688 * d ** 2 : 0.362 + 0.0498 * d - 3.465 * d ** 2;
  const z = meat
    ? 22.95 + 54.68 * (y - 0.28) - 5589.03 * (y - 0.28) ** 2
    : 27.2 - 129.04 * (y - 0.23) - 481.46 * (y - 0.23) ** 2;
  const freezes_K = {
    meat: 271.18 + 1.47 * w,
    "fruit or vegetable": 287.56 - 49.19 * w + 37.07 * w ** 2,
    juice: 120.47 + 327.35 * w - 176.49 * w ** 2,
  }[kind];
  const freezes_C = freezes_K - 273.15;
  const reduced = (requireFinite("t_C", t_C, -45.5, freezes_C) + 273.15 - ZERO_K) / (freezes_K - ZERO_K);
  const atFreezing_J_per_kg = 9792.46 + 405_096 * w;
  return {
    h_J_per_kg: atFreezing_J_per_kg * (y * reduced + (1 - y) * reduced ** z),
    freezes_C,
    atFreezing_J_per_kg,
  };
}
