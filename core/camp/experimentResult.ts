import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import type { Cover } from "../cooler/types.ts";
import type { Band } from "../forecast/result.ts";
import { bandSchema, bothWays } from "../forecast/resultSchema.ts";

/** Ice of one arm at one weighing. */
export interface Weighing {
  after_h: number;
  thought_kg: Band;
  /** Each repeat. */
  measured_kg: number[];
}

/** One arm less another, at one weighing: over the same members, not a difference of bands. */
export interface Contrast {
  a: string;
  b: string;
  after_h: number;
  /** a less b. */
  thought_kg: Band;
  /** Standard deviation of one weighed pair about it: room, packing, water that clings, the scale. */
  noise_kg: number;
  /** Pairs to be nearly sure of the sign of the likely difference; null: more than anybody would do. */
  repeats: number | null;
  /** Runs weighed of both arms. */
  runs: number;
  /** Mean of a less mean of b; null: not weighed. */
  measured_kg: number | null;
}

export interface ExperimentResult {
  coldstow: 1;
  command: "experiment";
  title: string;
  question: string | null;
  members: number;
  seed: number;
  oneBox: boolean;
  scale_kg: number;
  arms: {
    name: string;
    ice_kg: number;
    cover: Cover;
    weighings: Weighing[];
    guesses: { who: string; ice_kg: number }[];
  }[];
  contrasts: Contrast[];
}

const number = v.number();
const text = v.string();

/** What `experiment --json` prints. */
export const experimentResultSchema: v.GenericSchema<ExperimentResult> = bothWays<ExperimentResult>()(
  v.strictObject({
    coldstow: v.literal(1),
    command: v.literal("experiment"),
    title: text,
    question: v.nullable(text),
    members: number,
    seed: number,
    oneBox: v.boolean(),
    scale_kg: number,
    arms: v.array(
      v.strictObject({
        name: text,
        ice_kg: number,
        cover: v.picklist(["none", "wet cloth", "reflective", "blanket", "wet cloth inside"]),
        weighings: v.array(
          v.strictObject({ after_h: number, thought_kg: bandSchema, measured_kg: v.array(number) }),
        ),
        guesses: v.array(v.strictObject({ who: text, ice_kg: number })),
      }),
    ),
    contrasts: v.pipe(
      v.array(
        v.strictObject({
          a: text,
          b: text,
          after_h: number,
          thought_kg: bandSchema,
          noise_kg: number,
          repeats: v.nullable(number),
          runs: number,
          measured_kg: v.nullable(number),
        }),
      ),
      v.description("a less b over the same members; noise is of one weighed pair"),
    ),
  }),
);

/** The schema as JSON Schema. */
export function experimentSchemaJson(): object {
  return {
    title: "Coldstow result of experiment",
    ...toJsonSchema(experimentResultSchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
