import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { bandSchema as band, bothWays, resultSchemaWith } from "../forecast/resultSchema.ts";
import type { CampJson, CampResult } from "./campResult.ts";

const number = v.number();
const text = v.string();
const perhaps = v.nullable(number);

const act = v.strictObject({
  key: text,
  does: text,
  gain: v.pipe(
    v.strictObject({ food_h: band, warm_h: band, ice_h: band, ice_kg: band }),
    v.description("Done now less not done, member by member; positive is gained"),
  ),
  logs: v.pipe(
    v.array(v.record(v.string(), v.unknown())),
    v.description("Entries that a log gets once it was done, without id, moment and who"),
  ),
});

const look = v.strictObject({
  id: text,
  at_h: number,
  cooler: text,
  saw: text,
  of: v.picklist(["ice", "air", "water"]),
  before_h: v.pipe(band, v.description("End of the ice before this look was known")),
  after_h: band,
  wrong_frac: v.pipe(number, v.description("Chance that the look was of the wrong cooler, hour or tap")),
});

const learned = v.strictObject({
  cooler: text,
  nLooks: number,
  iceOutBefore_h: v.pipe(band, v.description("As it would be told without any look")),
  iceOut_h: band,
  conductanceBefore_W_per_K: band,
  conductance_W_per_K: band,
  members: v.pipe(number, v.description("Members of equal weight that the bands rest on")),
});

const camp = bothWays<CampResult>()(
  v.strictObject({
    now_h: number,
    nEntries: number,
    nWithdrawn: number,
    looks: v.array(look),
    learned: v.array(learned),
    now: v.pipe(
      v.nullable(act),
      v.description("The one thing to do now; null where none is needed or helps"),
    ),
    needed: v.pipe(
      v.nullable(v.boolean()),
      v.description("Whether something would fail if nothing was done; null where nothing was tried"),
    ),
    others: v.array(act),
    eatOrder: v.array(
      v.strictObject({
        name: text,
        cooler: text,
        overLimit_h: band,
        eaten_h: perhaps,
        verdict: v.picklist(["keep", "eat next", "discard"]),
      }),
    ),
    unreckoned: v.array(text),
  }),
);

/** What `camp --json` prints. */
export const campSchema: v.GenericSchema<CampJson> = resultSchemaWith<CampJson>("camp", { camp });

export const campSchemaJson = (): object => ({
  title: "Coldstow result of camp",
  ...toJsonSchema(campSchema, { errorMode: "throw" }),
});
