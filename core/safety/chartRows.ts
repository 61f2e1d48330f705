import { ModelError } from "../quantity/errors.ts";
import {
  type ChilledRow,
  chilledChart,
  type DaysRow,
  daysChart,
  type FrozenRow,
  frozenChart,
} from "./charts.ts";

/** The rows that speak of a food; null where a chart has none that is near it. */
export interface ChartRows {
  chilled: ChilledRow | null;
  frozen: FrozenRow | null;
  days: DaysRow | null;
}

/** Foods · chilled row · frozen row · days row; `-` for none. Foods of one line share all three. */
const table = `
ground beef, ground turkey | meat, poultry, seafood | meat, poultry, seafood | ground meat
beef steak | meat, poultry, seafood | meat, poultry, seafood | steaks
lamb, pork | meat, poultry, seafood | meat, poultry, seafood | chops
game meat | meat, poultry, seafood | meat, poultry, seafood | roasts
chicken breast, chicken thigh | meat, poultry, seafood | meat, poultry, seafood | poultry
sausage | cured and deli meats | meat, poultry, seafood | raw sausage
bacon | cured and deli meats | meat, poultry, seafood | bacon
salmon, trout, cod, tuna steak, shrimp | meat, poultry, seafood | fish, shellfish | fresh fish
egg | eggs and egg dishes | eggs out of the shell | eggs in the shell
liquid egg | eggs and egg dishes | eggs out of the shell | liquid egg, opened or not
hot dog | cured and deli meats | meat, poultry, seafood | hot dogs, opened or not
ham | cured and deli meats | meat, poultry, seafood | ham, sliced
deli meat | cured and deli meats | meat, poultry, seafood | luncheon meat, opened or sliced
salami | cured and deli meats | meat, poultry, seafood | hard sausage and jerky
cooked meat | meat, poultry, seafood | meat, poultry, seafood | cooked meat, poultry, fish
smoked fish | meat, poultry, seafood | fish, shellfish | -
tuna salad | protein salads | - | deli salads
hard boiled egg | eggs and egg dishes | eggs out of the shell | hard-cooked eggs
tofu, hummus, cooked vegetables | cooked vegetables, tofu | - | -
beans | cooked vegetables, tofu | stews, soups, casseroles | -
rice, pasta | cooked pasta, rice, potatoes | pasta and rice dishes | -
chili, soup | casseroles, soups, stews | stews, soups, casseroles | soups and stews
casserole | casseroles, soups, stews | stews, soups, casseroles | cooked meat, poultry, fish
pizza | pizza | frozen meals, pizza | pizza
sandwich | cured and deli meats | frozen meals, pizza | cooked meat, poultry, fish
potato salad | potato salad | - | deli salads
marinara | spaghetti sauce, opened | stews, soups, casseroles | -
salsa, mustard, ketchup, jam, pickles | jelly, mustard, ketchup, olives, pickles | - | -
mayonnaise | mayonnaise, tartar sauce, horseradish | - | mayonnaise, opened
creamy dressing | creamy dressing, opened | - | -
vinaigrette | vinegar dressing, opened | - | -
soy sauce | dark sauces | - | -
peanut butter | peanut butter | flour, cornmeal, nuts | -
bread, tortilla | bread, rolls, tortillas | bread, rolls, plain cakes | -
milk, low fat milk | milk, cream, yogurt | milk | milk
plant milk, half and half, cream, sour cream, yogurt, breast milk | milk, cream, yogurt | milk | -
infant formula | infant formula, opened | - | -
pudding | custard, pudding, quiche | custard or cheese pastry | -
butter, margarine | butter, margarine | - | -
cheddar, swiss cheese, parmesan | hard cheese | hard cheese | hard cheese
american cheese | processed cheese | hard cheese | -
shredded cheese | shredded cheese | shredded cheese | -
gouda, mozzarella, feta, brie, cream cheese, cottage cheese | soft cheese | soft cheese | -
ice cream | - | ice cream, frozen yogurt | -
iceberg lettuce, romaine, tomato, carrot, cucumber, broccoli, sweet pepper, onion, celery, cabbage, potato, sweet corn, green beans | raw vegetables | vegetables | -
mushroom, spinach | mushrooms, herbs, spices | vegetables | -
salad | cut or washed greens | vegetables | -
frozen vegetables | cooked vegetables, tofu | vegetables | -
strawberry, blueberry, raspberry, apple, banana, orange, grapes, watermelon, cantaloupe, avocado | whole fruit | fruit | -
cut fruit | cut fruit | fruit | -
orange juice | fruit juice, opened | fruit juice | -
`;

/** A cell names a row; a comma stands in many rows' names, so a cell is looked up whole. */
function found<T>(chart: Readonly<Record<string, T>>, cell: string): T | null {
  if (cell === "-") return null;
  const row = chart[cell];
  if (row === undefined) throw new ModelError(`no chart has a row "${cell}"`, 0);
  return row;
}

const rowsByFood: ReadonlyMap<string, ChartRows> = new Map(
  table
    .trim()
    .split("\n")
    .flatMap((line) => {
      const [foods, chilled, frozen, days] = line.split("|").map((cell) => cell.trim()) as Cells;
      const rows = {
        chilled: found(chilledChart, chilled),
        frozen: found(frozenChart, frozen),
        days: found(daysChart, days),
      };
      return foods.split(", ").map((food): [string, ChartRows] => [food, rows]);
    }),
);

type Cells = [string, string, string, string];
const none: ChartRows = { chilled: null, frozen: null, days: null };

/**
 * The rows of the public charts that speak of a food, the nearest where it is not listed. Shelf goods and drinks have
 * none. Which row is nearest is common practice.
 *
 * @param foodKey key of a food of the table of foods
 * @source public-outage-charts, public-cold-storage-chart, common-practice
 */
export function chartRowsOf(foodKey: string): ChartRows {
  return rowsByFood.get(foodKey) ?? none;
}

/**
 * Fish and seafood, raw or smoked: what the rule on packs without air is about.
 *
 * @source fda-food-code-2022
 */
export function isFish(foodKey: string): boolean {
  return chartRowsOf(foodKey).frozen?.row === "fish, shellfish";
}
