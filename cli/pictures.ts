import {
  coldStair,
  coldStairData,
  type Forecast,
  foodClock,
  foodClockData,
  iceBand,
  iceBandData,
  standalone,
  type UnitSystem,
} from "../core/index.ts";
import { fileNames } from "./writeFolder.ts";

const WIDTH_px = 900;

/** The pictures of a forecast as SVG files: ice and cold of every cooler, and the food. */
export function pictures(forecast: Forecast, units: UnitSystem): [string, string][] {
  const names = fileNames(forecast.result.coolers.map(({ name }) => name));
  const drawn = names.flatMap((name, i): [string, string][] => [
    [`${name}-ice.svg`, iceBand(iceBandData(forecast, i), { width: WIDTH_px, units, id: `ice${i}` })],
    [`${name}-cold.svg`, coldStair(coldStairData(forecast, i), { width: WIDTH_px, units, id: `cold${i}` })],
  ]);
  drawn.push(["food.svg", foodClock(foodClockData(forecast), { width: WIDTH_px, units, id: "food" })]);
  return drawn.map(([name, svg]) => [name, standalone(svg, "day")]);
}
