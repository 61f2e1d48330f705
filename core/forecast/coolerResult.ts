import type { Balance } from "../cooler/balance.ts";
import type { Fleet } from "../cooler/fleetState.ts";
import type { CoolerTrack } from "../cooler/track.ts";
import { foodIce_frac } from "../matter/foodProperties.ts";
import type { Trip } from "../trip/types.ts";
import { foodTimes, hours, middle } from "./foodResult.ts";
import type { BandSeries, CoolerResult, HeatBudget } from "./result.ts";
import { gone_frac, iceOut_s } from "./run.ts";
import { valueAt, valueBefore } from "./series.ts";

const hour_s = 3600;
const kJ = 1e-3;
/** Books that do not close to this are our bug (architecture: exit 3). */
export const closes_rel = 1e-6;
export const closes_kg = 1e-3;

const same = (values: number[]): BandSeries => ({ p10: values, p50: values, p90: values });

/** A moment of the printed series; at an act there are two, before it and after it. */
interface GridPoint {
  t_s: number;
  before: boolean;
}

/** Every whole hour of the trip, its end, and every moment at which something is put in or taken out. */
function gridOf(fleet: Fleet, track: CoolerTrack): GridPoint[] {
  const { end_s } = fleet.input;
  const grid: GridPoint[] = [];
  for (let t_s = 0; t_s < end_s; t_s += hour_s) grid.push({ t_s, before: false });
  grid.push({ t_s: end_s, before: false });
  for (let i = 1; i < track.t_s.length; i++)
    if (track.t_s[i] === track.t_s[i - 1] && track.t_s[i] > 0) {
      grid.push({ t_s: track.t_s[i], before: true });
      if (track.t_s[i] % hour_s !== 0) grid.push({ t_s: track.t_s[i], before: false });
    }
  return grid.sort((a, b) => a.t_s - b.t_s || Number(b.before) - Number(a.before));
}

/** Stretches without ice after which there is ice again. */
function iceGaps_s(track: CoolerTrack, loaded_kg: number): [number, number][] {
  const gaps: [number, number][] = [];
  const limit = gone_frac * loaded_kg;
  let from: number | null = null;
  track.t_s.forEach((t, i) => {
    if (track.ice_kg[i] <= limit) from ??= t;
    else if (from !== null) {
      if (t - from > hour_s) gaps.push([from, t]);
      from = null;
    }
  });
  return loaded_kg > 0 ? gaps : [];
}

/** Warmest perishable in the cooler at each moment of the grid; null while there is none. */
function warmestPerishable_C(
  trip: Trip,
  fleet: Fleet,
  cooler: number,
  grid: readonly GridPoint[],
): (number | null)[] {
  const ids = new Set(trip.food.filter((item) => item.like.perishable).map((item) => item.id));
  const tracks = fleet.lotTracks.filter(
    (track, i) => ids.has(fleet.lots[i].id) && track.cooler === cooler && track.t_s.length > 0,
  );
  return grid.map(({ t_s, before }) => {
    let warmest: number | null = null;
    for (const track of tracks) {
      const left_s = track.left_s ?? Number.POSITIVE_INFINITY;
      if (t_s < track.t_s[0] || t_s > left_s || (t_s === left_s && !before)) continue;
      const value = valueAt(track.t_s, track.warm_C, t_s);
      warmest = warmest === null ? value : Math.max(warmest, value);
    }
    return warmest;
  });
}

function overLimit_s(trip: Trip, fleet: Fleet, cooler: number): number | null {
  let first: number | null = null;
  for (const item of trip.food) {
    const index = fleet.lots.findIndex((lot) => lot.id === item.id);
    if (index < 0 || !item.like.perishable || fleet.lotTracks[index].cooler !== cooler) continue;
    const { over_s } = foodTimes(fleet.lotTracks[index], trip.limit.limit_C);
    if (over_s !== null && (first === null || over_s < first)) first = over_s;
  }
  return first;
}

