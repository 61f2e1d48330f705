import { bandOf } from "../ensemble/quantiles.ts";
import type { Draws, SeriesBins } from "../ensemble/types.ts";
import type { MergeCourse } from "../forecast/planResult.ts";
import type { BandSeries, FoodResult, Result } from "../forecast/result.ts";
import { iceOutCarriedOn_s } from "../forecast/run.ts";
import { valueAt, valueBefore } from "../forecast/series.ts";
import { clockMoments_s, localInstant_ms } from "../sky/localTime.ts";
import { linkedCoolers, onlyCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripEvent } from "../trip/types.ts";
import { insideAt, type Pair } from "./mergeRules.ts";
import type { Run, Trials } from "./trials.ts";

const HOUR_s = 3600;

/** Moments of the trip at which clocks show one of these times of day, in order. */
export function atClocks_s(trip: Trip, clocks_s: readonly number[]): number[] {
  const { timezone } = trip.place;
  const start_ms = localInstant_ms(trip.depart, timezone);
  const all = clocks_s.flatMap((clock_s) => clockMoments_s(start_ms, timezone, clock_s, 0, trip.duration_s));
  return all.filter((t_s) => t_s > 0 && t_s < trip.duration_s).sort((a, b) => a - b);
}

/**
 * The merge, and the openings that go along with what is moved: as long together as before, told as one at each meal.
 * Nothing is opened for where no food moves.
 */
export function mergeEvents(trip: Trip, { from, into }: Pair, t_s: number): TripEvent[] {
  const merge: TripEvent = { do: "merge", t_s, from, into, path: "plan" };
  const { openings } = trip.coolers[from]!;
  if (openings === null || openings.perDay <= 0 || insideAt(trip, from, t_s).length === 0) return [merge];
  const { breakfast_s, lunch_s, dinner_s } = trip.meals;
  const meals = atClocks_s(trip, [breakfast_s, lunch_s, dinner_s]).filter((meal_s) => meal_s > t_s);
  const for_s = Math.round((openings.perDay * openings.each_s) / 3);
  return [
    merge,
    ...meals.map((meal_s): TripEvent => ({ do: "open", t_s: meal_s, cooler: into, for_s, path: "plan" })),
  ];
}

/** The trip with more events, in order of time. */
export const withEvents = (trip: Trip, more: readonly TripEvent[]): Trip => ({
  ...trip,
  events: [...trip.events, ...more].sort((a, b) => a.t_s - b.t_s),
});

/** What a merge at a moment does, middle case. */
export interface MergeTrial extends Pair {
  t_s: number;
  events: readonly TripEvent[];
  /** Of the cooler that stays, from the merge on. */
  fits_frac: number;
  /** End of the ice, carried on past the return: of the two apart, and joined. */
  fromOut_s: number;
  intoOut_s: number;
  joinedOut_s: number;
  /** Against the one of the two that lasts longer. */
  iceGain_h: number;
  /** null: no food of the two passes its limit either way. */
  foodGain_h: number | null;
  /** Food that would be worse off, in words; null: none. */
  harm: string | null;
}

const rank = { keep: 0, "eat next": 1, discard: 2 } as const;

/** The first item whose verdict gets worse, or that would freeze and be ruined. */
function harmOf(before: Result, after: Result): string | null {
  const was = new Map(before.food.map((food) => [food.name, rank[food.verdict]]));
  const worse = after.food.find((food) => rank[food.verdict] > (was.get(food.name) ?? 2));
  if (worse !== undefined) return `${worse.name} would be to ${worse.verdict}: ${worse.why}`;
  const known = new Set(before.warnings.map(({ code, path }) => `${code} ${path}`));
  const freezes = after.warnings.find(
    ({ code, path }) => code === "freezes" && !known.has(`${code} ${path}`),
  );
  return freezes?.says ?? null;
}

const firstOver_h = (food: readonly FoodResult[]): number | null =>
  food.reduce<number | null>((first, { perishable, overLimit_h: { p50 } }) => {
    if (!perishable || p50 === null) return first;
    return Math.min(first ?? p50, p50);
  }, null);

