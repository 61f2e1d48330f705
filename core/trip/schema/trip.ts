import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import type { TripFile } from "../file.ts";
import { foodSchema, iceSchema, supplySchema } from "./contents.ts";
import { coolerSchema } from "./coolers.ts";
import { eventSchema } from "./events.ts";
import { rulesSchema, warmLoadSchema } from "./extras.ts";
import { legSchema, mealsSchema, partySchema, placeFileSchema, weatherSchema } from "./setting.ts";
import { instant, list, oneOf, quantity, text, whole } from "./words.ts";

const shape = v.strictObject(
  {
    coldstow: v.optional(
      v.pipe(v.literal(1, "1, the version of this file format"), v.description("Version of the format")),
    ),
    title: v.optional(text("a title for the trip")),
    depart: instant("When the coolers are shut and leave"),
    return: instant("When the trip ends"),
    place: v.optional(placeFileSchema),
    party: v.optional(partySchema),
    limit: v.optional(
      oneOf(["consumer", "inspected"], "Food temperature limit: consumer 40 F, inspected 41 F"),
    ),
    confidence: v.optional(quantity("share", "How sure the plan must be")),
    meals: v.optional(mealsSchema),
    weather: v.optional(weatherSchema),
    legs: v.optional(v.pipe(list(legSchema, 200), v.minLength(1, "a list of at least one leg"))),
    fleet: v.optional(text("a fleet file in the folder of the trip file or below, with numbered coolers")),
    coolers: v.pipe(list(coolerSchema, 30), v.minLength(1, "a list of at least one cooler")),
    food: v.optional(list(foodSchema, 500)),
    ice: v.optional(list(iceSchema, 200)),
    supply: v.optional(list(supplySchema, 100)),
    freezer: v.optional(
      v.strictObject(
        {
          space: quantity(
            "volume",
            "Room in the freezer at home, for ice and for food frozen before the trip",
          ),
          at: v.optional(quantity("temperature", "How cold it is")),
        },
        "a mapping with space and at",
      ),
    ),
    carry: v.optional(
      v.strictObject({ people: whole(1, 20, "How many people lift a cooler") }, "a mapping with people"),
    ),
    "warm load": v.optional(warmLoadSchema),
    rules: v.optional(rulesSchema),
    events: v.optional(list(eventSchema, 500)),
  },
  "a mapping with depart, return and coolers",
);

/** The shape of a trip file: the one validator, from which the JSON Schema is made. */
export const tripSchema: v.GenericSchema<unknown, TripFile> = shape;

/** Keys of the top level of a trip file, in the order of the format. */
export const tripKeys: readonly string[] = Object.keys(shape.entries);

/** The JSON Schema (draft 7) of a trip file, for editors. It knows shapes and words, not units or ranges. */
export function tripSchemaJson(): object {
  return { title: "Coldstow trip", ...toJsonSchema(tripSchema as v.GenericSchema, { errorMode: "throw" }) };
}
