import * as v from "valibot";
import type { Cover, IceForm } from "../../cooler/types.ts";
import { parseQuantity } from "../../quantity/parse.ts";
import type { Dimension } from "../../quantity/units.ts";
import type { GroundKind, PlaceKind } from "../../sky/types.ts";
import type { LayerFile } from "../file.ts";
import type { Allergen } from "../types.ts";

/*
 * The leaves of the schema. A message continues the words "it must be …". Units and ranges are not checked here but
 * where the values are worked out, so that one text serves both an editor and the reckoning.
 */

type Text = v.GenericSchema<unknown, string>;

/** What a quantity of this kind must be, with examples, in the words of the unit reader. */
function wantedWords(dimension: Dimension): string {
  const reading = parseQuantity("", dimension);
  return reading.ok ? dimension : reading.must;
}

/** A quantity with its unit. */
export function quantity(dimension: Dimension, says: string): Text {
  const wanted = wantedWords(dimension);
  return v.pipe(v.string(wanted), v.description(`${says}: ${wanted}`));
}

/** A mass, or a volume that the form or food turns into one. */
export function amount(says: string): Text {
  const wanted = "a weight or a volume with its unit, such as 3 lb or 355 mL";
  return v.pipe(v.string(wanted), v.description(`${says}: ${wanted}`));
}

export const momentWords = "a moment such as 2027-06-18T06:30, day 3 18:00 or day 2 lunch";

/** A moment of the trip, local to the place. */
export function moment(says: string): Text {
  return v.pipe(
    v.string(momentWords),
    v.description(`${says}: ${momentWords}; day 1 is the day of departure`),
  );
}

export const instantWords = "a local date and time such as 2027-06-18T06:30";

/** A date and time, local to the place. */
export function instant(says: string): Text {
  return v.pipe(v.string(instantWords), v.description(`${says}: ${instantWords}`));
}

/** A local time of day. */
export function clock(says: string): Text {
  const wanted = 'a time of day in quotes, such as "07:00"';
  return v.pipe(v.string(wanted), v.description(`${says}: ${wanted}`));
}

/** Control characters, and marks that turn the direction of writing, could disguise a name on a screen or label. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused
const printable = /^[^\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]*$/;

/** A key that a person makes up; dots and brackets would be read as steps of a path. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused
export const keyName: RegExp = /^[^.[\]\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]{1,40}$/;

/** A name or other free text, 1 to 200 characters, printable. */
export function text(says: string): Text {
  return v.pipe(
    v.string(`text (${says}); put quotes around a bare number`),
    v.minLength(1, "at least one character"),
    v.maxLength(200, "at most 200 characters"),
    v.regex(printable, "printable characters only"),
    v.description(says),
  );
}

/** One word of a list. */
export function oneOf<const T extends string>(
  words: readonly T[],
  says: string,
): v.GenericSchema<unknown, T> {
  return v.pipe(v.picklist(words, `one of ${words.join(", ")}`), v.description(says));
}

/** A plain number in a range. */
export function number(low: number, high: number, says: string): v.GenericSchema<unknown, number> {
  const wanted = `a number from ${low} to ${high}`;
  return v.pipe(v.number(wanted), v.minValue(low, wanted), v.maxValue(high, wanted), v.description(says));
}

/** A whole number in a range. */
export function whole(low: number, high: number, says: string): v.GenericSchema<unknown, number> {
  const wanted = `a whole number from ${low} to ${high}`;
  return v.pipe(
    v.number(wanted),
    v.integer(wanted),
    v.minValue(low, wanted),
    v.maxValue(high, wanted),
    v.description(says),
  );
}

export function yesNo(says: string): v.GenericSchema<unknown, boolean> {
  return v.pipe(v.boolean("true or false"), v.description(says));
}

/** A list of at most so many. */
export function list<T>(item: v.GenericSchema<unknown, T>, most: number): v.GenericSchema<unknown, T[]> {
  return v.pipe(v.array(item, "a list"), v.maxLength(most, `a list of at most ${most}`));
}

const places: readonly PlaceKind[] = [
  "cabin",
  "closed car",
  "trunk",
  "truck bed",
  "roof",
  "raft",
  "boat",
  "tent",
  "indoors",
  "camp",
];
const grounds: readonly GroundKind[] = ["soil", "sand", "grass", "rock", "snow", "carpet", "boards", "water"];
const forms: readonly IceForm[] = ["block", "cube", "crushed", "jug", "gel pack", "eutectic pack", "dry ice"];
const covers: readonly Cover[] = ["none", "wet cloth", "reflective", "blanket", "wet cloth inside"];

export const placeSchema: v.GenericSchema<unknown, PlaceKind> = oneOf(
  places,
  "Where the coolers are; a boat is its bilge below deck, a raft the open air on the water",
);
export const groundSchema: v.GenericSchema<unknown, GroundKind> = oneOf(grounds, "What a cooler stands on");
export const formSchema: v.GenericSchema<unknown, IceForm> = oneOf(forms, "Form of the ice or pack");
export const coverSchema: v.GenericSchema<unknown, Cover> = oneOf(covers, "What lies over the cooler");

const allergens: readonly Allergen[] = [
  "milk",
  "egg",
  "fish",
  "shellfish",
  "tree nuts",
  "peanuts",
  "wheat",
  "soy",
  "sesame",
];

/** Allergens by name; a list may be empty. */
export function allergenList(says: string): v.GenericSchema<unknown, Allergen[]> {
  const one = oneOf(allergens, "An allergen");
  return v.pipe(list(one, allergens.length), v.description(`${says}; of ${allergens.join(", ")}`));
}

const layerWords = "one of base, fill, top, or a row number from 0 (the base) to 20";
export const layerSchema: v.GenericSchema<unknown, LayerFile> = v.pipe(
  v.union(
    [v.picklist(["base", "fill", "top"]), v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(20))],
    layerWords,
  ),
  v.description("Where in the column it is packed"),
);
