// USDA FSIS and FoodSafety.gov, keeping food cold and the power-outage charts (editions 2010–2022 where they agree).
// Read in copies. The charts are words, so there is no tolerance: an hour more or less changes the answer.
import { describe, expect, it } from "vitest";
import { foods } from "../../core/matter/foods.ts";
import { hotAir_C, limits, mayonnaiseWarm_C } from "../../core/safety/limits.ts";
import { type FoodHistory, verdictOf } from "../../core/safety/verdict.ts";
import { quietFood as quiet } from "../unit/safety/quietFood.ts";

const HOUR_s = 3600;
const raw = foods["chicken breast"]!;
const beef = foods["ground beef"]!;
const cheddar = foods.cheddar!;
const shredded = foods["shredded cheese"]!;
const mayonnaise = foods.mayonnaise!;
const iceCream = foods["ice cream"]!;
const lettuce = foods["iceberg lettuce"]!;
const vegetables = foods["frozen vegetables"]!;
const thawed = { cameFrozen: true, thawing: true };

const rows: readonly [string, Partial<FoodHistory>, "keep" | "eat next" | "discard"][] = [
  ["chicken at 6 °C for 2.5 h", { food: raw, warm_s: 2.5 * HOUR_s }, "discard"],
  // The chart: still good, cool it at once. Here it also moves to the front of the queue.
  ["chicken at 6 °C for 1.5 h", { food: raw, warm_s: 1.5 * HOUR_s }, "eat next"],
  ["cheddar at 15 °C for 10 h", { food: cheddar, warm_s: 10 * HOUR_s, over10C_s: 10 * HOUR_s }, "keep"],
  ["shredded cheddar, the same", { food: shredded, warm_s: 10 * HOUR_s, over10C_s: 10 * HOUR_s }, "discard"],
  ["frozen beef at 3 °C with crystals", { food: beef, ...thawed }, "keep"],
  ["ice cream, soft but with crystals", { food: iceCream, ...thawed }, "discard"],
  // The chart keeps them up to six hours; here they also move to the front of the queue.
  ["frozen vegetables above 40 °F for 5 h", { food: vegetables, ...thawed, warm_s: 5 * HOUR_s }, "eat next"],
  [
    "frozen vegetables above 40 °F for 6.5 h",
    { food: vegetables, ...thawed, warm_s: 6.5 * HOUR_s },
    "discard",
  ],
  [
    "the same for 5 h in hot air",
    { food: vegetables, ...thawed, warm_s: 5 * HOUR_s, hotAir_s: 60 },
    "discard",
  ],
  ["mayonnaise at 12 °C for 9 h", { food: mayonnaise, warm_s: 9 * HOUR_s, over10C_s: 9 * HOUR_s }, "discard"],
  [
    "mayonnaise at 12 °C for 7 h",
    { food: mayonnaise, warm_s: 7 * HOUR_s, over10C_s: 7 * HOUR_s },
    "eat next",
  ],
  ["mayonnaise at 8 °C for 9 h", { food: mayonnaise, warm_s: 9 * HOUR_s, over10C_s: 0 }, "keep"],
  ["chicken out for 70 min in air above 90 °F", { food: raw, warm_s: 4200, hotAir_s: 4200 }, "discard"],
  ["chicken out for 70 min in milder air", { food: raw, warm_s: 4200, hotAir_s: 0 }, "eat next"],
  ["lettuce, whole, 10 h", { food: lettuce, warm_s: 10 * HOUR_s }, "keep"],
];

describe("the public charts, row by row", () => {
  for (const [what, change, verdict] of rows)
    it(`${what}: ${verdict}`, () => expect(verdictOf({ ...quiet, ...change }).verdict).toBe(verdict));
});

describe("the temperatures they name", () => {
  it("40 °F, 90 °F and 50 °F", () => {
    expect(limits.consumer.limit_C * 1.8 + 32).toBeCloseTo(40, 12);
    expect(hotAir_C * 1.8 + 32).toBeCloseTo(90, 12);
    expect(mayonnaiseWarm_C * 1.8 + 32).toBeCloseTo(50, 12);
  });
});
