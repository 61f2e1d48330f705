import { ModelError } from "../quantity/errors.ts";
import type { Food, FoodKind, WarmWord } from "./food.ts";

/**
 * Reads a table of foods. One line is one food, its cells parted by bars:
 * key · name · aliases · percent by mass of water, protein, fat, carbohydrate with fibre, fibre, ash and, where there is
 * any, alcohol · initial freezing point in °C (`~` marks an estimate within 1 K, `–` none) · kind and usual state · the
 * chart's word for warm food · days of cold storage · traits (`raw animal`, `freezes badly`, `air` with a percentage of
 * the piece's volume) · usual least dimension of a piece in mm and its shape · source of the composition.
 *
 * Rounded percentages do not add up to 100; the shares of the food do. Traits and piece sizes are common practice and
 * judgement; where freezing is published, the handbook's table is the source.
 *
 * @throws ModelError for a line that cannot be read: a bug in the table
 * @source common-practice, engineering-judgement
 */
export function readFoods(table: string): Food[] {
  return table
    .trim()
    .split("\n")
    .map((line) => readFood(line));
}

function readFood(line: string): Food {
  const cells = line.split("|").map((cell) => cell.trim());
  if (cells.length !== 11) throw new ModelError(`food line "${line}" must have 11 cells`, cells.length);
  const [key, name, aliases, parts, freezes, kind, warm, days, traits, piece, source] = cells as Cells;
  const [kindWord, usualState] = kind.split(" ");
  const [thick_mm, shape] = piece.split(" ");
  return {
    key,
    name,
    aliases: aliases.split(",").map((alias) => alias.trim()),
    ...readShares(parts),
    freezes_C: freezes === "–" ? null : 0 - Number(freezes.replace(/^~?-/, "")),
    freezesMark: freezes.startsWith("-") ? "published" : "estimate",
    kind: kindWord as FoodKind,
    warm: warm as WarmWord,
    days,
    perishable: warm !== "keep" && warm !== "keep whole",
    rawAnimal: traits.includes("raw animal"),
    freezesBadly: traits.includes("freezes badly"),
    airSpace_frac: Number(/air (\d+)/.exec(traits)?.[1] ?? 0) / 100,
    thick_m: Number(thick_mm) / 1000,
    shape: shape as Food["shape"],
    usualState: usualState as Food["usualState"],
    source,
  };
}

type Cells = [string, string, string, string, string, string, string, string, string, string, string];
type Shares = Pick<
  Food,
  | "water_frac"
  | "protein_frac"
  | "fat_frac"
  | "carbohydrate_frac"
  | "fibre_frac"
  | "ash_frac"
  | "alcohol_frac"
>;

function readShares(parts: string): Shares {
  const [water, protein, fat, carbohydrate, fibre, ash, alcohol = 0] = parts.split(" ").map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number?,
  ];
  const total = water + protein + fat + carbohydrate + ash + alcohol;
  return {
    water_frac: water / total,
    protein_frac: protein / total,
    fat_frac: fat / total,
    carbohydrate_frac: (carbohydrate - fibre) / total,
    fibre_frac: fibre / total,
    ash_frac: ash / total,
    alcohol_frac: alcohol / total,
  };
}
