import type { IcePiece, PlanResult } from "../forecast/planResult.ts";
import type { Trip } from "../trip/types.ts";

/**
 * What ice and food cost, in the person's currency. A sum with a price missing is no sum: it is null, and `unpriced`
 * names what lacks one.
 *
 * @param ice lines of the shopping list and of the ice runs, each with the price of the whole line
 */
export function budgetOf(
  trip: Trip,
  ice: readonly Pick<IcePiece, "form" | "where" | "price">[],
): PlanResult["budget"] {
  const foodLines = trip.food.map(({ name, price }) => ({ name, price }));
  const iceLines = ice.map(({ form, where, price }) => ({ name: `${form} from ${where}`, price }));
  const unpriced = [...iceLines, ...foodLines].filter(({ price }) => price === null).map(({ name }) => name);
  return { ice: sumOf(iceLines), food: sumOf(foodLines), unpriced: [...new Set(unpriced)] };
}

function sumOf(lines: readonly { price: number | null }[]): number | null {
  if (lines.some(({ price }) => price === null)) return null;
  const cents = lines.reduce((sum, { price }) => sum + Math.round((price ?? 0) * 100), 0);
  return cents / 100;
}
