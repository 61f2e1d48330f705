import type { Food } from "../matter/food.ts";
import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import { parseQuantity, type Quantity } from "../quantity/parse.ts";
import type { FoodFile } from "./file.ts";
import { statedMass_kg } from "./ice.ts";
import { nearest } from "./nearest.ts";
import { measures, type Notes } from "./notes.ts";
import type { Trip, TripFood } from "./types.ts";

/** The party, with what its children eat. */
export type Eaters = Trip["party"] & {
  /** What a child eats, of an adult's portion. */
  childPortion_frac: number;
};

type Amount = Pick<TripFood, "amount" | "mass_kg" | "pieces" | "portion">;

const mostPieces = 5000;

/** How much there is of a food: as stated, piece by piece, or counted from portions, heads and meals. */
export function resolveAmount(
  notes: Notes,
  file: FoodFile,
  path: string,
  like: Food,
  counted: { party: Eaters; meals: number },
): Amount {
  const density = foodDensity_kg_per_m3(like, Math.max(5, like.freezes_C ?? 5));
  if (file["per person"] !== undefined) return portionsOf(notes, file, path, density, counted);
  for (const key of ["for", "not for"] as const)
    if (file[key] !== undefined)
      notes.refuse(`${path}.${key}`, "beside per person, which it counts", file[key]);
  return { ...statedAmount(notes, file, path, density), portion: null };
}

function statedAmount(notes: Notes, file: FoodFile, path: string, density: number): Omit<Amount, "portion"> {
  const pieces = file.count ?? 1;
  if (file.amount !== undefined) {
    if (file.each !== undefined) notes.refuse(`${path}.each`, "left out where amount is given", file.each);
    const mass_kg = statedMass_kg(notes, `${path}.amount`, file.amount, density);
    return { amount: file.amount, mass_kg, pieces };
  }
  if (file.each === undefined || file.count === undefined) {
    const [missing, must] =
      file.each === undefined && file.count === undefined
        ? ["amount", "given: a weight or a volume such as 3 lb, or else count with each, or per person"]
        : file.each === undefined
          ? ["each", "given beside count: a weight or a volume such as 355 mL"]
          : ["count", "given beside each: a whole number"];
    return { amount: "", mass_kg: notes.refuse(`${path}.${missing}`, must, undefined), pieces };
  }
  const mass_kg = pieces * statedMass_kg(notes, `${path}.each`, file.each, density);
  return { amount: `${pieces} × ${file.each}`, mass_kg, pieces };
}

/**
 * Portion × eaters × appetite × meals. A weight is not rounded, so that one person more moves everything smoothly; its
 * words are, upwards. Pieces are whole.
 */
function portionsOf(
  notes: Notes,
  file: FoodFile,
  path: string,
  density: number,
  { party, meals }: { party: Eaters; meals: number },
): Amount {
  const at = `${path}.per person`;
  const each = file["per person"] as string | number;
  if (file.amount !== undefined)
    notes.refuse(`${path}.amount`, "left out where per person is given", file.amount);
  const heads = headsOf(notes, file, path, party);
  const portions = heads * party.appetite_frac * meals;
  if (typeof each === "number")
    return wholePieces(notes, file, path, density, { each, heads, meals, portions });
  if (file.each !== undefined)
    notes.refuse(`${path}.each`, "left out where per person is a weight or a volume", file.each);
  const mass_kg = portions * statedMass_kg(notes, at, each, density);
  if (mass_kg > measures.mass.high) notes.refuse(at, "so small that all of it is at most 2000 kg", each);
  return {
    amount: roundedUp(each, portions),
    mass_kg,
    pieces: file.count ?? packages(notes, path, meals),
    portion: { each, heads, meals },
  };
}

function packages(notes: Notes, path: string, meals: number): number {
  if (meals > 1) notes.assume(`${path}.count`, String(meals), "not given: a package for each meal");
  return Math.max(1, meals);
}

