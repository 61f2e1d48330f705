import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { bandSchema as band, bothWays } from "../forecast/resultSchema.ts";
import type { CompareResult, HabitsResult, StressResult } from "./types.ts";

const number = v.number();
const text = v.string();
const perhaps = v.nullable(number);

const whatIf = {
  coldstow: v.literal(1),
  trip: v.strictObject({ title: text, depart: text, return: text, hours: number }),
  limit: v.strictObject({ profile: text, limit_C: number }),
  members: v.pipe(number, v.description("Every way was run over the same members")),
  seed: number,
};

const gain = v.pipe(
  v.strictObject({ food_h: band, warm_h: band, ice_h: band, ice_kg: band }),
  v.description("Differences member by member; positive is gained"),
);
const ends = v.strictObject({ iceOut_h: band, overLimit_h: band });

/** What `habits --json` prints. */
export const habitsSchema: v.GenericSchema<HabitsResult> = bothWays<HabitsResult>()(
  v.strictObject({
    ...whatIf,
    command: v.literal("habits"),
    habits: v.array(
      v.strictObject({
        key: text,
        says: text,
        coolers: v.array(text),
        now: text,
        instead: text,
        insteadIsGood: v.boolean(),
        gain,
      }),
    ),
    skipped: v.array(v.strictObject({ key: text, says: text, why: text })),
    sayings: v.array(
      v.strictObject({
        key: text,
        saying: text,
        tried: text,
        claims: text,
        source: text,
        gain,
        found: text,
        agrees: v.picklist(["yes", "no", "in part", "cannot tell"]),
      }),
    ),
    all: v.strictObject({ bad: ends, written: ends, good: ends, iceRatio: band, gain }),
  }),
);

/** What `stress --json` prints. */
export const stressSchema: v.GenericSchema<StressResult> = bothWays<StressResult>()(
  v.strictObject({
    ...whatIf,
    command: v.literal("stress"),
    confidence_frac: number,
    cases: v.array(
      v.strictObject({
        key: v.picklist(["as written", "hotter", "opened twice", "no shade", "half the ice", "started warm"]),
        says: text,
        fails_frac: v.pipe(
          number,
          v.description("Share of the members in which a perishable passes its limit"),
        ),
        holds: v.boolean(),
        first: v.nullable(v.strictObject({ item: text, cooler: text, overLimit_h: band })),
        overLimit_h: band,
        coolers: v.array(v.strictObject({ name: text, iceOut_h: band })),
      }),
    ),
    robust: v.boolean(),
  }),
);

const compared = v.strictObject({
  letter: text,
  title: text,
  file: text,
  ice_kg: number,
  dryIce_kg: number,
  cost: perhaps,
  packedWeight_kg: number,
  coolers: v.array(v.strictObject({ name: text, perishables: v.boolean(), ...ends.entries })),
  atRisk: v.array(text),
  fails_frac: number,
  fuss: v.strictObject({ openings: number, acts: number }),
});

const { coldstow, members, seed } = whatIf;

/** What `compare --json` prints. */
export const compareSchema: v.GenericSchema<CompareResult> = bothWays<CompareResult>()(
  v.strictObject({
    coldstow,
    members,
    seed,
    command: v.literal("compare"),
    trips: v.array(compared),
    pairs: v.pipe(
      v.array(v.strictObject({ a: text, b: text, cooler: text, iceOutGain_h: band })),
      v.description("Differences over the same members, b less a"),
    ),
    series: v.array(
      v.strictObject({
        letter: text,
        cooler: text,
        t_h: v.array(number),
        p10: v.array(number),
        p50: v.array(number),
        p90: v.array(number),
      }),
    ),
  }),
);

/** The schemas as JSON Schema, by command. */
export function whatIfSchemasJson(): Record<"habits" | "stress" | "compare", object> {
  const written = (command: string, schema: v.GenericSchema): object => ({
    title: `Coldstow result of ${command}`,
    ...toJsonSchema(schema, { errorMode: "throw" }),
  });
  return {
    habits: written("habits", habitsSchema),
    stress: written("stress", stressSchema),
    compare: written("compare", compareSchema),
  };
}
