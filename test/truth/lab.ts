import type { Closures } from "../../core/cooler/closures.ts";
import { medianClosures } from "../../core/cooler/closures.ts";
import { runFleet, startFleet } from "../../core/cooler/fleet.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import type { Act, Around, CoolerBody, DrainHabit, FoodLot, IceLot, Lot } from "../../core/cooler/types.ts";
import { firstCrossing_s } from "../../core/forecast/series.ts";
import { foodCurve, foodDensity_kg_per_m3, foodSpread_W_per_mK } from "../../core/matter/foodProperties.ts";
import { foods } from "../../core/matter/foods.ts";

/** A bench in a room: one cooler, constant air, no sun, nobody opens it. */
export interface Bench {
  body: CoolerBody;
  around: Around;
  lots: readonly Lot[];
  end_s: number;
  start_C?: number;
  drain?: DrainHabit;
  acts?: readonly Act[];
  closures?: Partial<Closures>;
}

/** A still room of constant air; 50 % humid at 20 °C, boards under the box. */
export function stillRoom(air_C: number): Around {
  return {
    stays: [],
    breaks_s: [],
    at: (_t_s, out) =>
      Object.assign(out, {
        air_C,
        humidity_kg_per_kg: 0.0073,
        pressure_Pa: 101_325,
        wind_m_per_s: 0,
        lidSun_W_per_m2: 0,
        sideSun_W_per_m2: 0,
        lidRadiant_C: air_C,
        sideRadiant_C: air_C,
        ground_C: air_C,
        groundResistance_m2K_per_W: 0.1,
      }),
  };
}

/** Packs the box, ready to run. */
export function pack(bench: Bench): Fleet {
  const cooler = {
    name: "bench",
    body: bench.body,
    start: { kind: "uniform", body_C: bench.start_C ?? 20 } as const,
    cover: "none" as const,
    top: "none" as const,
    drain: bench.drain ?? ("keep" as const),
    openings: null,
    sealedUntil_s: null,
    around: bench.around,
    lots: bench.lots,
  };
  const input = { end_s: bench.end_s, coolers: [cooler], acts: bench.acts ?? [] };
  return startFleet(input, { closures: { ...medianClosures, ...bench.closures } });
}

export function packAndRun(bench: Bench): Fleet {
  const fleet = pack(bench);
  runFleet(fleet, bench.end_s);
  return fleet;
}

export function iceLot(facts: Partial<IceLot> & { mass_kg: number }): IceLot {
  const plain = {
    kind: "ice",
    id: "ice",
    form: "cube",
    pieces: 1,
    start_C: 0,
    liquid_frac: 0,
    layer: null,
  } as const;
  return { ...plain, ...facts };
}

/** Food or drink of a kind in the table, as the trip reader makes it. */
export function foodLot(
  key: string,
  facts: Partial<FoodLot> & { mass_kg: number; start_C: number },
): FoodLot {
  const like = foods[key]!;
  return {
    kind: "food",
    id: key,
    pieces: 1,
    curve: foodCurve(like),
    density_kg_per_m3: foodDensity_kg_per_m3(like, 5),
    k_W_per_mK: foodSpread_W_per_mK(like, 5),
    kFrozen_W_per_mK: foodSpread_W_per_mK(like, -15),
    thick_m: like.thick_m,
    shape: like.shape,
    layer: null,
    depth: 24,
    ...facts,
  };
}

/** When the warmest point of a lot first comes to `to_C` on its way down; not a number when it does not. */
export function cooledAfter_s(fleet: Fleet, id: string, to_C: number): number {
  const track = fleet.lotTracks[fleet.lots.findIndex((lot) => lot.id === id)]!;
  return firstCrossing_s(track.t_s, track.warm_C, to_C, false) ?? Number.NaN;
}

/** When the first of all food rises above `limit_C` after `from_s`; infinite when none does. */
export function foodOver_s(fleet: Fleet, limit_C: number, from_s = 3600): number {
  let first = Number.POSITIVE_INFINITY;
  fleet.lots.forEach((lot, i) => {
    if (lot.kind !== "food") return;
    const { t_s, warm_C } = fleet.lotTracks[i]!;
    first = Math.min(first, firstCrossing_s(t_s, warm_C, limit_C, true, from_s) ?? Number.POSITIVE_INFINITY);
  });
  return first;
}
