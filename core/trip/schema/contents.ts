import * as v from "valibot";
import type { FoodFile, IceFile, ShapeFile, SupplyFile } from "../file.ts";
import {
  allergenList,
  amount,
  clock,
  formSchema,
  layerSchema,
  list,
  moment,
  momentWords,
  number,
  oneOf,
  quantity,
  text,
  whole,
  yesNo,
} from "./words.ts";

export const shapeSchema: v.GenericSchema<unknown, ShapeFile> = v.strictObject(
  {
    bag: v.optional(quantity("length", "Packed flat, this thick")),
    round: v.optional(quantity("length", "A can, bottle or roll of this diameter")),
    lump: v.optional(quantity("length", "A lump, this thick")),
  },
  "a mapping with one of bag, round, lump",
);

const portion = v.pipe(
  v.union(
    [
      amount("What one adult eats of it at one meal"),
      number(0.01, 100, "Pieces that one adult eats at one meal"),
    ],
    "a weight or a volume with its unit, such as 150 g, or a number of pieces beside each",
  ),
  v.description(
    "What one adult eats of it at one meal, instead of amount: a weight or a volume such as 150 g, or a number of pieces beside each",
  ),
);

const eaten = `${momentWords}; every breakfast; day 2-5 lunch`;

export const foodSchema: v.GenericSchema<unknown, FoodFile> = v.strictObject(
  {
    name: text("a name for this food or drink"),
    amount: v.optional(amount("All of it")),
    count: v.optional(whole(1, 5000, "How many pieces")),
    each: v.optional(amount("One piece")),
    "per person": v.optional(portion),
    for: v.optional(text("a diet of party.diets: only they eat it")),
    "not for": v.optional(text("a diet of party.diets: everyone else eats it")),
    like: v.optional(text("the kind of food it is like, such as stew, chicken, soft drink")),
    raw: v.optional(yesNo("Raw meat, poultry, fish or egg")),
    state: v.optional(
      oneOf(["frozen", "chilled", "ambient", "dry"], "How it is when it goes in; dry needs no cooler"),
    ),
    at: v.optional(quantity("temperature", "Its temperature when it goes in")),
    shape: v.optional(shapeSchema),
    thick: v.optional(quantity("length", "Least dimension of one piece")),
    "freezes badly": v.optional(yesNo("Spoiled by freezing, as eggs, lettuce, cans")),
    watertight: v.optional(yesNo("Packed so that meltwater stays out")),
    "warm before": v.optional(quantity("duration", "Time it spent warm before it went in")),
    "vacuum packed": v.optional(yesNo("Packed under vacuum or gas")),
    refrozen: v.optional(yesNo("Thawed once and frozen again")),
    "days old": v.optional(
      number(0, 3650, "Days it has been kept cold at departure, since it was made, opened or bought"),
    ),
    contains: v.optional(allergenList("What its label says it contains; an empty list for none of them")),
    price: v.optional(number(0, 1e6, "Price of all of it, in your currency")),
    eat: v.optional(
      v.pipe(
        v.union(
          [v.string(), v.pipe(v.array(v.string()), v.maxLength(100))],
          `${eaten}; throughout; or a list of moments`,
        ),
        v.description(`When it is eaten: ${eaten}; throughout; or a list of moments`),
      ),
    ),
    in: v.optional(text("the name of a cooler, or: dry box")),
    layer: v.optional(layerSchema),
  },
  "a mapping with name and amount",
);

type Optional<T> = v.OptionalSchema<v.GenericSchema<unknown, T>, undefined>;

/** Keys that say how much ice, shared by ice aboard and ice put in later. */
export const iceAmountEntries: {
  readonly form: typeof formSchema;
  readonly amount: Optional<string>;
  readonly pieces: Optional<number>;
  readonly each: Optional<string>;
  readonly liquid: Optional<string>;
  readonly price: Optional<number>;
} = {
  form: formSchema,
  amount: v.optional(amount("All of it")),
  pieces: v.optional(whole(1, 500, "How many pieces or bags")),
  each: v.optional(amount("One piece or bag")),
  liquid: v.optional(quantity("share", "Share that is already water, as in a bag from a shop")),
  price: v.optional(number(0, 1e6, "Price of one piece, in your currency")),
};

export const iceSchema: v.GenericSchema<unknown, IceFile> = v.strictObject(
  {
    ...iceAmountEntries,
    at: v.optional(quantity("temperature", "Its temperature when it goes in")),
    bought: v.optional(
      quantity(
        "duration",
        "Dry ice only: how long before departure it was bought, in which it loses some of itself",
      ),
    ),
    in: v.optional(text("the name of a cooler")),
    layer: v.optional(layerSchema),
  },
  "a mapping with form and amount",
);

const weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

export const supplySchema: v.GenericSchema<unknown, SupplyFile> = v.strictObject(
  {
    form: formSchema,
    each: amount("One piece or bag"),
    at: v.optional(quantity("temperature", "Its temperature when bought or made")),
    liquid: v.optional(quantity("share", "Share that is already water")),
    price: v.optional(number(0, 1e6, "Price of one, in your currency; 0 when made at home")),
    where: v.optional(text("where it is sold or made")),
    when: v.optional(
      v.union(
        [moment("When one is there"), list(moment("When one is there"), 100)],
        "a moment, or a list of moments, such as day 4 12:00",
      ),
    ),
    open: v.optional(clock("Hours in which it is sold, such as 08:00-18:00")),
    closed: v.optional(list(oneOf(weekdays, "A day on which nothing is sold"), 7)),
    max: v.optional(whole(0, 500, "Most pieces per visit")),
    chance: v.optional(quantity("share", "How likely it is in stock")),
    away: v.optional(quantity("duration", "Time that fetching it takes")),
  },
  "a mapping with form and each",
);
