import { ModelError } from "../quantity/errors.ts";

/** Whether a row was read in a copy of the chart, or stands from memory until someone holds the page. */
export type Mark = "R" | "M";

/** A row of the chart of chilled food: what then becomes of food that was above 40 °F for more than two hours. */
export interface ChilledRow {
  row: string;
  word: "discard" | "keep" | "over 10 C for 8 h";
  mark: Mark;
  source: string;
}

/** A row of the chart of frozen food: while it still holds ice crystals, and once it was above 40 °F for more than two hours. */
export interface FrozenRow {
  row: string;
  crystals: "refreeze" | "discard";
  thawed: "refreeze" | "discard" | "discard after 6 h";
  mark: Mark;
  source: string;
}

/** A row of the chart of days at or below 40 °F. Where it parts opened from unopened, they are the two ends. */
export interface DaysRow {
  row: string;
  strict_days: number;
  lenient_days: number;
  mark: Mark;
  source: string;
}

function rowsOf<T extends { row: string }>(
  table: string,
  cellCount: number,
  read: (cells: string[]) => T,
): Record<string, T> {
  const lines = table.trim().split("\n");
  return Object.fromEntries(
    lines.map((line) => {
      const cells = line.split("|").map((cell) => cell.trim());
      if (cells.length !== cellCount)
        throw new ModelError(`chart line "${line}" has wrong cells`, cells.length);
      const row = Object.freeze(read(cells));
      return [row.row, row];
    }),
  );
}

/**
 * Chilled food above 40 °F for more than two hours. Where editions differ (colby, coconut) the stricter word stands.
 *
 * @source public-outage-charts
 */
export const chilledChart: Readonly<Record<string, ChilledRow>> = rowsOf(
  `
meat, poultry, seafood | discard | R
thawing meat | discard | R
protein salads | discard | R
gravy, stuffing, broth | discard | R
cured and deli meats | discard | R
pizza | discard | R
canned ham, refrigerated | discard | R
canned meat, opened | discard | R
casseroles, soups, stews | discard | R
soft cheese | discard | R
hard cheese | keep | R
processed cheese | keep | R
shredded cheese | discard | R
low-fat cheese | discard | R
grated cheese in a can | keep | R
milk, cream, yogurt | discard | R
butter, margarine | keep | R
infant formula, opened | discard | R
eggs and egg dishes | discard | R
custard, pudding, quiche | discard | R
cut fruit | discard | R
whole fruit | keep | R
fruit juice, opened | keep | R
canned fruit, opened | keep | R
dried fruit | keep | R
cut coconut | discard | R
mayonnaise, tartar sauce, horseradish | over 10 C for 8 h | R
peanut butter | keep | R
jelly, mustard, ketchup, olives, pickles | keep | R
dark sauces | keep | R
fish and oyster sauce | discard | R
vinegar dressing, opened | keep | R
creamy dressing, opened | discard | R
spaghetti sauce, opened | discard | R
bread, rolls, tortillas | keep | R
waffles, pancakes, bagels | keep | R
fruit pies | keep | R
cream pastry | discard | M
cheesecake | discard | M
refrigerated dough | discard | M
cooked pasta, rice, potatoes | discard | M
pasta salad | discard | M
fresh pasta | discard | M
mushrooms, herbs, spices | keep | R
raw vegetables | keep | R
cut or washed greens | discard | M
cooked vegetables, tofu | discard | M
vegetable juice, opened | discard | R
baked potatoes | discard | R
garlic in oil | discard | R
potato salad | discard | R
`,
  3,
  ([row, word, mark]) => ({
    row: row!,
    word: word as ChilledRow["word"],
    mark: mark as Mark,
    source: "public-outage-charts",
  }),
);

/**
 * Frozen food that has begun to thaw.
 *
 * @source public-outage-charts
 */
export const frozenChart: Readonly<Record<string, FrozenRow>> = rowsOf(
  `
meat, poultry, seafood | refreeze | discard | R
stews, soups, casseroles | refreeze | discard | R
fish, shellfish | refreeze | discard | R
milk | refreeze | discard | R
eggs out of the shell | refreeze | discard | R
ice cream, frozen yogurt | discard | discard | R
soft cheese | refreeze | discard | R
hard cheese | refreeze | refreeze | R
shredded cheese | refreeze | discard | R
cheesecake | refreeze | discard | R
fruit juice | refreeze | refreeze | R
fruit | refreeze | refreeze | R
vegetable juice | refreeze | discard after 6 h | R
vegetables | refreeze | discard after 6 h | R
bread, rolls, plain cakes | refreeze | refreeze | R
custard or cheese pastry | refreeze | discard | R
pie crusts, bread dough | refreeze | refreeze | R
pasta and rice dishes | refreeze | discard | R
flour, cornmeal, nuts | refreeze | refreeze | R
waffles, pancakes, bagels | refreeze | refreeze | R
frozen meals, pizza | refreeze | discard | R
`,
  4,
  ([row, crystals, thawed, mark]) => ({
    row: row!,
    crystals: crystals as FrozenRow["crystals"],
    thawed: thawed as FrozenRow["thawed"],
    mark: mark as Mark,
    source: "public-outage-charts",
  }),
);

/**
 * Days at or below 40 °F, the strict and the lenient end of each row; weeks and months are counted in days. Newer
 * charts give salads three to four days and fish one to three, from memory: the ends read in a copy stand here.
 *
 * @source public-cold-storage-chart
 */
export const daysChart: Readonly<Record<string, DaysRow>> = rowsOf(
  `
eggs in the shell | 21 | 35 | R
raw yolks and whites | 2 | 4 | R
hard-cooked eggs | 7 | 7 | R
liquid egg, opened or not | 3 | 10 | R
mayonnaise, opened | 60 | 60 | R
deli salads | 3 | 5 | R
hot dogs, opened or not | 7 | 14 | R
luncheon meat, opened or sliced | 3 | 5 | R
bacon | 7 | 7 | R
raw sausage | 1 | 2 | R
smoked links and patties | 7 | 7 | R
summer sausage, opened or not | 21 | 90 | R
hard sausage and jerky | 14 | 21 | R
ground meat | 1 | 2 | R
steaks | 3 | 5 | R
chops | 3 | 5 | R
roasts | 3 | 5 | R
ham, whole | 7 | 7 | R
ham, sliced | 3 | 5 | R
poultry | 1 | 2 | R
fresh fish | 1 | 2 | R
soups and stews | 3 | 4 | R
cooked meat, poultry, fish | 3 | 4 | R
pizza | 3 | 4 | R
milk | 7 | 7 | R
hard cheese | 21 | 28 | R
`,
  4,
  ([row, strict, lenient, mark]) => ({
    row: row!,
    strict_days: Number(strict),
    lenient_days: Number(lenient),
    mark: mark as Mark,
    source: "public-cold-storage-chart",
  }),
);
