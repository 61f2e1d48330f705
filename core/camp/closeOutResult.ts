import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import type { Band } from "../forecast/result.ts";
import { bandSchema, bothWays } from "../forecast/resultSchema.ts";
import type { Spread } from "../matter/spread.ts";

/** One cooler of a close-out: what was seen, what was thought, and what that teaches. */
export interface CloseOutCooler {
  name: string;
  /** As typed. */
  seen: string;
  /** The look as a weight; 0 for none, null where nothing was reckoned with it. */
  left_kg: number | null;
  thought: { iceLeft_kg: Band; iceOut_h: Band };
  /** Where the look lies among the members. */
  place: "as thought" | "more" | "less" | "beyond" | "not told";
  /** Why nothing is learned; null: something is. */
  why: string | null;
  before_W_per_K: Spread | null;
  /** What this trip says by itself: the record for the history. */
  learned_W_per_K: Spread | null;
  /** What the next trip begins with. */
  next_W_per_K: Spread | null;
  /** Records that its history holds with this one, and those of them that the others contradict. */
  records: number;
  odd: string[];
}

/** What to do otherwise next time. */
export type NextCode =
  | "ice less"
  | "ice enough"
  | "ice more"
  | "ice does not fit"
  | "food less"
  | "food leave"
  | "food more"
  | "food colder"
  | "food drier";

/** One thing to take less or more of next time, with its numbers; the words are made where it is told. */
export interface NextTime {
  code: NextCode;
  /** The item, or the cooler. */
  name: string;
  was_kg: number;
  /** null: more, but nobody can tell how much. */
  want_kg: number | null;
  /** Whole pieces of ice, fewer or more; null: no pieces. */
  pieces: number | null;
  /** One of them, as typed. */
  each: string | null;
  /** In the bin, or left; null: that is not the reason. */
  left_kg: number | null;
}

export interface CloseOutResult {
  coldstow: 1;
  command: "closeout";
  trip: { title: string; depart: string; return: string; hours: number };
  members: number;
  seed: number;
  coolers: CloseOutCooler[];
  binned: {
    mass_kg: number;
    /** Of all food taken along, by weight; null: none was. */
    share_frac: number | null;
    /** Of what has a price; null: nothing has. */
    cost: number | null;
    items: { name: string; mass_kg: number; why: string }[];
  };
  neverOpened: string[];
  wrong: string[];
  next: NextTime[];
}

const number = v.number();
const text = v.string();
const perhaps = v.nullable(number);
const spread = v.nullable(v.strictObject({ p10: number, p50: number, p90: number }));

/** What `closeout --json` prints. */
export const closeOutResultSchema: v.GenericSchema<CloseOutResult> = bothWays<CloseOutResult>()(
  v.strictObject({
    coldstow: v.literal(1),
    command: v.literal("closeout"),
    trip: v.strictObject({ title: text, depart: text, return: text, hours: number }),
    members: number,
    seed: number,
    coolers: v.array(
      v.strictObject({
        name: text,
        seen: text,
        left_kg: perhaps,
        thought: v.strictObject({ iceLeft_kg: bandSchema, iceOut_h: bandSchema }),
        place: v.picklist(["as thought", "more", "less", "beyond", "not told"]),
        why: v.nullable(text),
        before_W_per_K: spread,
        learned_W_per_K: spread,
        next_W_per_K: spread,
        records: number,
        odd: v.array(text),
      }),
    ),
    binned: v.strictObject({
      mass_kg: number,
      share_frac: perhaps,
      cost: perhaps,
      items: v.array(v.strictObject({ name: text, mass_kg: number, why: text })),
    }),
    neverOpened: v.array(text),
    wrong: v.array(text),
    next: v.array(
      v.strictObject({
        code: v.picklist([
          "ice less",
          "ice enough",
          "ice more",
          "ice does not fit",
          "food less",
          "food leave",
          "food more",
          "food colder",
          "food drier",
        ]),
        name: text,
        was_kg: number,
        want_kg: perhaps,
        pieces: perhaps,
        each: v.nullable(text),
        left_kg: perhaps,
      }),
    ),
  }),
);

/** The schema as JSON Schema. */
export function closeOutSchemaJson(): object {
  return {
    title: "Coldstow result of closeout",
    ...toJsonSchema(closeOutResultSchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
