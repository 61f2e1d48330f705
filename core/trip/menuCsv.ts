import Papa from "papaparse";
import type { Food } from "../matter/food.ts";
import { findFood } from "../matter/foods.ts";
import type { FoodFile } from "./file.ts";
import { type AmountReading, readAmount, readPortion, unitsIn } from "./menuAmount.ts";
import { allergensIn, stateIn } from "./menuCells.ts";
import { type Columns, columnsOf } from "./menuColumns.ts";
import { readWhen } from "./menuWhen.ts";
import { bounds } from "./text.ts";
import type { Problem } from "./types.ts";

/** One food of a menu as a trip file would say it, with what was guessed for it. */
export interface MenuFood {
  line: number;
  food: FoodFile;
  guesses: readonly string[];
}

export interface MenuReading {
  foods: readonly MenuFood[];
  /** What was guessed or passed over, by line, in words. */
  notes: readonly { line: number; says: string }[];
  /** What cannot be read; the other foods stand all the same. */
  problems: readonly Problem[];
}

export interface MenuOptions {
  /** Local ISO of the departure, to tell what day a Tuesday is. */
  depart?: string;
}

const MOST_ROWS = 1000;
const MOST_NAME = 200;

/**
 * Reads a menu from a spreadsheet saved as CSV: a heading line, then a food a line, columns in any order and under any
 * of their usual English names. Units that are missing, foods it does not know and meals half said are guessed, and each
 * guess is noted. Cells that a spreadsheet would run as a formula are text here. At most 2 MB and 1000 lines of food.
 *
 * It never throws for what a person wrote, and whether the foods suit a trip is for `readTrip` to say.
 */
export function readMenuCsv(text: string, options: MenuOptions = {}): MenuReading {
  if (text.length > bounds.characters) return refused(null, "a file of at most 2 MB", "a larger one");
  const table = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    header: false,
    skipEmptyLines: false,
    delimiter: delimiterOf(text),
  }).data;
  const rows = table
    .map((cells, i) => ({ line: i + 1, cells: cells.map(plain) }))
    .filter(({ cells }) => cells.some((cell) => cell !== "") && !cells[0]!.startsWith("#"));
  const [heading, ...body] = rows;
  if (heading === undefined) return refused(null, "a heading line and a food a line", "an empty file");
  if (body.length > MOST_ROWS)
    return refused(null, `at most ${MOST_ROWS} lines of food`, String(body.length));
  const { columns, unknown } = columnsOf(heading.cells);
  if (columns.item === undefined) {
    const must = "a heading line with a column for the food, such as item, food or name";
    return refused(heading.line, must, heading.cells.join(", ").slice(0, 100));
  }
  const reader = new MenuReader(
    columns,
    body.map(({ cells }) => cells),
    options.depart ?? null,
  );
  if (unknown.length > 0) reader.note(heading.line, `passed over: ${unknown.join(", ")}`);
  for (const { line, cells } of body) reader.read(line, cells);
  return reader.reading();
}

/** What parts the heading line: the body may hold decimal commas between semicolons. */
function delimiterOf(text: string): string {
  const heading = text.split(/\r\n|\r|\n/, 50).find((line) => !/^\s*(?:#|$)/.test(line)) ?? "";
  const marks = [",", ";", "\t"] as const;
  const count = (mark: string): number => heading.split(mark).length;
  return marks.reduce((a, b) => (count(b) > count(a) ? b : a));
}

/** A cell as printable text: what could disguise a name on a screen is gone. */
function plain(cell: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what goes
  return cell.replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]+/g, " ").trim();
}

const refused = (line: number | null, must: string, got: string): MenuReading => ({
  foods: [],
  notes: [],
  problems: [{ line, path: "", must, got, near: null }],
});

class MenuReader {
  readonly #columns: Columns;
  readonly #units: "us" | "metric";
  readonly #depart: string | null;
  readonly #foods: MenuFood[] = [];
  readonly #notes: { line: number; says: string }[] = [];
  readonly #problems: Problem[] = [];

  constructor(columns: Columns, body: readonly (readonly string[])[], depart: string | null) {
    this.#columns = columns;
    this.#depart = depart;
    const amounts = (["amount", "unit", "each", "portion"] as const).flatMap((key) => {
      const at = columns[key];
      return at === undefined ? [] : body.map((cells) => cells[at] ?? "");
    });
    this.#units = unitsIn(amounts);
  }

