import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foods } from "../../../core/matter/foods.ts";
import { DomainError } from "../../../core/quantity/errors.ts";
import { type FoodHistory, type Ruling, verdictOf } from "../../../core/safety/verdict.ts";
import { quietFood as quiet } from "./quietFood.ts";

const HOUR_s = 3600;
const rank = { keep: 0, "eat next": 1, discard: 2 };
const ruling = (change: Partial<FoodHistory>): Ruling => verdictOf({ ...quiet, ...change });

describe("a verdict", () => {
  it("keeps what was never warm", () => {
    expect(ruling({}).verdict).toBe("keep");
    expect(ruling({}).warmAllowed_s).toBe(2 * HOUR_s);
  });

  it("asks for what has used half of its warm time to be eaten next", () => {
    expect(ruling({ warm_s: HOUR_s }).verdict).toBe("keep");
    expect(ruling({ warm_s: HOUR_s + 1 }).verdict).toBe("eat next");
  });

  it("asks for what rose above the limit to be eaten next, however short", () => {
    expect(ruling({ warm_s: 60, limitPassed: true }).verdict).toBe("eat next");
  });

  it("takes unknown air for hot air", () => {
    expect(ruling({ warm_s: 4000, hotAir_s: null }).verdict).toBe("discard");
    expect(ruling({ warm_s: 4000, hotAir_s: 0 }).verdict).not.toBe("discard");
  });

  it("discards ready-to-eat food that lay in water beside raw food", () => {
    const wet = ruling({ wet_s: 600, rawInSameCooler: true });
    expect(wet.verdict).toBe("discard");
    expect(wet.rule).toContain("raw meat juice");
  });

  it("asks for wet food to be eaten next where there is nothing raw, and for raw food that is wet", () => {
    expect(ruling({ wet_s: 600 }).verdict).toBe("eat next");
    const raw = foods["chicken breast"]!;
    expect(ruling({ food: raw, wet_s: 600, rawInSameCooler: true }).verdict).toBe("eat next");
  });

  it("asks for nothing of whole raw produce that was warm or wet, unless raw food lay with it", () => {
    const apple = foods.apple!;
    expect(ruling({ food: apple, warm_s: 125 * HOUR_s }).verdict).toBe("keep");
    expect(ruling({ food: apple, wet_s: 600 }).verdict).toBe("keep");
    expect(ruling({ food: apple, wet_s: 600, rawInSameCooler: true }).verdict).toBe("discard");
  });

  it("leaves no warm minute unremarked for people who are easily harmed", () => {
    expect(ruling({ warm_s: 60, vulnerable: true }).verdict).toBe("eat next");
    expect(ruling({ warm_s: 60 }).verdict).toBe("keep");
  });

  it("grants an inspected kitchen no four hours without a time mark, and says so", () => {
    const unmarked = ruling({ profile: "inspected", warm_s: 3 * HOUR_s });
    expect(unmarked.verdict).toBe("discard");
    expect(unmarked.why).toContain("3-501.19");
  });

  it("names the limit it used", () => {
    expect(ruling({ warm_s: 60 }).why).toContain("40 °F");
    expect(ruling({ warm_s: 60, profile: "inspected" }).why).toContain("41 °F");
  });

  it("refuses a time that is not a number, negative, or longer than the whole", () => {
    expect(() => ruling({ warm_s: Number.NaN })).toThrow(DomainError);
    expect(() => ruling({ warm_s: -1 })).toThrow(DomainError);
    expect(() => ruling({ warm_s: 100, hotAir_s: 200 })).toThrow(DomainError);
  });
});

const history: fc.Arbitrary<FoodHistory> = fc.record({
  food: fc.constantFrom(...Object.values(foods)),
  profile: fc.constantFrom("consumer", "inspected"),
  vulnerable: fc.boolean(),
  warm_s: fc.integer({ min: 0, max: 50_000 }),
  hotAir_s: fc.constantFrom(0, null),
  over10C_s: fc.constantFrom(0, null),
  warmest_C: fc.option(fc.double({ min: -20, max: 40, noNaN: true })),
  limitPassed: fc.boolean(),
  cameFrozen: fc.boolean(),
  thawing: fc.boolean(),
  refrozen: fc.boolean(),
  withoutAir: fc.boolean(),
  cold_s: fc.option(fc.integer({ min: 0, max: 2_000_000 })),
  coldGuessed: fc.boolean(),
  mark_days: fc.option(fc.integer({ min: 1, max: 20 })),
  wet_s: fc.option(fc.integer({ min: 0, max: 50_000 })),
  rawInSameCooler: fc.boolean(),
});

describe("any history", () => {
  it("is never judged more mildly when something becomes unknown or one is more easily harmed", () => {
    fc.assert(
      fc.property(history, (known) => {
        const before = rank[verdictOf(known).verdict];
        for (const change of [
          { hotAir_s: null },
          { over10C_s: null },
          { vulnerable: true },
          { limitPassed: true },
          { refrozen: true },
          { warmest_C: null },
        ])
          expect(rank[verdictOf({ ...known, ...change }).verdict]).toBeGreaterThanOrEqual(before);
      }),
    );
  });

  it("is never judged more mildly after more days in the cold", () => {
    fc.assert(
      fc.property(history, fc.integer({ min: 0, max: 2_000_000 }), (known, more_s) => {
        const later = { ...known, cold_s: (known.cold_s ?? 0) + more_s };
        expect(rank[verdictOf(later).verdict]).toBeGreaterThanOrEqual(rank[verdictOf(known).verdict]);
      }),
    );
  });

  it("is never judged more mildly after more warm time", () => {
    fc.assert(
      fc.property(history, fc.integer({ min: 0, max: 40_000 }), (known, more_s) => {
        const later = { ...known, warm_s: known.warm_s + more_s };
        expect(rank[verdictOf(later).verdict]).toBeGreaterThanOrEqual(rank[verdictOf(known).verdict]);
      }),
    );
  });

  it("has a rule and a reason, and allows time only where the chart discards", () => {
    fc.assert(
      fc.property(history, (known) => {
        const { rule, why, warmAllowed_s } = verdictOf(known);
        expect(rule.length).toBeGreaterThan(10);
        expect(why.length).toBeGreaterThan(3);
        // Vegetables that went in frozen have six hours once thawed, though the fresh ones are kept.
        if (warmAllowed_s === null) expect(known.food.warm.startsWith("keep")).toBe(true);
        else expect(known.food.warm.startsWith("keep") && !known.cameFrozen).toBe(false);
      }),
    );
  });
});
