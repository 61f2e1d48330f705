// Kasten, F., Czeplak, G. (1980), Solar and terrestrial radiation dependent on the amount and type of cloud, Solar Energy
// 24:177–189: G/G_clear = 1 − 0.75·(N/8)^3.4, N in oktas; as quoted by later papers, the paper was not read.
import { expect, it } from "vitest";
import { cloudBehind_frac, cloudTransmission_frac } from "../../core/sky/cloud.ts";

it.each([0, 1, 2, 3, 4, 5, 6, 7, 8])("%d oktas, by the oktas' own logarithms", (oktas) => {
  const loss = oktas === 0 ? 0 : Math.exp(Math.log(0.75) + 3.4 * (Math.log(oktas) - 3 * Math.LN2));
  expect(cloudTransmission_frac(oktas / 8)).toBeCloseTo(1 - loss, 12);
});

it("overcast leaves a quarter", () => {
  expect(cloudTransmission_frac(1)).toBe(0.25);
});

it("read backwards it finds the cloud again, and never leaves 0…1", () => {
  for (const cloud of [0.05, 0.3, 0.72, 0.99]) {
    expect(cloudBehind_frac(cloudTransmission_frac(cloud))).toBeCloseTo(cloud, 10);
  }
  expect([cloudBehind_frac(1.2), cloudBehind_frac(0.1)]).toEqual([0, 1]);
});
