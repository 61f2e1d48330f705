import { mostUrgentFirst } from "../forecast/forecast.ts";
import type { FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";

/** An item with what presses to eat it. */
export interface EatNext {
  item: string;
  cooler: string;
  verdict: FoodResult["verdict"];
  /** Hours from departure by which it passes its limit in one run of ten; null: not before it is eaten. */
  by_h: number | null;
  why: string;
}

/**
 * The order in which to eat what a trip has, most urgent first: what a rule speaks against leads, then what passes its
 * limit first, in the unlucky tenth of the runs. What keeps without cold is not in it, and neither is what is to be
 * discarded: that is not to be eaten.
 */
export function eatNext({ result }: Forecast): EatNext[] {
  const hardFirst = (food: FoodResult): FoodResult => {
    const { p10 } = food.overLimit_h;
    return { ...food, overLimit_h: { p10, p50: p10, p90: p10 } };
  };
  return result.food
    .filter(({ perishable, verdict }) => verdict !== "discard" && (perishable || verdict === "eat next"))
    .sort((a, b) => mostUrgentFirst(hardFirst(a), hardFirst(b)))
    .map(({ name, cooler, verdict, overLimit_h, why }) => ({
      item: name,
      cooler,
      verdict,
      by_h: overLimit_h.p10,
      why,
    }));
}
