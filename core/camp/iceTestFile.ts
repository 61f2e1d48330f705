import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import type { CoolerFile, IceFile } from "../trip/file.ts";
import { iceSchema } from "../trip/schema/contents.ts";
import { coolerSchema } from "../trip/schema/coolers.ts";
import { amount, list, quantity, text } from "../trip/schema/words.ts";

/*
 * A home ice test as a person writes it: one cooler with ice, shut, in a room. Quantities are still text.
 */

type Maybe<T> = T | undefined;

export interface WeighedFile {
  after: string;
  ice?: Maybe<string>;
  drained?: Maybe<string>;
}

export interface IceTestFile {
  "coldstow-test": 1;
  title: string;
  ended?: Maybe<string>;
  room: string | { file: string };
  humidity?: Maybe<string>;
  /** How warm the empty cooler was when the ice went in. */
  body?: Maybe<string>;
  /** Smallest step of the scale. */
  scale?: Maybe<string>;
  cooler: CoolerFile;
  ice: IceFile[];
  weighed?: Maybe<WeighedFile[]>;
}

const weighing = v.strictObject(
  {
    after: quantity("duration", "Since the lid was shut"),
    ice: v.optional(quantity("mass", "Ice left, water shaken off")),
    drained: v.optional(amount("Water let out since the last time")),
  },
  "a mapping with after, and ice or drained",
);

/** The shape of an ice test. */
export const iceTestSchema: v.GenericSchema<unknown, IceTestFile> = v.strictObject(
  {
    "coldstow-test": v.pipe(
      v.literal(1, "1, the version of this file format"),
      v.description("Version of the format"),
    ),
    title: text("a title"),
    ended: v.optional(text("when it ended, as 2027-06-22")),
    room: v.union(
      [
        quantity("temperature", "The room it stands in"),
        v.strictObject(
          { file: text("a CSV of hours and temperatures") },
          "a temperature, or a mapping with file",
        ),
      ],
      "a temperature, or a mapping with file",
    ),
    humidity: v.optional(quantity("share", "Humidity of the room")),
    body: v.optional(quantity("temperature", "The empty cooler when the ice went in")),
    scale: v.optional(quantity("mass", "Smallest step that the scale shows")),
    cooler: coolerSchema,
    ice: v.pipe(list(iceSchema, 10), v.minLength(1, "a list of at least one lot of ice")),
    weighed: v.optional(list(weighing, 60)),
  },
  "a mapping with coldstow-test: 1, title, room, cooler, ice",
);

/** The JSON Schema (draft 7) of an ice test, for editors. */
export function iceTestFileSchemaJson(): object {
  return {
    title: "Coldstow ice test",
    ...toJsonSchema(iceTestSchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
