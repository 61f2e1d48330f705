import { describe, expect, it, vi } from "vitest";
import { judge, needOf } from "../../../core/plan/need.ts";
import { planIce } from "../../../core/plan/planIce.ts";
import type { Trip, TripFood, TripIce } from "../../../core/trip/types.ts";
import { toyCooler, toyFood, toyForecast, toyIce, toySupply, toyTrip } from "./toyTrip.ts";

// A box that melts 0.2 kg an hour, on paper; outside it is as cold as a test says.
let outside_C = 25;
vi.mock("../../../core/forecast/forecast.ts", () => ({
  forecast: (trip: Trip) => {
    const told = toyForecast(trip);
    for (const { series } of told.result.coolers) series.outside_C = series.t_h.map(() => outside_C);
    return told;
  },
}));

const pieces = (ice: readonly TripIce[]): string =>
  ice.map((lot) => `${lot.cooler}: ${lot.pieces} ${lot.form}`).join(", ");
const says = (plan: ReturnType<typeof planIce>, code: string): string[] =>
  plan.forecast.result.warnings.flatMap((warning) => (warning.code === code ? [warning.says] : []));
const planOf = (more: Partial<Trip>): ReturnType<typeof planIce> => planIce(toyTrip(more), { aim: "pieces" });
const drink = { ...toyFood("", 0).like, kind: "drink", perishable: false } as const;

describe("the need for ice", () => {
  const supply = [toySupply("cube", 3)];

  it("ends when the last perishable is eaten, not at the return", () => {
    // 12 h at 0.2 kg/h are 2.4 kg, 48 h would be 9.6 kg.
    expect(pieces(planOf({ food: [toyFood("stew", 0, { eat_s: 12 * 3600 })], supply }).addedIce)).toBe(
      "0: 1 cube",
    );
  });

  it("goes on to the last drink beside it", () => {
    const food = [toyFood("stew", 0, { eat_s: 12 * 3600 }), toyFood("cola", 0, { like: drink })];
    expect(pieces(planOf({ food, supply }).addedIce)).toBe("0: 4 cube");
  });

  it("does not go on for what keeps without cold", () => {
    const like = { ...toyFood("", 0).like, perishable: false };
    const food = [toyFood("stew", 0, { eat_s: 12 * 3600 }), toyFood("cheddar", 0, { like })];
    expect(pieces(planOf({ food, supply }).addedIce)).toBe("0: 1 cube");
  });

  it("is none while it freezes outside, as long as the food stays cold", () => {
    outside_C = -5;
    const plan = planOf({ food: [toyFood("cola", 0, { like: drink })], supply });
    outside_C = 25;
    expect(plan.addedIce).toEqual([]);
    expect(plan.holds).toBe(true);
  });
});

describe("food put into a cooler that was emptied before", () => {
  const merged = {
    coolers: [toyCooler("bar"), toyCooler("galley")],
    supply: [toySupply("cube", 3)],
    events: [{ do: "merge", t_s: 12 * 3600, from: 0, into: 1, path: "events[0]" } as const],
  };
  const late = toyFood("trout", 0, { putIn_s: 20 * 3600, path: "events[1].item" });
  const early = { ...late, putIn_s: 6 * 3600 };
  const stew = toyFood("stew", 1, { eat_s: 13 * 3600 });

  it("is not what the other cooler's ice is for, as what came before the merge is", () => {
    const needed = (trout: typeof late): string =>
      pieces(planOf({ ...merged, food: [stew, trout] }).addedIce.filter(({ cooler }) => cooler === 1));
    // 13 h of stew take 2.6 kg; trout that comes along has to last to hour 48.
    expect(needed(late)).toBe("1: 1 cube");
    expect(needed(early)).not.toBe("1: 1 cube");
  });

  it("is told as having no ice of the departure with it, and the plan does not claim to hold", () => {
    const plan = planOf({ ...merged, food: [stew, late] });
    expect(says(plan, "food-after-merge")).toEqual([
      "trout comes into bar after it was emptied at hour 12: ice of the departure is not there any more, and none is planned for it",
    ]);
    const isWarm = plan.forecast.result.food.some(
      ({ name, overLimit_h }) => name === "trout" && overLimit_h.p50 !== null,
    );
    expect(plan.holds).toBe(!isWarm);
    expect(says(planOf({ ...merged, food: [stew, early] }), "food-after-merge")).toEqual([]);
  });
});

