import type { Fleet } from "../cooler/fleetState.ts";
import type { LotTrack } from "../cooler/track.ts";
import { hotAir_C, mayonnaiseWarm_C } from "../safety/limits.ts";
import { type FoodHistory, verdictOf } from "../safety/verdict.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { coldClock, isFrozenAtStart } from "./coldClock.ts";
import type { Band, FoodResult } from "./result.ts";
import { firstCrossing_s, timeAbove_s, timeBothAbove_s, valueAt } from "./series.ts";

const hour_s = 3600;

/** Three times the middle case, where no ensemble was run. */
export const middle = (value: number | null): Band => ({ p10: value, p50: value, p90: value });
export const hours = (time_s: number | null): number | null => (time_s === null ? null : time_s / hour_s);

/** When an item was under its limit, when it rose over it, and how long it was warm. */
export interface FoodTimes {
  below_s: number | null;
  over_s: number | null;
  warm_s: number;
}

const rounding_K = 1e-6;

/**
 * Reads an item's own temperatures against the limit; the warmest point counts, skin or core. What comes aboard warm
 * passes the limit when it rises over it again; what never comes under it is over it from the start.
 */
export function foodTimes(track: LotTrack, profile_C: number): FoodTimes {
  const { t_s, warm_C } = track;
  // Food that comes aboard exactly at its limit is under it, whatever the rounding of its enthalpy.
  const limit_C = profile_C + rounding_K;
  const warm_s = timeAbove_s(t_s, warm_C, limit_C);
  if (t_s.length === 0) return { below_s: null, over_s: null, warm_s };
  const below_s = firstCrossing_s(t_s, warm_C, limit_C, false);
  const over_s = below_s === null ? t_s[0] : firstCrossing_s(t_s, warm_C, limit_C, true, below_s);
  return { below_s, over_s, warm_s };
}

/** Air of the cooler that the item lay in, at each of its readings. */
function airAround_C(fleet: Fleet, track: LotTrack): number[] {
  return track.t_s.map((t, i) => {
    const air = fleet.tracks[track.inCooler[i]];
    return valueAt(air.t_s, air.air_C, t);
  });
}

/** The cooler that an item lies in at a moment; null: it is not there yet, or not any more. */
export function coolerAt({ t_s: times_s, inCooler, left_s }: LotTrack, t_s: number): number | null {
  if (times_s.length === 0 || t_s < times_s[0] || (left_s !== null && t_s > left_s)) return null;
  const at = times_s.findLastIndex((time_s) => time_s <= t_s);
  return inCooler[at];
}

/** The readings of an item, by its id. */
export const trackOf = (fleet: Fleet, id: string): LotTrack | undefined =>
  fleet.lotTracks[fleet.lots.findIndex((lot) => lot.id === id)];

/**
 * Coolers that raw juice may have reached: where raw food that can drip ever lay, and where its meltwater's ice was
 * merged into. When does not count, which is the stricter reading; a watertight package gives no juice away.
 */
function juicedCoolers(trip: Trip, fleet: Fleet, but: TripFood): Set<number> {
  const dripping = trip.food.filter((other) => other.raw && !other.watertight && other.id !== but.id);
  const reached = new Set(dripping.flatMap((other) => trackOf(fleet, other.id)?.inCooler ?? []));
  for (const event of trip.events)
    if (event.do === "merge" && reached.has(event.from)) reached.add(event.into);
  return reached;
}

/** What one run tells of an item that is not read off its own numbers. */
export interface Company {
  /** Raw juice may have reached it. */
  raw: boolean;
  /** It thawed and froze again. */
  refrozen: boolean;
}

/** In what company an item lay, and whether it froze a second time. */
export function companyOf(trip: Trip, fleet: Fleet, item: TripFood, track: LotTrack): Company {
  const juiced = juicedCoolers(trip, fleet, item);
  return {
    raw: track.inCooler.some((cooler) => juiced.has(cooler)),
    refrozen: freezesAgain(item, track),
  };
}

/** Frozen this far below its freezing point, and not only at it. */
const frozen_K = 0.2;

function freezesAgain(item: TripFood, track: LotTrack): boolean {
  const from_s = thawed_s(item, track);
  const { freezes_C } = item.like;
  if (from_s === null || freezes_C === null) return false;
  return track.t_s.some((t, i) => t > from_s && track.warm_C[i] < freezes_C - frozen_K);
}

/** Numbers of one item in one run; null: never. Warm hours count those declared from before. */
export interface FoodFacts {
  below_s: number | null;
  over_s: number | null;
  warm_s: number;
  /** Of the warm time, in air over the hot limit; and time over 10 °C. null: warm before the trip, nobody knows in what air. */
  hotAir_s: number | null;
  over10C_s: number | null;
  coreMax_C: number | null;
  coreMin_C: number | null;
  thawed_s: number | null;
  wet_s: number | null;
}

/** Reads off a run what happened to an item that lies in a cooler. */
export function foodFacts(trip: Trip, fleet: Fleet, item: TripFood, track: LotTrack): FoodFacts {
  const limit_C = trip.limit.limit_C;
  const times = foodTimes(track, limit_C);
  const isUnknown = item.warmBefore_s > 0;
  return {
    below_s: times.below_s,
    over_s: times.over_s,
    warm_s: times.warm_s + item.warmBefore_s,
    hotAir_s: isUnknown
      ? null
      : times.warm_s === 0
        ? 0
        : timeBothAbove_s(track.t_s, track.warm_C, limit_C, airAround_C(fleet, track), hotAir_C),
    over10C_s: isUnknown ? null : timeAbove_s(track.t_s, track.warm_C, mayonnaiseWarm_C),
    coreMax_C: warmest_C(item, track, times.below_s),
    coreMin_C: smallest(track.cold_C),
    thawed_s: thawed_s(item, track),
    wet_s: item.watertight ? null : track.wet_s,
  };
}

