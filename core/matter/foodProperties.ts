import { requireFinite } from "../quantity/errors.ts";
import {
  componentHeat_J_per_kg,
  type Mixture,
  mixtureDensity_kg_per_m3,
  mixtureHeatCapacity_J_per_kgK,
  parallelConductivity_W_per_mK,
} from "./choiOkos.ts";
import type { EnthalpyCurve } from "./curve.ts";
import type { Food } from "./food.ts";
import { foodLatent_J_per_kg, milesIce_frac } from "./iceFraction.ts";

const COLDEST_C = -80;
const WARMEST_C = 80;
/** The composition polynomials hold from here up. */
const VALID_FROM_C = -40;
/** Still air between crumbs and leaves; from memory. */
const AIR_CONDUCTIVITY_W_PER_MK = 0.025;

const inRange = (t_C: number): number => requireFinite("t_C", t_C, COLDEST_C, WARMEST_C);

/**
 * Share of a food that is ice, by Miles; 0 for a food that has no freezing point.
 *
 * @param t_C −80…80
 * @source miles-1974
 */
export function foodIce_frac(food: Food, t_C: number): number {
  if (food.freezes_C === null) return 0;
  return milesIce_frac({ ...food, freezes_C: food.freezes_C }, inRange(t_C));
}

/** The food's components at a temperature, part of its water being ice. */
function mixtureAt(food: Food, t_C: number): Mixture {
  const ice = foodIce_frac(food, t_C);
  return {
    water: food.water_frac - ice,
    ice,
    protein: food.protein_frac,
    fat: food.fat_frac,
    carbohydrate: food.carbohydrate_frac,
    fibre: food.fibre_frac,
    ash: food.ash_frac,
    alcohol: food.alcohol_frac,
  };
}

/**
 * Enthalpy of a food by its components, 0 for the unfrozen food at 0 °C: each component's own heat, and the latent heat of
 * the share that is ice by Miles. Below −40 °C it goes on straight with its slope there.
 *
 * It is good to about 5 % (one standard deviation) between frozen and thawed. It leaves out the melting of fat (butter,
 * bacon and cheese take up more heat between 5 and 35 °C) and is weak for salted, sweet and alcoholic foods.
 *
 * @param t_C −80…80
 * @source choi-okos-1986, miles-1974, schwartzberg-1976, ashrae-refrigeration
 */
export function foodEnthalpy_J_per_kg(food: Food, t_C: number): number {
  if (inRange(t_C) >= VALID_FROM_C) return componentEnthalpy_J_per_kg(food, t_C);
  const at = componentEnthalpy_J_per_kg(food, VALID_FROM_C);
  const slope_J_per_kgK = componentEnthalpy_J_per_kg(food, VALID_FROM_C + 1) - at;
  return at + slope_J_per_kgK * (t_C - VALID_FROM_C);
}

function componentEnthalpy_J_per_kg(food: Food, t_C: number): number {
  const { ice = 0, ...rest } = mixtureAt(food, t_C);
  let heat = ice * (componentHeat_J_per_kg("ice", t_C) - foodLatent_J_per_kg);
  for (const [component, share] of Object.entries(rest)) {
    heat += share * componentHeat_J_per_kg(component as keyof typeof rest, t_C);
  }
  return heat;
}

const curves = new WeakMap<Food, EnthalpyCurve>();

/**
 * Enthalpy against temperature of a food as a polyline from −80 to 80 °C, within 0.3 kJ/kg of `foodEnthalpy_J_per_kg`.
 * The same food gives the same curve object; do not write into it.
 *
 * @source choi-okos-1986, miles-1974
 */
export function foodCurve(food: Food): EnthalpyCurve {
  let curve = curves.get(food);
  if (curve === undefined) {
    curve = drawCurve(food);
    curves.set(food, curve);
  }
  return curve;
}

/** Steps in 1/√(t/tf): the error of a chord under tf/t is then about the same everywhere. */
const FREEZING_STEPS = 40;
const PLAIN_STEP_C = 10;

