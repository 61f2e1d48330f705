import { companyOf, coolerAt, foodFacts, rulingOn, trackOf } from "../forecast/foodResult.ts";
import type { FoodResult } from "../forecast/result.ts";
import { valueAt } from "../forecast/series.ts";
import type { Forecast } from "../forecast/types.ts";
import { hotAir_C, mayonnaiseWarm_C } from "../safety/limits.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { siValue } from "./looks.ts";
import type { Entry } from "./types.ts";

const hour_s = 3600;
/** A reading that the same hand takes back within this time was a slip of the thumb. */
const slip_s = 600;
/** How far a reading's own scale may be rounded. */
const rounding_K = 1e-6;

/** A thermometer's reading that counts for food. */
interface Reading {
  t_s: number;
  read_C: number;
  cooler: number;
  /** The only item it was of; null: of the air or the water, and so of all that lay there. */
  item: string | null;
  /** Of the air under the lid. */
  isAir: boolean;
  /** No thermometer: ice was seen. */
  isIce: boolean;
}

/** Air this much warmer than the warm end of its range is more than the reckoning of the food knows of. */
const unexplained_K = 2;

/**
 * Whether the reckoning expects air as warm as it was read: under a lid, above what covers the food, it is warmer than the
 * food, and the food's own warm time is reckoned already.
 */
function isExplained({ t_s, read_C, cooler, isAir }: Reading, { result }: Forecast): boolean {
  if (!isAir) return false;
  const { t_h, air_C } = result.coolers[cooler]!.series;
  return read_C <= valueAt(t_h, air_C.p90, t_s / hour_s) + unexplained_K;
}

/** Ice of which so much is seen keeps what lies around it cold, for all that a glance can tell. */
const coldLevels: readonly string[] = ["full", "3/4", "1/2", "1/4"];

/** Moments at which ice was seen in a cooler: they end a gap, for what a thermometer in its air or water left open. */
function iceSeen_s(entries: readonly Entry[]): { t_s: number; cooler: number }[] {
  return entries.flatMap(({ file, cooler, t_s, withdrawnBy }) =>
    "ice" in file && cooler !== null && withdrawnBy === null && coldLevels.includes(file.ice)
      ? [{ t_s, cooler }]
      : [],
  );
}

/**
 * Readings that count: one that was withdrawn still does if it was warm, unless whoever wrote it took it back within
 * minutes. A cold one that was withdrawn proves nothing any more.
 */
function readingsOf(entries: readonly Entry[], limit_C: number): Reading[] {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  return entries.flatMap((entry) => {
    const { file, cooler, t_s, withdrawnBy } = entry;
    if (!("read" in file) || cooler === null) return [];
    const read_C = siValue(file.read, "temperature");
    if (Number.isNaN(read_C)) return [];
    const taken = withdrawnBy === null ? undefined : byId.get(withdrawnBy);
    if (taken !== undefined) {
      const isSlip = taken.file.by === file.by && Math.abs(taken.t_s - t_s) <= slip_s;
      if (isSlip || read_C <= limit_C + rounding_K) return [];
    }
    const of = (file.of ?? "air").trim().toLowerCase();
    return [
      {
        t_s,
        read_C,
        cooler,
        item: of === "air" || of === "water" ? null : of,
        isAir: of === "air",
        isIce: false,
      },
    ];
  });
}

/** What the log makes of one item, at the worst plausible; null: it says nothing against it. */
export interface Floor {
  warm_s: number;
  warmest_C: number;
  /** In words, for the verdict. */
  why: string;
}

const named = (reading: Reading, item: TripFood): boolean =>
  reading.item === null || reading.item === item.name.trim().toLowerCase();

/**
 * Warm time that readings prove or cannot rule out. From a warm reading on it lasts until the next cold one, or until the
 * food is eaten or now; before it, it goes back to the last cold reading, or to when the food went in. Where the warm reading
 * was of the air or the water, ice that was seen counts as a cold reading.
 *
 * @param readings in order of time, those of `seen` as cold ones of the air
 * @param end_s eaten, or the moment up to which the log speaks
 */
function warmTime(
  item: TripFood,
  readings: readonly Reading[],
  end_s: number,
  limit_C: number,
): Floor | null {
  const from_s = item.putIn_s ?? 0;
  let lastCold_s = from_s;
  let warmFrom_s: number | null = null;
  let warm_s = 0;
  let warmest_C = Number.NEGATIVE_INFINITY;
  let ofItem = false;
  let lastIce_s = from_s;
  for (const { t_s, read_C, item: name, isIce } of readings) {
    if (t_s < from_s || t_s > end_s) continue;
    if (read_C > limit_C + rounding_K) {
      ofItem ||= name !== null;
      warmFrom_s ??= name === null ? Math.max(lastCold_s, lastIce_s) : lastCold_s;
      warmest_C = Math.max(warmest_C, read_C);
      continue;
    }
    if (isIce) {
      lastIce_s = t_s;
      // What the item itself showed no glance at the ice takes back.
      if (warmFrom_s === null || ofItem) continue;
    } else lastCold_s = t_s;
    ofItem = false;
    if (warmFrom_s !== null) warm_s += t_s - warmFrom_s;
    warmFrom_s = null;
  }
  if (warmFrom_s !== null) warm_s += Math.max(0, end_s - warmFrom_s);
  if (warm_s <= 0 || warmest_C === Number.NEGATIVE_INFINITY) return null;
  const why = "a warm reading stands in the log, and nothing says that it was cold since the last cold one";
  return { warm_s, warmest_C, why };
}

