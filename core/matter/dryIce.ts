/**
 * Temperature at which solid carbon dioxide sublimes at sea-level pressure, °C.
 *
 * @source from-memory
 */
export const dryIce_C: number = -78.5;

/**
 * Heat that turns a kilogram of solid carbon dioxide into gas at −78.5 °C, J/kg. The gas can take up more on its way
 * out, if it passes the load.
 *
 * @source from-memory
 */
export const dryIceSublimation_J_per_kg: number = 571_000;

/**
 * Density of a pressed block, kg/m³; full density is 1560, snow-pressed blocks reach 1400.
 *
 * @source from-memory
 */
export const dryIceDensity_kg_per_m3: number = 1500;

/**
 * Heat capacity of carbon dioxide gas, mean between −78.5 and 4 °C, J/kgK.
 *
 * @source from-memory
 */
export const carbonDioxideHeatCapacity_J_per_kgK: number = 780;

/**
 * Room that the gas of one kilogram takes at 70 °F and one atmosphere (gas law with compressibility 0.9947), m³/kg.
 *
 * @source derivation
 */
export const carbonDioxideGas_m3_per_kg: number = 0.5457;
