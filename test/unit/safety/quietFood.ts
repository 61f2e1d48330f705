import { foods } from "../../../core/matter/foods.ts";
import type { FoodHistory } from "../../../core/safety/verdict.ts";

/** Ready-to-eat food to which nothing has happened; a test changes what it is about. */
export const quietFood: FoodHistory = {
  food: foods["cooked meat"]!,
  profile: "consumer",
  vulnerable: false,
  warm_s: 0,
  hotAir_s: 0,
  over10C_s: 0,
  warmest_C: 2,
  limitPassed: false,
  cameFrozen: false,
  thawing: false,
  refrozen: false,
  withoutAir: false,
  cold_s: null,
  coldGuessed: false,
  mark_days: null,
  wet_s: null,
  rawInSameCooler: false,
};
