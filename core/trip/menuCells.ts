import type { FoodStateWord } from "./file.ts";
import type { Allergen } from "./types.ts";

const states: Readonly<Record<FoodStateWord, RegExp>> = {
  frozen: /^(?:frozen|freezer|deep frozen|freeze|y|yes|true|x)$/,
  chilled: /^(?:chilled|fresh|fridge|refrigerated|cold|cool|refrigerator)$/,
  ambient: /^(?:ambient|warm|room|room temperature)$/,
  dry: /^(?:dry|dry ?box|pantry|shelf|shelf stable|dry goods)$/,
};

/** The state that a word of a menu names; undefined for none. A tick in a column "frozen" is a yes. */
export function stateIn(cell: string): FoodStateWord | undefined {
  const word = cell.toLowerCase().trim();
  return (Object.keys(states) as FoodStateWord[]).find((state) => states[state].test(word));
}

const words: Readonly<Record<Allergen, string>> = {
  milk: "milk,dairy,lactose,cheese,butter",
  egg: "egg,eggs",
  fish: "fish",
  shellfish: "shellfish,crustacean,crustaceans,shrimp,prawns",
  "tree nuts": "tree nuts,tree nut,nuts,nut,almond,almonds,cashew,cashews,walnut,walnuts",
  peanuts: "peanuts,peanut",
  wheat: "wheat,gluten",
  soy: "soy,soya,soybean,soybeans",
  sesame: "sesame",
};

type Allergens = { ok: true; allergens: Allergen[] } | { ok: false; unknown: string | null };

/** Allergens that a cell names. One word that is not known makes all of it unsaid, which is the stricter reading. */
export function allergensIn(cell: string): Allergens {
  const text = cell.toLowerCase().trim();
  if (text === "") return { ok: false, unknown: null };
  if (/^(?:none|no|free|-)$/.test(text)) return { ok: true, allergens: [] };
  const found = new Set<Allergen>();
  for (const part of text.split(/\s*(?:[,;/+&]|\band\b)\s*/).filter((word) => word !== "")) {
    const allergen = (Object.keys(words) as Allergen[]).find((key) => words[key].split(",").includes(part));
    if (allergen === undefined) return { ok: false, unknown: part.slice(0, 40) };
    found.add(allergen);
  }
  return { ok: true, allergens: [...found] };
}
