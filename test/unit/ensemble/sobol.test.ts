import { describe, expect, it } from "vitest";
import { sobol_frac } from "../../../core/ensemble/sobol.ts";
import { DomainError } from "../../../core/quantity/errors.ts";

const seeds = [0, 1, 2, 1907, 4294967295];

/** How many parts of 1/`parts` hold no point or several. */
function badlyFilled(points: readonly number[], parts: number): number {
  const hits = new Uint16Array(parts);
  for (const x of points) hits[Math.floor(x * parts)]!++;
  return hits.filter((n) => n !== points.length / parts).length;
}

const drawn = (dimension: number, seed: number, count: number): number[] =>
  Array.from({ length: count }, (_, member) => sobol_frac(member, dimension, seed));

describe("sobol_frac", () => {
  it("puts one of the first 2^k members into each of 2^k parts, in every dimension", () => {
    for (const seed of seeds)
      for (let dimension = 0; dimension < 64; dimension++) {
        const points = drawn(dimension, seed, 1024);
        for (let count = 1; count <= 1024; count *= 2)
          expect(badlyFilled(points.slice(0, count), count)).toBe(0);
      }
  });

  it("fills every elementary rectangle of the first two dimensions of a group: a (0, 2)-sequence", () => {
    for (const seed of seeds)
      for (const first of [0, 4, 40])
        for (let k = 1; k <= 10; k++) {
          const [x, y] = [drawn(first, seed, 2 ** k), drawn(first + 1, seed, 2 ** k)];
          for (let wide = 0; wide <= k; wide++) {
            const cells = x.map((at, i) => (Math.floor(at * 2 ** wide) + y[i]!) * 2 ** -wide);
            expect(badlyFilled(cells, 2 ** k)).toBe(0);
          }
        }
  });

  it("spreads every pair of a group, no cell of 8 by 8 without a point among 512", () => {
    // Pairs other than the first have a t-value above 0; the published table keeps it low, and 2^9 ≥ 2^(6 + t) for t ≤ 3.
    for (const seed of seeds)
      for (const [a, b] of [
        [0, 2],
        [0, 3],
        [1, 2],
        [1, 3],
        [2, 3],
      ] as const) {
        const [x, y] = [drawn(a, seed, 512), drawn(b, seed, 512)];
        const cells = x.map((at, i) => (Math.floor(at * 8) + y[i]!) / 8);
        expect(badlyFilled(cells, 64)).toBe(0);
      }
  });

  it("has dimensions of different groups uncorrelated", () => {
    // Two groups pair their points at random, in antithetic twos at the least, so the variance of r is at most 2/N. Over the 1440
    // pairs a normal r would pass 5 of its deviations once in 1200 runs of other seeds, and the mean of r² stays below its bound.
    const count = 256;
    const all = [...Array(16).keys()];
    let sum = 0;
    let pairs = 0;
    let most = 0;
    for (let seed = 0; seed < 15; seed++) {
      const columns = all.map((d) => drawn(d, seed, count).map((x) => x - 0.5));
      for (const a of all)
        for (const b of all.filter((d) => Math.floor(d / 4) > Math.floor(a / 4))) {
          const r = (12 / count) * columns[a]!.reduce((total, x, i) => total + x * columns[b]![i]!, 0);
          sum += r * r;
          pairs += 1;
          most = Math.max(most, Math.abs(r));
        }
    }
    expect(pairs).toBe(1440);
    expect(most).toBeLessThan(5 * Math.sqrt(2 / count));
    expect(sum / pairs).toBeLessThan(2 / count);
    // Were they the same points in the same order, r² would be 1; were there no shuffle but a scramble, far below 1/N.
    expect(sum / pairs).toBeGreaterThan(0.5 / count);
  });

  it("is a draw from the flat distribution for a single member over seeds", () => {
    // χ² of 16 parts has mean 15; 50 is passed by chance once in 1e5.
    for (const [member, dimension] of [
      [0, 0],
      [1, 0],
      [5, 7],
      [1000, 33],
    ] as const) {
      const hits = new Float64Array(16);
      const draws = 8000;
      for (let seed = 0; seed < draws; seed++) hits[Math.floor(16 * sobol_frac(member, dimension, seed))]!++;
      const chi2 = hits.reduce((sum, n) => sum + (n - draws / 16) ** 2 / (draws / 16), 0);
      expect(chi2).toBeLessThan(50);
    }
  });

  it("integrates a smooth sum over 20 dimensions far better than chance", () => {
    // f = Σ x_d² has mean 20/3 and variance 20 · 4/45. Chance: √(variance / N); one stratified draw a part: about 1/N smaller
    // still by √N in each dimension. The error must fall at least as 1/N between 64 and 1024 (a factor 16; chance: 4).
    const error = (count: number): number => {
      const squares = seeds.map((seed) => {
        let sum = 0;
        for (let member = 0; member < count; member++)
          for (let d = 0; d < 20; d++) sum += sobol_frac(member, d, seed) ** 2;
        return (sum / count - 20 / 3) ** 2;
      });
      return Math.sqrt(squares.reduce((a, b) => a + b, 0) / seeds.length);
    };
    const chance = Math.sqrt((20 * 4) / 45 / 1024);
    expect(error(1024)).toBeLessThan(chance / 50);
    expect(error(64) / error(1024)).toBeGreaterThan(16);
  });

  it("never reaches 0 or 1, and another seed is another sequence", () => {
    for (const seed of seeds)
      for (let member = 0; member < 4096; member++) {
        const x = sobol_frac(member, 3, seed);
        expect(x > 0 && x < 1).toBe(true);
      }
    expect(drawn(0, 1, 8)).not.toEqual(drawn(0, 2, 8));
  });

  it.each([
    ["member", [-1, 0, 0]],
    ["member", [0.5, 0, 0]],
    ["dimension", [0, -1, 0]],
    ["dimension", [0, Number.NaN, 0]],
    ["seed", [0, 0, 2 ** 32]],
  ] as const)("refuses a wrong %s: %j", (name, args) => {
    expect(() => sobol_frac(...(args as [number, number, number]))).toThrow(DomainError);
    expect(() => sobol_frac(...(args as [number, number, number]))).toThrow(name);
  });
});
