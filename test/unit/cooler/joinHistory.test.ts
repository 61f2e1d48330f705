// Laws of joining: nothing here is expected because the program said so earlier.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { joinHistory, learnedAlone, oddRecords, tripChange_frac } from "../../../core/cooler/joinHistory.ts";
import type { Spread } from "../../../core/matter/spread.ts";
import { DomainError } from "../../../core/quantity/errors.ts";

const width = ({ p10, p90 }: Spread): number => Math.log(p90 / p10);
const floor = width(tripChange_frac);

const spread = fc
  .record({
    likely: fc.double({ min: 0.1, max: 10, noNaN: true }),
    down: fc.double({ min: 0.005, max: 1, noNaN: true }),
    up: fc.double({ min: 0.005, max: 1, noNaN: true }),
  })
  .map(
    ({ likely, down, up }): Spread => ({
      p10: likely * Math.exp(-down),
      p50: likely,
      p90: likely * Math.exp(up),
    }),
  );
const spreads = fc.array(spread, { maxLength: 8 });

describe("joining what trips taught of a cooler", () => {
  it("without a record hands the prior back as it is", () => {
    fc.assert(
      fc.property(spread, (prior) => {
        expect(joinHistory(prior, [])).toEqual(prior);
      }),
    );
  });

  it("does not depend on the order of the records, to the last bit", () => {
    fc.assert(
      fc.property(spread, spreads, fc.integer(), (prior, records, seed) => {
        const turned = [...records.keys()]
          .sort((a, b) => (((a + 1) * seed) % 7) - (((b + 1) * seed) % 7))
          .map((at) => records[at]!);
        expect(joinHistory(prior, turned)).toEqual(joinHistory(prior, records));
      }),
    );
  });

  it("is never wider for one more record, and never narrower than the change from trip to trip", () => {
    fc.assert(
      fc.property(spread, spreads, spread, (prior, records, more) => {
        const before = joinHistory(prior, records);
        const after = joinHistory(prior, [...records, more]);
        expect(width(after)).toBeLessThanOrEqual(width(before) * (1 + 1e-12));
        expect(width(after)).toBeGreaterThanOrEqual(Math.min(floor, width(prior)) * (1 - 1e-12));
      }),
    );
  });

  it("lies between what was believed and what was told", () => {
    fc.assert(
      fc.property(spread, spread, (prior, record) => {
        const { p50 } = joinHistory(prior, [record]);
        expect(p50).toBeGreaterThanOrEqual(Math.min(prior.p50, record.p50) * (1 - 1e-12));
        expect(p50).toBeLessThanOrEqual(Math.max(prior.p50, record.p50) * (1 + 1e-12));
      }),
    );
  });

  it("keeps to the unit: all numbers doubled give the double", () => {
    const twice = ({ p10, p50, p90 }: Spread): Spread => ({ p10: 2 * p10, p50: 2 * p50, p90: 2 * p90 });
    fc.assert(
      fc.property(spread, spreads, (prior, records) => {
        const plain = joinHistory(prior, records);
        const doubled = joinHistory(twice(prior), records.map(twice));
        expect(doubled.p50 / plain.p50).toBeCloseTo(2, 9);
        expect(width(doubled)).toBeCloseTo(width(plain), 9);
      }),
    );
  });

  it("weighs two equal beliefs equally: by hand, 1 and 4 of one width meet at 2", () => {
    // The record is widened by the change from trip to trip; here that is taken out of it first.
    const z = width({ p10: 0.5, p50: 1, p90: 2 });
    const own = Math.sqrt(z * z - floor * floor) / 2;
    const record: Spread = { p10: 4 * Math.exp(-own), p50: 4, p90: 4 * Math.exp(own) };
    const joined = joinHistory({ p10: 0.5, p50: 1, p90: 2 }, [record]);
    expect(joined.p50).toBeCloseTo(2, 9);
    expect(width(joined)).toBeCloseTo(z / Math.SQRT2, 9);
  });

  it("refuses what is no spread", () => {
    const good: Spread = { p10: 0.8, p50: 1, p90: 1.2 };
    for (const bad of [
      { p10: 0, p50: 1, p90: 2 },
      { p10: 1, p50: 1, p90: 1 },
      { p10: 1, p50: 3, p90: 2 },
      { p10: 1, p50: Number.NaN, p90: 2 },
      { p10: 1, p50: 2, p90: Number.POSITIVE_INFINITY },
    ]) {
      expect(() => joinHistory(bad, [])).toThrow(DomainError);
      expect(() => joinHistory(good, [bad])).toThrow(DomainError);
    }
  });
});

describe("taking the prior out of a posterior", () => {
  it("is undone by putting it in again, when nothing changes from trip to trip", () => {
    const prior: Spread = { p10: 0.7, p50: 1, p90: 1.5 };
    const posterior: Spread = { p10: 0.9, p50: 1.1, p90: 1.3 };
    const alone = learnedAlone(prior, posterior)!;
    // Precisions add up, so widths obey 1/post² = 1/prior² + 1/alone².
    expect(1 / width(posterior) ** 2).toBeCloseTo(1 / width(prior) ** 2 + 1 / width(alone) ** 2, 9);
    const weight = (of: Spread): number => 1 / width(of) ** 2;
    const told = Math.log(prior.p50) * weight(prior) + Math.log(alone.p50) * weight(alone);
    expect(told / weight(posterior)).toBeCloseTo(Math.log(posterior.p50), 9);
  });

  it("finds nothing learned where the posterior is no narrower", () => {
    const prior: Spread = { p10: 0.7, p50: 1, p90: 1.5 };
    expect(learnedAlone(prior, prior)).toBeNull();
    expect(learnedAlone(prior, { p10: 0.5, p50: 1, p90: 2 })).toBeNull();
  });
});

describe("records that contradict the others", () => {
  const like = (likely: number): Spread => ({ p10: likely / 1.06, p50: likely, p90: likely * 1.06 });
  const prior: Spread = { p10: 0.7, p50: 1, p90: 1.5 };

  it("are named, and those that agree are not", () => {
    expect(oddRecords(prior, [like(1), like(1.04), like(0.97)])).toEqual([]);
    expect(oddRecords(prior, [like(1), like(1.04), like(1.6), like(0.97)])).toEqual([2]);
  });
});
