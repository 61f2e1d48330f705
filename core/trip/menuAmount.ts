import type { Food } from "../matter/food.ts";
import { parseQuantity } from "../quantity/parse.ts";
import { unitNamed } from "../quantity/units.ts";
import type { FoodFile } from "./file.ts";

/** How much of a food, as a trip file says it, with what had to be guessed; or what it must be. */
export type AmountReading =
  | { ok: true; amount: Pick<FoodFile, "amount" | "count" | "each" | "per person">; guesses: string[] }
  | { ok: false; must: string };

const counted =
  /^(?:x|ea|each|pcs?|pieces?|ct|count|units?|no|nos|items?|heads?|packs?|packets?|packages?|bags?|cans?|bottles?|cartons?|boxes?|jars?|loaf|loaves|tubs?|cups of|slices?|links?|patties|patty|fillets?|breasts?|whole)$/;
/** "24 12-oz cans". */
const ofSize =
  /^(\d+)\s+(\d[\d.]*[\s-]*(?:fl )?[a-z]+)\s+(?:cans?|bottles?|packs?|bags?|cartons?|boxes?|jars?|tubs?)$/i;
const must = "an amount such as 3 lb, 1.5 kg, 24 cans or 6 x 500 mL";
const MOST_COUNT = 5000;

/** What one piece weighs or holds where nobody says: rough, and told as a guess. By kind of food, else by kind of matter. */
const pieces: Readonly<Record<string, readonly [us: string, metric: string]>> = {
  egg: ["2 oz", "57 g"],
  apple: ["6 oz", "170 g"],
  "hot dog": ["2 oz", "50 g"],
  sausage: ["4 oz", "100 g"],
  "soft drink": ["12 fl oz", "330 mL"],
  beer: ["12 fl oz", "330 mL"],
  water: ["16 fl oz", "500 mL"],
  wine: ["25 fl oz", "750 mL"],
  bread: ["24 oz", "700 g"],
};
const otherDrink = ["12 fl oz", "330 mL"] as const;
const otherFood = ["6 oz", "170 g"] as const;

/**
 * Reads an amount with its unit from one cell or two. A decimal comma is read as a point; without a unit it is guessed
 * from the food: eggs, cans and the like are counted, the rest is a weight, or a volume for drinks, in the file's units.
 *
 * @param units what most of the file is typed in
 * @param each what one piece weighs or holds, as typed; empty: not said
 */
export function readAmount(
  amount: string,
  unit: string,
  each: string,
  food: Food | null,
  units: "us" | "metric",
): AmountReading {
  const guesses: string[] = [];
  const text = pointed(`${amount} ${unit}`, guesses);
  const many = /^(\d+)\s*[x×*]\s*(\d.*)$/i.exec(text);
  if (many !== null) return countOf(Number(many[1]), many[2]!, food, units, guesses);
  const sized = ofSize.exec(text);
  if (sized !== null) return countOf(Number(sized[1]), sized[2]!, food, units, guesses);
  const [, number = "", named = ""] = /^([\d\s./¼½¾⅓⅔]+)\s*(.*)$/.exec(text) ?? [];
  const value = numberOf(number);
  if (value === null || !(value > 0)) return { ok: false, must };
  const word = named.toLowerCase().replace(/\.$/, "").trim();
  if (/^(?:dozen|doz|dz)\b/.test(word)) return countOf(value * 12, each, food, units, guesses);
  if (isCounted(word, value, food)) {
    if (word === "") guesses.push("no unit: counted");
    return countOf(value, each, food, units, guesses);
  }
  return measured(number.trim(), named.replace(/\.$/, "").trim(), food, units, guesses);
}

const isDrink = (food: Food | null): boolean => food?.kind === "drink";

/** Whether a word without a measure counts pieces: it says so, or nothing is said and the food comes in pieces. */
function isCounted(word: string, value: number, food: Food | null): boolean {
  if (word === "")
    return Number.isInteger(value) && food !== null && (Object.hasOwn(pieces, food.key) || isDrink(food));
  return counted.test(word.split(/\s+/)[0]!);
}

