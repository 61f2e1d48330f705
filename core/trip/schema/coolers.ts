import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { type BuildKey, builds } from "../../cooler/builds.ts";
import type { InsulationKey } from "../../cooler/types.ts";
import type { CoolerFile, CoolerKeysFile, FleetFile } from "../file.ts";
import { inlineHistorySchema } from "./history.ts";
import { clock, coverSchema, list, moment, number, oneOf, quantity, text, whole } from "./words.ts";

const buildKeys: readonly BuildKey[] = ["soft", "foam", "thin", "standard", "thick", "vacuum", "icebox"];
const buildWords: string = buildKeys.map((key) => `${key} (${builds[key].says})`).join("; ");
const insulations: readonly InsulationKey[] = [
  "polyurethane",
  "EPS",
  "XPS",
  "vacuum panel",
  "soft foam",
  "air",
];

const inside = v.strictObject(
  {
    length: quantity("length", "Room inside, long way"),
    width: quantity("length", "Room inside, short way"),
    height: quantity("length", "Room inside, base to lid"),
  },
  "a mapping with length, width, height",
);

const wall = v.strictObject(
  {
    lid: v.optional(quantity("length", "Stated thickness of the lid's insulation")),
    sides: v.optional(quantity("length", "Stated thickness of the sides' insulation")),
    base: v.optional(quantity("length", "Stated thickness of the base's insulation")),
    insulation: v.optional(oneOf(insulations, "What the walls are filled with")),
  },
  "a mapping with lid, sides, base, insulation",
);

const start = v.strictObject(
  {
    at: v.optional(quantity("temperature", "Temperature of the empty body at packing")),
    prechill: v.optional(quantity("duration", "How long ice stood in it before packing")),
    with: v.optional(quantity("mass", "The ice that stood in it, thrown away at packing")),
    kept: v.optional(quantity("temperature", "The room in which it was kept until packing")),
  },
  "a mapping with one of: at; prechill and with; kept",
);

const openings = v.strictObject(
  {
    "per day": v.optional(number(0, 500, "How often a day the lid is lifted")),
    for: v.optional(quantity("duration", "How long it stays open")),
    from: v.optional(clock("First opening of a day")),
    to: v.optional(clock("Last opening of a day")),
  },
  "a mapping with per day, for, from, to",
);

const entries = {
  size: v.optional(quantity("volume", "Room inside")),
  build: v.optional(
    v.pipe(
      v.picklist(buildKeys, `one of ${buildWords}`),
      v.description(`Kind of body: ${buildWords}. The keys inside, wall and conductance overrule it`),
    ),
  ),
  inside: v.optional(inside),
  wall: v.optional(wall),
  conductance: v.optional(
    quantity("conductance", "Measured, whole cooler, outside air to an inside surface; overrules the wall"),
  ),
  history: v.optional(
    v.union(
      [
        text("a file in the folder of the trip file or below, with what earlier trips taught of this cooler"),
        inlineHistorySchema,
      ],
      "a file in the folder of the trip file or below, or a mapping with before and learned",
    ),
  ),
  weight: v.optional(quantity("mass", "Empty weight")),
  color: v.optional(oneOf(["white", "light", "medium", "dark"], "Colour outside")),
  absorptance: v.optional(number(0, 1, "Share of sunlight that the outside absorbs; overrules color")),
  start: v.optional(start),
  holds: v.optional(oneOf(["food", "drinks", "any"], "What it is for")),
  "sealed until": v.optional(moment("Not opened before")),
  openings: v.optional(openings),
  drain: v.optional(oneOf(["keep", "daily", "open"], "What becomes of the meltwater")),
  cover: v.optional(coverSchema),
  top: v.optional(oneOf(["none", "foam sheet", "cold packs"], "What lies on top, under the lid")),
};

/** What may be said of a cooler, without its name. */
export const coolerKeysSchema: v.GenericSchema<unknown, CoolerKeysFile> = v.strictObject(
  entries,
  "a mapping with size",
);

const numberInFleet = whole(1, 99_999, "Its number in the fleet");

export const coolerSchema: v.GenericSchema<unknown, CoolerFile> = v.strictObject(
  { name: text("a name for this cooler"), number: v.optional(numberInFleet), ...entries },
  "a mapping with name and size",
);

/** The shape of a fleet file: the keys of a cooler in a trip file, with a number in place of a name. */
export const fleetSchema: v.GenericSchema<unknown, FleetFile> = v.strictObject(
  {
    "coldstow-fleet": v.pipe(
      v.literal(1, "1, the version of this file format"),
      v.description("Version of the format"),
    ),
    coolers: v.pipe(
      list(v.strictObject({ number: numberInFleet, ...entries }, "a mapping with number and size"), 500),
      v.minLength(1, "a list of at least one cooler"),
    ),
  },
  "a mapping with coldstow-fleet: 1 and coolers",
);

/** The JSON Schema (draft 7) of a fleet file, for editors. */
export function fleetSchemaJson(): object {
  return { title: "Coldstow fleet", ...toJsonSchema(fleetSchema as v.GenericSchema, { errorMode: "throw" }) };
}