/** Ice and frozen food to the rest, by volume, of what is aboard at departure. */
function iceToLoad(trip: Trip, fleet: Fleet, cooler: number): number | null {
  let ice = 0;
  let rest = 0;
  for (const lot of fleet.input.coolers[cooler].lots) {
    if (lot.kind === "ice") {
      ice += lot.mass_kg / 917;
      continue;
    }
    const item = trip.food.find((other) => other.id === lot.id);
    const volume = lot.mass_kg / lot.density_kg_per_m3;
    const frozen = item && foodIce_frac(item.like, lot.start_C) > 0;
    if (frozen) ice += volume;
    else rest += volume;
  }
  return rest > 0 ? ice / rest : null;
}

/** The books at a moment, straight between the moments they were written at; sums stay sums. */
function booksAt(track: CoolerTrack, t_s: number): (key: keyof Balance) => number {
  return (key) =>
    valueAt(
      track.t_s,
      track.books.map((books) => books[key]),
      t_s,
    );
}

function budget(track: CoolerTrack, until_s: number): { heat: HeatBudget; coldStore_kJ: number } {
  const at = booksAt(track, until_s);
  return {
    heat: {
      lid: at("lid_J") * kJ,
      sides: at("sides_J") * kJ,
      base: at("base_J") * kJ,
      seal: at("seal_J") * kJ,
      openingAir: at("openingAir_J") * kJ,
      openingExposure: at("openingExposure_J") * kJ,
      warmItems: at("warmItems_J") * kJ,
      body: at("body_J") * kJ,
      sun: at("sun_J") * kJ,
      dryIceGas: at("gas_J") * kJ,
    },
    coldStore_kJ: at("coldStore_J") * kJ,
  };
}

/** The contract's part for one cooler. */
export function coolerResult(trip: Trip, fleet: Fleet, cooler: number): CoolerResult {
  const box = fleet.boxes[cooler];
  const track = fleet.tracks[cooler];
  const grid = gridOf(fleet, track);
  const on = (values: readonly number[]): number[] =>
    grid.map(({ t_s, before }) => (before ? valueBefore : valueAt)(track.t_s, values, t_s));
  const out_s = iceOut_s(fleet, cooler);
  // Without any ice there is no moment at which it is gone: the whole trip then.
  const until_s = out_s === null || out_s === 0 ? trip.duration_s : out_s;
  const { heat, coldStore_kJ } = budget(track, until_s);
  const load_kg = fleet.input.coolers[cooler].lots.reduce((sum, lot) => sum + lot.mass_kg, 0);
  const warmest = warmestPerishable_C(trip, fleet, cooler, grid);
  const last = track.t_s.length - 1;
  const balance = track.books[last];
  const { books } = box;
  return {
    name: box.input.name,
    volume_L: box.walls.gas_m3 * 1000,
    conductance_W_per_K: box.walls.conductance_W_per_K,
    body_kJ_per_K: box.walls.effective_J_per_K * kJ,
    packedWeight_kg: box.input.body.emptyWeight_kg + load_kg,
    filled_frac: track.stack_m.reduce((a, b) => Math.max(a, b)) / box.walls.height_m,
    iceToLoad_ratio: iceToLoad(trip, fleet, cooler),
    iceOut_h: middle(hours(out_s)),
    iceGaps_h: iceGaps_s(track, books.iceIn_kg).map(([from, to]) => [from / hour_s, to / hour_s]),
    overLimit_h: middle(hours(overLimit_s(trip, fleet, cooler))),
    series: {
      t_h: grid.map(({ t_s }) => t_s / hour_s),
      outside_C: on(track.outside_C),
      air_C: same(on(track.air_C)),
      ice_kg: same(on(track.ice_kg)),
      dryIce_kg: same(on(track.dryIce_kg)),
      water_L: same(on(track.water_kg)),
      warmestPerishable_C: { p10: warmest, p50: warmest, p90: warmest },
    },
    heat_kJ: heat,
    heatUntil_h: until_s / hour_s,
    coldStore_kJ,
    iceMelted_kg: books.iceIn_kg - track.ice_kg[last],
    drained_L: books.drained_kg,
    condensed_g: books.condensed_kg * 1000,
    balance: { energy_rel: balance.energy_rel, water_g: balance.waterLost_kg * 1000 },
  };
}
