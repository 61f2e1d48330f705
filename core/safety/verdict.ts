import type { Food } from "../matter/food.ts";
import { DomainError, requireFinite } from "../quantity/errors.ts";
import type { LimitProfile } from "../trip/types.ts";
import { limits } from "./limits.ts";

/** What happened to one item until it is eaten, or until the trip ends. Times are sums over the whole life of the food. */
export interface FoodHistory {
  food: Pick<Food, "name" | "kind" | "warm" | "rawAnimal">;
  profile: LimitProfile;
  /** Somebody who is easily harmed eats with the party. */
  vulnerable: boolean;
  /** Time with its warmest point above the limit, what was declared before packing included. */
  warm_s: number;
  /** Part of it with the air around the food above 90 °F; null: not known, which counts as hot. */
  hotAir_s: number | null;
  /** Time above 50 °F; null: not known, which counts as all the warm time. */
  over10C_s: number | null;
  /** It was under the limit once and rose above it. */
  limitPassed: boolean;
  /** It went in frozen and has begun to thaw. */
  thawing: boolean;
  /** Time that a package which lets water in lay in meltwater; null: it never did, or the package is watertight. */
  wet_s: number | null;
  /** Raw meat, poultry, fish or eggs are, or were, in the same cooler. */
  rawInSameCooler: boolean;
}

export type Verdict = "keep" | "eat next" | "discard";

/** A verdict with the rule it rests on. There is no word for certainty here: `keep` only says that no rule speaks against it. */
export interface Ruling {
  verdict: Verdict;
  rule: string;
  why: string;
  /** Warm time that the rule allows; null: the chart sets none for this kind. */
  warmAllowed_s: number | null;
}

interface Finding {
  verdict: Verdict;
  rule: string;
  why: string;
}

const HOUR_s = 3600;
const rank = { keep: 0, "eat next": 1, discard: 2 } as const;

/**
 * How long food of a kind may be above the limit in its whole life; null where the public chart sets no time.
 * Two hours for what the chart discards, one hour once any of the warm time was in air above 90 °F or the air is
 * unknown; eight hours above 50 °F for opened mayonnaise and its like.
 *
 * @source fsis-food-safety
 */
function warmAllowed_s(warm: Food["warm"], hotAir_s: number | null): number | null {
  if (warm === "keep" || warm === "keep whole") return null;
  if (warm === "over 10 C for 8 h") return 8 * HOUR_s;
  return hotAir_s === null || hotAir_s > 0 ? HOUR_s : 2 * HOUR_s;
}

/**
 * The verdict on one item from its own history, by the public charts; the strictest rule that applies wins. It is not
 * a measurement, it never clears food, and it does not replace a look, a label, or the order of an agency. What is not
 * known counts against the food. The Food Code's four hours by time alone are not granted: they need a time mark on
 * the package, and no file says that there is one.
 *
 * @throws DomainError for a time that is negative or not a number
 * @source fsis-food-safety, fda-food-code-2022
 */
export function verdictOf(history: FoodHistory): Ruling {
  check(history);
  const allowed_s = warmAllowed_s(history.food.warm, history.warm_s > 0 ? history.hotAir_s : 0);
  const findings = [
    warmFinding(history, allowed_s),
    thawFinding(history),
    wetFinding(history),
    passedFinding(history),
    vulnerableFinding(history),
  ].filter((finding) => finding !== null);
  const worst = findings.reduce((a, b) => (rank[b.verdict] > rank[a.verdict] ? b : a));
  return { ...worst, warmAllowed_s: allowed_s };
}

function check(history: FoodHistory): void {
  requireFinite("warm_s", history.warm_s, 0, 1e9);
  for (const name of ["hotAir_s", "over10C_s", "wet_s"] as const) {
    const value = history[name];
    if (value !== null) requireFinite(name, value, 0, 1e9);
  }
  if ((history.hotAir_s ?? 0) > history.warm_s + 1) throw new DomainError("hotAir_s must be at most warm_s");
}

