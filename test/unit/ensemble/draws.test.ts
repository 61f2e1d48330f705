import { describe, expect, it } from "vitest";
import { drawWorld } from "../../../core/ensemble/drawWorld.ts";
import { inputsOf } from "../../../core/ensemble/inputs.ts";
import { joinDraws } from "../../../core/ensemble/joinDraws.ts";
import { normalQuantile } from "../../../core/ensemble/normalQuantile.ts";
import { drawnClosures, drawnSky, tripPriors, valueAtScore } from "../../../core/ensemble/priors.ts";
import { bandOf, quantile } from "../../../core/ensemble/quantiles.ts";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import { binnedQuantiles, makeBins, putInBin } from "../../../core/ensemble/seriesBins.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const trip = smallTrip();

describe("priors", () => {
  const all = { ...drawnClosures, ...drawnSky, ...tripPriors };
  it.each(Object.entries(all))("%s passes through its three values and rises", (_, prior) => {
    const at = (u: number): number => valueAtScore(prior, normalQuantile(u));
    expect(at(0.1)).toBeCloseTo(prior.p10, 9);
    expect(at(0.5)).toBeCloseTo(prior.p50, 9);
    expect(at(0.9)).toBeCloseTo(prior.p90, 9);
    const values = [1e-6, 0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 1 - 1e-6].map(at);
    expect([...values].sort((a, b) => a - b)).toEqual(values);
    if (prior.scale === "share") for (const value of values) expect(value > 0 && value < 1).toBe(true);
    if (prior.scale === "log") for (const value of values) expect(value).toBeGreaterThan(0);
  });

  it("are named once each, with dimensions of their own", () => {
    const inputs = inputsOf(trip);
    expect(new Set(inputs.map(({ name }) => name)).size).toBe(inputs.length);
    expect(new Set(inputs.map(({ dimension }) => dimension)).size).toBe(inputs.length);
    // Nobody weighed the wall: the build is in doubt, and the ice's water share was filled in.
    for (const name of [
      "cooler:chest:0:build",
      "ice:cube:null:0:weight",
      "ice:cube:null:0:liquid",
      "food:chicken:0:heat",
      "air:1",
      "sky:shadeShift_frac",
    ])
      expect(inputs.map((input) => input.name)).toContain(name);
  });

  it("take a measured cooler as measured", () => {
    const names = inputsOf(smallTrip({ cooler: "conductance: 0.9 W/K" })).map(({ name }) => name);
    expect(names).toContain("cooler:chest:0:measured");
    expect(names).not.toContain("cooler:chest:0:build");
  });
});

describe("a world", () => {
  it("has the forecast's error growing with lead time, as stated", () => {
    const long = smallTrip({ hours: 24 * 9 });
    const spread = (day: number): number => {
      const values = Array.from({ length: 512 }, (_, i) => drawWorld(long, i, 1).weather.air_K[day]!);
      return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
    };
    // docs/model.md: 1.5 K on day 1, 0.35 K more each day.
    expect(spread(0)).toBeCloseTo(1.5, 1);
    expect(spread(4)).toBeGreaterThan(2.9 * 0.93);
    expect(spread(4)).toBeLessThan(2.9 * 1.07);
  });

  it("keeps frozen food frozen and chilled food unfrozen", () => {
    const frozen = smallTrip({
      more: "",
      cooler: "",
    });
    for (let i = 0; i < 256; i++) {
      const world = drawWorld(frozen, i, 3);
      for (const lot of frozen.food) {
        const start_C = world.lots.get(lot.id)!.start_C;
        expect(start_C > (lot.like.freezes_C ?? 0)).toBe(true);
      }
      expect(world.lots.get("ice[0]")!.start_C).toBeLessThanOrEqual(0);
    }
  });
});

describe("quantiles", () => {
  it("are those of a published example", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.2 (from memory): twelve readings, the 90 % point is 95.1981.
    const readings = [
      95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199,
      95.1682,
    ];
    expect(quantile(readings, 0.9)).toBeCloseTo(95.1981, 4);
    expect(quantile(readings, 0)).toBe(95.061);
    expect(quantile(readings, 1)).toBe(95.199);
  });

  it("count a member without a value as later than all, and say null where they fall on one", () => {
    expect(bandOf([5, Number.NaN, 3, Number.NaN, 4])).toEqual({ p10: 3, p50: 5, p90: null });
    expect(bandOf([Number.NaN])).toEqual({ p10: null, p50: null, p90: null });
    expect(bandOf([])).toEqual({ p10: null, p50: null, p90: null });
  });

  it("of binned values lie within a bin of the exact ones, and none stays none", () => {
    const values = Array.from({ length: 999 }, (_, i) => 2 + ((i * 7919) % 999) / 200);
    const bins = makeBins(1, 999, 0, 10, 101);
    values.forEach((value, member) => {
      putInBin(bins, member, 0, value);
    });
    const shares = [0.1, 0.5, 0.9];
    binnedQuantiles(bins, 0, shares).forEach((binned, i) => {
      expect(Math.abs(binned! - quantile(values, shares[i]!)!)).toBeLessThan(0.1);
    });
    const none = makeBins(2, 9, 0, 10, 101);
    for (let i = 0; i < 9; i++) putInBin(none, i, 0, 0);
    expect(binnedQuantiles(none, 0, [0.9])).toEqual([0]);
    expect(binnedQuantiles(none, 1, [0.5])).toEqual([null]);
  });
});

describe("members", () => {
  it("are the same alone, in a batch and in pieces put together", () => {
    const whole = runMembers(trip, { from: 0, to: 6, seed: 9, series: true });
    const alone = runMembers(smallTrip(), { from: 4, to: 5, seed: 9, series: false });
    expect(alone.coolers[0]!.iceOut_h[0]).toBe(whole.coolers[0]!.iceOut_h[4]);
    expect(alone.food[1]!.coreMax_C[0]).toBe(whole.food[1]!.coreMax_C[4]);
    const pieces = [
      runMembers(trip, { from: 0, to: 1, seed: 9, series: true }),
      runMembers(trip, { from: 1, to: 4, seed: 9, series: true }),
      runMembers(trip, { from: 4, to: 6, seed: 9, series: true }),
    ];
    expect(joinDraws(pieces)).toEqual(whole);
  });

  it("missing or doubled are refused", () => {
    const part = runMembers(trip, { from: 0, to: 1, seed: 9, series: false });
    expect(() => joinDraws([part, part])).toThrow("begin with member 1");
    expect(() => joinDraws([])).toThrow("at least one");
  });
});

it("the world of a cooler does not hang on its place in the file, nor a lot's on the cooler it lies in", () => {
  const swapped = { ...trip, coolers: [{ ...trip.coolers[0]!, name: "spare" }, ...trip.coolers] };
  const [one, two] = [drawWorld(trip, 7, 1), drawWorld(swapped, 7, 1)];
  expect(two.coolers[1]).toEqual(one.coolers[0]);
  const moved = { ...trip, ice: trip.ice.map((ice) => ({ ...ice, cooler: 1 })) };
  expect(drawWorld(moved, 7, 1).lots.get("ice[0]")).toEqual(one.lots.get("ice[0]"));
});
