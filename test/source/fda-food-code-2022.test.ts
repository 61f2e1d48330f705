// FDA Food Code 2022 as adopted by states (the FDA's own document was not seen): 3-501.16 cold holding at 41 °F or
// less; 3-501.19 time alone needs a mark; 3-303.12 no package that lets water in stands in ice water. Exact.
import { describe, expect, it } from "vitest";
import { foods } from "../../core/matter/foods.ts";
import { limits } from "../../core/safety/limits.ts";
import { type FoodHistory, verdictOf } from "../../core/safety/verdict.ts";
import { quietFood } from "../unit/safety/quietFood.ts";

const HOUR_s = 3600;
const unmarked: FoodHistory = { ...quietFood, profile: "inspected" };

describe("Food Code 2022", () => {
  it("3-501.16: the inspected limit is 41 °F, which is 5 °C", () => {
    expect(limits.inspected.limit_C).toBe(5);
    expect(limits.consumer.limit_C).toBeLessThan(limits.inspected.limit_C);
  });

  it("3-501.19: food without a time mark does not get the four hours", () => {
    expect(verdictOf({ ...unmarked, warm_s: 3.5 * HOUR_s }).verdict).toBe("discard");
    expect(verdictOf({ ...unmarked, warm_s: 5.5 * HOUR_s }).verdict).toBe("discard");
  });

  it("3-303.12: a wet package never leaves food at 'keep'", () => {
    expect(verdictOf({ ...unmarked, wet_s: 60 }).verdict).toBe("eat next");
    expect(verdictOf({ ...unmarked, wet_s: 60, rawInSameCooler: true }).verdict).toBe("discard");
  });

  it("3-501.17: ready-to-eat food is kept to day 7, the day it was made being day 1; raw food has no date mark", () => {
    const chili = { ...unmarked, food: foods.chili!, cold_s: 6.4 * 86_400 };
    expect(verdictOf({ ...chili, mark_days: 7 }).verdict).toBe("eat next");
    const late = verdictOf({ ...chili, mark_days: 8 });
    expect(late.verdict).toBe("discard");
    expect(late.rule).toContain("3-501.17");
    expect(verdictOf({ ...unmarked, food: foods.egg!, cold_s: 9 * 86_400, mark_days: 10 }).verdict).toBe(
      "keep",
    );
  });

  it("3-501.13(E): fish in a pack without air goes next above 38 °F; other food, or an open pack, does not", () => {
    const fish = { ...unmarked, food: foods.salmon!, withoutAir: true };
    expect(verdictOf({ ...fish, warmest_C: 3.3 }).verdict).toBe("keep");
    expect(verdictOf({ ...fish, warmest_C: 3.4 }).verdict).toBe("eat next");
    expect(verdictOf({ ...fish, warmest_C: null }).verdict).toBe("eat next");
    expect(verdictOf({ ...fish, withoutAir: false, warmest_C: 4.4 }).verdict).toBe("keep");
    expect(verdictOf({ ...fish, food: foods["beef steak"]!, warmest_C: 4.4 }).verdict).toBe("keep");
  });
});
