import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Food } from "../../../core/matter/food.ts";
import { findFood, foods } from "../../../core/matter/foods.ts";
import { nameDistance, nameWords } from "../../../core/matter/nearestName.ts";

const sources = JSON.parse(
  readFileSync(new URL("../../../core/sources.json", import.meta.url), "utf8"),
) as Record<string, unknown>;

const all: Food[] = Object.values(foods);

describe("every row of the table of foods", () => {
  it.each(all.map((food) => [food.key, food] as const))("%s lies in the plausible ranges", (_key, food) => {
    const shares = [
      food.water_frac,
      food.protein_frac,
      food.fat_frac,
      food.carbohydrate_frac,
      food.fibre_frac,
      food.ash_frac,
      food.alcohol_frac,
    ];
    for (const share of shares) expect(share).toBeGreaterThanOrEqual(0);
    expect(shares.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    if (food.freezes_C === null) expect(food.water_frac).toBeLessThan(0.05);
    else expect(food.freezes_C).toSatisfy((t: number) => t <= 0 && t >= -30);
    expect(food.thick_m).toSatisfy((x: number) => x >= 0.01 && x <= 0.25);
    expect(food.airSpace_frac).toSatisfy((x: number) => x >= 0 && x <= 0.85);
    expect(["raw", "rte", "produce", "frozen", "drink"]).toContain(food.kind);
    expect(["discard", "keep", "keep whole", "over 10 C for 8 h"]).toContain(food.warm);
    expect(["slab", "cylinder", "lump"]).toContain(food.shape);
    expect(["chilled", "ambient", "frozen"]).toContain(food.usualState);
    if (food.kind === "frozen") expect(food.usualState).toBe("frozen");
    expect(food.rawAnimal).toBe(food.kind === "raw");
    expect(Object.keys(sources)).toContain(food.source);
  });

  it("there are at least 80, each under its own key", () => {
    expect(all.length).toBeGreaterThanOrEqual(80);
    for (const [key, food] of Object.entries(foods)) expect(food.key).toBe(key);
  });

  it("keeps food perishable unless the chart says keep", () => {
    const kept = [
      "cheddar",
      "butter",
      "bread",
      "apple",
      "carrot",
      "beer",
      "water",
      "orange juice",
      "watermelon",
    ];
    const not = [
      "milk",
      "egg",
      "cut fruit",
      "salad",
      "mayonnaise",
      "gouda",
      "plant milk",
      "rice",
      "chicken breast",
    ];
    expect(kept.map((key) => foods[key]!.perishable)).toEqual(kept.map(() => false));
    expect(not.map((key) => foods[key]!.perishable)).toEqual(not.map(() => true));
  });

  it("knows what freezing ruins", () => {
    for (const name of [
      "eggs",
      "lettuce",
      "cola",
      "beer",
      "mayonnaise",
      "cucumbers",
      "salad",
      "sour cream",
    ]) {
      expect(findFood(name), name).toMatchObject({ food: { freezesBadly: true } });
    }
    for (const name of ["steak", "bread", "chili", "butter", "drinking water"]) {
      expect(findFood(name), name).toMatchObject({ food: { freezesBadly: false } });
    }
  });
});

describe("a food is found by its name", () => {
  it.each([
    ["stew", "chili"],
    ["Chili", "chili"],
    ["curry", "chili"],
    ["soup", "soup"],
    ["chicken", "chicken breast"],
    ["Chicken thighs", "chicken thigh"],
    ["steak", "beef steak"],
    ["burgers", "ground beef"],
    ["Hot-Dogs", "hot dog"],
    ["sausages", "sausage"],
    ["beans", "beans"],
    ["deli meat", "deli meat"],
    ["bacon", "bacon"],
    ["EGGS!", "egg"],
    ["milk", "milk"],
    ["oat milk", "plant milk"],
    ["yoghurt", "yogurt"],
    ["apples", "apple"],
    ["strawberries", "strawberry"],
    ["berries", "strawberry"],
    ["soft drink", "soft drink"],
    ["cola", "soft drink"],
    ["wine", "wine"],
    ["juice", "orange juice"],
    ["iced tea", "iced tea"],
    ["sports drinks", "iced tea"],
    ["sandwiches", "sandwich"],
    ["tortillas", "tortilla"],
    ["lean fish", "cod"],
    ["trout", "trout"],
    ["salmon", "salmon"],
    ["game meat", "game meat"],
    ["breast milk", "breast milk"],
    ["jalapeño", "sweet pepper"],
    ["créme fraîche", "sour cream"],
    ["tomatoes", "tomato"],
    ["radishes", "celery"],
  ])("%s is %s", (name, key) => {
    expect(findFood(name)).toMatchObject({ food: { key } });
  });

  it("finds every key, name and alias, and no name belongs to two foods", () => {
    for (const food of all) {
      for (const name of [food.key, food.name, ...food.aliases]) {
        expect(findFood(name), name).toMatchObject({ food: { key: food.key } });
      }
    }
  });

  it("takes a name that says too little as the stricter food", () => {
    expect(findFood("cheese")).toMatchObject({ food: { warm: "discard" } });
    expect(findFood("melon")).toMatchObject({ food: { warm: "discard" } });
    expect(findFood("salad")).toMatchObject({ food: { warm: "discard" } });
  });

  it("offers three names for one it does not know, each of which finds another food", () => {
    for (const name of ["stw", "grilled chicken", "chedar", "", "🥦", "x".repeat(5000)]) {
      const found = findFood(name);
      if ("food" in found) throw new Error(`${name} found ${found.food.key}`);
      const keys = found.near.map((near) => (findFood(near) as { food: Food }).food.key);
      expect(new Set(keys).size, name).toBe(3);
    }
    expect(findFood("stw")).toMatchObject({ near: expect.arrayContaining(["stew"]) });
    expect(findFood("deli ham")).toMatchObject({ near: expect.arrayContaining(["ham"]) });
    expect(findFood("grandma's lasagna")).toMatchObject({ near: expect.arrayContaining(["lasagna"]) });
    expect(findFood("chedar cheese")).toMatchObject({ near: expect.arrayContaining(["cheddar cheese"]) });
  });

  it("never reads a name of the language's own objects as a food", () => {
    expect(findFood("constructor")).toHaveProperty("near");
    expect(findFood("__proto__")).toHaveProperty("near");
  });
});

it("names are alike by shared words and spelling", () => {
  expect(nameWords("Crème brûlées, (fresh)")).toEqual(["creme", "brulee", "fresh"]);
  expect(nameDistance(["beef", "stew"], ["beef", "stew"])).toBe(0);
  expect(nameDistance(["beef", "stew"], ["lamb", "stew"])).toBeLessThan(
    nameDistance(["beef", "stew"], ["corn"]),
  );
});