function fullFrom_frac({ fleet }: Run, cooler: number, t_s: number): number {
  const { t_s: times_s, stack_m } = fleet.tracks[cooler]!;
  const at = times_s.findLastIndex((time_s) => time_s <= t_s);
  const from = Math.max(0, at);
  const most_m = stack_m.slice(from).reduce((a, b) => Math.max(a, b), 0);
  return most_m / fleet.boxes[cooler]!.walls.height_m;
}

/** Runs a merge against the same coolers left apart; only they and what is joined to them already are run. */
export class MergeTrials {
  readonly #trials: Trials;
  readonly #trip: Trip;
  readonly #apart = new Map<string, Run>();

  constructor(trials: Trials, trip: Trip) {
    this.#trials = trials;
    this.#trip = trip;
  }

  try(pair: Pair, t_s: number): MergeTrial {
    const events = mergeEvents(this.#trip, pair, t_s);
    const merged = withEvents(this.#trip, events);
    const keep = linkedCoolers(merged, pair.into);
    const places = [...keep].sort((a, b) => a - b);
    const [from, into] = [places.indexOf(pair.from), places.indexOf(pair.into)];
    const key = places.join();
    const before = this.#apart.get(key) ?? this.#trials.run(onlyCoolers(this.#trip, keep));
    this.#apart.set(key, before);
    const after = this.#trials.run(onlyCoolers(merged, keep));
    const [was_h, is_h] = [firstOver_h(before.result.food), firstOver_h(after.result.food)];
    const end_h = this.#trip.duration_s / HOUR_s;
    const [fromOut_s, intoOut_s] = [
      iceOutCarriedOn_s(before.fleet, from),
      iceOutCarriedOn_s(before.fleet, into),
    ];
    const joinedOut_s = iceOutCarriedOn_s(after.fleet, into);
    return {
      ...pair,
      t_s,
      events,
      fits_frac: fullFrom_frac(after, into, t_s),
      fromOut_s,
      intoOut_s,
      joinedOut_s,
      iceGain_h: (joinedOut_s - Math.max(fromOut_s, intoOut_s)) / HOUR_s,
      foodGain_h: was_h === null && is_h === null ? null : (is_h ?? end_h) - (was_h ?? end_h),
      harm: harmOf(before.result, after.result),
    };
  }
}

/** Gains of one merge by member: of the ice, and of the first food of the two coolers that passes its limit. */
export interface MemberGains {
  ice_h: number[];
  /** The same up to the return: what is gained after it helps nobody. */
  iceInTrip_h: number[];
  /** null: no member has food that passes its limit either way. */
  food_h: number[] | null;
  /** Members in which food passes its limit: apart, and joined. */
  overBeforeCount: number;
  overAfterCount: number;
}

/** Reads the gains of a merge off the members of the trip without and with it. */
export function memberGains(trip: Trip, before: Draws, after: Draws, { from, into }: Pair): MemberGains {
  const members = Array.from({ length: before.to - before.from }, (_, m) => m);
  const end_h = trip.duration_s / HOUR_s;
  const until = (over_h: number): number => (Number.isNaN(over_h) ? end_h : over_h);
  const first_h = (draws: Draws, m: number): number => {
    const [one, two] = [draws.coolers[from]!.overLimit_h[m]!, draws.coolers[into]!.overLimit_h[m]!];
    return Number.isNaN(one) || two < one ? two : one;
  };
  const was_h = members.map((m) => first_h(before, m));
  const is_h = members.map((m) => first_h(after, m));
  const overOf = (hours: readonly number[]): number => hours.filter((hour) => !Number.isNaN(hour)).length;
  const out_h = (draws: Draws, cooler: number, m: number): number =>
    draws.coolers[cooler]!.iceCarriedOn_h[m]!;
  const [overBeforeCount, overAfterCount] = [overOf(was_h), overOf(is_h)];
  const apart_h = members.map((m) => Math.max(out_h(before, from, m), out_h(before, into, m)));
  const joined_h = members.map((m) => out_h(after, into, m));
  return {
    ice_h: members.map((m) => joined_h[m]! - apart_h[m]!),
    iceInTrip_h: members.map((m) => Math.min(end_h, joined_h[m]!) - Math.min(end_h, apart_h[m]!)),
    food_h:
      overBeforeCount + overAfterCount === 0 ? null : members.map((m) => until(is_h[m]!) - until(was_h[m]!)),
    overBeforeCount,
    overAfterCount,
  };
}

/** A trip without and with its merges: the middle case of both, and the members with their series where there are any. */
export interface BothWays {
  before: Run;
  after: Run;
  draws: readonly [before: Draws, after: Draws] | null;
}

/** Points of a course, ends included; a longer trip takes longer steps. */
const MOST_POINTS = 97;

/** A moment of a course: as things stand before what is done then, or after. */
interface CourseMoment {
  t_h: number;
  before: boolean;
}

/** Even steps, and both values of every moment at which ice goes in or is moved. */
function courseMoments(trip: Trip): CourseMoment[] {
  const end_h = trip.duration_s / HOUR_s;
  const step_h = Math.max(1, Math.ceil(end_h / (MOST_POINTS - 1)));
  const even = Array.from({ length: Math.ceil(end_h / step_h) }, (_, i) => i * step_h);
  const acts = new Set(
    [
      ...trip.ice.flatMap(({ putIn_s }) => (putIn_s === null ? [] : [putIn_s])),
      ...trip.events.flatMap((event) => (event.do === "merge" ? [event.t_s] : [])),
    ].map((t_s) => t_s / HOUR_s),
  );
  const steps = [...even, end_h].filter((t_h) => !acts.has(t_h)).map((t_h) => ({ t_h, before: false }));
  const both = [...acts].flatMap((t_h) => [true, false].map((before) => ({ t_h, before })));
  return [...steps, ...both].sort((a, b) => a.t_h - b.t_h || Number(b.before) - Number(a.before));
}

/** Values of one member, the middle of the bin where they fell into one. */
function memberSeries({ bins, nMoments, from, width }: SeriesBins, member: number): number[] {
  return Array.from(bins.subarray(member * nMoments, (member + 1) * nMoments), (bin) =>
    bin === 0 ? from : from + (bin - 0.5) * width,
  );
}

/** Ice of one cooler at the given moments: by member where there are any, else the middle case alone. */
function iceAt_kg(run: Run, draws: Draws | null, cooler: number, at: readonly CourseMoment[]): number[][] {
  const { series } = run.result.coolers[cooler]!;
  const kept = draws?.series?.[cooler]?.ice_kg;
  const all =
    kept === undefined
      ? [series.ice_kg.p50]
      : Array.from({ length: draws!.to - draws!.from }, (_, member) => memberSeries(kept, member));
  return all.map((ice_kg) =>
    at.map(({ t_h, before }) => (before ? valueBefore : valueAt)(series.t_h, ice_kg, t_h)),
  );
}

const toGrams = (mass_kg: number | null): number => Math.round((mass_kg ?? 0) * 1000) / 1000;

/** The band over the members of what the coolers of one way hold together. */
function together_kg(coolers: readonly (readonly number[][])[], count: number): BandSeries {
  const bands = Array.from({ length: count }, (_, k) => {
    const members = coolers[0]!.map((_, m) => coolers.reduce((sum, cooler) => sum + cooler[m]![k]!, 0));
    if (members.length > 1) return bandOf(members);
    return { p10: members[0]!, p50: members[0]!, p90: members[0]! };
  });
  return {
    p10: bands.map(({ p10 }) => toGrams(p10)),
    p50: bands.map(({ p50 }) => toGrams(p50)),
    p90: bands.map(({ p90 }) => toGrams(p90)),
  };
}

/** Ice left in two coolers through the trip, apart and joined. The return ends it: what is gained after it is not in it. */
export function mergeCourse({ before, after, draws }: BothWays, { from, into }: Pair): MergeCourse {
  const at = courseMoments(after.trip);
  const [was, is] = draws ?? [null, null];
  const apart = [from, into].map((cooler) => iceAt_kg(before, was, cooler, at));
  const joined = [from, into].map((cooler) => iceAt_kg(after, is, cooler, at));
  const likely_kg = (cooler: readonly number[][]): number[] => together_kg([cooler], at.length).p50;
  return {
    t_h: at.map(({ t_h }) => t_h),
    apart_kg: together_kg(apart, at.length),
    joined_kg: together_kg(joined, at.length),
    from_kg: likely_kg(apart[0]!),
    into_kg: likely_kg(apart[1]!),
  };
}
