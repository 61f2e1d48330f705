import { toJsonSchema } from "@valibot/to-json-schema";
import * as v from "valibot";
import { planSchemaWith } from "./planSchema.ts";
import type { Band, Result } from "./result.ts";

type BothWays<T> = <S extends v.GenericSchema<T>>(
  schema: S & (T extends v.InferInput<S> ? unknown : never),
) => v.GenericSchema<T>;

/** Compiles only while the schema lets nothing through that is no `T`, and every `T` through. */
export function bothWays<T>(): BothWays<T> {
  return (schema) => schema;
}

const number = v.number();
const numbers = v.array(number);
const perhaps = v.nullable(number);

export const bandSchema: v.GenericSchema<Band> = v.pipe(
  v.strictObject({ p10: perhaps, p50: perhaps, p90: perhaps }),
  v.description("Middle and both ends that eight of ten runs lie between; null is not before the return"),
);
const bandSeries = v.strictObject({ p10: numbers, p50: numbers, p90: numbers });
const gappySeries = v.strictObject({ p10: v.array(perhaps), p50: v.array(perhaps), p90: v.array(perhaps) });

const heat = v.pipe(
  v.strictObject({
    lid: number,
    sides: number,
    base: number,
    seal: number,
    openingAir: number,
    openingExposure: number,
    warmItems: number,
    body: number,
    sun: number,
    dryIceGas: number,
  }),
  v.description("Into the contents, middle case; sun and dryIceGas are within the others"),
);

const spread = v.strictObject({ p10: number, p50: number, p90: number });

const history = v.pipe(
  v.strictObject({
    records: number,
    before_W_per_K: spread,
    now_W_per_K: spread,
    odd: v.array(v.string()),
  }),
  v.description("What earlier trips taught of the conductance; odd are the trips that the others contradict"),
);

const cooler = v.strictObject({
  name: v.string(),
  volume_L: number,
  conductance_W_per_K: number,
  body_kJ_per_K: number,
  packedWeight_kg: number,
  filled_frac: number,
  iceToLoad_ratio: perhaps,
  frozenFoodAsIce_kg: number,
  iceOut_h: bandSchema,
  iceGaps_h: v.array(v.tuple([number, number])),
  overLimit_h: bandSchema,
  series: v.strictObject({
    t_h: v.pipe(numbers, v.description("Hours from departure")),
    outside_C: numbers,
    air_C: bandSeries,
    ice_kg: bandSeries,
    dryIce_kg: bandSeries,
    water_L: bandSeries,
    waterline_m: v.array(number),
    warmestPerishable_C: gappySeries,
  }),
  heat_kJ: heat,
  heatUntil_h: number,
  coldStore_kJ: number,
  drainSwitch: v.nullable(
    v.strictObject({
      to: v.picklist(["keep", "open"]),
      iceGain_h: bandSchema,
      foodGain_h: v.nullable(bandSchema),
    }),
  ),
  iceMelted_kg: number,
  drained_L: number,
  condensed_g: number,
  balance: v.strictObject({ energy_rel: number, water_g: number }),
  history: v.exactOptional(history),
  doubts: v.exactOptional(
    v.array(
      v.strictObject({
        about: v.string(),
        says: v.string(),
        advice: v.string(),
        share_frac: number,
        narrows_frac: number,
      }),
    ),
  ),
});

const food = v.strictObject({
  name: v.string(),
  cooler: v.string(),
  perishable: v.boolean(),
  eaten_h: perhaps,
  coreMax_C: bandSchema,
  coreMin_C: bandSchema,
  belowLimit_h: bandSchema,
  overLimit_h: bandSchema,
  overLimit_frac: v.exactOptional(number),
  warm_h: bandSchema,
  warmAllowed_h: perhaps,
  thawed_h: bandSchema,
  wet_h: v.nullable(bandSchema),
  verdict: v.picklist(["keep", "eat next", "discard"]),
  rule: v.string(),
  why: v.string(),
});

const text = v.string();
/** What every result that holds a forecast has, whichever command it came from. */
const told = {
  coldstow: v.literal(1),
  trip: v.strictObject({ title: text, depart: text, return: text, hours: number }),
  limit: v.strictObject({ profile: text, limit_C: number }),
  assumed: v.array(v.strictObject({ path: text, value: text, why: text, effect_h: perhaps })),
  food: v.array(food),
  coolers: v.array(cooler),
  warnings: v.array(v.strictObject({ code: text, says: text, path: text })),
  ensemble: v.exactOptional(
    v.pipe(
      v.strictObject({ members: number, seed: number, confidence_frac: number }),
      v.description("What the bands come from; without it every band holds the middle case three times"),
    ),
  ),
  coldHours: v.exactOptional(
    v.strictObject({
      from_h: number,
      to_h: number,
      coolers: v.array(v.strictObject({ name: text, heat_kJ: heat })),
    }),
  ),
  plan: v.exactOptional(planSchemaWith(bandSchema)),
};

/** What the program prints with `--json`: the one description of it that a machine can check. */
export const resultSchema: v.GenericSchema<Result> = bothWays<Result>()(
  v.strictObject({ command: v.picklist(["forecast", "plan"]), ...told }),
);

/**
 * The same of a later room's command, with what it adds: the forecast's part is checked against `Result` here, the rest by
 * whoever adds it.
 */
export function resultSchemaWith<T>(command: string, more: v.ObjectEntries): v.GenericSchema<T> {
  return v.strictObject({ command: v.literal(command), ...told, ...more }) as unknown as v.GenericSchema<T>;
}

/** The schema of a result as JSON Schema, for editors and other programs. */
export function resultSchemaJson(): object {
  return { title: "Coldstow result", ...toJsonSchema(resultSchema, { errorMode: "throw" }) };
}
