// Stull, R. (2011), Wet-bulb temperature from relative humidity and air temperature, J. Appl. Meteorol. Climatol.
// 50:2267–2269, eq. 1 (stull-2011). Formula read in public copies. It holds at sea level, 5…99 %, within −1…+0.65 K.
import { describe, expect, it } from "vitest";
import { wetBulb_C } from "../../core/matter/moistAir.ts";

/** Stull's fit, kept here as a peer only: at altitude it is wrong. */
function stull_C(air_C: number, relative_pct: number): number {
  return (
    air_C * Math.atan(0.151977 * Math.sqrt(relative_pct + 8.313659)) +
    Math.atan(air_C + relative_pct) -
    Math.atan(relative_pct - 1.676331) +
    0.00391838 * relative_pct ** 1.5 * Math.atan(0.023101 * relative_pct) -
    4.686035
  );
}

// Air °C, relative humidity %, Stull's value, the handbook's wet bulb at 101 325 Pa (both computed apart).
const pairs = [
  [20, 50, 13.7, 13.78],
  [30, 30, 18.37, 17.97],
  [35, 20, 19.3, 18.87],
  [35, 60, 28.49, 28.18],
  [40, 10, 18.51, 18.57],
  [32, 45, 23.07, 22.65],
  [10, 50, 5.1, 5.54],
] as const;

describe.each(pairs)("%d °C, %d %%", (air_C, relative_pct, stull, handbook) => {
  const ours = wetBulb_C(air_C, relative_pct / 100, 101_325);

  it("the library's wet bulb, to 0.1 K", () => {
    expect(Math.abs(ours - handbook)).toBeLessThan(0.1);
  });

  it("Stull's formula as printed, and the library within the errors he states", () => {
    expect(stull_C(air_C, relative_pct)).toBeCloseTo(stull, 2);
    expect(ours - stull_C(air_C, relative_pct)).toSatisfy((gap: number) => gap > -0.65 && gap < 1);
  });
});

it("at 80 kPa, 35 °C and 20 %: 17.6 °C, where a sea-level formula is 1.7 K off", () => {
  expect(Math.abs(wetBulb_C(35, 0.2, 80_000) - 17.6)).toBeLessThan(0.1);
  expect(stull_C(35, 20) - wetBulb_C(35, 0.2, 80_000)).toBeGreaterThan(1.5);
});
