import * as v from "valibot";
import type { EventFile } from "../file.ts";
import { foodSchema, iceAmountEntries } from "./contents.ts";
import { spotEntries } from "./setting.ts";
import { coverSchema, layerSchema, moment, placeSchema, quantity, text } from "./words.ts";

const shape = "a mapping with at, do and what it needs";
const at = moment("When it happens");
const cooler = text("the name of a cooler");

/** Anything that happens at a moment of the trip. */
export const eventSchema: v.GenericSchema<unknown, EventFile> = v.variant(
  "do",
  [
    v.strictObject(
      {
        at,
        do: v.literal("add ice"),
        to: cooler,
        ...iceAmountEntries,
        from: v.optional(quantity("temperature", "Temperature of the ice as it goes in")),
        layer: v.optional(layerSchema),
      },
      shape,
    ),
    v.strictObject({ at, do: v.literal("put in"), item: foodSchema, to: cooler }, shape),
    v.strictObject({ at, do: v.literal("merge"), from: cooler, into: cooler }, shape),
    v.strictObject(
      {
        at,
        do: v.literal("move"),
        cooler,
        to: placeSchema,
        until: v.optional(moment("When it is back with the rest; else at return")),
        ...spotEntries,
      },
      shape,
    ),
    v.strictObject({ at, do: v.literal("drain"), cooler }, shape),
    v.strictObject(
      { at, do: v.literal("open"), cooler, for: v.optional(quantity("duration", "How long it stays open")) },
      shape,
    ),
    v.strictObject({ at, do: v.literal("cover"), cooler, cover: coverSchema }, shape),
    v.strictObject({ at, do: v.literal("wet cloth"), cooler }, shape),
    v.strictObject(
      {
        at,
        do: v.literal("take out"),
        item: text("the name of a food or drink"),
        share: v.optional(quantity("share", "Share of what is left of it; else all of it")),
      },
      shape,
    ),
  ],
  "one of add ice, put in, merge, move, drain, open, cover, wet cloth, take out",
);
