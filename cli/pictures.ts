import {
  coldStair,
  coldStairData,
  coolerStrip,
  coolerStripData,
  doubtBars,
  type Forecast,
  foodClock,
  foodClockData,
  iceBand,
  iceBandData,
  mergeCurves,
  mergeCurvesData,
  standalone,
  type UnitSystem,
} from "../core/index.ts";
import { fileNames } from "./writeFolder.ts";

export const WIDTH_px = 900;

/** What each merge of a plan is worth, as `NAME-merge.svg` of the cooler that is emptied. */
function mergePictures(
  forecast: Forecast,
  options: (id: string) => { width: number; units: UnitSystem; id: string },
): [string, string][] {
  const merges = forecast.result.plan?.merges ?? [];
  const names = fileNames(merges.map(({ from }) => from));
  return names.map((name, i): [string, string] => [
    `${name}-merge.svg`,
    mergeCurves(mergeCurvesData(forecast, i), options(`merge${i}`)),
  ]);
}

/** The pictures of a forecast as SVG files: the trip at a glance, ice, cold and doubts of every cooler, the food, each merge. */
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
  const whole = (id: string): { width: number; units: UnitSystem; id: string } => ({
    width: WIDTH_px,
    units,
    id,
  });
  drawn.push(
    ["food.svg", foodClock(foodClockData(forecast), whole("food"))],
    ["trip.svg", coolerStrip(coolerStripData(forecast), whole("trip"))],
    ...mergePictures(forecast, whole),
  );
  return drawn.map(([name, svg]) => [name, standalone(svg, "day")]);
}
