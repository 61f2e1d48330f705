import { requireFinite } from "../quantity/errors.ts";

/** The pure substances that a food is reckoned as a mixture of. */
export type Component = "water" | "ice" | "protein" | "fat" | "carbohydrate" | "fibre" | "ash" | "alcohol";

/** Shares by mass of components; a missing one is 0. They need not add up to 1: published examples do not. */
export type Mixture = Readonly<Partial<Record<Component, number>>>;

/** a + b·t + c·t². */
type Polynomial = readonly [a: number, b: number, c: number];

interface ComponentRow {
  readonly k_W_per_mK: Polynomial;
  readonly density_kg_per_m3: Polynomial;
  readonly heatCapacity_kJ_per_kgK: Polynomial;
  readonly source: string;
}

const source = "choi-okos-1986";

/** Alcohol is ethanol, from memory; the others are Choi and Okos's, −40…150 °C. */
const components: Readonly<Record<Component, ComponentRow>> = {
  water: {
    k_W_per_mK: [0.57109, 1.7625e-3, -6.7036e-6],
    density_kg_per_m3: [997.18, 3.1439e-3, -3.7574e-3],
    heatCapacity_kJ_per_kgK: [4.1762, -9.0864e-5, 5.4731e-6],
    source,
  },
  ice: {
    k_W_per_mK: [2.2196, -6.2489e-3, 1.0154e-4],
    density_kg_per_m3: [916.89, -0.13071, 0],
    heatCapacity_kJ_per_kgK: [2.0623, 6.0769e-3, 0],
    source,
  },
  protein: {
    k_W_per_mK: [0.17881, 1.1958e-3, -2.7178e-6],
    density_kg_per_m3: [1329.9, -0.5184, 0],
    heatCapacity_kJ_per_kgK: [2.0082, 1.2089e-3, -1.3129e-6],
    source,
  },
  fat: {
    k_W_per_mK: [0.18071, -2.7604e-4, -1.7749e-7],
    density_kg_per_m3: [925.59, -0.41757, 0],
    heatCapacity_kJ_per_kgK: [1.9842, 1.4733e-3, -4.8008e-6],
    source,
  },
  carbohydrate: {
    k_W_per_mK: [0.20141, 1.3874e-3, -4.3312e-6],
    density_kg_per_m3: [1599.1, -0.31046, 0],
    heatCapacity_kJ_per_kgK: [1.5488, 1.9625e-3, -5.9399e-6],
    source,
  },
  fibre: {
    k_W_per_mK: [0.18331, 1.2497e-3, -3.1683e-6],
    density_kg_per_m3: [1311.5, -0.36589, 0],
    heatCapacity_kJ_per_kgK: [1.8459, 1.8306e-3, -4.6509e-6],
    source,
  },
  ash: {
    k_W_per_mK: [0.32962, 1.4011e-3, -2.9069e-6],
    density_kg_per_m3: [2423.8, -0.28063, 0],
    heatCapacity_kJ_per_kgK: [1.0926, 1.8896e-3, -3.6817e-6],
    source,
  },
  alcohol: {
    k_W_per_mK: [0.17, 0, 0],
    density_kg_per_m3: [806, -0.85, 0],
    heatCapacity_kJ_per_kgK: [2.27, 6e-3, 0],
    source: "from-memory",
  },
};

/** Water that is still liquid below 0 °C. */
const SUPERCOOLED_WATER: Polynomial = [4.0817, -5.3062e-3, 9.9516e-4];

const inRange = (t_C: number): number => requireFinite("t_C", t_C, -40, 150);
const evaluate = ([a, b, c]: Polynomial, t: number): number => a + t * (b + t * c);

/**
 * Density of one component.
 *
 * @param t_C −40…150
 * @source choi-okos-1986, from-memory
 */
export function componentDensity_kg_per_m3(component: Component, t_C: number): number {
  return evaluate(components[component].density_kg_per_m3, inRange(t_C));
}

/**
 * Conductivity of one component.
 *
 * @param t_C −40…150
 * @source choi-okos-1986, from-memory
 */
export function componentConductivity_W_per_mK(component: Component, t_C: number): number {
  return evaluate(components[component].k_W_per_mK, inRange(t_C));
}

/**
 * Heat capacity of one component, without any freezing.
 *
 * @param t_C −40…150
 * @source choi-okos-1986, from-memory
 */
export function componentHeatCapacity_J_per_kgK(component: Component, t_C: number): number {
  const supercooled = component === "water" && inRange(t_C) < 0;
  const row = supercooled ? SUPERCOOLED_WATER : components[component].heatCapacity_kJ_per_kgK;
  return 1000 * evaluate(row, inRange(t_C));
}

/**
 * Heat taken up between 0 °C and `t_C` by one component without freezing: the integral of its heat capacity. Water
 * below 0 °C keeps its value at 0 °C: the supercooled polynomial moves a food's enthalpy by less than 0.3 kJ/kg.
 *
 * @param t_C −40…150
 * @source choi-okos-1986, from-memory
 */
export function componentHeat_J_per_kg(component: Component, t_C: number): number {
  const [a, b, c] = components[component].heatCapacity_kJ_per_kgK;
  if (component === "water" && inRange(t_C) < 0) return 1000 * a * t_C;
  return 1000 * inRange(t_C) * (a + t_C * (b / 2 + (t_C * c) / 3));
}

/**
 * Heat capacity of a mixture, without any freezing.
 *
 * @param t_C −40…150
 * @source choi-okos-1986
 */
export function mixtureHeatCapacity_J_per_kgK(mixture: Mixture, t_C: number): number {
  return sum(mixture, (component, share) => share * componentHeatCapacity_J_per_kgK(component, t_C));
}

/**
 * Density of a mixture without air spaces: masses and volumes add up.
 *
 * @param t_C −40…150
 * @source choi-okos-1986
 */
export function mixtureDensity_kg_per_m3(mixture: Mixture, t_C: number): number {
  return 1 / volume(mixture, t_C);
}

/**
 * Conductivity of a mixture whose components lie side by side along the flow of heat: the upper bound, and the
 * customary choice for meat and moist food.
 *
 * @param t_C −40…150
 * @source ashrae-refrigeration
 */
export function parallelConductivity_W_per_mK(mixture: Mixture, t_C: number): number {
  const weighted = sum(
    mixture,
    (component, share) =>
      (share * componentConductivity_W_per_mK(component, t_C)) / componentDensity_kg_per_m3(component, t_C),
  );
  return weighted / volume(mixture, t_C);
}

/**
 * Conductivity of a mixture whose components lie behind each other along the flow of heat: the lower bound.
 *
 * @param t_C −40…150
 * @source ashrae-refrigeration
 */
export function seriesConductivity_W_per_mK(mixture: Mixture, t_C: number): number {
  const weighted = sum(
    mixture,
    (component, share) =>
      share / componentConductivity_W_per_mK(component, t_C) / componentDensity_kg_per_m3(component, t_C),
  );
  return volume(mixture, t_C) / weighted;
}

/** m³ per unit of mixture. */
function volume(mixture: Mixture, t_C: number): number {
  return sum(mixture, (component, share) => share / componentDensity_kg_per_m3(component, t_C));
}

function sum(mixture: Mixture, term: (component: Component, share: number) => number): number {
  return (Object.entries(mixture) as [Component, number][]).reduce(
    (total, [component, share]) =>
      total + term(component, requireFinite(`share of ${component}`, share, 0, 1)),
    0,
  );
}