/** Verdicts from mildest to strictest. */
const rank = { keep: 0, "eat next": 1, discard: 2 } as const;

/** The log's entry that swamped or dumped the cooler while the item was in it. */
function lostBy(
  item: TripFood,
  place: (t_s: number) => number | null,
  entries: readonly Entry[],
): Entry | null {
  return (
    entries.find(({ file, cooler, t_s, withdrawnBy }) => {
      if (withdrawnBy !== null || cooler === null || place(t_s) !== cooler) return false;
      return "dumped" in file || ("swamped" in file && !item.watertight);
    }) ?? null
  );
}

/** The row of an item with what the log says against it; the stricter of the two verdicts stands. */
function floored(
  trip: Trip,
  forecast: Forecast,
  item: TripFood,
  row: FoodResult,
  entries: readonly Entry[],
  now_s: number,
): FoodResult {
  const fleet = forecast.fleet!;
  const track = trackOf(fleet, item.id)!;
  const place = (t_s: number): number | null => coolerAt(track, t_s);
  const lost = lostBy(item, place, entries);
  if (lost !== null) {
    const dumped = "dumped" in lost.file;
    return {
      ...row,
      verdict: "discard",
      rule: dumped
        ? "What went overboard or was lost with its cooler is not food any more (the project's own rule)"
        : "Food that outside water may have reached is discarded unless its package keeps water out (common practice after floods)",
      why: dumped
        ? "its cooler was lost"
        : "its cooler was filled with water from outside, and its package lets water in",
    };
  }
  if (!item.like.perishable) return row;
  const limit_C = trip.limit.limit_C;
  const ice = iceSeen_s(entries).map((seen) => ({
    ...seen,
    read_C: 0,
    item: null,
    isAir: false,
    isIce: true,
  }));
  const own = [...ice, ...readingsOf(entries, limit_C)]
    .filter((reading) => named(reading, item) && place(reading.t_s) === reading.cooler)
    .filter((reading) => !isExplained(reading, forecast))
    .sort((a, b) => a.t_s - b.t_s);
  const end_s = Math.min(track.left_s ?? Number.POSITIVE_INFINITY, Math.max(now_s, 0));
  const floor = warmTime(item, own, end_s, limit_C);
  if (floor === null) return row;
  return ruled(trip, forecast, item, row, floor);
}

/** Rules once more, with the warm time of the log in place of the reckoned one where it is longer. */
function ruled(trip: Trip, forecast: Forecast, item: TripFood, row: FoodResult, floor: Floor): FoodResult {
  const fleet = forecast.fleet!;
  const track = trackOf(fleet, item.id)!;
  const facts = foodFacts(trip, fleet, item, track);
  const reckoned_s = (row.warm_h.p90 ?? 0) * hour_s;
  const warm_s = Math.max(floor.warm_s + item.warmBefore_s, reckoned_s);
  const worst = {
    ...facts,
    warm_s,
    over_s: facts.over_s ?? 0,
    hotAir_s: floor.warmest_C > hotAir_C ? null : facts.hotAir_s,
    over10C_s: floor.warmest_C > mayonnaiseWarm_C ? null : facts.over10C_s,
    coreMax_C: Math.max(floor.warmest_C, row.coreMax_C.p90 ?? floor.warmest_C),
  };
  const end_s = track.left_s ?? trip.duration_s;
  const ruling = rulingOn(trip, item, worst, end_s, companyOf(trip, fleet, item, track));
  const warm_h = warm_s / hour_s;
  const lifted = {
    p10: Math.max(row.warm_h.p10 ?? 0, warm_h),
    p50: Math.max(row.warm_h.p50 ?? 0, warm_h),
    p90: Math.max(row.warm_h.p90 ?? 0, warm_h),
  };
  if (rank[ruling.verdict] < rank[row.verdict]) return { ...row, warm_h: lifted };
  return {
    ...row,
    warm_h: lifted,
    warmAllowed_h: ruling.warmAllowed_s === null ? null : ruling.warmAllowed_s / hour_s,
    verdict: ruling.verdict,
    rule: ruling.rule,
    why: `${ruling.why}; ${floor.why}`,
  };
}

/**
 * Food verdicts held to the log: a warm reading counts for everything that lay there and stays, whatever is withdrawn
 * later, unless it was of air that the reckoning knows to be so warm; time between readings counts as warm where one end of it was; what was swamped or lost is told so. A verdict only ever
 * gets stricter by it.
 *
 * @param forecast of the trip as lived, with the run of its middle case
 */
export function withFloors(forecast: Forecast, entries: readonly Entry[], now_s: number): Forecast {
  const { trip, result } = forecast;
  const food = result.food.map((row) =>
    trip.food
      // Of several of one name, what is said against one counts for all.
      .filter(({ name, cooler }) => name === row.name && cooler !== null)
      .reduce((held, item) => floored(trip, forecast, item, held, entries, now_s), row),
  );
  return { ...forecast, result: { ...result, food } };
}