function drawCurve(food: Food): EnthalpyCurve {
  const freezes_C = food.freezes_C ?? COLDEST_C;
  const frozen = food.freezes_C === null ? [] : frozenNodes_C(freezes_C);
  const unfrozen: number[] = [];
  for (let t = Math.ceil(freezes_C / PLAIN_STEP_C) * PLAIN_STEP_C; t <= WARMEST_C; t += PLAIN_STEP_C)
    unfrozen.push(t);
  const t_C = [...frozen, freezes_C, ...unfrozen, 0].sort((a, b) => a - b).filter(standsApart);
  const h_J_per_kg = t_C.map((t) => foodEnthalpy_J_per_kg(food, t));
  if (freezes_C === 0) addPlateau(t_C, h_J_per_kg, food);
  return { t_C: Float64Array.from(t_C), h_J_per_kg: Float64Array.from(h_J_per_kg) };
}

/** Two nodes that rounding alone parts would make a step without heat. */
function standsApart(t_C: number, i: number, all: readonly number[]): boolean {
  return i === 0 || t_C - all[i - 1]! > 1e-6;
}

function frozenNodes_C(freezes_C: number): number[] {
  const nodes = [COLDEST_C, VALID_FROM_C];
  for (let t = VALID_FROM_C + PLAIN_STEP_C; t < freezes_C; t += PLAIN_STEP_C) nodes.push(t);
  if (freezes_C === 0) return nodes;
  const last = Math.sqrt(freezes_C / VALID_FROM_C);
  for (let i = 1; i < FREEZING_STEPS; i++) {
    nodes.push(freezes_C / (1 - ((1 - last) * i) / FREEZING_STEPS) ** 2);
  }
  return nodes;
}

/** Pure water freezes all at once: a second node at 0 °C, frozen. */
function addPlateau(t_C: number[], h_J_per_kg: number[], food: Food): void {
  const at = t_C.indexOf(0);
  t_C.splice(at, 0, 0);
  h_J_per_kg.splice(at, 0, -foodLatent_J_per_kg * foodIce_frac(food, -1));
}

/**
 * Density of one piece of a food, with the air it holds inside (bread, leaves), without the gaps between pieces.
 *
 * @param t_C −80…80; below −40 °C its value there
 * @source choi-okos-1986
 */
export function foodDensity_kg_per_m3(food: Food, t_C: number): number {
  const held_C = Math.max(inRange(t_C), VALID_FROM_C);
  return (1 - food.airSpace_frac) * mixtureDensity_kg_per_m3(mixtureAt(food, held_C), held_C);
}

/**
 * Conductivity of one piece of a food by the parallel model, air spaces included.
 *
 * @param t_C −80…80; below −40 °C its value there
 * @source choi-okos-1986, ashrae-refrigeration
 */
export function foodConductivity_W_per_mK(food: Food, t_C: number): number {
  const held_C = Math.max(inRange(t_C), VALID_FROM_C);
  const dense = parallelConductivity_W_per_mK(mixtureAt(food, held_C), held_C);
  return (1 - food.airSpace_frac) * dense + food.airSpace_frac * AIR_CONDUCTIVITY_W_PER_MK;
}

/** How many times faster heat goes through a drink that stirs itself than through the same water at rest. */
const STIRRING_RATIO = 20;

/**
 * Conductivity with which heat gets from the skin of a food to its middle: its own, and for a drink that is not frozen
 * its own times a judged factor, since warm and cold parts of it change places. Soups, milk and yogurt count as still,
 * which makes their verdicts stricter.
 *
 * @param t_C −80…80
 * @source choi-okos-1986, engineering-judgement
 */
export function foodSpread_W_per_mK(food: Food, t_C: number): number {
  const still = foodConductivity_W_per_mK(food, t_C);
  return food.kind === "drink" && t_C > (food.freezes_C ?? 0) ? STIRRING_RATIO * still : still;
}

/**
 * Heat capacity of a food without any freezing.
 *
 * @param t_C at or above the freezing point, −40…80
 * @source choi-okos-1986
 */
export function foodHeatCapacity_J_per_kgK(food: Food, t_C: number): number {
  requireFinite("t_C", t_C, Math.max(food.freezes_C ?? VALID_FROM_C, VALID_FROM_C), WARMEST_C);
  return mixtureHeatCapacity_J_per_kgK(mixtureAt(food, t_C), t_C);
}
