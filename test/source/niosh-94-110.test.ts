// Waters, Putz-Anderson, Garg (1994, rev. 2021), DHHS (NIOSH) 94-110: equation and limits read in a copy; the printed
// results of examples 1 and 3 are from memory, reproduced from their stated inputs. The manual rounds each multiplier
// to two places, so its results may differ from full precision by half a pound and 0.1 of the index. Its examples use
// the inch form (51 lb, 10/H); ours is the metric form (23 kg, 25/H), lower by 51 lb / 23 kg × 10 in / 25 cm = 2.2 %.
import { describe, expect, it } from "vitest";
import { DomainError } from "../../core/quantity/errors.ts";
import { coolerLift, type Lift, recommendedWeight_kg } from "../../core/safety/lifting.ts";
import { toyCooler } from "../unit/plan/toyTrip.ts";

const LB_kg = 0.45359237;
const inches = (lift: Omit<Lift, "frequency_frac"> & { frequency_frac?: number }): Lift => ({
  ...lift,
  reach_cm: lift.reach_cm * 2.54,
  height_cm: lift.height_cm * 2.54,
  travel_cm: lift.travel_cm * 2.54,
  frequency_frac: lift.frequency_frac ?? 1,
});
const INCH_FORM = ((51 * LB_kg) / 23) * (25.4 / 25);
const limit_lb = (lift: Lift): number => (recommendedWeight_kg(lift) / LB_kg) * INCH_FORM;

const box = toyCooler("box").body;

describe("worked examples (printed results from memory)", () => {
  it("3, bags into a hopper: 18.9 lb, index 2.1", () => {
    const rwl_lb = limit_lb(
      inches({ reach_cm: 18, height_cm: 15, travel_cm: 21, twist_deg: 45, grip: "fair" }),
    );
    expect(Math.abs(rwl_lb - 18.9)).toBeLessThan(0.5);
    expect(Math.abs(40 / rwl_lb - 2.1)).toBeLessThan(0.1);
  });

  it("1, press stock: 16.3 lb and 2.7 where it starts, 14.5 lb and 3.0 where it ends", () => {
    const from_lb = limit_lb(
      inches({ reach_cm: 23, height_cm: 15, travel_cm: 49, twist_deg: 0, grip: "fair" }),
    );
    const to_lb = limit_lb(
      inches({ reach_cm: 23, height_cm: 64, travel_cm: 49, twist_deg: 0, grip: "fair" }),
    );
    expect(Math.abs(from_lb - 16.3)).toBeLessThan(0.5);
    expect(Math.abs(44 / from_lb - 2.7)).toBeLessThan(0.1);
    // The forms also measure height from 75 cm and from 30 in, 1.2 cm apart: under 0.1 lb here.
    expect(Math.abs(to_lb - 14.5)).toBeLessThan(0.6);
    // Printed 3.0 from HM rounded down to .44 twice; at full precision 3.11.
    expect(Math.abs(44 / to_lb - 3.0)).toBeLessThan(0.16);
  });
});

describe("the equation", () => {
  const best: Lift = {
    reach_cm: 25,
    height_cm: 75,
    travel_cm: 25,
    twist_deg: 0,
    frequency_frac: 1,
    grip: "good",
  };

  it("gives the load constant, 23 kg (51 lb), for the best lift there is", () => {
    expect(recommendedWeight_kg(best)).toBeCloseTo(23, 12);
    expect(recommendedWeight_kg(best) / LB_kg).toBeCloseTo(51, 0);
  });

  it("gives nothing past its bounds, and 30 % less at the greatest height", () => {
    for (const over of [{ reach_cm: 63.1 }, { height_cm: 175.1 }, { travel_cm: 175.1 }, { twist_deg: 136 }])
      expect(recommendedWeight_kg({ ...best, ...over })).toBe(0);
    expect(recommendedWeight_kg({ ...best, height_cm: 175 })).toBeCloseTo(23 * 0.7, 12);
  });

  it("holds its table of grips: fair costs 5 % only below 75 cm, poor 10 % anywhere", () => {
    expect(recommendedWeight_kg({ ...best, grip: "fair" })).toBeCloseTo(23, 12);
    const low = { ...best, height_cm: 30 };
    expect(recommendedWeight_kg({ ...low, grip: "fair" }) / recommendedWeight_kg(low)).toBeCloseTo(0.95, 12);
    expect(recommendedWeight_kg({ ...best, grip: "poor" })).toBeCloseTo(23 * 0.9, 12);
  });

  it("refuses what is not a number", () => {
    expect(() => recommendedWeight_kg({ ...best, reach_cm: Number.NaN })).toThrow(DomainError);
    expect(() => coolerLift(20, 0, box)).toThrow(DomainError);
  });
});

describe("team handling (UK HSE: two lift two thirds of their sum, three a half)", () => {
  it("20 kg each make 26.6 kg for two", () => {
    const one_kg = coolerLift(0, 1, box).recommended_kg;
    expect((coolerLift(0, 2, box).recommended_kg / one_kg) * 20).toBeCloseTo(26.67, 1);
    expect(coolerLift(0, 3, box).recommended_kg / one_kg).toBeCloseTo(1.5, 12);
    // Four is all that a cooler has room for.
    expect(coolerLift(0, 12, box).recommended_kg).toBe(coolerLift(0, 4, box).recommended_kg);
  });

  // Computed by hand from the equation: 23 × 25/40 × 0.865 × 0.91 = 11.3 kg, two people 15.1 kg.
  it("hands at 30 cm, 40 cm ahead, up half a metre: 11.3 kg for one, 15.1 kg for two", () => {
    const still = { twist_deg: 0, frequency_frac: 1, grip: "good" } as const;
    const lift = { ...still, reach_cm: 40, height_cm: 30, travel_cm: 50 };
    expect(recommendedWeight_kg(lift)).toBeCloseTo(11.3, 1);
    expect((recommendedWeight_kg(lift) * 2 * 2) / 3).toBeCloseTo(15.1, 1);
  });
});
