// wichura-1988: Wichura, M. J. (1988), Algorithm AS 241: the percentage points of the normal distribution, Appl. Stat.
// 37:477–484, as quoted elsewhere: PPND16 is good to about 1e-16, and p = 0.25, 0.001, 1e-20 stand in the comments of a copy as
// −0.6744897501960817, −3.090232306167814, −9.26234008979840517. The further values stand in any printed table.
import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../core/ensemble/normalQuantile.ts";
import { DomainError } from "../../core/quantity/errors.ts";

describe("the deviate of a share", () => {
  it.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234008979841],
  ])("of %d is the algorithm's own check, to 1e-14", (p_frac, printed) => {
    // The natural logarithm may differ in its last bit between engines; nothing else does.
    expect(Math.abs(normalQuantile(p_frac) / printed - 1)).toBeLessThan(1e-14);
  });

  it.each([
    [0.5, 0],
    [0.6, 0.253347],
    [0.75, 0.67449],
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.975, 1.959964],
    [0.99, 2.326348],
    [0.995, 2.575829],
    [0.999, 3.090232],
    [0.0001, -3.719016],
  ])("of %d is the table's, to its last digit", (p_frac, printed) => {
    expect(Math.abs(normalQuantile(p_frac) - printed)).toBeLessThan(0.6e-6);
  });

  it("is what the integral of the density gives back", () => {
    // Simpson over the density from 0: its error with 2000 parts of at most 0.004 is below 1e-13.
    const above_frac = (z: number): number => {
      const h = z / 2000;
      let sum = 0;
      for (let i = 0; i <= 2000; i++)
        sum += (i === 0 || i === 2000 ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-((i * h) ** 2) / 2);
      return (sum * h) / 3 / Math.sqrt(2 * Math.PI);
    };
    for (let p_frac = 0.505; p_frac < 1; p_frac += 0.005)
      expect(Math.abs(0.5 + above_frac(normalQuantile(p_frac)) - p_frac)).toBeLessThan(1e-12);
  });

  it("rises everywhere, also over the joints of its three pieces", () => {
    const shares = Array.from({ length: 5000 }, (_, i) => (i + 1) / 5001);
    for (const joint of [0.075, 0.925, Math.exp(-25), 1 - Math.exp(-25)])
      for (let k = -20; k <= 20; k++) shares.push(joint * (1 + k * 1e-13));
    const deviates = shares.sort((a, b) => a - b).map(normalQuantile);
    // 1e-13 of a share is some hundred times the rounding; a drop would be a joint that does not meet.
    expect(deviates.filter((z, i) => i > 0 && z < deviates[i - 1]!)).toEqual([]);
  });

  it("is odd about one half", () => {
    for (const p_frac of [0.0625, 0.125, 0.25, 0.375])
      expect(normalQuantile(p_frac)).toBe(-normalQuantile(1 - p_frac));
  });

  it.each([0, 1, -0.1, 1.1, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d", (p_frac) => {
    expect(() => normalQuantile(p_frac)).toThrow(DomainError);
  });
});