function warmFinding(history: FoodHistory, allowed_s: number | null): Finding {
  const { food, warm_s } = history;
  const limit = limits[history.profile].says;
  if (allowed_s === null) return unlimitedFinding(history);
  const mayonnaise = food.warm === "over 10 C for 8 h";
  const used_s = mayonnaise ? (history.over10C_s ?? warm_s) : warm_s;
  const above = mayonnaise ? "50 °F (10 °C)" : limit;
  const rule = mayonnaise
    ? "Public power-outage chart: discard after more than 8 h above 50 °F"
    : allowed_s === HOUR_s
      ? `1 h in all above ${limit} when the air is above 90 °F, or is not known (USDA FSIS)`
      : `2 h in all above ${limit} (USDA FSIS; public power-outage chart)`;
  const unmarked =
    history.profile === "inspected" && !mayonnaise
      ? "; no time mark is known, so the 4 h of Food Code 3-501.19 are not used"
      : "";
  const why =
    used_s > 0
      ? `${hours(used_s)} above ${above} of ${hours(allowed_s)} allowed${unmarked}`
      : `never above ${above}`;
  if (used_s > allowed_s) return { verdict: "discard", rule, why };
  return { verdict: used_s > allowed_s / 2 ? "eat next" : "keep", rule, why };
}

function unlimitedFinding({ food, warm_s, profile }: FoodHistory): Finding {
  const limit = limits[profile].says;
  if (food.warm === "keep whole") {
    const rule = "Public power-outage chart: kept while whole, discarded when cut";
    if (warm_s > 2 * HOUR_s)
      return { verdict: "eat next", rule, why: `${hours(warm_s)} above ${limit}: keep only what is whole` };
    return {
      verdict: "keep",
      rule,
      why: warm_s > 0 ? `${hours(warm_s)} above ${limit}` : `never above ${limit}`,
    };
  }
  const why =
    warm_s > 0 ? `${hours(warm_s)} above ${limit}; the chart keeps this kind` : `never above ${limit}`;
  return { verdict: "keep", rule: "Public power-outage chart: this kind is kept", why };
}

function thawFinding({ food, thawing }: FoodHistory): Finding | null {
  if (!thawing || food.kind !== "frozen") return null;
  return {
    verdict: "discard",
    rule: "Public frozen-food chart: ice cream and frozen yogurt are not kept once soft",
    why: "it began to thaw",
  };
}

function wetFinding({ food, wet_s, rawInSameCooler }: FoodHistory): Finding | null {
  if (wet_s === null || wet_s === 0) return null;
  const lay = `its package lets water in and lay in meltwater for ${hours(wet_s)}`;
  if (rawInSameCooler && !food.rawAnimal) {
    return {
      verdict: "discard",
      rule: "Discard what raw meat juice may have touched (USDA FSIS)",
      why: `${lay}, with raw food in the same cooler`,
    };
  }
  return {
    verdict: "eat next",
    rule: "Packages that let water in stay out of ice water (Food Code 3-303.12)",
    why: lay,
  };
}

function passedFinding({ food, limitPassed, profile }: FoodHistory): Finding | null {
  if (!limitPassed || food.warm === "keep" || food.warm === "keep whole") return null;
  const limit = limits[profile].says;
  return {
    verdict: "eat next",
    rule: `Cold food is held at or below ${limit}`,
    why: `it rises above ${limit} before it is eaten`,
  };
}

function vulnerableFinding({ food, vulnerable, warm_s, profile }: FoodHistory): Finding | null {
  if (!vulnerable || warm_s === 0 || food.warm !== "discard") return null;
  return {
    verdict: "eat next",
    rule: "Stricter for infants, pregnant, old or immune-compromised eaters: no warm time is left unremarked (the project's own rule)",
    why: `${hours(warm_s)} above ${limits[profile].says}, and somebody easily harmed eats with the party`,
  };
}

function hours(time_s: number): string {
  const minutes = Math.ceil(time_s / 60 - 1e-9);
  if (minutes < 60) return `${minutes} min`;
  return `${Math.round(minutes / 6) / 10} h`;
}