describe("a supply that the departure cannot be planned with", () => {
  const food = [toyFood("stew", 0)];
  it.each([
    ["dry ice", [toySupply("dry ice", 5)], "the supply lists dry ice only"],
    ["ice on the way", [toySupply("cube", 2, { when_s: [3600] })], "the supply lists ice on the way only"],
    [
      "both",
      [toySupply("dry ice", 5), toySupply("cube", 2, { when_s: [3600] })],
      "the supply lists dry ice and ice on the way only",
    ],
    ["nothing", [], "no ice and no supply is listed"],
  ])("is told as what it is: %s", (_, supply, words) => {
    const told = says(planOf({ food, supply }), "supply-assumed");
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(words);
    if (supply.length > 0) expect(told[0]).not.toContain("no supply is listed");
  });

  it("nor is a file with dry ice aboard told to have no ice", () => {
    const told = says(planOf({ food, ice: [toyIce("dry ice", 1, 5)] }), "supply-assumed")[0];
    expect(told).toContain("the file has dry ice only");
  });

  it("does not call dry ice that is for sale dry ice aboard", () => {
    const plan = planOf({ food, supply: [toySupply("dry ice", 5), toySupply("cube", 2)] });
    expect(says(plan, "dry-ice")).toEqual([]);
    expect(says(plan, "dry-ice-supply")[0]).toContain("Dry ice is not planned");
  });
});

describe("ice that is frozen at home", () => {
  const food = [toyFood("stew", 0)];
  const jug = toySupply("crushed", 2, { where: "home" });
  const freezer = (litres: number): Trip["freezer"] => ({ space_m3: litres / 1000, at_C: -16 });
  // A 2-kg bag of crushed ice takes 2 / (0.58 × 916.7) m³ = 3.76 L; four fifths of the freezer are for pieces.
  const room_L = 3.7615 / 0.8;

  it("is no more than the freezer has room for", () => {
    const bought = toySupply("cube", 1);
    const plan = planOf({ food, supply: [jug, bought], freezer: freezer(3 * room_L + 0.1) });
    expect(pieces(plan.addedIce)).toBe("0: 3 crushed, 0: 4 cube");
    expect(plan.holds).toBe(true);
    expect(says(plan, "freezer-full")[0]).toContain("no room for more ice from home");
    expect(says(plan, "freezer-full")[0]).toContain("galley 5 × 2-kg bags of crushed ice");
  });

  it("counts over all coolers, and what the file has from home already", () => {
    const coolers = [toyCooler("a"), toyCooler("b")];
    const two = [toyFood("stew", 0), toyFood("soup", 1)];
    const made = (plan: ReturnType<typeof planIce>): number =>
      plan.addedIce.filter(({ form }) => form === "crushed").reduce((sum, lot) => sum + lot.pieces, 0);
    const supply = [jug, toySupply("cube", 2)];
    expect(
      made(planOf({ coolers, food: two, supply, freezer: freezer(7 * room_L + 0.1) })),
    ).toBeLessThanOrEqual(7);
    const ice = [toyIce("crushed", 3, 2)];
    const beside = planOf({ food, ice, supply: [jug], freezer: freezer(4 * room_L + 0.1) });
    expect(pieces(beside.addedIce)).toBe("0: 1 crushed");
    expect(beside.holds).toBe(false);
  });

  it("is not spoken of where there is room enough, or no freezer is written", () => {
    const supply = [jug, toySupply("cube", 1)];
    for (const given of [freezer(5 * room_L + 0.1), freezer(100), null]) {
      const plan = planOf({ food, supply, freezer: given });
      expect(pieces(plan.addedIce)).toBe("0: 5 crushed");
      expect(says(plan, "freezer-full")).toEqual([]);
    }
  });

  it("is none where not one piece fits", () => {
    const plan = planOf({ food, supply: [jug, toySupply("cube", 2)], freezer: freezer(2) });
    expect(pieces(plan.addedIce)).toBe("0: 5 cube");
  });
});

describe("ice in a cooler that food comes into later", () => {
  const late = toyFood("trout", 0, { putIn_s: 20 * 3600, eat_s: 40 * 3600 });
  const early = toyFood("stew", 0, { eat_s: 40 * 3600 });
  /** What is read of a cooler that had no ice between two hours. */
  const outcome = (food: TripFood, gap_h: [number, number], end_h: number | null = null): string => {
    const trip = toyTrip({ food: [food] });
    const told = toyForecast({ ...trip, ice: [toyIce("cube", 9, 2)] });
    const cooler = { ...told.result.coolers[0]!, iceGaps_h: [gap_h] };
    const iceOut_h = { p10: end_h, p50: end_h, p90: end_h };
    const result = { ...told.result, coolers: [{ ...cooler, iceOut_h }] };
    return judge(result, needOf(trip, 0, new Set([0]))).outcome;
  };

  it("is wanted from when that food is there, and not before", () => {
    expect(outcome(late, [0, 20])).toBe("holds");
    expect(outcome(early, [0, 20])).toBe("short");
  });

  it("is wanted all the while from then on", () => {
    expect(outcome(late, [18, 24])).toBe("short");
    expect(outcome(late, [25, 30])).toBe("short");
    expect(outcome(late, [0, 10], 12)).toBe("short");
  });

  it("is wanted from the merge on that brings the food", () => {
    const trip = toyTrip({
      coolers: [toyCooler("bar"), toyCooler("galley")],
      food: [early],
      events: [{ do: "merge", t_s: 12 * 3600, from: 0, into: 1, path: "events[0]" }],
    });
    expect(needOf(trip, 1, new Set([0, 1])).iceFrom_h).toBe(12);
    expect(needOf(trip, 0, new Set([0, 1])).iceFrom_h).toBe(0);
  });
});
