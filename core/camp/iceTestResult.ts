import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { bothWays } from "../forecast/resultSchema.ts";
import type { Spread } from "../matter/spread.ts";
import type { OddKind } from "./oddWeighings.ts";

/** A further weighing and what it would give. */
export interface NextWeighing {
  after_h: number;
  /** Width of the conductance's band with it and those named before it, as a share of what it is without. */
  width_frac: number;
}

/** One weighing beside the fit. */
export interface WeighingResult {
  after_h: number;
  of: "ice" | "drained";
  measured_kg: number;
  /** By the fit. */
  fitted_kg: number;
  residual_kg: number;
  /** Counted in the fit. */
  isCounted: boolean;
}

export interface IceTestResult {
  coldstow: 1;
  command: "icetest";
  test: { title: string; ended: string | null; cooler: string; ice_kg: number };
  assumed: { path: string; value: string; why: string }[];
  /** Before the test, of a cooler of this kind. */
  class_W_per_K: Spread;
  /** After it; the same as before where it does not tell. */
  conductance_W_per_K: Spread;
  body_kJ_per_K: Spread;
  /** Ice that melts a day in this room with all of the inside at 0 °C. */
  loss_kg_per_day: Spread & { at_C: number };
  /** Share of coolers of its kind that let in more heat; null where the test does not tell. */
  better_frac: number | null;
  /** The band is narrower by so much that it is worth keeping. */
  tells: boolean;
  weighings: WeighingResult[];
  /** The residuals of `weighings`, in their order. */
  residual_kg: number[];
  odd: { kind: OddKind | "swings"; weighings: number[]; says: string }[];
  /** Ice through the hours: by the fit, and of its kind; the conductance alone makes the bands. */
  course: {
    t_h: number[];
    ice_kg: { p10: number[]; p50: number[]; p90: number[] };
    class_kg: { p10: number[]; p90: number[] };
  };
  /** Where to weigh next, what narrows most first; empty where the ice is gone or nothing more is to be had. */
  next: NextWeighing[];
  /** What the test says by itself, for a history; null where it says too little. */
  learned_W_per_K: Spread | null;
}

const number = v.number();
const text = v.string();
const numbers = v.array(number);
const spread = v.strictObject({ p10: number, p50: number, p90: number });

/** What `icetest --json` prints. */
export const iceTestResultSchema: v.GenericSchema<IceTestResult> = bothWays<IceTestResult>()(
  v.strictObject({
    coldstow: v.literal(1),
    command: v.literal("icetest"),
    test: v.strictObject({ title: text, ended: v.nullable(text), cooler: text, ice_kg: number }),
    assumed: v.array(v.strictObject({ path: text, value: text, why: text })),
    class_W_per_K: spread,
    conductance_W_per_K: spread,
    body_kJ_per_K: spread,
    loss_kg_per_day: v.strictObject({ at_C: number, p10: number, p50: number, p90: number }),
    better_frac: v.nullable(number),
    tells: v.boolean(),
    weighings: v.array(
      v.strictObject({
        after_h: number,
        of: v.picklist(["ice", "drained"]),
        measured_kg: number,
        fitted_kg: number,
        residual_kg: number,
        isCounted: v.boolean(),
      }),
    ),
    residual_kg: numbers,
    odd: v.array(
      v.strictObject({
        kind: v.picklist([
          "ice grew",
          "one weighing",
          "lost at once",
          "came back",
          "unlike its kind",
          "swings",
        ]),
        weighings: numbers,
        says: text,
      }),
    ),
    course: v.strictObject({
      t_h: numbers,
      ice_kg: v.strictObject({ p10: numbers, p50: numbers, p90: numbers }),
      class_kg: v.strictObject({ p10: numbers, p90: numbers }),
    }),
    next: v.array(v.strictObject({ after_h: number, width_frac: number })),
    learned_W_per_K: v.nullable(spread),
  }),
);

/** The schema as JSON Schema. */
export function iceTestSchemaJson(): object {
  return {
    title: "Coldstow result of icetest",
    ...toJsonSchema(iceTestResultSchema as v.GenericSchema, { errorMode: "throw" }),
  };
}
