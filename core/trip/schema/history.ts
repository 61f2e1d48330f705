import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import type { HistoryFile, InlineHistory } from "../file.ts";
import { list, oneOf, quantity, text } from "./words.ts";

const spread = {
  low: quantity("conductance", "One in ten lies below"),
  likely: quantity("conductance", "As likely above as below"),
  high: quantity("conductance", "One in ten lies above"),
};

const before = v.pipe(
  v.strictObject(spread, "a mapping with low, likely, high"),
  v.description("What was believed of its conductance before the first record"),
);

const record = v.strictObject(
  {
    trip: text("the trip or test that taught it"),
    ended: v.optional(text("when it ended, as 2027-06-22")),
    from: v.optional(oneOf(["close-out", "log", "ice test"], "What was looked at")),
    ...spread,
  },
  "a mapping with trip, low, likely, high",
);

const learned = v.pipe(
  list(record, 500),
  v.description("One entry a trip: what that trip says by itself, in any order"),
);

/** A history written into a trip file, at its cooler. */
export const inlineHistorySchema: v.GenericSchema<unknown, InlineHistory> = v.strictObject(
  { before, learned },
  "a mapping with before and learned",
);

/** The shape of a cooler's history: what was believed of its conductance at first, and what each trip taught. */
export const historySchema: v.GenericSchema<unknown, HistoryFile> = v.strictObject(
  {
    "coldstow-history": v.pipe(
      v.literal(1, "1, the version of this file format"),
      v.description("Version of the format"),
    ),
    cooler: text("the cooler's name"),
    before,
    learned,
  },
  "a mapping with coldstow-history: 1, cooler, before and learned",
);

/** The JSON Schema (draft 7) of a history file, for editors. */
export function historySchemaJson(): object {
  return {
    title: "Coldstow history of a cooler",
    ...toJsonSchema(historySchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