function wholePieces(
  notes: Notes,
  file: FoodFile,
  path: string,
  density: number,
  { each, heads, meals, portions }: { each: number; heads: number; meals: number; portions: number },
): Amount {
  if (file.count !== undefined)
    notes.refuse(`${path}.count`, "left out where per person counts the pieces", file.count);
  const pieces = Math.max(1, Math.ceil(each * portions - 1e-9));
  if (pieces > mostPieces)
    notes.refuse(`${path}.per person`, `so small that there are at most ${mostPieces} pieces`, each);
  if (file.each === undefined) {
    const must = "given beside a number of pieces per person: a weight or a volume such as 60 g";
    return { amount: "", mass_kg: notes.refuse(`${path}.each`, must, undefined), pieces, portion: null };
  }
  return {
    amount: `${pieces} × ${file.each}`,
    mass_kg: pieces * statedMass_kg(notes, `${path}.each`, file.each, density),
    pieces,
    portion: { each: `${each} × ${file.each}`, heads, meals },
  };
}

/** How many eat of it, children in part; NaN with the problem noted when nobody does. */
function headsOf(notes: Notes, file: FoodFile, path: string, party: Eaters): number {
  const { adults, children, childPortion_frac } = party;
  const all = adults + childPortion_frac * children;
  if (file.for !== undefined && file["not for"] !== undefined)
    notes.refuse(`${path}.not for`, "left out where for is given", file["not for"]);
  const key = file.for === undefined ? "not for" : "for";
  const typed = file[key];
  if (typed === undefined) {
    const must = "left out where nobody eats: party has neither adults nor children";
    return all > 0 ? all : notes.refuse(`${path}.per person`, must, file["per person"]);
  }
  const onDiet = onDietCount(notes, `${path}.${key}`, typed, party);
  // Nobody says how old they are: on a diet as adults, as far as there are adults.
  const theirs = Math.min(onDiet, adults) + childPortion_frac * Math.max(0, onDiet - adults);
  const heads = key === "for" ? theirs : all - theirs;
  if (heads > 1e-9 || Number.isNaN(heads)) return heads;
  const nobody = key === "for" ? "a diet that someone is on" : "a diet that not everyone is on";
  return notes.refuse(`${path}.${key}`, nobody, typed);
}

function onDietCount(notes: Notes, path: string, typed: string, { diets }: Eaters): number {
  const names = Object.keys(diets);
  const found = names.find((name) => name.trim().toLowerCase() === typed.trim().toLowerCase());
  if (found !== undefined) return diets[found] as number;
  const must =
    names.length === 0
      ? `a diet whose heads party.diets counts, such as diets: { ${typed.slice(0, 40)}: 1 }`
      : `a diet of party.diets: ${names.join(", ")}`;
  return notes.refuse(path, must, typed, nearest(typed, names));
}

/** The unit that a long number is told in instead. */
const larger: Readonly<Record<string, readonly [symbol: string, of: number]>> = {
  g: ["kg", 1000],
  oz: ["lb", 16],
  mL: ["L", 1000],
  cL: ["L", 100],
  "fl oz": ["qt", 32],
  cup: ["qt", 4],
};

/** So many portions, in the portion's unit or its larger one, rounded up to two digits or a whole number: "2.6 kg". */
function roundedUp(typed: string, portions: number): string {
  const readings = [parseQuantity(typed, "mass"), parseQuantity(typed, "volume")];
  const found = readings.find((reading) => reading.ok) as { quantity: Quantity } | undefined;
  if (found === undefined || !(portions > 0)) return typed;
  const { symbol } = found.quantity.unit;
  const count = found.quantity.typedValue * portions;
  const [unit, of] = larger[symbol] ?? [symbol, Number.POSITIVE_INFINITY];
  const [value, name] = count >= of ? [count / of, unit] : [count, symbol];
  if (!(value > 0)) return typed;
  const step = [10, 1, 0.1, 0.01].find((one) => value >= 10 * one) ?? 0.001;
  return `${Number((Math.ceil(value / step - 1e-6) * step).toPrecision(10))} ${name}`;
}