/** Rules on an item by what happened to it; the same facts always give the same verdict, and worse ones never a milder. */
export function rulingOn(
  trip: Trip,
  item: TripFood,
  facts: FoodFacts,
  end_s: number,
  company: Company,
): ReturnType<typeof verdictOf> {
  return verdictOf({
    ...standingOf(trip, item),
    ...coldClock(trip, item, facts.thawed_s, end_s),
    warm_s: facts.warm_s,
    hotAir_s: facts.hotAir_s,
    over10C_s: facts.over10C_s,
    warmest_C: facts.coreMax_C,
    limitPassed: facts.over_s !== null,
    cameFrozen: isFrozenAtStart(item),
    thawing: facts.thawed_s !== null || startsThawed(item),
    refrozen: item.refrozen || company.refrozen,
    wet_s: facts.wet_s === null ? null : Math.max(0, end_s - facts.wet_s),
    rawInSameCooler: company.raw,
  });
}

/** What a ruling takes from the file alone. */
function standingOf(
  trip: Trip,
  item: TripFood,
): Pick<FoodHistory, "food" | "profile" | "vulnerable" | "withoutAir"> {
  return {
    food: { ...item.like, rawAnimal: item.raw },
    profile: trip.limit.profile,
    vulnerable: trip.party.vulnerable,
    withoutAir: item.reducedOxygen,
  };
}

/** Food of a kind that is only sold frozen, but came aboard thawed. */
const startsThawed = (item: TripFood): boolean =>
  item.like.kind === "frozen" && item.start_C >= (item.like.freezes_C ?? 0);

/** When the coldest point of a frozen item has left its freezing range. */
function thawed_s(item: TripFood, track: LotTrack): number | null {
  const { freezes_C } = item.like;
  if (freezes_C === null || !isFrozenAtStart(item) || track.t_s.length === 0) return null;
  return firstCrossing_s(track.t_s, track.cold_C, freezes_C - 0.01, true);
}

const largest = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((a, b) => Math.max(a, b));
const smallest = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((a, b) => Math.min(a, b));

/** Warmest reading: from departure, or for what came in later from the moment it was first under the limit. */
function warmest_C(item: TripFood, track: LotTrack, below_s: number | null): number | null {
  if (item.putIn_s === null || below_s === null) return largest(track.warm_C);
  return largest(track.warm_C.filter((_, i) => track.t_s[i] >= below_s));
}

/** The contract's row for one item in a cooler. */
export function foodResult(trip: Trip, fleet: Fleet, item: TripFood): FoodResult {
  const track = trackOf(fleet, item.id)!;
  const facts = foodFacts(trip, fleet, item, track);
  const end_s = track.left_s ?? trip.duration_s;
  const ruling = rulingOn(trip, item, facts, end_s, companyOf(trip, fleet, item, track));
  return {
    name: item.name,
    cooler: trip.coolers[track.cooler].name,
    perishable: item.like.perishable,
    eaten_h: hours(track.left_s),
    coreMax_C: middle(facts.coreMax_C),
    coreMin_C: middle(facts.coreMin_C),
    belowLimit_h: middle(hours(facts.below_s)),
    overLimit_h: middle(hours(facts.over_s)),
    warm_h: middle(hours(facts.warm_s)),
    warmAllowed_h: hours(ruling.warmAllowed_s),
    thawed_h: middle(hours(facts.thawed_s)),
    wet_h: facts.wet_s === null ? null : middle(hours(facts.wet_s)),
    verdict: ruling.verdict,
    rule: ruling.rule,
    why: ruling.why,
  };
}

/** An item of the dry box: nothing keeps it cold, so all its time until it is eaten counts as warm, in air unknown. */
export function dryBoxResult(trip: Trip, item: TripFood): FoodResult {
  const warm_s = (item.eat_s ?? trip.duration_s) - (item.putIn_s ?? 0) + item.warmBefore_s;
  const ruling = verdictOf({
    ...standingOf(trip, item),
    warm_s,
    hotAir_s: null,
    over10C_s: null,
    warmest_C: null,
    limitPassed: false,
    cameFrozen: false,
    thawing: item.like.kind === "frozen",
    refrozen: item.refrozen,
    cold_s: null,
    coldGuessed: false,
    mark_days: null,
    wet_s: null,
    rawInSameCooler: false,
  });
  return {
    name: item.name,
    cooler: "dry box",
    perishable: item.like.perishable,
    eaten_h: hours(item.eat_s),
    coreMax_C: middle(null),
    coreMin_C: middle(null),
    belowLimit_h: middle(null),
    overLimit_h: middle(item.like.perishable ? 0 : null),
    warm_h: middle(hours(warm_s)),
    warmAllowed_h: hours(ruling.warmAllowed_s),
    thawed_h: middle(null),
    wet_h: null,
    verdict: ruling.verdict,
    rule: ruling.rule,
    why: ruling.why,
  };
}
