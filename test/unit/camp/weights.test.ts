import { describe, expect, it } from "vitest";
import { normalBelow_frac } from "../../../core/camp/likelihood.ts";
import { moveTo, type Tilt, tiltedRatio, tiltOf } from "../../../core/camp/tilt.ts";
import { effectiveCount, evenPicks, normalised, weightedQuantile } from "../../../core/camp/weights.ts";
import { normalQuantile } from "../../../core/ensemble/normalQuantile.ts";
import { sobol_frac } from "../../../core/ensemble/sobol.ts";

/** Standard scores of members on a few inputs, as the ensemble draws them. */
function drawn(nMembers: number, nInputs: number): Float64Array {
  const scores = new Float64Array(nMembers * nInputs);
  for (let i = 0; i < nMembers; i++)
    for (let k = 0; k < nInputs; k++) scores[i * nInputs + k] = normalQuantile(sobol_frac(i, 7 * k + 3, 1));
  return scores;
}

describe("weights of members", () => {
  it("the share below a score undoes the score of a share", () => {
    for (let p = 0.001; p < 1; p += 0.0173) expect(normalBelow_frac(normalQuantile(p))).toBeCloseTo(p, 6);
  });

  it("picks come as often as their weight says, rounded down or up", () => {
    const weights = normalised([5, 0, 1, 3.3, 0.02, 9]);
    const picks = evenPicks(weights, 50);
    weights.forEach((weight, i) => {
      const times = picks.filter((pick) => pick === i).length;
      expect(times).toBeGreaterThanOrEqual(Math.floor(50 * weight));
      expect(times).toBeLessThanOrEqual(Math.ceil(50 * weight));
    });
  });

  it("even weights tell as much as there are members, and a single one as much as one", () => {
    expect(effectiveCount(normalised(new Float64Array(40).fill(3)))).toBeCloseTo(40, 9);
    expect(effectiveCount(normalised([0, 7, 0]))).toBe(1);
    expect(normalised([0, 0])).toEqual(Float64Array.from([0.5, 0.5]));
  });

  it("a quantile of even weights lies between its neighbours, and one past what there is has no value", () => {
    const values = Float64Array.from([4, 1, 3, 2, Number.NaN]);
    const even = normalised(new Float64Array(5).fill(1));
    expect(weightedQuantile(values, even, 0.5)).toBeCloseTo(3, 9);
    expect(weightedQuantile(values, even, 0.95)).toBeNull();
    expect(weightedQuantile(values, normalised([0, 1, 0, 0, 0]), 0.9)).toBe(1);
  });
});

describe("members drawn near what was seen", () => {
  const tilt: Tilt = { inputs: [1, 3], middle: [1.2, -0.8], deviation: [0.7, 1] };

  it("have a density whose ratio to the prior's has a mean of 1 over the prior", () => {
    const [n, k] = [4096, 5];
    const scores = drawn(n, k);
    let sum = 0;
    for (let i = 0; i < n; i++) sum += tiltedRatio(tilt, scores, k, i);
    expect(sum / n).toBeCloseTo(1, 1);
  });

  it("stand where the tilt says, and elsewhere as drawn", () => {
    const [n, k] = [2048, 5];
    const scores = drawn(n, k);
    const before = scores.slice();
    moveTo(tilt, scores, k);
    const mean = (input: number): number =>
      Array.from({ length: n }, (_, i) => scores[i * k + input]!).reduce((sum, one) => sum + one, 0) / n;
    expect(mean(1)).toBeCloseTo(1.2, 1);
    expect(mean(3)).toBeCloseTo(-0.8, 1);
    expect(scores[2]).toBe(before[2]);
  });

  it("weighted back together with as many of the prior, they give the moments of the prior", () => {
    const [n, k] = [8192, 5];
    const prior = drawn(n, k);
    const moved = drawn(2 * n, k).slice(n * k);
    moveTo(tilt, moved, k);
    let [all, mean, square] = [0, 0, 0];
    for (const scores of [prior, moved])
      for (let i = 0; i < n; i++) {
        // Half of the pool's density is the prior's, so no weight exceeds 2.
        const weight = 2 / (1 + tiltedRatio(tilt, scores, k, i));
        expect(weight).toBeLessThanOrEqual(2);
        all += weight;
        mean += weight * scores[i * k + 1]!;
        square += weight * scores[i * k + 1]! ** 2;
      }
    expect(all / (2 * n)).toBeCloseTo(1, 1);
    expect(mean / all).toBeCloseTo(0, 1);
    expect(square / all).toBeCloseTo(1, 1);
  });

  it("are moved only along inputs that have surely moved", () => {
    const [n, k] = [512, 12];
    const scores = drawn(n, k);
    const weights = normalised(
      Float64Array.from({ length: n }, (_, i) => Math.exp(-4 * (scores[i * k + 4]! - 1.5) ** 2)),
    );
    const found = tiltOf(scores, k, weights)!;
    expect(found.inputs[0]).toBe(4);
    expect(found.middle[0]).toBeGreaterThan(1);
    expect(found.inputs.length).toBeLessThan(5);
    expect(tiltOf(scores, k, normalised(new Float64Array(n).fill(1)))).toBeNull();
  });
});
