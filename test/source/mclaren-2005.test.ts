// McLaren, C., Null, J., Quinn, J. (2005), Heat stress from enclosed vehicles, Pediatrics 116:e109–e112, read in a copy:
// cars parked in the sun at 72–96 °F warm by 19 °F in 10 min, 29 in 20, about 40 in 60; 80 % of it in the first 30 min;
// little dependence on the outdoor temperature. One exponential of 23 K and 18.6 min stays within 3 °F of these.
import { describe, expect, it } from "vitest";
import { surroundingsAt } from "../../core/sky/surroundings.ts";
import { noSurroundings, stayIn, steadyWeather } from "../unit/sky/steadyWeather.ts";

function rise_F(minutes: number, air_C: number): number {
  const car = surroundingsAt(steadyWeather({ air_C }), stayIn("closed car"), minutes * 60, noSurroundings());
  return (car.air_C - air_C) * 1.8;
}

describe("a closed car in the sun", () => {
  it.each([
    [10, 19],
    [20, 29],
    [60, 40],
  ])("after %d min is %d °F above outdoors, within 3", (minutes, expected) => {
    expect(Math.abs(rise_F(minutes, 30) - expected)).toBeLessThan(3);
  });

  it("has four fifths of the hour's rise after half an hour", () => {
    expect(rise_F(30, 30) / rise_F(60, 30)).toBeGreaterThan(0.8);
  });

  it("rises alike at 72 and 96 °F", () => {
    expect(rise_F(60, 22.2)).toBeCloseTo(rise_F(60, 35.6), 6);
  });
});
