import fc from "fast-check";
import { type BuildKey, bodyOf, builds } from "../../core/cooler/builds.ts";
import { medianClosures } from "../../core/cooler/closures.ts";
import type {
  Act,
  BodyStart,
  CoolerInput,
  Cover,
  DrainHabit,
  FleetInput,
  FoodLot,
  IceForm,
  IceLot,
  LayerWish,
  Lot,
  OpeningHabit,
  OpeningSpans,
  TopSheet,
} from "../../core/cooler/types.ts";
import { buildWalls } from "../../core/cooler/walls.ts";
import {
  foodConductivity_W_per_mK,
  foodCurve,
  foodDensity_kg_per_m3,
} from "../../core/matter/foodProperties.ts";
import { foods } from "../../core/matter/foods.ts";
import { type AnyWeather, anyWeather, aroundIn } from "./anyWeather.ts";

/*
 * Any trip, as plain data: a counterexample that is printed can be typed back. `fleetOf` makes of it what the
 * simulation takes.
 */

export interface AnyIce {
  form: IceForm;
  mass_kg: number;
  pieces: number;
  start_C: number;
  liquid_frac: number;
  layer: LayerWish;
}

export interface AnyFood {
  food: string;
  mass_kg: number;
  start_C: number;
  thick_m: number;
  shape: "slab" | "cylinder" | "lump";
  layer: LayerWish;
  depth: number;
}

export interface AnyCooler {
  build: BuildKey;
  litres: number;
  absorptance_frac: number;
  /** Measured conductance / that of the build; null: not measured. */
  measured_frac: number | null;
  start: BodyStart;
  cover: Cover;
  top: TopSheet;
  drain: DrainHabit;
  openings: OpeningHabit | null;
  sealed_frac: number | null;
  ice: AnyIce[];
  food: AnyFood[];
}

export type AnyAct = { at_frac: number; cooler: number } & (
  | { do: "open"; for_s: number }
  | { do: "put in ice"; ice: AnyIce }
  | { do: "put in food"; food: AnyFood }
  | { do: "take out"; pick: number; share_frac: number }
  | { do: "drain" }
  | { do: "merge" }
  | { do: "cover"; cover: Cover }
  | { do: "wet cloth" }
);

export interface AnyTrip {
  clock_s: number;
  end_s: number;
  weather: AnyWeather;
  coolers: AnyCooler[];
  acts: AnyAct[];
}

/** A number with few digits, so that a counterexample is short; both ends are met. */
const real = (min: number, max: number, steps = 200): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: steps }).map((i) => Number((min + ((max - min) * i) / steps).toPrecision(6)));

const buildKeys = Object.keys(builds) as BuildKey[];
const foodKeys = Object.keys(foods);
const forms: IceForm[] = ["block", "cube", "crushed", "jug", "gel pack", "eutectic pack", "dry ice"];
const coverKinds: Cover[] = ["none", "wet cloth", "reflective", "blanket", "wet cloth inside"];

const anyLayer: fc.Arbitrary<LayerWish> = fc.oneof(
  { weight: 4, arbitrary: fc.constant(null) },
  { weight: 2, arbitrary: fc.constantFrom("base" as const, "fill" as const, "top" as const) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 5 }) },
);

const anyIce: fc.Arbitrary<AnyIce> = fc.record({
  form: fc.constantFrom(...forms),
  mass_kg: real(0.2, 12),
  pieces: fc.integer({ min: 1, max: 6 }),
  start_C: fc.constantFrom(-20, -16, -8, -2, -0.5, 0),
  liquid_frac: fc.constantFrom(0, 0.03, 0.1),
  layer: anyLayer,
});

