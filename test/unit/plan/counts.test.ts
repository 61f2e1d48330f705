import { describe, expect, it } from "vitest";
import type { IcePiece } from "../../../core/forecast/planResult.ts";
import { allergenRows } from "../../../core/plan/allergens.ts";
import { amountsOf } from "../../../core/plan/amounts.ts";
import { budgetOf } from "../../../core/plan/budget.ts";
import { toyFood, toyTrip } from "./toyTrip.ts";

const piece = (price: number | null): IcePiece => ({
  form: "cube",
  pieces: 2,
  each_kg: 5,
  cooler: "galley",
  where: "town",
  by: "2027-06-18T06:00",
  price,
  weight_kg: 10,
});

describe("budget", () => {
  it("adds up to the cent", () => {
    const food = Array.from({ length: 10 }, (_, i) => toyFood(String(i), 0, { price: 0.1 }));
    expect(budgetOf(toyTrip({ food }), [piece(9), piece(0.3)])).toEqual({ ice: 9.3, food: 1, unpriced: [] });
  });

  it("is no sum where a price is missing, and says which", () => {
    const food = [toyFood("stew", 0, { price: 4 }), toyFood("salt", null)];
    expect(budgetOf(toyTrip({ food }), [piece(9)])).toEqual({ ice: 9, food: null, unpriced: ["salt"] });
    expect(budgetOf(toyTrip({}), [piece(null)])).toMatchObject({ ice: null, food: 0 });
  });
});

describe("allergens", () => {
  const { party } = toyTrip({});
  it("silence may contain all that the party must not eat", () => {
    const food = [
      toyFood("said", 0, { contains: ["milk"] }),
      toyFood("none", 0, { contains: [] }),
      toyFood("unsaid", 0),
    ];
    const rows = allergenRows(toyTrip({ food, party: { ...party, allergies: ["milk", "peanuts"] } }));
    expect(rows.map(({ meets }) => meets)).toEqual([["milk"], [], ["milk", "peanuts"]]);
    expect(rows.map(({ contains }) => contains)).toEqual([["milk"], [], null]);
  });
});

describe("amounts", () => {
  it("tell what was counted, and only that", () => {
    const portion = { each: "190 g", heads: 2.67, meals: 2 };
    const food = [toyFood("stew", 0, { amount: "1.1 kg", portion }), toyFood("salt", null)];
    const trip = toyTrip({ food });
    const found = amountsOf({ ...trip, party: { ...trip.party, children: 1, appetite_frac: 1.1 } });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ item: "stew", amount: "1.1 kg", heads: 2.67, meals: 2 });
    expect(found[0]!.says).toBe(
      "190 g each for 2.7 eaters (a child counts in part) at 2 meals, appetite 110 %",
    );
  });
});
