import { describe, expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import { type ThawMove, thawPlan } from "../../../core/plan/thaw.ts";
import { openTrip } from "./statesTrip.ts";

const ice = "ice: [{ form: block, amount: 12 kg, at: -16 C, in: galley }]";

function moveOf(line: string): ThawMove | undefined {
  const trip = openTrip({ food: [line], more: ice });
  return thawPlan(trip, forecast(trip, { effects: false }))[0];
}

describe("a frozen item", () => {
  it("that the cooler thaws in time by itself is left where it is", () => {
    const move = moveOf("name: ham, amount: 300 g, like: ham, state: frozen, eat: day 5 lunch, in: galley")!;
    expect(move.moveAt_s).toBeNull();
    expect(move.says).toContain("by itself");
  });

  it("is moved so early that the slow end of its thawing is over by its meal", () => {
    const move = moveOf(
      "name: steak, amount: 2 kg, like: chicken, state: frozen, shape: { bag: 40 mm }, eat: day 3 lunch, in: galley, layer: base",
    )!;
    if (move.moveAt_s === null) expect(move.says).toMatch(/by itself|from frozen/);
    else expect(move.moveAt_s + (move.takes_h.p90 ?? 0) * 3600).toBeLessThanOrEqual(move.for_s + 1);
  });

  it("for the first evening begins to thaw at home", () => {
    const move = moveOf(
      "name: roast, amount: 2 kg, like: beef steak, state: frozen, shape: { bag: 60 mm }, eat: day 1 dinner, in: galley",
    )!;
    expect(move.from).toBe("freezer");
    expect(move.to).toBe("refrigerator");
    expect(move.moveAt_s).toBeLessThan(0);
  });

  it("of a kind that is eaten or cooked frozen is not moved", () => {
    expect(
      moveOf("name: peas, amount: 1 kg, like: frozen vegetables, eat: day 2 dinner, in: galley"),
    ).toBeUndefined();
  });
});
