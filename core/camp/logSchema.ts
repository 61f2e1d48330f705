import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { foodSchema, iceAmountEntries } from "../trip/schema/contents.ts";
import { spotEntries } from "../trip/schema/setting.ts";
import { coverSchema, list, moment, oneOf, placeSchema, quantity, text } from "../trip/schema/words.ts";
import type { IceLevel, LogEntryFile, LogFile } from "./logFile.ts";

/** From full to none. */
const iceLevels: readonly IceLevel[] = ["full", "3/4", "1/2", "1/4", "slush", "water"];

/** The key that says what kind of entry it is, for entries about one cooler. */
export const coolerActs = [
  "ice",
  "read",
  "drained",
  "added",
  "opened",
  "out",
  "in",
  "moved",
  "merged into",
  "covered",
  "wetted",
  "swamped",
  "dumped",
] as const;

/** The same, for entries about the trip or about another entry. */
export const tripActs = ["withdraws", "return", "skipped", "swapped", "none at"] as const;

/** The most entries of one log: a hundred a day over the longest trip. */
const MOST_ENTRIES = 10_000;

const idWords = "1 to 40 letters, digits, - and _";
const idSchema = (says: string): v.GenericSchema<unknown, string> =>
  v.pipe(v.string(idWords), v.regex(/^[A-Za-z0-9_-]{1,40}$/, idWords), v.description(`${says}: ${idWords}`));

const happened = (says: string): v.GenericSchema<unknown, true> =>
  v.pipe(v.literal(true, "true, or left out"), v.description(says));

const measuredOr = (kind: "volume" | "duration", says: string): v.GenericSchema<unknown, string | true> => {
  const wanted =
    kind === "volume" ? "a volume such as 2 L, or true" : "a length of time such as 2 min, or true";
  return v.pipe(v.union([v.string(), v.literal(true)], wanted), v.description(`${says}: ${wanted}`));
};

const added = v.strictObject(
  { ...iceAmountEntries, from: v.optional(quantity("temperature", "Temperature of the ice as it went in")) },
  "a mapping with form and amount",
);

const meal = (says: string): v.GenericSchema<unknown, string> =>
  v.pipe(v.string("a meal such as day 3 dinner"), v.description(`${says}, such as day 3 dinner`));

const swapped = v.pipe(
  v.tuple([meal("One meal"), meal("The other")], "a list of two meals"),
  v.description("Two meals whose dishes changed places"),
);

/** Keys of an entry beside its head; which may stand together is checked where entries are read. */
const acts = {
  ice: v.optional(oneOf(iceLevels, "How much of the most ice it held is left, by a glance")),
  read: v.optional(quantity("temperature", "What a thermometer showed")),
  of: v.optional(text("what the thermometer was in: air, water, or an item")),
  drained: v.optional(measuredOr("volume", "Meltwater poured off")),
  added: v.optional(added),
  opened: v.optional(measuredOr("duration", "How long the lid stood open")),
  out: v.optional(text("an item taken out for good")),
  share: v.optional(quantity("share", "How much of what was left of the item; else all")),
  in: v.optional(foodSchema),
  moved: v.optional(placeSchema),
  ...spotEntries,
  "merged into": v.optional(text("the cooler that it was emptied into")),
  covered: v.optional(coverSchema),
  wetted: v.optional(happened("The cloth over it was wetted")),
  swamped: v.optional(happened("It filled with water from outside")),
  dumped: v.optional(happened("It was lost with all that was in it")),
  withdraws: v.optional(idSchema("The entry that is taken back")),
  return: v.optional(moment("The new moment of return")),
  skipped: v.optional(meal("A meal that nobody ate")),
  swapped: v.optional(swapped),
  "none at": v.optional(text("the place, as its supply names it, that had no ice")),
};

const entrySchema = v.strictObject(
  {
    id: idSchema("Unique in the log"),
    at: moment("When it was seen or done"),
    by: v.optional(text("which phone or person wrote it")),
    cooler: v.optional(text("the name of a cooler")),
    ...acts,
  },
  "a mapping with id, at, cooler and what was seen or done",
);

/** The shape of a camp log file. That an entry says one thing alone is checked by `readLog`. */
export const logSchema: v.GenericSchema<unknown, LogFile> = v.strictObject(
  {
    "coldstow-log": v.pipe(
      v.literal(1, "1, the version of this file format"),
      v.description("Version of the format"),
    ),
    trip: v.optional(text("the title of the trip")),
    entries: list(entrySchema as unknown as v.GenericSchema<unknown, LogEntryFile>, MOST_ENTRIES),
  },
  "a mapping with coldstow-log: 1 and entries",
) as unknown as v.GenericSchema<unknown, LogFile>;

/** The JSON Schema (draft 7) of a camp log, for editors. It also knows that an entry says one thing alone. */
export function logSchemaJson(): object {
  const schema = toJsonSchema(logSchema as v.GenericSchema, { errorMode: "throw" }) as {
    properties: { entries: { items: object } };
  };
  const { entries } = schema.properties;
  const oneOfThem = [
    ...coolerActs.map((act) => ({ required: ["cooler", act] })),
    ...tripActs.map((act) => ({ required: [act] })),
  ];
  const items = { ...entries.items, oneOf: oneOfThem };
  return {
    title: "Coldstow camp log",
    ...schema,
    properties: { ...schema.properties, entries: { ...entries, items } },
  };
}
