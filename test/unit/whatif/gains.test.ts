import { describe, expect, it } from "vitest";
import type { CoolerDraws, Draws, FoodDraws } from "../../../core/ensemble/types.ts";
import { fails_frac, gainOf, holds } from "../../../core/whatif/gains.ts";
import { agreement, hoursFinding, ratioFinding } from "../../../core/whatif/sayingWords.ts";
import { smallTrip } from "./smallTrip.ts";

const never = Number.NaN;
const trip = smallTrip();

/** Draws by hand: what is not given is never, or nothing. */
function drawn(coolers: Partial<CoolerDraws>[], warm_h: readonly (readonly number[])[]): Draws {
  const n = warm_h[0]!.length;
  const none = (): Float64Array => new Float64Array(n).fill(never);
  const zero = (): Float64Array => new Float64Array(n);
  return {
    from: 0,
    to: n,
    coolers: coolers.map((given) => ({
      iceOut_h: none(),
      iceCarriedOn_h: zero(),
      overLimit_h: none(),
      iceLeft_kg: zero(),
      warmest_C: none(),
      ...given,
    })),
    food: warm_h.map((hours) => ({ warm_h: Float64Array.from(hours) }) as unknown as FoodDraws),
    series: null,
  };
}

const of = (...values: number[]): Float64Array => Float64Array.from(values);

describe("what is gained between two variants", () => {
  const before = drawn(
    [
      { overLimit_h: of(10, 30), iceCarriedOn_h: of(20, 40), iceLeft_kg: of(0, 1) },
      { iceCarriedOn_h: of(9, 9) },
    ],
    [
      [2, 0],
      [3, 1],
      [99, 99],
    ],
  );
  const after = drawn(
    [
      { overLimit_h: of(16, never), iceCarriedOn_h: of(25, 45), iceLeft_kg: of(0, 2) },
      { iceCarriedOn_h: of(8, 8) },
    ],
    [
      [0, 0],
      [1, 0],
      [0, 0],
    ],
  );
  const gain = gainOf({ trip, draws: before }, { trip, draws: after });

  it("counts a limit that is never passed as the return", () => {
    // 6 h in the first member; 36 − 30 in the second.
    expect(gain.food_h).toEqual({ p10: 6, p50: 6, p90: 6 });
  });

  it("sums warm hours of perishables only, fewer being gained", () => {
    // Milk and ham: 5 − 1 and 1 − 0; the drinks' hours are not counted.
    expect(gain.warm_h.p50).toBe(2.5);
  });

  it("takes the ice of the cooler where it changes most, and all the ice left", () => {
    expect(gain.ice_h.p50).toBe(5);
    expect(gain.ice_kg.p50).toBe(0.5);
  });

  it("does not ask a cooler that is emptied into another one", () => {
    const merge = { do: "merge", t_s: 3600, from: 0, into: 1, path: "events" } as const;
    const merged = { ...trip, events: [merge] };
    expect(gainOf({ trip, draws: before }, { trip: merged, draws: after }).ice_h.p50).toBe(-1);
  });

  it("is nothing between a variant and itself", () => {
    const none = { p10: 0, p50: 0, p90: 0 };
    const same = gainOf({ trip, draws: before }, { trip, draws: before });
    expect(same).toEqual({ food_h: none, warm_h: none, ice_h: none, ice_kg: none });
  });
});

describe("failing", () => {
  it("is counted by member, at the earliest perishable of any cooler", () => {
    const draws = drawn(
      [{ overLimit_h: of(1, never, never, never) }, { overLimit_h: of(2, never, 5, never) }],
      [
        [0, 0, 0, 0],
        [0, 0, 0, 0],
        [0, 0, 0, 0],
      ],
    );
    expect(fails_frac({ trip, draws })).toBe(0.5);
  });

  it("is sure where a perishable lies in no cooler", () => {
    const left = { ...trip, food: [{ ...trip.food[0]!, cooler: null }] };
    expect(fails_frac({ trip: left, draws: drawn([{}], [[0]]) })).toBe(1);
  });

  it("holds at exactly what the confidence leaves", () => {
    expect(holds(trip, 0.1)).toBe(true);
    expect(holds(trip, 0.11)).toBe(false);
  });
});

describe("a saying beside what came out", () => {
  const claim = [1.05, Number.POSITIVE_INFINITY] as const;
  it("agrees as far as the band lies in the claim", () => {
    expect(agreement({ p10: 1.1, p50: 1.2, p90: 1.3 }, claim)).toBe("yes");
    expect(agreement({ p10: 1.0, p50: 1.2, p90: 1.3 }, claim)).toBe("in part");
    expect(agreement({ p10: 0.9, p50: 1.0, p90: 1.3 }, claim)).toBe("cannot tell");
    expect(agreement({ p10: 0.9, p50: 1.0, p90: 1.04 }, claim)).toBe("no");
    expect(agreement({ p10: 0.9, p50: null, p90: null }, claim)).toBe("cannot tell");
  });

  it("is told with its band", () => {
    // A fifth of the members at each end: wherever exactly a tenth is read, it lies among them.
    const spread = (low: number, middle: number, high: number): number[] =>
      [low, middle, middle, middle, high].flatMap((value) => [value, value, value, value]);
    expect(ratioFinding(spread(1, 1.1, 1.2), claim).found).toBe("ice lasts 1.10, 1.00 to 1.20 times as long");
    expect(hoursFinding(spread(-4, 0, 3), claim).found).toBe("hours of ice: 0, −4 to +3");
    expect(ratioFinding([never, never], claim)).toEqual({
      found: "this trip cannot tell",
      agrees: "cannot tell",
    });
  });
});
