import type { FoodHistory } from "../../../core/safety/verdict.ts";

/** Ready-to-eat food to which nothing has happened; a test changes what it is about. */
export const quietFood: FoodHistory = {
  food: { name: "cooked chicken", kind: "rte", warm: "discard", rawAnimal: false },
  profile: "consumer",
  vulnerable: false,
  warm_s: 0,
  hotAir_s: 0,
  over10C_s: 0,
  limitPassed: false,
  thawing: false,
  wet_s: null,
  rawInSameCooler: false,
};
