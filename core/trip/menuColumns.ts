import { nearest } from "./nearest.ts";

/** Columns of a menu by what they hold: place in a row. */
export type Columns = { readonly [key in Column]?: number };

type Column =
  | "item"
  | "like"
  | "amount"
  | "unit"
  | "each"
  | "portion"
  | "day"
  | "meal"
  | "state"
  | "people"
  | "diet"
  | "cooler"
  | "price"
  | "allergens";

const headings: Readonly<Record<Column, string>> = {
  item: "item,items,food,foods,name,product,ingredient,ingredients,dish,description,what",
  like: "like,kind,type,category",
  amount: "amount,amt,qty,quantity,how much,total,total amount,weight,count,number,no",
  unit: "unit,units,uom,measure",
  each: "each,size,unit size,pack size,piece,weight each",
  portion: "per person,portion,serving,each person,pp,per head,amount per person",
  day: "day,days,date,trip day",
  meal: "meal,meals,when,eat,eaten,for meal,mealtime",
  state: "state,frozen,storage,frozen or fresh,temperature,temp,how",
  people: "people,for,serves,servings,heads,persons,pax",
  diet: "diet,diets,dietary,diet group",
  cooler: "cooler,in,where,box,chest,location,ice chest",
  price: "price,cost,total price,amount paid",
  allergens: "allergens,allergen,contains,allergies",
};

const byName: ReadonlyMap<string, Column> = new Map(
  Object.entries(headings).flatMap(([column, names]) =>
    names.split(",").map((name) => [name, column as Column] as const),
  ),
);
const known = [...byName.keys()].filter((name) => name.length > 3);

/** Finds what each column of a heading line holds; a misspelt heading takes the nearest. The first of two alike counts. */
export function columnsOf(cells: readonly string[]): { columns: Columns; unknown: string[] } {
  const columns: { -readonly [key in Column]?: number } = {};
  const unknown: string[] = [];
  const names = cells.map((cell) =>
    cell
      .toLowerCase()
      .replace(/\(.*?\)|[$€£:*?]/g, "")
      .replace(/[_/-]+/g, " ")
      .replace(/\s+/g, " ")
      .trim(),
  );
  const claim = (i: number, column: Column | undefined): boolean => {
    if (column === undefined || columns[column] !== undefined) return false;
    columns[column] = i;
    return true;
  };
  const left = names.map((_, i) => i).filter((i) => names[i] !== "" && !claim(i, byName.get(names[i]!)));
  for (const i of left)
    if (!claim(i, byName.get(nearest(names[i]!, known) ?? ""))) unknown.push(cells[i]!.slice(0, 40));
  return { columns, unknown };
}
