import { dairyFoods } from "./foodsDairy.ts";
import { drinks } from "./foodsDrink.ts";
import { produceFoods } from "./foodsProduce.ts";
import { rawFoods } from "./foodsRaw.ts";
import { readyFoods } from "./foodsReady.ts";
import { readFoods } from "./foodTable.ts";
import { nameDistance, nameWords } from "./nearestName.ts";

/** What a food is: raw meat and fish, ready to eat, fruit and vegetables, sold frozen, or a drink. */
export type FoodKind = "raw" | "rte" | "produce" | "frozen" | "drink";

/** What the public power-outage chart says of this food once it was above 40 °F for more than two hours. */
export type WarmWord = "discard" | "keep" | "keep whole" | "over 10 C for 8 h";

/**
 * A kind of food or drink: composition and the common rules that hold for it. It is not a lot of food: it has no
 * mass, no temperature and no package.
 */
export interface Food {
  key: string;
  name: string;
  /** Other names that find it. */
  aliases: readonly string[];
  /** Shares by mass; with `fibre_frac` apart from `carbohydrate_frac` the seven add up to 1. */
  water_frac: number;
  protein_frac: number;
  fat_frac: number;
  /** Without fibre. */
  carbohydrate_frac: number;
  fibre_frac: number;
  ash_frac: number;
  alcohol_frac: number;
  /** Air inside a piece as packed (crumb, leaves, a tray of berries), as a share of the piece's own volume. */
  airSpace_frac: number;
  /** Initial freezing point; null where there is no water to speak of. */
  freezes_C: number | null;
  freezesMark: "published" | "estimate";
  kind: FoodKind;
  warm: WarmWord;
  /** Days of cold storage at 40 °F, as the chart words them. */
  days: string;
  perishable: boolean;
  rawAnimal: boolean;
  /** Spoiled as goods by freezing: broken shells, limp leaves, burst cans, split sauces. */
  freezesBadly: boolean;
  /** Usual least dimension of one piece as packed. */
  thick_m: number;
  shape: "slab" | "cylinder" | "lump";
  usualState: "chilled" | "ambient";
  source: string;
}

/**
 * Every food the reckoning knows, by key. Compositions are rounded; rows with source `from-memory` were not checked
 * against a page. Warm words and days follow the public charts, nearest row where a food is not listed.
 *
 * @source usda-sr-legacy, ashrae-refrigeration, fsis-food-safety, common-practice, from-memory
 */
export const foods: Readonly<Record<string, Food>> = Object.fromEntries(
  [rawFoods, readyFoods, dairyFoods, produceFoods, drinks]
    .flatMap(readFoods)
    .map((food) => [food.key, Object.freeze(food)]),
);

/** Each accepted name with its words. */
const names: readonly { name: string; words: readonly string[]; food: Food }[] = Object.values(foods).flatMap(
  (food) => [food.key, food.name, ...food.aliases].map((name) => ({ name, words: nameWords(name), food })),
);

const byWords: ReadonlyMap<string, Food> = new Map(names.map(({ words, food }) => [words.join(" "), food]));

/**
 * The food a name means, whatever its case, number, accents or punctuation; else the three nearest names, each of
 * another food and each found when asked for. It never guesses: a name that is only near finds nothing.
 *
 * @param name a food's key, name or alias, in English
 * @source common-practice
 */
export function findFood(name: string): { food: Food } | { near: string[] } {
  const words = nameWords(name.slice(0, LONGEST));
  const food = byWords.get(words.join(" "));
  return food === undefined ? { near: nearest(words) } : { food };
}

const LONGEST = 200;
const OFFERED = 3;

function nearest(words: readonly string[]): string[] {
  const ranked = names
    .map(({ name, words: others, food }) => ({ name, food, distance: nameDistance(words, others) }))
    .sort((a, b) => a.distance - b.distance);
  const offered = new Map<Food, string>();
  for (const { name, food } of ranked) {
    if (offered.size === OFFERED) break;
    if (!offered.has(food)) offered.set(food, name);
  }
  return [...offered.values()];
}
