/** Why a number is what it is: every sum that is shown adds up by hand, and nothing reckoned stands without its range. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import type { Why } from "../../../core/tell/why.ts";
import { whysOf } from "../../../core/tell/why.ts";
import { inventedPlan } from "../fixtures/inventedPlan.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const works = JSON.parse(
  readFileSync(new URL("../../../core/sources.json", import.meta.url), "utf8"),
) as object;
const planned = plannedForecast();
const all = (units: "us" | "metric"): Why[] => Object.values(whysOf(planned, { units })).flat();

/** "33.5 lb of ice a day = 18.7 walls + 6.7 base − 0.8 food": what is left and what the right comes to, in tenths. */
function added(says: string): { total: number; sum: number } | null {
  const [, whole, right] = /(−?\d+\.\d+)[^=]*= (.+)/.exec(says) ?? [];
  if (whole === undefined) return null;
  // What stands in brackets, "3 × 10-lb bags", is no term.
  const terms = right!.replace(/\([^)]*\)/g, "").matchAll(/(^|[+−] )(\d+\.\d+)/g);
  const sum = [...terms].reduce((so, [, sign, term]) => so + (sign === "− " ? -1 : 1) * Number(term), 0);
  return { total: Number(whole!.replace("−", "-")), sum };
}

describe.each(["us", "metric"] as const)("why, in %s units", (units) => {
  it("shows sums that add up to the last digit", () => {
    const sums = all(units).flatMap(({ sum }) => sum.flatMap((says) => added(says) ?? []));
    expect(sums.length).toBeGreaterThan(8);
    for (const { total, sum } of sums) expect(sum).toBeCloseTo(total, 6);
  });

  it("tells a range or that there is none, with known sources", () => {
    for (const why of all(units)) {
      expect(why.range).toMatch(/range|runs|light or heavy/);
      expect(why.sources.filter((key) => !(key in works))).toEqual([]);
    }
  });
});

describe("what a why says", () => {
  it("gives packed weights a range as wide as the bags and pieces in it, around the weight itself", () => {
    const { weights } = whysOf(planned, { units: "metric" });
    planned.result.coolers.forEach(({ packedWeight_kg }, i) => {
      const [low, high] = (weights[i]!.between.match(/\d+(\.\d+)?/g) ?? []).map(Number);
      if (low === undefined) return;
      expect(low).toBeLessThanOrEqual(packedWeight_kg + 0.5);
      expect(high ?? low).toBeGreaterThanOrEqual(packedWeight_kg - 0.5);
    });
  });

  it("says that one run has no range", () => {
    const { trip } = planned;
    const told = forecast(trip, { effects: false });
    const one = { ...told, result: { ...told.result, plan: inventedPlan(trip) } };
    expect(whysOf(one, { units: "metric" }).ends[0]!.range).toContain("no range yet");
  });
});
