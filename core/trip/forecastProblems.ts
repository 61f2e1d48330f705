import type { FoodFile, TripFile } from "./file.ts";
import type { Problem, Trip } from "./types.ts";

/**
 * Why a forecast cannot be made of a trip that reads well: food that is written into no cooler and is not dry. The
 * dry box counts as a place. Lines are not known here.
 */
export function forecastProblems(trip: Trip): Problem[] {
  const files: readonly FoodFile[] = (trip.typed as TripFile).food ?? [];
  const names = trip.coolers.map((cooler) => cooler.name).slice(0, 10);
  return trip.food.flatMap((item, i): Problem[] => {
    if (item.putIn_s !== null || item.state === "dry" || files[i]?.in !== undefined) return [];
    const must = `the name of a cooler (${names.join(", ")}) or dry box; or state: dry`;
    return [{ line: null, path: `${item.path}.in`, must, got: "nothing", near: null }];
  });
}
