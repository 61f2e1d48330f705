import { iceLatent_J_per_kg } from "../matter/ice.ts";
import type { Balance } from "./balance.ts";
import { type Box, coreShare_frac, frozen_kg, hasCore } from "./box.ts";
import { temperature_C } from "./polyline.ts";
import type { Stepper } from "./stepper.ts";

/** One cooler through time, at the stepper's own moments; at an act, after it. */
export interface CoolerTrack {
  t_s: number[];
  outside_C: number[];
  /** Air of the headspace. */
  air_C: number[];
  /** Water ice and packs, by what of them is frozen. */
  ice_kg: number[];
  dryIce_kg: number[];
  /** Everything in the box: food, ice, water. */
  load_kg: number[];
  water_kg: number[];
  waterline_m: number[];
  /** Top of the stack, and of water standing over it. */
  stack_m: number[];
  /** The books so far, at each of these moments; or only once, at the end, where no more was asked for. */
  books: Balance[];
}

/** One lot of food or drink through time, from when it went in until the last of it left or the end. */
export interface LotTrack {
  t_s: number[];
  /** Warmest and coldest point: skins and cores of all its parts. */
  warm_C: number[];
  cold_C: number[];
  /** When a tenth of its layer first stood in water; null: never. */
  wet_s: number | null;
  /** Cooler that each reading was taken in. */
  inCooler: number[];
  /** Cooler it lies in now, or lay in last. */
  cooler: number;
  left_s: number | null;
}

export const makeCoolerTrack = (): CoolerTrack => ({
  t_s: [],
  outside_C: [],
  air_C: [],
  ice_kg: [],
  dryIce_kg: [],
  load_kg: [],
  water_kg: [],
  waterline_m: [],
  stack_m: [],
  books: [],
});

export const makeLotTrack = (cooler: number): LotTrack => ({
  t_s: [],
  warm_C: [],
  cold_C: [],
  wet_s: null,
  inCooler: [],
  cooler,
  left_s: null,
});

/** A tenth of the layer under water is more than a film on the floor. */
const wetFrom_frac = 0.1;

/** Frozen water in a box: ice and packs, and what of the pool has frozen, kg. */
function ice_kg(box: Box): number {
  let sum = box.pool_J < 0 ? Math.min(box.pool_kg, -box.pool_J / iceLatent_J_per_kg) : 0;
  for (const part of box.parts) sum += frozen_kg(part);
  return sum;
}

/** Writes the moment down. */
export function record(
  box: Box,
  stepper: Stepper,
  t_s: number,
  track: CoolerTrack,
  lots: readonly LotTrack[],
): void {
  const { bench } = stepper;
  let dryIce = 0;
  let load = box.pool_kg;
  for (const part of box.parts) {
    load += part.mass_kg;
    if (part.form === "dry ice") dryIce += part.mass_kg;
  }
  track.t_s.push(t_s);
  track.outside_C.push(bench.outside.around.air_C);
  track.air_C.push(bench.spine_C[bench.touching.n - 1]);
  track.ice_kg.push(ice_kg(box));
  track.dryIce_kg.push(dryIce);
  track.load_kg.push(load);
  track.water_kg.push(box.pool_kg);
  track.waterline_m.push(bench.touching.waterline_m);
  track.stack_m.push(Math.max(bench.touching.waterline_m, bench.touching.level_m[box.layers]));
  for (let p = 0; p < box.parts.length; p++) {
    const part = box.parts[p];
    if (part.form !== "food" || part.mass_kg <= 0) continue;
    const two = hasCore(part);
    const skin_kg = two ? part.mass_kg * (1 - coreShare_frac) : part.mass_kg;
    const skin = temperature_C(part.curve, part.skin_J / skin_kg, bench.skinLine.segment[p]);
    const core_kg = part.mass_kg * coreShare_frac;
    const core = two ? temperature_C(part.curve, part.core_J / core_kg, bench.coreLine.segment[p]) : skin;
    const lot = lots[part.lot];
    note(lot, box.index, t_s, Math.max(skin, core), Math.min(skin, core));
    if (lot.wet_s === null && bench.touching.wet_frac[part.layer] > wetFrom_frac) lot.wet_s = t_s;
  }
}

/** Adds a reading of one part; several parts of a lot at one moment make one reading. */
function note(track: LotTrack, cooler: number, t_s: number, warm_C: number, cold_C: number): void {
  const last = track.t_s.length - 1;
  if (last >= 0 && track.t_s[last] === t_s && track.inCooler[last] === cooler) {
    track.warm_C[last] = Math.max(track.warm_C[last], warm_C);
    track.cold_C[last] = Math.min(track.cold_C[last], cold_C);
    return;
  }
  track.t_s.push(t_s);
  track.warm_C.push(warm_C);
  track.cold_C.push(cold_C);
  track.inCooler.push(cooler);
}
