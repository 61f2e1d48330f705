import { type Dimension, type Unit, unitNamed } from "./units.ts";

/** A number with its unit: the SI value to reckon with, and what the person typed, to print back. */
export interface Quantity {
  readonly dimension: Dimension;
  /** m, m³, kg, °C, s, m/s, a fraction of one, or W/K. */
  readonly value: number;
  /** As typed, outer spaces gone. */
  readonly typed: string;
  readonly unit: Unit;
  /** The number that stood before the unit. */
  readonly typedValue: number;
}

/** `must` continues the words "it must be …". */
export type QuantityReading = { ok: true; quantity: Quantity } | { ok: false; must: string };

const LONGEST = 100;
const LARGEST_SI = 1e9;

const wanted: Readonly<Record<Dimension, string>> = {
  length: "a length with its unit, such as 25 mm or 2 in",
  volume: "a volume with its unit, such as 45 qt or 40 L",
  mass: "a weight with its unit, such as 5 kg or 10 lb",
  temperature: "a temperature with its unit, such as 4 C or 40 F",
  duration: "a length of time with its unit, such as 90 s, 20 min or 12 h",
  speed: "a speed with its unit, such as 2 m/s or 5 mph",
  share: "a share with its sign, from 0 % to 100 %, such as 40 %",
  conductance: "a conductance with its unit, such as 0.62 W/K",
};

const lowest: Readonly<Record<Dimension, number>> = {
  length: -LARGEST_SI,
  volume: 0,
  mass: 0,
  temperature: -273.15,
  duration: 0,
  speed: 0,
  share: 0,
  conductance: 0,
};

const VULGAR: Readonly<Record<string, string>> = {
  "¼": " 1/4",
  "½": " 1/2",
  "¾": " 3/4",
  "⅓": " 1/3",
  "⅔": " 2/3",
};

/** Sign, then a mixed number, a fraction or a decimal, then whatever names the unit. */
const SHAPE =
  /^([+-]?)\s*(?:(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)|(\d+(?:\.\d*)?|\.\d+)(e[+-]?\d+)?)\s*([^\d\s].*)?$/i;

/**
 * Reads one quantity as a person types it: `45 qt`, `10lb`, `-18 °C`, `1 1/2 gal`, `40 %`.
 *
 * It accepts any case, with or without spaces and degree sign, a decimal point, a true minus sign and simple
 * fractions. It refuses a bare number, a decimal or thousands comma, kelvin, spellings with two meanings, texts over
 * 100 characters, and anything not finite. It does not know what is sensible for a cooler: ranges are the reader's.
 *
 * @param text what was typed, unit and all
 * @returns the quantity, or the words that say what it must be; never throws
 */
export function parseQuantity(text: string, dimension: Dimension): QuantityReading {
  const refused = { ok: false, must: wanted[dimension] } as const;
  if (text.length > LONGEST)
    return { ok: false, must: `${wanted[dimension]}, in at most ${LONGEST} characters` };
  const typed = text.trim();
  const pointed = withoutComma(typed);
  if (pointed !== null) return { ok: false, must: `${wanted[dimension]}; write ${pointed}` };
  const parts = SHAPE.exec(plain(typed));
  if (parts === null) return refused;
  const unit = unitNamed(parts[7] ?? "", dimension);
  if (unit === undefined) return { ok: false, must: wanted[dimension] + hint(parts[7], dimension) };
  const typedValue = numberOf(parts);
  const value = typedValue * unit.factor + unit.offset;
  if (!Number.isFinite(value)) return refused;
  if (value < lowest[dimension] - 1e-9)
    return { ok: false, must: `${wanted[dimension]}; ${floorWords(dimension)}` };
  if (value > (dimension === "share" ? 1 : LARGEST_SI)) return refused;
  return { ok: true, quantity: { dimension, value, typed, unit, typedValue } };
}

/**
 * What to write in place of a quantity with a comma: `0,6 kg` → `0.6 kg`. A comma before three digits may part
 * thousands, so both readings are given; null where there is no comma between digits.
 */
export function withoutComma(typed: string): string | null {
  const comma = /(\d)\s*,\s*(?=\d)/;
  if (typed.length > LONGEST || !comma.test(typed)) return null;
  const pointed = typed.trim().replace(comma, "$1.");
  if (comma.test(pointed)) return `${typed.trim().replace(/(\d)\s*,\s*(?=\d)/g, "$1")} without commas`;
  return /,\s*\d{3}(?!\d)/.test(typed) ? `${typed.trim().replace(comma, "$1")} or ${pointed}` : pointed;
}

function plain(typed: string): string {
  return typed
    .replace(/[¼½¾⅓⅔]/g, (sign) => VULGAR[sign] ?? sign)
    .replace(/º/g, "°")
    .normalize("NFKC")
    .replace(/[−–]/g, "-")
    .replace(/⁄/g, "/")
    .trim();
}

function numberOf(parts: RegExpExecArray): number {
  const [, sign, whole, top, bottom, decimal, exponent] = parts;
  const size =
    decimal === undefined
      ? Number(whole ?? 0) + Number(top) / Number(bottom)
      : Number(decimal + (exponent ?? ""));
  return sign === "-" ? -size : size;
}

function hint(spelling: string | undefined, dimension: Dimension): string {
  const key = spelling?.trim().toLowerCase();
  if (dimension === "temperature" && key === "k") return "; kelvin is not read here";
  if (dimension === "volume" && key === "oz") return "; for fluid ounces write fl oz";
  if (dimension === "volume" && (key === "kg" || key === "lb")) return "; this is a weight";
  if (dimension === "duration" && key === "m") return "; for minutes write min";
  return "";
}

function floorWords(dimension: Dimension): string {
  return dimension === "temperature" ? "nothing is colder than -273.15 C" : "it cannot be negative";
}
