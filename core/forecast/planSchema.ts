import * as v from "valibot";
import type { PlanResult } from "./planResult.ts";
import type { Band } from "./result.ts";

const text = v.string();
const number = v.number();
const count = v.pipe(number, v.integer());
const perhaps = v.nullable(number);
const maybeText = v.nullable(text);
const texts = v.array(text);
const yesNo = v.boolean();

/** The schema of the contract's `plan` part, with that of a band as the result has it. */
export function planSchemaWith(band: v.GenericSchema<Band>): v.GenericSchema<PlanResult> {
  return v.strictObject({
    file: maybeText,
    book: maybeText,
    calendar: maybeText,
    ice: v.array(ice),
    assign: v.array(v.strictObject({ item: text, cooler: text, why: text, pinned: yesNo })),
    otherwise: v.array(
      v.strictObject({ says: text, foodGain_h: v.nullable(band), iceGain_h: v.nullable(band) }),
    ),
    states: v.array(
      v.strictObject({
        item: text,
        state: v.picklist(["frozen", "chilled", "ambient", "dry"]),
        why: text,
        pinned: yesNo,
      }),
    ),
    layers: v.array(layer),
    ...schedules(band),
    ...advice(band),
    cost: perhaps,
    weight_kg: number,
  });
}

const ice = v.strictObject({
  form: text,
  pieces: count,
  each_kg: number,
  cooler: text,
  where: text,
  by: text,
  price: perhaps,
  weight_kg: number,
});

const place = v.strictObject({
  what: text,
  item: text,
  kind: v.picklist(["ice", "pack", "frozen", "raw", "ready", "produce", "drink", "loose ice"]),
  share_frac: number,
  x_m: number,
  y_m: number,
  z_m: number,
  length_m: number,
  width_m: number,
  height_m: number,
});

const layer = v.strictObject({
  cooler: text,
  layer: count,
  items: texts,
  from_m: number,
  thick_m: number,
  places: v.array(place),
  notes: texts,
});

const numbers = v.array(number);
const bandSeries = v.strictObject({ p10: numbers, p50: numbers, p90: numbers });
const course = v.pipe(
  v.strictObject({
    t_h: numbers,
    apart_kg: bandSeries,
    joined_kg: bandSeries,
    from_kg: numbers,
    into_kg: numbers,
  }),
  v.description("Ice left in both coolers together, without the merge and with it, and in each left apart"),
);

/** What happens when. */
function schedules(band: v.GenericSchema<Band>) {
  const maybeBand = v.nullable(band);
  return {
    prep: v.array(v.strictObject({ at: text, does: text, why: text, id: text, lasts_h: maybeBand })),
    iceRuns: v.array(
      v.strictObject({
        at: text,
        leaveBy: text,
        where: text,
        form: text,
        pieces: count,
        each_kg: number,
        into: text,
        price: perhaps,
        fallback: text,
        why: text,
      }),
    ),
    merges: v.array(
      v.strictObject({
        at: text,
        from: text,
        into: text,
        gain_h: band,
        foodGain_h: maybeBand,
        fits_frac: number,
        why: text,
        course,
      }),
    ),
    pull: v.array(
      v.strictObject({
        at: text,
        day: count,
        meal: text,
        take: v.array(v.strictObject({ item: text, amount: text, cooler: text, from: text })),
        thaw: v.array(v.strictObject({ item: text, from: text, to: text, for: text, takes_h: maybeBand })),
        back: texts,
      }),
    ),
  };
}

/** What to know and to mind. */
function advice(band: v.GenericSchema<Band>) {
  const lift = v.strictObject({ limit_kg: number, index: number });
  return {
    drinks: v.array(
      v.strictObject({
        cooler: text,
        drink: text,
        count,
        eachIce_kg: number,
        cold_h: number,
        bands: v.exactOptional(v.strictObject({ eachIce_kg: band, cold_h: band })),
        says: text,
      }),
    ),
    lifts: v.array(v.strictObject({ cooler: text, weight_kg: number, one: lift, two: lift, says: text })),
    warmLoad: v.nullable(
      v.strictObject({
        name: text,
        cooler: text,
        amount_kg: number,
        at: text,
        reserveIce_kg: number,
        reserve: v.strictObject({ pieces: count, each: text, form: text, holds: yesNo }),
        space_L: number,
        centreCold_h: band,
        keepsFor_h: band,
        goHomeBy: maybeText,
        layout: texts,
        says: text,
      }),
    ),
    amounts: v.array(v.strictObject({ item: text, amount: text, heads: number, meals: count, says: text })),
    allergens: v.array(v.strictObject({ item: text, contains: v.nullable(texts), meets: texts })),
    waysOut: v.array(v.strictObject({ says: text, holds: yesNo })),
    budget: v.strictObject({ ice: perhaps, food: perhaps, unpriced: texts }),
  };
}
