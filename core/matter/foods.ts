import type { Food } from "./food.ts";
import { dairyFoods } from "./foodsDairy.ts";
import { drinks } from "./foodsDrink.ts";
import { produceFoods } from "./foodsProduce.ts";
import { rawFoods } from "./foodsRaw.ts";
import { readyFoods } from "./foodsReady.ts";
import { readFoods } from "./foodTable.ts";
import { nameDistance, nameWords } from "./nearestName.ts";

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
    .map(({ name, words: others, food }) => ({
      name,
      food,
      distance: nameDistance(words, others) + strangeness(words, others) / 4,
    }))
    .sort((a, b) => a.distance - b.distance);
  const offered = new Map<Food, string>();
  for (const { name, food } of ranked) {
    if (offered.size === OFFERED) break;
    if (!offered.has(food)) offered.set(food, name);
  }
  return [...offered.values()];
}

/**
 * How little of a name an asked one holds: 0 all of it and the same last word, which in English says what the thing is
 * ("deli ham" is a ham); 1 all of it, or the same last word; 2 neither.
 */
function strangeness(asked: readonly string[], name: readonly string[]): number {
  const holds = name.every((word) => asked.includes(word));
  const ends = asked.length > 0 && name.at(-1) === asked.at(-1);
  return 2 - Number(holds) - Number(ends);
}
