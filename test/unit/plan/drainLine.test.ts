import { expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import { drainAdvice, ratioWords } from "../../../core/plan/drainLine.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { toyFood, toyIce } from "./toyTrip.ts";
import { warmTrip } from "./warmTrip.ts";

const adviceFor = (more: Partial<Trip>): ReturnType<typeof drainAdvice> => {
  const trip = warmTrip({
    food: [toyFood("stew", 0, { start_C: 1 })],
    ice: [toyIce("block", 3, 4)],
    ...more,
  });
  return drainAdvice(trip, forecast(trip));
};

it("has both numbers of every day with water", () => {
  const advice = adviceFor({});
  expect(advice.length).toBeGreaterThan(0);
  for (const { keep, open, reasons, day } of advice) {
    expect(keep.iceOut_h.p50).toBeGreaterThan(0);
    expect(open.iceOut_h.p50).toBeGreaterThan(0);
    expect(reasons.length).toBeGreaterThan(0);
    expect(day).toBeGreaterThanOrEqual(1);
  }
  expect(new Set(advice.map(({ day }) => day)).size).toBe(advice.length);
});

it("drains for raw juice whatever the numbers say", () => {
  const food = [toyFood("chicken", 0, { raw: true, watertight: false }), toyFood("stew", 0, { start_C: 1 })];
  const advice = adviceFor({ food });
  expect(advice.every(({ does }) => does === "drain")).toBe(true);
  expect(advice[0]!.reasons[0]).toMatch(/juice of chicken/);
  expect(advice[0]!.says).toMatch(/discard/);
});

it("keeps the water for what came warm, where nothing is stricter", () => {
  const [first] = adviceFor({ food: [toyFood("cans", 0, { start_C: 25 })] });
  expect(first).toMatchObject({
    does: "keep",
    reasons: [expect.stringMatching(/cans came warm/), expect.anything()],
  });
});

it("tells the ratio beside what is commonly said", () => {
  const trip = warmTrip({ food: [toyFood("stew", 0, { start_C: 1 })], ice: [toyIce("block", 3, 4)] });
  const [cooler] = forecast(trip, { effects: false }).result.coolers;
  expect(ratioWords(cooler!)).toMatch(/to 1 by volume; common practice says two to one/);
  expect(ratioWords({ ...cooler!, iceToLoad_ratio: null })).toMatch(/nothing but ice/);
});
