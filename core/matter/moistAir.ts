import psychrolib from "psychrolib";
import { requireFinite } from "../quantity/errors.ts";

// The library holds its unit system in one global switch: it is set here, once, and nobody else touches it.
psychrolib.SetUnitSystem(psychrolib.SI);

const air = (air_C: number): number => requireFinite("air_C", air_C, -80, 100);
const share = (relative_frac: number): number => requireFinite("relative_frac", relative_frac, 0, 1);
const pressure = (pressure_Pa: number): number => requireFinite("pressure_Pa", pressure_Pa, 30_000, 110_000);
const ratio = (humidity: number): number => requireFinite("humidity_kg_per_kg", humidity, 0, 1);

/**
 * Vapour pressure over water, or over ice below 0 °C.
 *
 * @param surface_C −80…100
 * @source ashrae-fundamentals
 */
export function saturationPressure_Pa(surface_C: number): number {
  return psychrolib.GetSatVapPres(requireFinite("surface_C", surface_C, -80, 100));
}

/**
 * Water vapour per kilogram of dry air.
 *
 * @param air_C −80…100
 * @param relative_frac relative humidity, 0…1; below 0 °C with respect to ice
 * @param pressure_Pa 30 000…110 000
 * @source ashrae-fundamentals
 */
export function humidityRatio_kg_per_kg(air_C: number, relative_frac: number, pressure_Pa: number): number {
  return psychrolib.GetHumRatioFromRelHum(air(air_C), share(relative_frac), pressure(pressure_Pa));
}

/**
 * Water vapour per kilogram of dry air, from the dew point (frost point below 0 °C).
 *
 * @param dewPoint_C −80…60
 * @param pressure_Pa 30 000…110 000
 * @source ashrae-fundamentals
 */
export function humidityRatioFromDewPoint_kg_per_kg(dewPoint_C: number, pressure_Pa: number): number {
  requireFinite("dewPoint_C", dewPoint_C, -80, 60);
  return psychrolib.GetHumRatioFromTDewPoint(dewPoint_C, pressure(pressure_Pa));
}

/**
 * Water vapour per kilogram of dry air over a wet surface, or an icy one below 0 °C, by the library.
 *
 * @param surface_C −80…60
 * @param pressure_Pa 30 000…110 000
 * @source ashrae-fundamentals
 */
export function saturationHumidityRatio_kg_per_kg(surface_C: number, pressure_Pa: number): number {
  requireFinite("surface_C", surface_C, -80, 60);
  return psychrolib.GetSatHumRatio(surface_C, pressure(pressure_Pa));
}

const KELVIN = 273.15;
const TRIPLE_POINT_C = 0.01;
const VAPOUR_TO_AIR = 0.621945;

/**
 * The same as `saturationHumidityRatio_kg_per_kg`, evaluated directly from Hyland and Wexler's two formulas that the
 * handbook prints and the library uses, for inner loops: no range check, no unit switch.
 *
 * @param surface_C −80…60, unchecked
 * @param pressure_Pa well above the vapour pressure, unchecked
 * @source ashrae-fundamentals
 */
export function quickSaturationHumidityRatio_kg_per_kg(surface_C: number, pressure_Pa: number): number {
  const T = surface_C + KELVIN;
  const log_Pa =
    surface_C <= TRIPLE_POINT_C
      ? -5674.5359 / T +
        6.3925247 +
        T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - 9.484024e-13 * T))) +
        4.1635019 * Math.log(T)
      : -5800.2206 / T +
        1.3914993 +
        T * (-4.8640239e-2 + T * (4.1764768e-5 - 1.4452093e-8 * T)) +
        6.5459673 * Math.log(T);
  const vapour_Pa = Math.exp(log_Pa);
  return (VAPOUR_TO_AIR * vapour_Pa) / (pressure_Pa - vapour_Pa);
}

/**
 * Enthalpy of moist air per kilogram of dry air, counted from dry air at 0 °C and liquid water at 0 °C.
 *
 * @param air_C −80…100
 * @param humidity_kg_per_kg 0…1
 * @source ashrae-fundamentals
 */
export function moistAirEnthalpy_J_per_kg(air_C: number, humidity_kg_per_kg: number): number {
  return psychrolib.GetMoistAirEnthalpy(air(air_C), ratio(humidity_kg_per_kg));
}

/**
 * Thermodynamic wet bulb.
 *
 * @param air_C −40…60
 * @param relative_frac 0…1
 * @param pressure_Pa 30 000…110 000
 * @source ashrae-fundamentals
 */
export function wetBulb_C(air_C: number, relative_frac: number, pressure_Pa: number): number {
  requireFinite("air_C", air_C, -40, 60);
  return psychrolib.GetTWetBulbFromRelHum(air_C, share(relative_frac), pressure(pressure_Pa));
}

/**
 * Dew point, or frost point below 0 °C.
 *
 * @param air_C −40…60
 * @param relative_frac 0.01…1; drier air has no dew point worth the name
 * @source ashrae-fundamentals
 */
export function dewPoint_C(air_C: number, relative_frac: number): number {
  requireFinite("air_C", air_C, -40, 60);
  return psychrolib.GetTDewPointFromRelHum(air_C, requireFinite("relative_frac", relative_frac, 0.01, 1));
}

/**
 * Pressure of the standard atmosphere at a height above the sea.
 *
 * @param elevation_m −500…9000
 * @source ashrae-fundamentals
 */
export function standardPressure_Pa(elevation_m: number): number {
  return psychrolib.GetStandardAtmPressure(requireFinite("elevation_m", elevation_m, -500, 9000));
}

/**
 * Heat that evaporates a kilogram of liquid water at the surface's temperature, vapour at the same temperature. Below
 * 0 °C it is the heat over supercooled water, not that of frost, so that condensate is counted from liquid water.
 *
 * @param surface_C −80…100
 * @source ashrae-fundamentals
 */
export function vaporisationHeat_J_per_kg(surface_C: number): number {
  return quickVaporisationHeat_J_per_kg(requireFinite("surface_C", surface_C, -80, 100));
}

/**
 * The same as `vaporisationHeat_J_per_kg` for inner loops: no range check.
 *
 * @source ashrae-fundamentals
 */
export function quickVaporisationHeat_J_per_kg(surface_C: number): number {
  return 2_501_000 - 2326 * surface_C;
}

/**
 * Mass of moist air (vapour included) per cubic metre.
 *
 * @param air_C −80…100
 * @param humidity_kg_per_kg 0…1
 * @param pressure_Pa 30 000…110 000
 * @source ashrae-fundamentals
 */
export function moistAirDensity_kg_per_m3(
  air_C: number,
  humidity_kg_per_kg: number,
  pressure_Pa: number,
): number {
  return psychrolib.GetMoistAirDensity(air(air_C), ratio(humidity_kg_per_kg), pressure(pressure_Pa));
}
