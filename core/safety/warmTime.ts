import { chartRowsOf } from "./chartRows.ts";
import type { Finding, FoodHistory } from "./history.ts";
import { limits } from "./limits.ts";
import { hourWords } from "./timeWords.ts";

const HOUR_s = 3600;
const outageChart = "public power-outage chart, editions 2010 to 2022";
const frozenFoodChart = "public frozen-food chart, editions 2010 to 2022";

/** What a chart says of food that was above 40 °F for more than two hours: the stricter of the two that may speak of it. */
type WarmRule = "discard" | "keep" | "keep whole" | "over 10 C for 8 h" | "discard after 6 h";

function warmRule({ food, cameFrozen }: FoodHistory): WarmRule {
  const thawed = cameFrozen ? chartRowsOf(food.key).frozen?.thawed : undefined;
  if (thawed === "discard after 6 h") return thawed;
  const keeps = food.warm === "keep" || food.warm === "keep whole";
  return thawed === "discard" && keeps ? "discard" : food.warm;
}

/**
 * How long an item may be above the limit in its whole life; null where the public charts set no time. Two hours for
 * what a chart discards, one hour once any of the warm time was in air above 90 °F or the air is unknown; eight hours
 * above 50 °F for opened mayonnaise and its like. The six hours of vegetables that went in frozen are not granted in hot or
 * unknown air, nor where somebody easily harmed eats (the project's own rule).
 *
 * @source fsis-food-safety, public-outage-charts
 */
export function warmAllowed_s(history: FoodHistory): number | null {
  const rule = warmRule(history);
  if (rule === "keep" || rule === "keep whole") return null;
  if (rule === "over 10 C for 8 h") return 8 * HOUR_s;
  const hotAir_s = history.warm_s > 0 ? history.hotAir_s : 0;
  if (hotAir_s === null || hotAir_s > 0) return HOUR_s;
  return rule === "discard after 6 h" && !history.vulnerable ? 6 * HOUR_s : 2 * HOUR_s;
}

/** " row “soft cheese”", where a row speaks of the food and it is worth the words. */
function rowWords({ food, cameFrozen }: FoodHistory): string {
  const rows = chartRowsOf(food.key);
  const row = cameFrozen ? (rows.frozen ?? rows.chilled) : rows.chilled;
  if (row === null) return "";
  return `, row "${row.row}"${row.mark === "M" ? " (from memory)" : ""}`;
}

/**
 * The finding on warm time: what is used of what the charts allow.
 *
 * @source fsis-food-safety, public-outage-charts, fda-food-code-2022
 */
export function warmFinding(history: FoodHistory): Finding {
  const allowed_s = warmAllowed_s(history);
  if (allowed_s === null) return unlimitedFinding(history);
  const { warm_s } = history;
  const mayonnaise = history.food.warm === "over 10 C for 8 h";
  const used_s = mayonnaise ? (history.over10C_s ?? warm_s) : warm_s;
  const above = mayonnaise ? "50 °F (10 °C)" : limits[history.profile].says;
  const verdict = used_s > allowed_s ? "discard" : used_s > allowed_s / 2 ? "eat next" : "keep";
  // What is kept shares its rule with its neighbours; only what is not needs its row.
  const row = verdict === "keep" ? "" : rowWords(history);
  const unmarked =
    history.profile === "inspected" && !mayonnaise
      ? "; no time mark is known, so the 4 h of Food Code 3-501.19 are not used"
      : "";
  const why =
    used_s > 0
      ? `${hourWords(used_s)} above ${above} of ${hourWords(allowed_s)} allowed${unmarked}`
      : `never above ${above}`;
  return { verdict, rule: `${allowedWords(allowed_s, above)}${row})`, why };
}

/** The rule, with its bracket open for the row. */
function allowedWords(allowed_s: number, above: string): string {
  if (allowed_s === 8 * HOUR_s) return `Discard after more than 8 h above ${above} (${outageChart}`;
  if (allowed_s === 6 * HOUR_s) return `6 h in all above ${above} once thawed (${frozenFoodChart}`;
  if (allowed_s === HOUR_s)
    return `1 h in all above ${above} when the air is above 90 °F, or is not known (USDA FSIS`;
  return `2 h in all above ${above} (USDA FSIS; ${outageChart}`;
}

function unlimitedFinding({ food, warm_s, profile }: FoodHistory): Finding {
  const limit = limits[profile].says;
  if (food.warm === "keep whole") {
    const why =
      warm_s > 0 ? `${hourWords(warm_s)} above ${limit}: keep only what is whole` : `never above ${limit}`;
    return { verdict: "keep", rule: `Kept while whole, discarded when cut (${outageChart})`, why };
  }
  const why =
    warm_s > 0 ? `${hourWords(warm_s)} above ${limit}; the chart keeps this kind` : `never above ${limit}`;
  return { verdict: "keep", rule: `This kind is kept (${outageChart})`, why };
}

/**
 * The finding on food that thaws: what the chart of frozen food does not keep once soft, and what is sold frozen but
 * came aboard thawed, nobody knows for how long.
 *
 * @source public-outage-charts
 */
export function thawFinding({ food, cameFrozen, thawing }: FoodHistory): Finding | null {
  if (!thawing) return null;
  const row = chartRowsOf(food.key).frozen;
  if (row === null ? food.kind === "frozen" : row.crystals === "discard")
    return {
      verdict: "discard",
      rule: `Ice cream and frozen yogurt are not kept once soft (${frozenFoodChart})`,
      why: "it began to thaw",
    };
  if (food.kind !== "frozen" || cameFrozen) return null;
  return {
    verdict: "eat next",
    rule: "What is not known counts against the food (the project's own rule)",
    why: "it came aboard thawed, and since when is not known",
  };
}

/**
 * The finding on food that rises above its limit before it is eaten, however short.
 *
 * @source fsis-food-safety, fda-food-code-2022
 */
export function passedFinding(history: FoodHistory): Finding | null {
  if (!history.limitPassed || warmAllowed_s(history) === null) return null;
  const limit = limits[history.profile].says;
  return {
    verdict: "eat next",
    rule: `Cold food is held at or below ${limit}`,
    why: `it rises above ${limit} before it is eaten`,
  };
}
