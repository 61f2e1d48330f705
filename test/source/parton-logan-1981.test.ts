// Parton, W. J., Logan, J. A. (1981), A model for diurnal variation in soil and air temperature, Agric. Meteorol.
// 23:205–216, air at 1.5 m: a = 1.86 h, b = 2.20. Form and constants as in several public implementations; the paper was
// not read. By day T = low + (high − low)·sin(π·m/(Y + 2a)); by night T = low + (sunset − low)·exp(−b·n/Z).
import { describe, expect, it } from "vitest";
import { type AirDay, dailyAir_C } from "../../core/sky/airTemperature.ts";

const hour = 3600;
const day = (k: number): AirDay => ({
  rise_s: (24 * k + 6) * hour,
  set_s: (24 * k + 20) * hour,
  low_C: 12,
  high_C: 31,
});
const days = [day(0), day(1), day(2)];

describe("air between a low of 12 and a high of 31 °C, sun up from 6 to 20", () => {
  it("by day is the paper's sine, written here as a cosine about the warmest moment", () => {
    const peak_h = 13 + 1.86;
    for (let h = 6; h <= 20; h += 0.25) {
      const paper = 12 + 19 * Math.cos((Math.PI * (h - peak_h)) / (14 + 2 * 1.86));
      // The sine is kept to 1.5e-8 (core/quantity/steady.ts), times a swing of 19 K.
      expect(dailyAir_C(days, h * hour)).toBeCloseTo(paper, 6);
    }
  });

  it("by night ends on the low, where the paper's stays 11 % of the evening's excess above it: the gap, kept", () => {
    const sunset_C = dailyAir_C(days, 20 * hour);
    const paper = (n_h: number): number => 12 + (sunset_C - 12) * Math.exp((-2.2 * n_h) / 10);
    expect(dailyAir_C(days, (30 - 1e-9) * hour)).toBeCloseTo(12, 6);
    const gaps = [0, 2, 4, 6, 8, 10].map((n_h) => paper(n_h) - dailyAir_C(days, (20 + n_h) * hour));
    expect(gaps[0]).toBeCloseTo(0, 9);
    expect(gaps.at(-1)).toBeCloseTo((sunset_C - 12) * Math.exp(-2.2), 6);
    expect(Math.max(...gaps)).toBeLessThan(1.4);
  });
});
