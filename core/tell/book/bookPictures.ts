import type { Forecast } from "../../forecast/types.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import { packSection } from "../pictures/packSection.ts";
import type { BookPictures } from "./options.ts";

/** Width of a sheet's text, CSS pixels. */
const WIDTH = 680;

/** Pictures of the trip book that the book does not draw by itself. */
export function bookPictures(forecast: Forecast, units: UnitSystem): BookPictures {
  const { trip, result } = forecast;
  const layers = result.plan?.layers ?? [];
  const pack = trip.coolers.flatMap(({ name }, i) =>
    layers.some(({ cooler }) => cooler === name)
      ? [[name, packSection(trip, layers, name, { width: WIDTH, units, id: `pack${i}` })] as const]
      : [],
  );
  return { pack: Object.fromEntries(pack) };
}
