import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import type { CoolerKeysFile, FoodFile, IceFile } from "../trip/file.ts";
import { foodSchema, iceSchema } from "../trip/schema/contents.ts";
import { coolerKeysSchema } from "../trip/schema/coolers.ts";
import { list, quantity, text, whole, yesNo } from "../trip/schema/words.ts";

/*
 * A kitchen experiment as a person writes it: two or three boxes that differ in one thing. Quantities are still text.
 */

type Maybe<T> = T | undefined;

export interface ArmFile {
  name: string;
  /** What differs from the cooler of all. */
  cooler?: Maybe<CoolerKeysFile>;
  room?: Maybe<string>;
  ice: IceFile[];
  food?: Maybe<FoodFile[]>;
}

export interface ExperimentFile {
  "coldstow-experiment": 1;
  title: string;
  question?: Maybe<string>;
  room: string;
  humidity?: Maybe<string>;
  /** The smallest step of the scale. */
  scale: string;
  /** Hours since the lid was shut at which the ice is weighed, in order. */
  weigh: string[];
  /** All arms in one box, one after the other; else a box for each. */
  "one box"?: Maybe<boolean>;
  cooler: CoolerKeysFile;
  arms: ArmFile[];
  guesses?: Maybe<{ who: string; arm: string; ice: string }[]>;
  measured?: Maybe<{ arm: string; after: string; ice: string; run?: Maybe<number> }[]>;
}

const iceLeft = quantity("mass", "Ice left, water shaken off");
const armName = text("an arm, by its name");

/** The shape of an experiment. */
export const experimentSchema: v.GenericSchema<unknown, ExperimentFile> = v.strictObject(
  {
    "coldstow-experiment": v.pipe(
      v.literal(1, "1, the version of this file format"),
      v.description("Version of the format"),
    ),
    title: text("a title"),
    question: v.optional(text("what it is to answer")),
    room: quantity("temperature", "The room it stands in"),
    humidity: v.optional(quantity("share", "Humidity of the room")),
    scale: quantity("mass", "Smallest step that the scale shows"),
    weigh: v.pipe(
      list(quantity("duration", "Since the lid was shut"), 8),
      v.minLength(1, "a list of at least one length of time"),
    ),
    "one box": v.optional(yesNo("All arms in one box, one after the other")),
    cooler: coolerKeysSchema,
    arms: v.pipe(
      list(
        v.strictObject(
          {
            name: text("a name for this arm"),
            cooler: v.optional(coolerKeysSchema),
            room: v.optional(quantity("temperature", "The room of this arm, where it is another")),
            ice: v.pipe(list(iceSchema, 10), v.minLength(1, "a list of at least one lot of ice")),
            food: v.optional(list(foodSchema, 10)),
          },
          "a mapping with name and ice",
        ),
        3,
      ),
      v.minLength(2, "a list of two or three arms"),
    ),
    guesses: v.optional(
      list(
        v.strictObject(
          {
            who: text("whose guess it is"),
            arm: armName,
            ice: quantity("mass", "Ice left at the last weighing"),
          },
          "a mapping with who, arm, ice",
        ),
        100,
      ),
    ),
    measured: v.optional(
      list(
        v.strictObject(
          {
            arm: armName,
            after: quantity("duration", "Since the lid was shut"),
            ice: iceLeft,
            run: v.optional(whole(1, 50, "Which repeat")),
          },
          "a mapping with arm, after, ice, run",
        ),
        500,
      ),
    ),
  },
  "a mapping with coldstow-experiment: 1, title, room, scale, weigh, cooler, arms",
);

/** The JSON Schema (draft 7) of an experiment, for editors. */
export function experimentFileSchemaJson(): object {
  return {
    title: "Coldstow experiment",
    ...toJsonSchema(experimentSchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
