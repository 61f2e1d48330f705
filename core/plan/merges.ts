import { bandOf } from "../ensemble/quantiles.ts";
import { runMembers } from "../ensemble/runMembers.ts";
import { Cancelled, type Draws } from "../ensemble/types.ts";
import { middle } from "../forecast/foodResult.ts";
import type { Merge } from "../forecast/planResult.ts";
import type { Band, Warning } from "../forecast/result.ts";
import { valueAt } from "../forecast/series.ts";
import type { Trip, TripEvent } from "../trip/types.ts";
import { insideAt, neverWords, notYetWords, type Pair, rawWords } from "./mergeRules.ts";
import {
  atClocks_s,
  type BothWays,
  type MemberGains,
  type MergeTrial,
  MergeTrials,
  memberGains,
  mergeCourse,
  withEvents,
} from "./mergeTrial.ts";
import { hourWords, isoAt } from "./moment.ts";
import { type ProposeOptions, type Run, Trials } from "./trials.ts";

/** Merges that help, and what to put into the trip for them. */
export interface MergeProposal {
  merges: Merge[];
  /** Each merge, and the openings that go along with what is moved. */
  events: TripEvent[];
  /** Why there is none, where there is none. */
  warnings: Warning[];
}

/** Forecasts that the search may take, those of the members not counted. */
const MOST_RUNS = 60;
/** Moments tried for one pair, where there are few pairs. */
const MOST_MOMENTS = 6;
/** Less is lost among the other doubts of a trip. */
const LEAST_ice_h = 1;
const LEAST_food_h = 0.05;
/** Two stacks that add up to more are not tried: their gaps do not give that much. */
const SURELY_FULL_frac = 1.1;

interface Candidate extends Pair {
  moments_s: number[];
}

/** A pair that is not joined, with the reason. */
interface Refused extends Pair {
  why: string;
}

/** Share of the room of the cooler that stays that both stacks would take, one on the other. */
function together_frac({ fleet }: Run, { from, into }: Pair, t_s: number): number {
  const stack_m3 = (cooler: number): number => {
    const { walls } = fleet.boxes[cooler]!;
    const track = fleet.tracks[cooler]!;
    return (valueAt(track.t_s, track.stack_m, t_s) / walls.height_m) * walls.inside_m3;
  };
  return (stack_m3(from) + stack_m3(into)) / fleet.boxes[into]!.walls.inside_m3;
}

/** Whether there is anything to move. */
function isWorth({ trip, fleet }: Run, from: number, t_s: number): boolean {
  const { t_s: times_s, ice_kg } = fleet.tracks[from]!;
  return insideAt(trip, from, t_s).length > 0 || valueAt(times_s, ice_kg, t_s) > 0.1;
}

function candidateOf(run: Run, pair: Pair): Candidate | Refused {
  const { trip } = run;
  const never = neverWords(trip, pair);
  if (never !== null) return { ...pair, why: never };
  const names = (cooler: number): string => trip.coolers[cooler]!.name;
  let why = `there is no breakfast or dinner on the trip at which ${names(pair.from)} could be emptied`;
  const moments_s: number[] = [];
  for (const t_s of atClocks_s(trip, [trip.meals.breakfast_s, trip.meals.dinner_s])) {
    const notYet = notYetWords(trip, pair, t_s);
    if (notYet !== null) why = notYet;
    else if (!isWorth(run, pair.from, t_s)) why = `${names(pair.from)} is empty by then`;
    else if (together_frac(run, pair, t_s) > SURELY_FULL_frac)
      why = `${names(pair.into)} has no room for what is in ${names(pair.from)}`;
    else moments_s.push(t_s);
  }
  return moments_s.length === 0 ? { ...pair, why } : { ...pair, moments_s };
}

const isFirst = (a: MergeTrial, b: MergeTrial): boolean =>
  (a.foodGain_h ?? 0) - (b.foodGain_h ?? 0) > LEAST_food_h ||
  ((a.foodGain_h ?? 0) >= (b.foodGain_h ?? 0) - LEAST_food_h && a.iceGain_h > b.iceGain_h);

function refusalOf(trip: Trip, trial: MergeTrial): string | null {
  const { name } = trip.coolers[trial.into]!;
  if (trial.fits_frac > 1 + 1e-9) return `${name} would be ${Math.ceil(100 * trial.fits_frac)} % full`;
  if (trial.harm !== null) return trial.harm;
  const food_h = trial.foodGain_h ?? 0;
  if (food_h < -LEAST_food_h) return `food would pass its limit ${(-food_h).toFixed(1)} h sooner`;
  if (food_h > LEAST_food_h || trial.iceGain_h > LEAST_ice_h) return null;
  return `the ice would end ${Math.abs(trial.iceGain_h).toFixed(1)} h ${trial.iceGain_h < 0 ? "sooner" : "later"} than where it lasts longer apart`;
}