  reading(): MenuReading {
    const problems = this.#problems.slice(0, bounds.problems);
    return { foods: this.#foods, notes: this.#notes, problems };
  }

  note(line: number, says: string): void {
    this.#notes.push({ line, says });
  }

  read(line: number, cells: readonly string[]): void {
    const cell = (key: keyof Columns): string => cells[this.#columns[key] ?? -1] ?? "";
    const name = cell("item").slice(0, MOST_NAME);
    if (name === "") {
      this.#refuse(line, "item", "the name of a food", "nothing");
      return;
    }
    const guesses: string[] = [];
    const like = likeOf(cell("like") || name, guesses);
    const amount = this.#amountOf(cell, like.food);
    const when = readWhen(cell("day"), cell("meal"), this.#depart);
    if (!amount.ok)
      this.#refuse(line, "amount", amount.must, `${cell("amount")} ${cell("unit")}`.trim() || "nothing");
    if (!when.ok) this.#refuse(line, "eat", when.must, `${cell("day")} ${cell("meal")}`.trim());
    if (!amount.ok || !when.ok) return;
    guesses.push(...amount.guesses, ...when.guesses);
    const entry: FoodFile = {
      name,
      ...amount.amount,
      ...like.entry,
      ...this.#rest(cell, guesses, line, amount.amount["per person"] !== undefined),
      ...(when.eat === null ? {} : { eat: when.eat }),
    };
    this.#foods.push({ line, food: entry, guesses });
    for (const guess of guesses) this.note(line, `${name}: ${guess}`);
  }

  #amountOf(cell: (key: keyof Columns) => string, food: Food | null): AmountReading {
    const portion = cell("portion");
    if (portion !== "") return readPortion(portion, cell("each"), food, this.#units);
    const amount = cell("amount");
    const isEach = /\b(?:per|a|\/)\s*(?:person|head|pax)\b|\bpp\b/i;
    const [bare, unit] = [amount.replace(isEach, "").trim(), cell("unit").replace(isEach, "").trim()];
    return isEach.test(`${amount} ${cell("unit")}`)
      ? readPortion(`${bare} ${unit}`, cell("each"), food, this.#units)
      : readAmount(amount, cell("unit"), cell("each"), food, this.#units);
  }

  /** State, diet, cooler, price, allergens, where the menu has them. */
  #rest(
    cell: (key: keyof Columns) => string,
    guesses: string[],
    line: number,
    isPortion: boolean,
  ): Partial<FoodFile> {
    const rest: Partial<FoodFile> = {};
    const state = stateIn(cell("state"));
    if (state !== undefined) rest.state = state;
    else if (cell("state") !== "") guesses.push(`state ${cell("state")} is not known: left to the plan`);
    const diet = cell("diet").toLowerCase();
    if (diet !== "" && !/^(?:all|any|everyone|none|-)$/.test(diet)) {
      if (isPortion) rest.for = diet.slice(0, MOST_NAME);
      else this.note(line, `for ${diet.slice(0, 40)}: a given amount is for whoever eats it`);
    }
    if (cell("cooler") !== "") rest.in = cell("cooler").slice(0, MOST_NAME);
    const price = priceIn(cell("price"));
    if (price !== null) rest.price = price;
    else if (cell("price") !== "") guesses.push(`price ${cell("price").slice(0, 40)} is no number: left out`);
    const contains = allergensIn(cell("allergens"));
    if (contains.ok) rest.contains = contains.allergens;
    else if (contains.unknown !== null)
      guesses.push(`allergens: ${contains.unknown} is not known, so nothing is said, and it may contain any`);
    if (cell("people") !== "")
      this.note(line, `for ${cell("people").slice(0, 40)}: the amount is taken as the whole`);
    return rest;
  }

  #refuse(line: number, path: string, must: string, got: string): void {
    this.#problems.push({ line, path, must, got: got.slice(0, 100), near: null });
  }
}

/** What it is like; a name that is not known takes the nearest food, which is told. */
function likeOf(name: string, guesses: string[]): { food: Food | null; entry: Partial<FoodFile> } {
  const found = findFood(name);
  if ("food" in found) return { food: found.food, entry: { like: found.food.key } };
  const near = found.near[0];
  const nearest = near === undefined ? null : findFood(near);
  if (near === undefined || nearest === null || !("food" in nearest)) return { food: null, entry: {} };
  const others = found.near.slice(1).join(" or ");
  guesses.push(`not a food that is known: like ${near}${others === "" ? "" : `, or ${others}`}?`);
  return { food: nearest.food, entry: { like: nearest.food.key } };
}

/** A price with or without its currency, decimal point or comma; null where it is none. */
function priceIn(cell: string): number | null {
  const bare = cell.replace(/[\s$€£¥]|\b(?:usd|eur|gbp|chf|cad|aud)\b/gi, "");
  const text = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(bare)
    ? bare.replaceAll(",", "")
    : bare.replace(",", ".");
  const price = Number(text);
  return /^\d+(?:\.\d+)?$/.test(text) && price <= 1e6 ? price : null;
}
