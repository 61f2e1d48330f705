import type { Balance } from "../cooler/balance.ts";
import type { Fleet } from "../cooler/fleetState.ts";
import { iceLotDensity_kg_per_m3 } from "../cooler/layout.ts";
import type { CoolerTrack, LotTrack } from "../cooler/track.ts";
import { foodEnthalpy_J_per_kg, foodIce_frac } from "../matter/foodProperties.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import type { CoolerHistory, Trip, TripFood } from "../trip/types.ts";
import { foodTimes, hours, middle, trackOf } from "./foodResult.ts";
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
export interface GridPoint {
  t_s: number;
  before: boolean;
}

/** Every whole hour of the trip, its end, and every moment at which something is put in or taken out. */
export function gridOf(fleet: Fleet, track: CoolerTrack): GridPoint[] {
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

/** Lifts `out` to one perishable's readings at the points of the grid at which it lies in this cooler; times rise in both. */
function liftTo(out: (number | null)[], track: LotTrack, cooler: number, grid: readonly GridPoint[]): void {
  const last = track.t_s.length - 1;
  if (last < 0) return;
  const left_s = track.left_s ?? Number.POSITIVE_INFINITY;
  let at = -1;
  for (let i = 0; i < grid.length; i++) {
    const { t_s, before } = grid[i];
    if (t_s < track.t_s[0]) continue;
    if (t_s > left_s || (t_s === left_s && !before)) return;
    while (at < last && (before ? track.t_s[at + 1] < t_s : track.t_s[at + 1] <= t_s)) at++;
    if (track.inCooler[Math.max(0, at)] !== cooler) continue;
    const value = valueAt(track.t_s, track.warm_C, t_s);
    out[i] = Math.max(out[i] ?? value, value);
  }
}

/** Warmest perishable in the cooler at each moment of the grid; null while there is none. */
export function warmestPerishable_C(
  trip: Trip,
  fleet: Fleet,
  cooler: number,
  grid: readonly GridPoint[],
): (number | null)[] {
  const out: (number | null)[] = grid.map(() => null);
  for (const item of trip.food) {
    const track = item.like.perishable ? trackOf(fleet, item.id) : undefined;
    if (track !== undefined) liftTo(out, track, cooler, grid);
  }
  return out;
}

/** When the first perishable passed its limit while it lay in this cooler. */
export function overLimit_s(trip: Trip, fleet: Fleet, cooler: number): number | null {
  let first: number | null = null;
  for (const item of trip.food) {
    const track = trackOf(fleet, item.id);
    if (track === undefined || !item.like.perishable) continue;
    const { over_s } = foodTimes(track, trip.limit.limit_C);
    if (over_s === null || track.inCooler[track.t_s.findLastIndex((t) => t <= over_s)] !== cooler) continue;
    first = Math.min(first ?? over_s, over_s);
  }
  return first;
}

const isFrozen = (item: TripFood | undefined, start_C: number): boolean =>
  item !== undefined && foodIce_frac(item.like, start_C) > 0;

/** Ice and frozen food to the rest, by volume, of what is aboard at departure. */
function iceToLoad(trip: Trip, fleet: Fleet, cooler: number): number | null {
  let ice = 0;
  let rest = 0;
  for (const lot of fleet.input.coolers[cooler].lots) {
    if (lot.kind === "ice") {
      ice += lot.mass_kg / iceLotDensity_kg_per_m3(lot.form);
      continue;
    }
    const volume = lot.mass_kg / lot.density_kg_per_m3;
    if (
      isFrozen(
        trip.food.find((item) => item.id === lot.id),
        lot.start_C,
      )
    )
      ice += volume;
    else rest += volume;
  }
  return rest > 0 ? ice / rest : null;
}

/** Ice that would take up as much heat as the frozen food aboard does on its way to 0 °C, thawed. */
function frozenFoodAsIce_kg(trip: Trip, fleet: Fleet, cooler: number): number {
  let sum = 0;
  for (const lot of fleet.input.coolers[cooler].lots) {
    if (lot.kind === "ice") continue;
    const item = trip.food.find((other) => other.id === lot.id);
    if (isFrozen(item, lot.start_C))
      sum += (-lot.mass_kg * foodEnthalpy_J_per_kg(item!.like, lot.start_C)) / iceLatent_J_per_kg;
  }
  return sum;
}

/** One account of the books at a moment, straight between the moments they were written at; sums stay sums. */
function booksAt(track: CoolerTrack, t_s: number, key: keyof Balance): number {
  return valueAt(
    track.t_s,
    track.books.map((books) => books[key]),
    t_s,
  );
}

function heatUntil(track: CoolerTrack, until_s: number): HeatBudget {
  const at = (key: keyof Balance): number => booksAt(track, until_s, key) * kJ;
  return {
    lid: at("lid_J"),
    sides: at("sides_J"),
    base: at("base_J"),
    seal: at("seal_J"),
    openingAir: at("openingAir_J"),
    openingExposure: at("openingExposure_J"),
    warmItems: at("warmItems_J"),
    body: at("body_J"),
    sun: at("sun_J"),
    dryIceGas: at("gas_J"),
  };
}

/** A series of the track at the points of the grid. */
export function onGrid(track: CoolerTrack, values: readonly number[], grid: readonly GridPoint[]): number[] {
  return grid.map(({ t_s, before }) => (before ? valueBefore : valueAt)(track.t_s, values, t_s));
}

/**
 * Where the cold of one cooler went between two moments of the trip, kJ; it adds up over neighbouring stretches. The run
 * must have kept its books at every step.
 *
 * @param from_s, to_s within the trip, in order
 */
export function coldBetween(fleet: Fleet, cooler: number, from_s: number, to_s: number): HeatBudget {
  const track = fleet.tracks[cooler];
  const before = heatUntil(track, from_s);
  const after = heatUntil(track, to_s);
  for (const key of Object.keys(after) as (keyof HeatBudget)[]) after[key] -= before[key];
  return after;
}

/** Everything about the cooler against time, on the printed grid. */
function seriesOf(trip: Trip, fleet: Fleet, cooler: number): CoolerResult["series"] {
  const track = fleet.tracks[cooler];
  const grid = gridOf(fleet, track);
  const on = (values: readonly number[]): number[] => onGrid(track, values, grid);
  const warmest = warmestPerishable_C(trip, fleet, cooler, grid);
  return {
    t_h: grid.map(({ t_s }) => t_s / hour_s),
    outside_C: on(track.outside_C),
    air_C: same(on(track.air_C)),
    ice_kg: same(on(track.ice_kg)),
    dryIce_kg: same(on(track.dryIce_kg)),
    water_L: same(on(track.water_kg)),
    waterline_m: on(track.waterline_m),
    warmestPerishable_C: { p10: warmest, p50: warmest, p90: warmest },
  };
}

/** When the cold that was brought along is gone: the ice, else the dry ice; the return while some is left, or none was. */
function coldUntil_s(trip: Trip, track: CoolerTrack, out_s: number | null): number {
  if (out_s === null) return trip.duration_s;
  const most_kg = track.dryIce_kg.reduce((a, b) => Math.max(a, b));
  const last = track.dryIce_kg.findLastIndex((mass) => mass > gone_frac * most_kg);
  const dryOut_s = most_kg > 0 ? track.t_s[Math.min(last + 1, track.t_s.length - 1)] : 0;
  return Math.max(out_s, dryOut_s) || trip.duration_s;
}

function historyResult(history: CoolerHistory | null): Pick<CoolerResult, "history"> {
  if (history === null) return {};
  const { records, before_W_per_K, now_W_per_K } = history;
  const odd = history.odd.map((at) => records[at].trip);
  return { history: { records: records.length, before_W_per_K, now_W_per_K, odd } };
}

/** The contract's part for one cooler. */
export function coolerResult(trip: Trip, fleet: Fleet, cooler: number): CoolerResult {
  const box = fleet.boxes[cooler];
  const track = fleet.tracks[cooler];
  const { books, walls } = box;
  const out_s = iceOut_s(fleet, cooler);
  const until_s = coldUntil_s(trip, track, out_s);
  const last = track.t_s.length - 1;
  const balance = track.books[last];
  const load_kg = fleet.input.coolers[cooler].lots.reduce((sum, lot) => sum + lot.mass_kg, 0);
  return {
    name: box.input.name,
    volume_L: walls.inside_m3 * 1000,
    conductance_W_per_K: walls.conductance_W_per_K,
    body_kJ_per_K: walls.effective_J_per_K * kJ,
    packedWeight_kg: box.input.body.emptyWeight_kg + load_kg,
    filled_frac: track.stack_m.reduce((a, b) => Math.max(a, b)) / walls.height_m,
    iceToLoad_ratio: iceToLoad(trip, fleet, cooler),
    frozenFoodAsIce_kg: frozenFoodAsIce_kg(trip, fleet, cooler),
    iceOut_h: middle(hours(out_s)),
    iceGaps_h: iceGaps_s(track, books.iceIn_kg).map(([from, to]) => [from / hour_s, to / hour_s]),
    overLimit_h: middle(hours(overLimit_s(trip, fleet, cooler))),
    series: seriesOf(trip, fleet, cooler),
    heat_kJ: heatUntil(track, until_s),
    heatUntil_h: until_s / hour_s,
    coldStore_kJ: booksAt(track, until_s, "coldStore_J") * kJ,
    drainSwitch: null,
    iceMelted_kg: books.iceIn_kg - books.iceOut_kg - track.ice_kg[last],
    drained_L: books.drained_kg,
    condensed_g: books.condensed_kg * 1000,
    balance: { energy_rel: balance.energy_rel, water_g: balance.waterLost_kg * 1000 },
    ...historyResult(trip.coolers[cooler].history),
  };
}