const anyFood: fc.Arbitrary<AnyFood> = fc.record({
  food: fc.constantFrom(...foodKeys),
  mass_kg: fc.oneof(real(0.1, 8), real(0.02, 0.4)),
  start_C: fc.constantFrom(-18, -10, -2, 0, 4, 20, 30, 60),
  thick_m: fc.constantFrom(0.004, 0.02, 0.03, 0.04, 0.066, 0.12),
  shape: fc.constantFrom("slab" as const, "cylinder" as const, "lump" as const),
  layer: anyLayer,
  depth: fc.integer({ min: 0, max: 96 }),
});

const anyStart: fc.Arbitrary<BodyStart> = fc.oneof(
  { weight: 4, arbitrary: real(-5, 40).map((body_C): BodyStart => ({ kind: "uniform", body_C })) },
  {
    weight: 1,
    arbitrary: fc
      .record({ for_s: real(600, 50_000), ice_kg: fc.constantFrom(0, 1, 4), room_C: real(5, 35) })
      .map((night): BodyStart => ({ kind: "prechill", ...night })),
  },
);

const anyHabit: fc.Arbitrary<OpeningHabit> = fc
  .record({
    perDay: fc.constantFrom(0, 1, 6, 20, 60),
    each_s: fc.constantFrom(5, 20, 90, 600),
    from_s: fc.integer({ min: 0, max: 20 }),
    hours: fc.integer({ min: 1, max: 24 }),
  })
  .map(({ perDay, each_s, from_s, hours }) => ({
    perDay,
    each_s,
    from_s: from_s * 3600,
    to_s: Math.min(24, from_s + hours) * 3600,
  }));

/** Every kind of body, 5–200 L; loads that fit and loads that do not. */
const anyCooler: fc.Arbitrary<AnyCooler> = fc.record({
  build: fc.constantFrom(...buildKeys),
  litres: fc.oneof(real(5, 60), real(60, 200)),
  absorptance_frac: fc.constantFrom(0.25, 0.4, 0.6, 0.88),
  measured_frac: fc.option(real(0.75, 1.3), { freq: 4 }),
  start: anyStart,
  cover: fc.constantFrom(...coverKinds),
  top: fc.constantFrom("none" as const, "foam sheet" as const),
  drain: fc.constantFrom("keep" as const, "daily" as const, "open" as const),
  openings: fc.option(anyHabit),
  sealed_frac: fc.option(real(0, 1.2), { freq: 5 }),
  ice: fc.array(anyIce, { maxLength: 3 }),
  food: fc.array(anyFood, { maxLength: 6 }),
});

const anyAct: fc.Arbitrary<AnyAct> = fc
  .tuple(
    fc.record({ at_frac: real(0, 1), cooler: fc.integer({ min: 0, max: 1 }) }),
    fc.oneof(
      fc.record({ do: fc.constant("open" as const), for_s: fc.constantFrom(5, 60, 600, 3600) }),
      fc.record({ do: fc.constant("put in ice" as const), ice: anyIce }),
      fc.record({ do: fc.constant("put in food" as const), food: anyFood }),
      fc.record({
        do: fc.constant("take out" as const),
        pick: fc.integer({ min: 0, max: 9 }),
        share_frac: fc.constantFrom(0.1, 1 / 3, 0.5, 1),
      }),
      fc.record({ do: fc.constant("drain" as const) }),
      fc.record({ do: fc.constant("merge" as const) }),
      fc.record({ do: fc.constant("cover" as const), cover: fc.constantFrom(...coverKinds) }),
      fc.record({ do: fc.constant("wet cloth" as const) }),
    ),
  )
  .map(([when, what]) => ({ ...when, ...what }));

/** Any trip: weather, one or two coolers, what is in them, and what is done on the way. */
export const anyTrip: fc.Arbitrary<AnyTrip> = fc.record({
  clock_s: fc.integer({ min: 0, max: 23 }).map((hour) => hour * 3600),
  end_s: fc.constantFrom(6, 24, 60, 120).map((hours) => hours * 3600),
  weather: anyWeather,
  coolers: fc.array(anyCooler, { minLength: 1, maxLength: 2 }),
  acts: fc.array(anyAct, { maxLength: 8 }),
});

