import type { Amount } from "../forecast/planResult.ts";
import type { Trip } from "../trip/types.ts";

/**
 * How much of each item was counted from heads and meals, in words that one can check by hand. Items whose amount stands
 * in the file are not in it.
 */
export function amountsOf(trip: Trip): Amount[] {
  return trip.food.flatMap(({ name, amount, portion }) => {
    if (portion === null) return [];
    const { each, heads, meals } = portion;
    return [{ item: name, amount, heads, meals, says: countWords(trip, each, heads, meals) }];
  });
}

function countWords(trip: Trip, each: string, heads: number, meals: number): string {
  const { children, appetite_frac } = trip.party;
  const eaters = `${plain(heads)} ${heads === 1 ? "eater" : "eaters"}`;
  const child = children > 0 && !Number.isInteger(heads) ? " (a child counts in part)" : "";
  const times = `${meals} ${meals === 1 ? "meal" : "meals"}`;
  const appetite = appetite_frac === 1 ? "" : `, appetite ${plain(appetite_frac * 100)} %`;
  return `${each} each for ${eaters}${child} at ${times}${appetite}`;
}

const plain = (count: number): string => String(Number(count.toFixed(1)));