/** The best moment of one pair: two that fit are compared, since what is gained grows less with every meal. */
function bestOf(trip: Trip, trials: MergeTrials, candidate: Candidate, most: number): MergeTrial | Refused {
  let best: MergeTrial | null = null;
  let why = "there was no time left to try it";
  let fitting = 0;
  for (const t_s of candidate.moments_s.slice(0, most)) {
    const trial = trials.try(candidate, t_s);
    const refused = refusalOf(trip, trial);
    if (trial.fits_frac <= 1 + 1e-9) fitting++;
    if (refused !== null) why = refused;
    else if (best === null || isFirst(trial, best)) best = trial;
    if (fitting >= 2) break;
  }
  return best ?? { from: candidate.from, into: candidate.into, why };
}

const isTrial = (one: MergeTrial | Refused): one is MergeTrial => !("why" in one);

/** The best first, each cooler in one merge at most. */
function apartFrom(found: readonly MergeTrial[]): MergeTrial[] {
  const order = [...found].sort((a, b) => (isFirst(a, b) ? -1 : isFirst(b, a) ? 1 : 0));
  const taken = new Set<number>();
  return order.filter(({ from, into }) => {
    if (taken.has(from) || taken.has(into)) return false;
    taken.add(from).add(into);
    return true;
  });
}

/** A merge with its bands; null where more members lose food by it, or where the likely gain is gone. */
function mergeOf(trip: Trip, trial: MergeTrial, ways: BothWays): Merge | Refused {
  const { draws } = ways;
  const gains = draws === null ? null : memberGains(trip, draws[0], draws[1], trial);
  if (gains !== null && gains.overAfterCount > gains.overBeforeCount)
    return { from: trial.from, into: trial.into, why: "food would pass its limit in more members" };
  const gain_h = gains === null ? middle(trial.iceGain_h) : bandOf(gains.ice_h);
  const foodGain_h = gains === null ? middleOrNull(trial.foodGain_h) : gains.food_h && bandOf(gains.food_h);
  const nothing = nothingGained(trip, trial, gain_h, gains);
  if (nothing !== null) return { from: trial.from, into: trial.into, why: nothing };
  return {
    at: isoAt(trip, trial.t_s),
    from: trip.coolers[trial.from]!.name,
    into: trip.coolers[trial.into]!.name,
    gain_h,
    foodGain_h,
    fits_frac: trial.fits_frac,
    why: whyWords(trip, trial),
    course: mergeCourse(ways, trial),
  };
}

/**
 * Why a merge is worth nothing: no food is spared, and the ice gains nothing likely, a range of hours that reaches below
 * zero, or hours after the return only; null: it is worth something.
 */
function nothingGained(
  trip: Trip,
  trial: MergeTrial,
  gain_h: Band,
  gains: MemberGains | null,
): string | null {
  const isFoodSpared =
    gains === null
      ? (trial.foodGain_h ?? 0) > LEAST_food_h
      : gains.overAfterCount < gains.overBeforeCount || (gains.food_h && bandOf(gains.food_h).p10! > 0);
  if (isFoodSpared) return null;
  if ((gain_h.p50 ?? 0) <= LEAST_ice_h / 2) return "the ice would likely last no longer";
  if ((gain_h.p10 ?? 0) <= 0) return "whether the ice would last longer or shorter cannot be told";
  const end_s = trip.duration_s;
  const middle_s =
    Math.min(end_s, trial.joinedOut_s) - Math.min(end_s, Math.max(trial.fromOut_s, trial.intoOut_s));
  const inTrip_h = gains === null ? middle_s / 3600 : bandOf(gains.iceInTrip_h).p90!;
  return inTrip_h <= LEAST_ice_h / 2 ? "apart, ice is left at the return as well" : null;
}

const middleOrNull = (value: number | null): Band | null => (value === null ? null : middle(value));

function whyWords(trip: Trip, trial: MergeTrial): string {
  const { from, into, fromOut_s, intoOut_s, joinedOut_s, foodGain_h } = trial;
  const ends = (cooler: number, out_s: number): string =>
    out_s <= 0
      ? `${trip.coolers[cooler]!.name} has none`
      : `that of ${trip.coolers[cooler]!.name} ${hourWords(trip, out_s)}`;
  const apart = `apart, ${ends(from, fromOut_s)} and ${ends(into, intoOut_s)}`;
  const food =
    foodGain_h === null || Math.abs(foodGain_h) < LEAST_food_h
      ? ""
      : ` The first food passes its limit ${foodGain_h.toFixed(1)} h later.`;
  return `Joined, the ice likely ends ${hourWords(trip, joinedOut_s)}; ${apart}.${food} One lid, one set of walls.${rawWords(trip, trial, trial.t_s)}`;
}