function measured(
  number: string,
  word: string,
  food: Food | null,
  units: "us" | "metric",
  guesses: string[],
): AmountReading {
  let unit = word;
  if (unit === "") {
    unit = isDrink(food) ? (units === "us" ? "qt" : "L") : units === "us" ? "lb" : "kg";
    guesses.push(`no unit: ${unit}, as most of the file`);
  }
  if (/^(?:oz|ounces?)$/i.test(unit) && isDrink(food)) {
    unit = "fl oz";
    guesses.push("oz of a drink: fluid ounces");
  }
  const text = `${number} ${unit}`;
  const known = [parseQuantity(text, "mass"), parseQuantity(text, "volume")].find((reading) => reading.ok);
  return known?.ok === true && known.quantity.value > 0
    ? { ok: true, amount: { amount: text }, guesses }
    : { ok: false, must };
}

function countOf(
  count: number,
  each: string,
  food: Food | null,
  units: "us" | "metric",
  guesses: string[],
): AmountReading {
  if (!Number.isInteger(count) || count < 1 || count > MOST_COUNT)
    return { ok: false, must: `a whole number of pieces from 1 to ${MOST_COUNT}` };
  const typed = pointed(each, guesses).replace(/^([\d.]+)-/, "$1 ");
  if (typed !== "") {
    const size = isDrink(food) ? typed.replace(/^([\d.]+)\s*oz$/i, "$1 fl oz") : typed;
    const isKnown = parseQuantity(size, "mass").ok || parseQuantity(size, "volume").ok;
    return isKnown
      ? { ok: true, amount: { count, each: size }, guesses }
      : { ok: false, must: "what one piece weighs or holds, such as 12 oz or 330 mL" };
  }
  const [us, metric] =
    (food === null ? undefined : pieces[food.key]) ?? (isDrink(food) ? otherDrink : otherFood);
  const guess = units === "us" ? us : metric;
  guesses.push(`one piece is not said: ${guess}`);
  return { ok: true, amount: { count, each: guess }, guesses };
}

/** A portion for one eater: a weight or a volume, or a number of pieces. */
export function readPortion(
  text: string,
  each: string,
  food: Food | null,
  units: "us" | "metric",
): AmountReading {
  const read = readAmount(text, "", each, food, units);
  if (!read.ok) return read;
  const { amount, count, each: piece } = read.amount;
  return {
    ...read,
    amount: amount === undefined ? { "per person": count!, each: piece } : { "per person": amount },
  };
}

/** Decimal commas as points. A comma before three digits may part thousands: that reading is taken and told. */
function pointed(text: string, guesses: string[]): string {
  const trimmed = text.trim().replace(/\s+/g, " ").slice(0, 100);
  if (/^\d{1,3},\d{3}(?!\d)/.test(trimmed) && !trimmed.startsWith("0,")) {
    guesses.push(`${trimmed}: the comma parts thousands`);
    return trimmed.replace(",", "");
  }
  return trimmed.replace(/(\d),(\d)/g, "$1.$2");
}

function numberOf(text: string): number | null {
  const reading = parseQuantity(`${text.trim()} kg`, "mass");
  return reading.ok ? reading.quantity.typedValue : null;
}

/** The family of units that most amounts of a text are typed in; metric where it is even. */
export function unitsIn(cells: readonly string[]): "us" | "metric" {
  let us = 0;
  for (const cell of cells) {
    const word = /([a-z][a-z ]*)\.?\s*$/i.exec(cell.trim())?.[1] ?? "";
    const unit = unitNamed(word, "mass") ?? unitNamed(word, "volume");
    if (unit !== undefined) us += unit.system === "us" ? 1 : -1;
  }
  return us > 0 ? "us" : "metric";
}
