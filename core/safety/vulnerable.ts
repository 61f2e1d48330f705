import type { Food } from "../matter/food.ts";

/** What people who are easily harmed are advised about one kind of food. */
interface Caution {
  /** Foods of the table, by key. */
  foods: readonly string[];
  /** Words in its own name that it is also known by; none: the key alone. */
  named: RegExp | null;
  says: string;
  /** M: general advice from memory, not checked against a page. */
  mark: "R" | "M";
  source: string;
}

/**
 * Food that infants, pregnant, old or immune-compromised people are advised against as it is, however cold it was kept:
 * Listeria grows in a refrigerator.
 *
 * @source from-memory
 */
export const frailCautions: readonly Caution[] = [
  {
    foods: ["deli meat", "hot dog", "ham", "salami"],
    named: null,
    says: "heated through to 165 °F (74 °C), not cold from the pack",
    mark: "M",
    source: "from-memory",
  },
  {
    foods: ["feta", "brie", "mozzarella", "cottage cheese", "cream cheese"],
    named: null,
    says: "only of pasteurized milk, as the label says, or left out",
    mark: "M",
    source: "from-memory",
  },
  { foods: ["smoked fish"], named: null, says: "only cooked in a dish", mark: "M", source: "from-memory" },
  {
    foods: [],
    named: /\bsprouts?\b(?<!brussels? sprouts?)/i,
    says: "only cooked",
    mark: "M",
    source: "from-memory",
  },
  { foods: ["egg", "liquid egg"], named: null, says: "cooked until firm", mark: "M", source: "from-memory" },
];

/**
 * What to tell of an item to somebody easily harmed; null where these cautions say nothing, which clears nothing.
 *
 * @param name the item's own name, which may say more than its kind
 * @source from-memory
 */
export function frailCaution(food: Pick<Food, "key">, name: string): string | null {
  const found = frailCautions.find(
    ({ foods, named }) => foods.includes(food.key) || named?.test(name) === true,
  );
  return found?.says ?? null;
}
