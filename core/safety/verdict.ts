import { DomainError, requireFinite } from "../quantity/errors.ts";
import { coldDaysFinding } from "./coldDays.ts";
import type { Finding, FoodHistory } from "./history.ts";
import { limits } from "./limits.ts";
import { refrozenFinding, wetFinding, withoutAirFinding } from "./packages.ts";
import { hourWords } from "./timeWords.ts";
import { passedFinding, thawFinding, warmAllowed_s, warmFinding } from "./warmTime.ts";

export type { FoodHistory, Verdict } from "./history.ts";

/** A verdict with the rule it rests on. There is no word for certainty here: `keep` only says that no rule speaks against it. */
export interface Ruling extends Finding {
  /** Warm time that the rule allows; null: the charts set none for this kind. */
  warmAllowed_s: number | null;
}

const rank = { keep: 0, "eat next": 1, discard: 2 } as const;

/**
 * The verdict on one item from its own history, by the public charts; the strictest rule that applies wins. It is not
 * a measurement, it never clears food, and it does not replace a look, a label, or the order of an agency. What is not
 * known counts against the food. The Food Code's four hours by time alone are not granted: they need a time mark on
 * the package, and no file says that there is one.
 *
 * @throws DomainError for a time that is negative or not a number
 * @source fsis-food-safety, fda-food-code-2022, public-outage-charts, public-cold-storage-chart
 */
export function verdictOf(history: FoodHistory): Ruling {
  check(history);
  const findings = [
    warmFinding(history),
    thawFinding(history),
    wetFinding(history),
    refrozenFinding(history),
    coldDaysFinding(history),
    passedFinding(history),
    withoutAirFinding(history),
    vulnerableFinding(history),
  ].filter((finding) => finding !== null);
  const worst = findings.reduce((a, b) => (rank[b.verdict] > rank[a.verdict] ? b : a));
  return { ...worst, warmAllowed_s: warmAllowed_s(history) };
}

function check(history: FoodHistory): void {
  requireFinite("warm_s", history.warm_s, 0, 1e9);
  for (const name of ["hotAir_s", "over10C_s", "wet_s", "cold_s"] as const) {
    const value = history[name];
    if (value !== null) requireFinite(name, value, 0, 1e9);
  }
  if (history.warmest_C !== null) requireFinite("warmest_C", history.warmest_C, -100, 120);
  if ((history.hotAir_s ?? 0) > history.warm_s + 1) throw new DomainError("hotAir_s must be at most warm_s");
}

function vulnerableFinding(history: FoodHistory): Finding | null {
  const { food, vulnerable, warm_s, profile } = history;
  if (!vulnerable || warm_s === 0 || food.warm !== "discard") return null;
  return {
    verdict: "eat next",
    rule: "Stricter for infants, pregnant, old or immune-compromised eaters: no warm time is left unremarked (the project's own rule)",
    why: `${hourWords(warm_s)} above ${limits[profile].says}, and somebody easily harmed eats with the party`,
  };
}
