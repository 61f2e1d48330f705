import {
  coldStair,
  coldStairData,
  doubtBars,
  type Forecast,
  foodClock,
  foodClockData,
  iceBand,
  iceBandData,
  standalone,
  type UnitSystem,
} from "../core/index.ts";
import { fileNames } from "./writeFolder.ts";

export const WIDTH_px = 900;

/** The pictures of a forecast as SVG files: ice, cold and doubts of every cooler, and the food. */
export function pictures(forecast: Forecast, units: UnitSystem): [string, string][] {
  const names = fileNames(forecast.result.coolers.map(({ name }) => name));
  const drawn = names.flatMap((name, i): [string, string][] => {
    const options = (what: string): { width: number; units: UnitSystem; id: string } => ({
      width: WIDTH_px,
      units,
      id: `${what}${i}`,
    });
    const always: [string, string][] = [
      [`${name}-ice.svg`, iceBand(iceBandData(forecast, i), options("ice"))],
      [`${name}-cold.svg`, coldStair(coldStairData(forecast, i), options("cold"))],
    ];
    if (forecast.result.coolers[i]!.doubts === undefined) return always;
    return [...always, [`${name}-doubts.svg`, doubtBars(forecast, i, options("doubts"))]];
  });
  drawn.push(["food.svg", foodClock(foodClockData(forecast), { width: WIDTH_px, units, id: "food" })]);
  return drawn.map(([name, svg]) => [name, standalone(svg, "day")]);
}
