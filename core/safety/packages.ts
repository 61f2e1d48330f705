import { temperatureWords } from "../quantity/show.ts";
import { isFish } from "./chartRows.ts";
import type { Finding, FoodHistory } from "./history.ts";
import { fishWithoutAir_C } from "./limits.ts";
import { hourWords } from "./timeWords.ts";

/** Fruit and vegetables that no chart limits: whole and raw, they may lie in ice water. */
const isWholeProduce = ({ food, cameFrozen }: FoodHistory): boolean =>
  food.kind === "produce" && !cameFrozen && (food.warm === "keep" || food.warm === "keep whole");

/**
 * The finding on a package that lay in meltwater. Whole raw produce is not spoken against for it, as long as no raw food
 * lies in the same cooler.
 *
 * @source fsis-food-safety, fda-food-code-2022
 */
export function wetFinding(history: FoodHistory): Finding | null {
  const { food, wet_s, rawInSameCooler } = history;
  if (wet_s === null || wet_s === 0) return null;
  const lay = `its package lets water in and lay in meltwater for ${hourWords(wet_s)}`;
  if (rawInSameCooler && !food.rawAnimal) {
    return {
      verdict: "discard",
      rule: "Discard what raw meat juice may have touched (USDA FSIS)",
      why: `${lay}, with raw food in the same cooler`,
    };
  }
  if (isWholeProduce(history)) return null;
  return {
    verdict: "eat next",
    rule: "Packages that let water in stay out of ice water (Food Code 2022, 3-303.12)",
    why: lay,
  };
}

/**
 * The finding on food that thawed once and was frozen again: how much of its time was used is not known, so it goes next,
 * and is not kept with any warm time on top. Food that the charts keep when warm is left out.
 *
 * @source public-outage-charts, engineering-judgement
 */
export function refrozenFinding({ food, refrozen, warm_s }: FoodHistory): Finding | null {
  if (!refrozen || food.warm === "keep" || food.warm === "keep whole") return null;
  const softens = food.key === "ice cream";
  const verdict = warm_s > 0 || softens ? "discard" : "eat next";
  return {
    verdict,
    rule: "What was frozen a second time has lost time that nobody counted (the project's own rule; the public frozen-food chart lets only food with ice crystals be frozen again)",
    why:
      warm_s > 0
        ? `frozen a second time, and ${hourWords(warm_s)} above its limit besides`
        : "frozen a second time",
  };
}

/**
 * The finding on fish in a package without air that is warmer than 38 °F: the package is opened before the fish thaws.
 *
 * @source fda-food-code-2022, growth-minima
 */
export function withoutAirFinding(history: FoodHistory): Finding | null {
  const { food, withoutAir, warmest_C } = history;
  if (!withoutAir || !isFish(food.key)) return null;
  if (warmest_C !== null && warmest_C <= fishWithoutAir_C) return null;
  const how =
    warmest_C === null
      ? "how warm is not known"
      : `it reaches ${temperatureWords(warmest_C, "us")} (${temperatureWords(warmest_C, "metric")})`;
  return {
    verdict: "eat next",
    rule: "Fish in a pack without air stays at or below 38 °F (3.3 °C), and its pack is opened before it thaws (Food Code 2022, 3-501.13)",
    why: `in a pack without air ${how}`,
  };
}