const iceLot = (ice: AnyIce, id: string): IceLot => ({ kind: "ice", id, ...ice });

function foodLot(row: AnyFood, id: string): FoodLot {
  const food = foods[row.food];
  const { mass_kg, start_C, thick_m, shape, layer, depth } = row;
  return {
    kind: "food",
    id,
    mass_kg,
    pieces: 1,
    start_C,
    curve: foodCurve(food),
    density_kg_per_m3: foodDensity_kg_per_m3(food, 5),
    k_W_per_mK: foodConductivity_W_per_mK(food, 5),
    kFrozen_W_per_mK: foodConductivity_W_per_mK(food, -15),
    thick_m,
    shape,
    layer,
    depth,
  };
}

/** Hours of the day as stretches of the trip. */
function spansOf({ perDay, each_s, from_s, to_s }: OpeningHabit, trip: AnyTrip): OpeningSpans {
  const spans_s: [number, number][] = [];
  for (let midnight = -trip.clock_s; midnight < trip.end_s; midnight += 86_400)
    spans_s.push([midnight + from_s, midnight + to_s]);
  return { perDay, each_s, spans_s };
}

function coolerInput(trip: AnyTrip, index: number, named: (id: string) => string): CoolerInput {
  const { build, litres, absorptance_frac, measured_frac, sealed_frac, ...rest } = trip.coolers[index];
  const body = bodyOf(build, litres / 1000, absorptance_frac);
  if (measured_frac !== null)
    body.measured_W_per_K = measured_frac * buildWalls(body, medianClosures).conductance_W_per_K;
  const lots: Lot[] = [
    ...rest.ice.map((ice, i) => iceLot(ice, named(`ice ${index}.${i}`))),
    ...rest.food.map((food, i) => foodLot(food, named(`food ${index}.${i}`))),
  ];
  const { start, cover, top, drain, openings } = rest;
  return {
    name: named(`cooler ${index}`),
    body,
    start,
    cover,
    top,
    drain,
    openings: openings === null ? null : spansOf(openings, trip),
    sealedUntil_s: sealed_frac === null ? null : sealed_frac * trip.end_s,
    around: aroundIn(trip.weather, trip.clock_s, trip.end_s),
    lots,
  };
}

/**
 * What the simulation takes. Acts that name a cooler that is not there fall on the one that is, and a merge of one
 * cooler is left out.
 *
 * @param named changes the names of coolers and lots
 */
export function fleetOf(trip: AnyTrip, named: (id: string) => string = (id) => id): FleetInput {
  const coolers = trip.coolers.map((_, i) => coolerInput(trip, i, named));
  const ids = coolers.flatMap((cooler) => cooler.lots.map((lot) => lot.id));
  const acts = trip.acts.flatMap((any, i): Act[] => {
    const t_s = any.at_frac * trip.end_s;
    const cooler = Math.min(any.cooler, coolers.length - 1);
    if (any.do === "put in ice")
      return [{ do: "put in", t_s, cooler, lot: iceLot(any.ice, named(`act ${i}`)) }];
    if (any.do === "put in food")
      return [{ do: "put in", t_s, cooler, lot: foodLot(any.food, named(`act ${i}`)) }];
    if (any.do === "take out") {
      if (ids.length === 0) return [];
      return [{ do: "take out", t_s, lot: ids[any.pick % ids.length], share_frac: any.share_frac }];
    }
    if (any.do === "merge")
      return coolers.length < 2 ? [] : [{ do: "merge", t_s, from: cooler, into: 1 - cooler }];
    if (any.do === "open") return [{ do: "open", t_s, cooler, for_s: any.for_s }];
    if (any.do === "cover") return [{ do: "cover", t_s, cooler, cover: any.cover }];
    return [{ do: any.do, t_s, cooler }];
  });
  return { end_s: trip.end_s, coolers, acts };
}
