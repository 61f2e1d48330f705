import type { Band, CoolerResult, Result } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { requireFinite } from "../quantity/errors.ts";
import type { UnitSystem } from "../quantity/units.ts";
import { noPaint, type Paint } from "./lines.ts";
import { bare } from "./numbers.ts";
import { clockOf, isPoint, type TripClock } from "./words.ts";

/** What the person who reads a text wants. */
export interface TextOptions {
  units: UnitSystem;
  /** Columns, 60…200; 80 where nothing is said. */
  width?: number;
  /** Nothing is painted where nothing is said. */
  colour?: Paint;
}

/** Everything the parts of a text share. */
export interface Voice {
  units: UnitSystem;
  width: number;
  paint: Paint;
  clock: TripClock;
  /** One value in every band: told as the middle case. */
  middle: boolean;
}

export function voiceFor(forecast: Forecast, options: TextOptions): Voice {
  return {
    units: options.units,
    width: requireFinite("width", options.width ?? 80, 60, 200),
    paint: options.colour ?? noPaint,
    clock: clockOf(forecast.trip),
    middle: isMiddleCase(forecast.result),
  };
}

/** True where no band of a result has any width: a single run, which knows nothing of its own doubt. */
export function isMiddleCase(result: Result): boolean {
  if (result.ensemble !== undefined && result.ensemble.members > 1) return false;
  const bands: Band[] = [
    ...result.coolers.flatMap((cooler) => [cooler.iceOut_h, cooler.overLimit_h]),
    ...result.food.flatMap((food) => [food.overLimit_h, food.warm_h, food.coreMax_C]),
  ];
  return bands.every(isPoint) && result.coolers.every(isOneLine);
}

function isOneLine({ series }: CoolerResult): boolean {
  const { p10, p50, p90 } = series.ice_kg;
  return p50.every((ice_kg, i) => ice_kg === p10[i] && ice_kg === p90[i]);
}

/** The unit that masses of ice are told in. */
export function iceUnit(units: UnitSystem): "lb" | "kg" {
  return units === "us" ? "lb" : "kg";
}

/** A mass in pounds or kilograms without the unit, one decimal kept so that columns line up. */
export function iceNumber(mass_kg: number, units: UnitSystem): string {
  return bare(mass_kg, iceUnit(units), 1);
}

/** A mass in pounds or kilograms as a number to reckon on with. */
export function iceAmount(mass_kg: number, units: UnitSystem): number {
  return Number(bare(mass_kg, iceUnit(units), 6).replace("−", "-"));
}
