import * as v from "valibot";
import type { RulesFile, WarmLoadFile } from "../file.ts";
import { shapeSchema } from "./contents.ts";
import { amount, moment, oneOf, quantity, text, whole, yesNo } from "./words.ts";

/** Game or fish that may come at an unknown hour. */
export const warmLoadSchema: v.GenericSchema<unknown, WarmLoadFile> = v.strictObject(
  {
    name: text("a name for this load"),
    amount: amount("The most of it that may come"),
    by: moment("The latest moment it may come"),
    like: v.optional(text("the kind of food it is like, such as venison, beef, salmon")),
    at: v.optional(quantity("temperature", "Its temperature when it goes in")),
    thick: v.optional(quantity("length", "Least dimension of one piece")),
    shape: v.optional(shapeSchema),
    pieces: v.optional(whole(1, 500, "In how many pieces it comes")),
    bone: v.optional(oneOf(["in", "out"], "Whether the bones are still in; it then cools more slowly")),
    into: v.optional(text("the name of a cooler")),
  },
  "a mapping with name, amount and by",
);

const locker = v.strictObject(
  {
    length: quantity("length", "Room inside, long way"),
    width: quantity("length", "Room inside, short way"),
    height: quantity("length", "Room inside, base to top"),
  },
  "a mapping with length, width, height",
);

/** What was found out about the rules of the place. What is left out stays an open question. */
export const rulesSchema: v.GenericSchema<unknown, RulesFile> = v.strictObject(
  {
    agency: v.optional(text("who makes the rules there")),
    read: v.optional(text("when you last read its order")),
    permit: v.optional(text("the permit, or what it asks for")),
    bears: v.optional(oneOf(["locker", "container", "hang", "none"], "How food has to be kept from animals")),
    locker: v.optional(locker),
    glass: v.optional(yesNo("Whether glass is allowed")),
    fires: v.optional(text("what is said about fires")),
    "pack out": v.optional(text("what has to be carried out")),
    carcass: v.optional(text("what is said about game and its remains")),
  },
  "a mapping with agency, bears, glass and what else was found out",
);
