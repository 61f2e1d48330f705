import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { list, moment, oneOf, quantity, text } from "../trip/schema/words.ts";
import type { IceLevel } from "./logFile.ts";

/*
 * The close-out as a person writes it: one minute at the last cooler. Quantities and moments are still text.
 */

type Maybe<T> = T | undefined;

/** Why something went into the bin. */
export type BinnedWhy = "too much" | "warm" | "wet" | "spoiled" | "not liked" | "other";

export interface CloseOutFile {
  "coldstow-closeout": 1;
  /** Title of the trip, for people. */
  trip?: Maybe<string>;
  /** What was left in each cooler that was looked into, at the return. */
  coolers: {
    name: string;
    /** A level by eye, or what it weighed. */
    ice: string;
    /** About when the last of it went, where somebody saw. */
    gone?: Maybe<string>;
  }[];
  binned?: Maybe<{ item: string; amount?: Maybe<string>; share?: Maybe<string>; why?: Maybe<BinnedWhy> }[]>;
  "never opened"?: Maybe<string[]>;
  "ran out"?: Maybe<{ item: string; when?: Maybe<string> }[]>;
  wrong?: Maybe<string[]>;
}

/** Words for how much ice is left, by eye. */
export const iceLevels: readonly IceLevel[] = ["full", "3/4", "1/2", "1/4", "slush", "water"];

const reasons: readonly BinnedWhy[] = ["too much", "warm", "wet", "spoiled", "not liked", "other"];
const itemName = text("an item of the trip, by its name");

/** The shape of a close-out. */
export const closeOutSchema: v.GenericSchema<unknown, CloseOutFile> = v.strictObject(
  {
    "coldstow-closeout": v.pipe(
      v.literal(1, "1, the version of this file format"),
      v.description("Version of the format"),
    ),
    trip: v.optional(text("title of the trip")),
    coolers: list(
      v.strictObject(
        {
          name: text("a cooler of the trip, by its name"),
          ice: text(`ice left: ${iceLevels.join(", ")}, or what it weighs, such as 2.3 kg`),
          gone: v.optional(moment("About when the last ice went, where it is gone")),
        },
        "a mapping with name, ice, gone",
      ),
      30,
    ),
    binned: v.optional(
      list(
        v.strictObject(
          {
            item: itemName,
            amount: v.optional(text("a weight or a volume with its unit, such as 0.5 lb")),
            share: v.optional(quantity("share", "Share of what was packed, instead of amount")),
            why: v.optional(oneOf(reasons, "Why it went into the bin")),
          },
          "a mapping with item, amount or share, why",
        ),
        500,
      ),
    ),
    "never opened": v.optional(list(itemName, 500)),
    "ran out": v.optional(
      list(
        v.strictObject(
          { item: itemName, when: v.optional(moment("About when the last of it was eaten")) },
          "a mapping with item, when",
        ),
        500,
      ),
    ),
    wrong: v.optional(list(text("what went wrong, in a line"), 100)),
  },
  "a mapping with coldstow-closeout: 1 and coolers",
);

/** The JSON Schema (draft 7) of a close-out, for editors. */
export function closeOutFileSchemaJson(): object {
  return {
    title: "Coldstow close-out",
    ...toJsonSchema(closeOutSchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