/** One reason for each two coolers, whichever of them would be emptied. */
function noneWarning(trip: Trip, refused: readonly Refused[]): Warning {
  const said = new Map<string, string>();
  for (const { from, into, why } of refused) {
    const both = [trip.coolers[from]!.name, trip.coolers[into]!.name];
    said.set([from, into].sort((a, b) => a - b).join(), `${both[0]} into ${both[1]}: ${why}`);
  }
  const reasons = [...said.values()].slice(0, MOST_MOMENTS).join("; ");
  const says = trip.coolers.length < 2 ? "there is only one cooler" : reasons;
  return { code: "no-merge", says: `No merge is proposed: ${says}.`, path: "coolers" };
}

/**
 * Which cooler to empty into which other one, and when: pairs are tried at breakfasts and dinners at which both fit into
 * one, what comes later, seals, what a cooler holds and raw juice respected. A merge is proposed if the ice then lasts more than an
 * hour longer than in the better of the two apart, or food stays longer within its limit, and no food is worse off. Each
 * cooler takes part in one merge at most, and none that the file merges already. Openings of the emptied cooler are
 * counted on in the other one.
 *
 * Limits: an earlier merge is tried before a later one, and no more than a few moments of each pair.
 *
 * @param trip with its ice planned
 * @throws Cancelled when the signal is given
 * @source common-practice, engineering-judgement
 */
export function proposeMerges(trip: Trip, options: ProposeOptions): MergeProposal {
  if (trip.coolers.length < 2) return { merges: [], events: [], warnings: [noneWarning(trip, [])] };
  const trials = new Trials(options, MOST_RUNS);
  trials.says("merges");
  const run = trials.run(trip);
  const order = trip.coolers.map((_, i) => i);
  const pairs = order.flatMap((from) =>
    order.filter((into) => into !== from).map((into) => ({ from, into })),
  );
  const asked = pairs.map((pair) => candidateOf(run, pair));
  const refused = asked.filter((one): one is Refused => "why" in one);
  const merging = new MergeTrials(trials, trip);
  const candidates = asked.filter((one): one is Candidate => "moments_s" in one);
  // Half as many pairs are left apart as there are ways to join them: each costs a run of its own.
  const most = Math.max(1, Math.floor(trials.leftCount / Math.max(1, 1.5 * candidates.length)));
  const found = candidates.map((candidate): MergeTrial | Refused =>
    trials.leftCount < 2
      ? { ...candidate, why: "there was no time left to try it" }
      : bestOf(trip, merging, candidate, Math.min(MOST_MOMENTS, most)),
  );
  refused.push(...found.filter((one): one is Refused => !isTrial(one)));
  const chosen = apartFrom(found.filter(isTrial));
  return settled(run, trials, chosen, refused);
}

/** The members with their series, for the curves; null with 0 members. */
function drawsOf({ options }: Trials, trip: Trip): Draws | null {
  const { members, seed, signal } = options;
  if (signal?.aborted) throw new Cancelled("called off");
  return members === 0 ? null : runMembers(trip, { from: 0, to: members, seed, series: true });
}

/** Puts the bands to what was chosen: pairs have no cooler in common, so that all are run at once. */
function settled(
  before: Run,
  trials: Trials,
  chosen: readonly MergeTrial[],
  refused: Refused[],
): MergeProposal {
  const { trip } = before;
  if (chosen.length === 0) return { merges: [], events: [], warnings: [noneWarning(trip, refused)] };
  trials.says("how sure the merges are");
  const merged = withEvents(
    trip,
    chosen.flatMap(({ events }) => events),
  );
  const [was, is] = [drawsOf(trials, trip), drawsOf(trials, merged)];
  const draws = was === null || is === null ? null : ([was, is] as const);
  const ways: BothWays = { before, after: trials.run(merged), draws };
  const told = chosen.map((trial) => ({ trial, merge: mergeOf(trip, trial, ways) }));
  const kept = told.filter((one): one is { trial: MergeTrial; merge: Merge } => "at" in one.merge);
  refused.push(...told.flatMap(({ merge }) => ("at" in merge ? [] : [merge])));
  kept.sort((a, b) => a.trial.t_s - b.trial.t_s);
  return {
    merges: kept.map(({ merge }) => merge),
    events: kept.flatMap(({ trial }) => trial.events).sort((a, b) => a.t_s - b.t_s),
    warnings: kept.length === 0 ? [noneWarning(trip, refused)] : [],
  };
}
