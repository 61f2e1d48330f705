import * as v from "valibot";
import type { FoodFile, IceFile, SupplyFile } from "../file.ts";
import {
  amount,
  clock,
  formSchema,
  layerSchema,
  list,
  moment,
  number,
  oneOf,
  quantity,
  text,
  whole,
  yesNo,
} from "./words.ts";

const shape = v.strictObject(
  {
    bag: v.optional(quantity("length", "Packed flat, this thick")),
    round: v.optional(quantity("length", "A can, bottle or roll of this diameter")),
    lump: v.optional(quantity("length", "A lump, this thick")),
  },
  "a mapping with one of bag, round, lump",
);

export const foodSchema: v.GenericSchema<unknown, FoodFile> = v.strictObject(
  {
    name: text("a name for this food or drink"),
    amount: v.optional(amount("All of it")),
    count: v.optional(whole(1, 5000, "How many pieces")),
    each: v.optional(amount("One piece")),
    like: v.optional(text("the kind of food it is like, such as stew, chicken, soft drink")),
    raw: v.optional(yesNo("Raw meat, poultry, fish or egg")),
    state: v.optional(
      oneOf(["frozen", "chilled", "ambient", "dry"], "How it is when it goes in; dry needs no cooler"),
    ),
    at: v.optional(quantity("temperature", "Its temperature when it goes in")),
    shape: v.optional(shape),
    thick: v.optional(quantity("length", "Least dimension of one piece")),
    "freezes badly": v.optional(yesNo("Spoiled by freezing, as eggs, lettuce, cans")),
    watertight: v.optional(yesNo("Packed so that meltwater stays out")),
    "warm before": v.optional(quantity("duration", "Time it spent warm before it went in")),
    eat: v.optional(moment("When it is eaten, or: throughout")),
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
