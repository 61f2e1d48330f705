import { describe, expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import type { PullCard } from "../../../core/forecast/planResult.ts";
import { findFood } from "../../../core/matter/foods.ts";
import { partWords } from "../../../core/plan/partWords.ts";
import { pullCards } from "../../../core/plan/pull.ts";
import type { Trip, TripFood } from "../../../core/trip/types.ts";
import { toyCooler, toyFood, toyForecast, toyIce, toyTrip } from "./toyTrip.ts";

const h = 3600;
/** Departs at six in the morning: breakfast at hour 1 and 25, lunch at 6.5 and 30.5, dinner at 12.5 and 36.5. */
const meal_s = { breakfast: 25 * h, lunch: 30.5 * h, dinner: 12.5 * h, lastDinner: 36.5 * h };

function kind(name: string): TripFood["like"] {
  const found = findFood(name);
  if (!("food" in found)) throw new Error(name);
  return found.food;
}

const cards = (more: Partial<Trip>): PullCard[] => {
  const trip = toyTrip(more);
  return pullCards(trip, toyForecast(trip));
};

describe("pull cards", () => {
  it("have one card a meal, each cooler together, the dry box last", () => {
    const found = cards({
      coolers: [toyCooler("galley"), toyCooler("pantry")],
      food: [
        toyFood("rice", null, { eat_s: meal_s.dinner, amount: "1 kg" }),
        toyFood("stew", 1, { eat_s: meal_s.dinner, amount: "3 lb" }),
        toyFood("beans", 0, { eat_s: meal_s.dinner }),
        toyFood("sauce", 1, { eat_s: meal_s.dinner }),
      ],
    });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ at: "2027-06-18T18:30", day: 1, meal: "dinner" });
    expect(found[0]!.take.map(({ cooler }) => cooler)).toEqual(["galley", "pantry", "pantry", "dry box"]);
    expect(found[0]!.take.find(({ item }) => item === "stew")!.amount).toBe("3 lb");
  });

  it("say what lies over an item, and not what is eaten with it", () => {
    const [first, second] = cards({
      food: [
        toyFood("tomorrow", 0, { eat_s: meal_s.breakfast }),
        toyFood("now", 0, { eat_s: meal_s.dinner }),
        toyFood("meat", 0, { eat_s: meal_s.dinner, raw: true }),
      ],
    });
    const from = (card: PullCard | undefined, item: string): string =>
      card!.take.find((one) => one.item === item)!.from;
    expect(from(first, "now")).toBe("top");
    expect(from(first, "meat")).toContain("under the tomorrow");
    expect(from(first, "meat")).toContain("tray");
    expect(from(second, "tomorrow")).toBe("top");
  });

  it("follow a merge, and what is eaten at its very moment comes from the old place", () => {
    const food = [
      toyFood("early", 0, { eat_s: meal_s.breakfast }),
      toyFood("late", 0, { eat_s: meal_s.lastDinner }),
    ];
    const events = [{ do: "merge", t_s: meal_s.breakfast, from: 0, into: 1, path: "" }] as const;
    const found = cards({ coolers: [toyCooler("old"), toyCooler("new")], food, events });
    expect(found.map(({ take }) => take[0]!.cooler)).toEqual(["old", "new"]);
  });

  it("deal parts out so that they add up, and send the rest back", () => {
    const found = cards({
      food: [
        toyFood("eggs", 0, {
          amount: "7 × 60 g",
          eat_s: meal_s.lastDinner,
          parts_s: [meal_s.dinner, meal_s.lastDinner],
        }),
      ],
    });
    const counts = found.map(({ take }) => Number(take[0]!.amount.split(" ")[0]));
    expect(counts.reduce((a, b) => a + b)).toBe(7);
    expect(found[0]!.back[0]).toBe("eggs to galley");
    expect(found[1]!.back.some((text) => text.startsWith("eggs"))).toBe(false);
  });

  it("leave what lasts to the return, and drinks that one helps oneself to, off the cards", () => {
    const found = cards({
      coolers: [toyCooler("bar", { holds: "drinks" })],
      food: [
        toyFood("cans", 0, { like: kind("soft drink"), amount: "24 × 355 mL" }),
        toyFood("trout", 0, { eat_s: 48 * h }),
      ],
    });
    expect(found).toEqual([]);
  });

  it("take along what needs no cold where that spares an opening, and only there", () => {
    const dry = { like: kind("apple"), amount: "1 kg" };
    const food = [
      toyFood("porridge", 0, { eat_s: meal_s.breakfast }),
      toyFood("apples", 0, { ...dry, eat_s: meal_s.lunch }),
    ];
    const [breakfast, lunch] = cards({ food });
    expect(kind("apple").perishable).toBe(false);
    expect(breakfast!.take.find(({ item }) => item === "apples")!.from).toContain("already for lunch");
    expect(lunch!.take[0]).toMatchObject({ cooler: "dry box" });
    const [, other] = cards({ food: [...food, toyFood("ham", 0, { eat_s: meal_s.lunch })] });
    expect(other!.take.every(({ cooler }) => cooler === "galley")).toBe(true);
  });

  it("halve the time of leftovers in hot air, and never clear anything", () => {
    const food = [toyFood("stew", 0, { eat_s: meal_s.dinner })];
    const mild = cards({ food })[0]!.back.join();
    const weather = { ...toyTrip({}).weather, at: () => ({ ...toyTrip({}).weather.at(0), air_C: 33 }) };
    const hot = cards({ food, weather })[0]!.back.join();
    expect(mild).toContain("less than 2 h, 1 h in air above 90 °F");
    expect(hot).toContain("less than 1 h");
    expect(hot).not.toContain("2 h");
  });

  it("hold a frozen food's move before its meal", () => {
    const food = [
      toyFood("stew", 0, { state: "frozen", start_C: -16, eat_s: meal_s.lastDinner, thick_m: 0.04 }),
      toyFood("salad", 0, { eat_s: meal_s.dinner }),
    ];
    const ice = [{ ...toyIce("block", 2, 5), start_C: -18 }];
    const trip = toyTrip({ food, ice });
    const moves = pullCards(trip, forecast(trip, { effects: false })).flatMap(({ at, thaw }) =>
      thaw.map((one) => ({ at, ...one })),
    );
    for (const move of moves) expect(move.at < move.for).toBe(true);
  });
});

it("parts of an amount keep its unit", () => {
  expect(partWords("2.4 kg", 0, 3)).toBe("0.8 kg of 2.4 kg");
  expect(partWords("1 1/2 gal", 1, 3)).toBe("0.5 gal of 1 1/2 gal");
  expect(partWords("3 lb", 0, 1)).toBe("3 lb");
  expect(partWords("a heap", 1, 2)).toBe("part 2 of 2");
  const cans = Array.from({ length: 7 }, (_, i) => Number(partWords("24 × 355 mL", i, 7).split(" ")[0]));
  expect(cans.reduce((a, b) => a + b)).toBe(24);
  expect(Math.max(...cans) - Math.min(...cans)).toBeLessThan(2);
});
