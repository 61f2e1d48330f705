import type { Draws } from "../ensemble/types.ts";
import type { IceRun } from "../forecast/planResult.ts";
import type { Result, Warning } from "../forecast/result.ts";
import { massWords } from "../quantity/show.ts";
import { usualLayer } from "../trip/ice.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { hourWords, isoAt, momentWords } from "./moment.ts";
import { suits } from "./offer.ts";
import { pieceWords } from "./pieceWords.ts";
import { fallbackWords } from "./runFallback.ts";
import { judgeAfter, neededBy_s, overCount, reach_h, type Wanting, wantingOf } from "./runNeed.ts";
import { type ProposeOptions, Trials } from "./trials.ts";
import {
  backFirst_s,
  type Going,
  goingAt,
  isSameVisit,
  latestGoing,
  type Visit,
  visitsOf,
} from "./visits.ts";
import { emptied_s } from "./whereabouts.ts";

/** Ice to be fetched on the way, and what to put into the trip for it. */
export interface IceRunProposal {
  /** In order of time; what the file has itself is among them, and stays as it is. */
  iceRuns: IceRun[];
  /** What the proposed runs put in, with its moment. */
  ice: TripIce[];
  warnings: Warning[];
}

/** Forecasts that the search may take, those of the members not counted. */
const MOST_RUNS = 60;
/** What one person carries by hand over a distance, kg. Common practice. */
const handCarry_kg = 15;
/** Visits that are tried for one cooler before it is left as it is. */
const MOST_TRIES = 4;
/** A run that gives less is none. */
const LEAST_h = 1;
const HOUR_s = 3600;

/** A run that is settled. */
interface Settled {
  visit: Visit;
  going: Going;
  lot: TripIce;
  why: string;
}

/** The search as far as it has come. */
interface Search {
  trials: Trials;
  trip: Trip;
  runs: Settled[];
  visits: readonly Visit[];
  /** How the trip stood with the runs found by then: coolers that want nothing do not change it. */
  stood: { runs: readonly Settled[]; result: Result; draws: Draws | null } | null;
}

/** The trip with its runs so far, as it is likely and over members. */
function standOf(search: Search): { now: Trip; result: Result; draws: Draws | null } {
  const { runs, trials } = search;
  const now = withRuns(search);
  if (search.stood?.runs !== runs)
    search.stood = { runs, result: trials.run(now).result, draws: trials.draws(now) };
  return { ...search.stood, now };
}

const withRuns = ({ trip, runs }: Search): Trip => ({
  ...trip,
  ice: [...trip.ice, ...runs.map(({ lot }) => lot)],
});

/** Pieces of a visit that are left to be had and carried in one go. */
function mostPieces({ trip, runs }: Search, visit: Visit, cooler: number): number {
  const { supply, way_s } = visit;
  const same = runs.filter((run) => isSameVisit(run.visit, visit));
  const carried_kg = same.reduce((sum, { lot }) => sum + lot.mass_kg, 0);
  const sold = same.filter((run) => run.visit === visit).reduce((sum, { lot }) => sum + lot.pieces, 0);
  const most_kg = way_s > 0 ? trip.carry.people * handCarry_kg - carried_kg : Infinity;
  const room_kg = trip.coolers[cooler]!.volume_m3 * 917;
  return Math.max(
    0,
    Math.min((supply.max ?? Infinity) - sold, Math.floor(Math.min(most_kg, room_kg) / supply.each_kg + 1e-9)),
  );
}

function lotOf({ runs }: Search, { supply }: Visit, going: Going, pieces: number, cooler: number): TripIce {
  return {
    id: `run[${runs.length}]`,
    path: supply.path,
    form: supply.form,
    mass_kg: pieces * supply.each_kg,
    pieces,
    each: supply.each,
    start_C: supply.at_C,
    liquid_frac: supply.liquid_frac,
    cooler,
    layer: usualLayer(supply.form),
    price: supply.price,
    putIn_s: going.in_s,
    boughtBefore_s: 0,
  };
}

/** Visits that come in time, best first: the latest, but where the shop may have none, one that leaves another chance. */
function inOrder(search: Search, wanting: Wanting): Visit[] {
  const { trip, visits, runs } = search;
  const { cooler } = wanting;
  const last_s = Math.max(
    -1,
    ...runs.filter(({ lot }) => lot.cooler === cooler).map(({ going }) => going.in_s),
  );
  const usable = visits.filter(
    (visit) =>
      backFirst_s(visit) > last_s &&
      backFirst_s(visit) < emptied_s(trip, cooler) &&
      suits({ ...visit.supply, max: null }, trip, cooler) &&
      mostPieces(search, visit, cooler) > 0,
  );
  // The ice may be gone for a while, if only the food bears it.
  const by_s = [neededBy_s(wanting), wanting.over_h * HOUR_s];
  const inTime = by_s.map((end_s) => usable.filter((visit) => backFirst_s(visit) <= end_s));
  const timely = inTime.find((some) => some.length > 0) ?? [];
  const latest = timely.at(-1);
  if (latest === undefined) return [];
  const isDoubtful = latest.supply.chance_frac !== null && latest.supply.chance_frac < 1;
  const earlier = timely.filter((visit) => visit.from_s < latest.from_s);
  const rest = timely.filter((visit) => visit !== latest).reverse();
  const first = isDoubtful ? earlier.at(-1) : undefined;
  return first === undefined
    ? [latest, ...rest]
    : [first, latest, ...rest.filter((visit) => visit !== first)];
}

/** The fewest pieces of one visit that hold; else as many as fit, if that is worth it. */
function piecesFor(
  search: Search,
  wanting: Wanting,
  visit: Visit,
): { settled: Settled; holds: boolean } | null {
  const { trials, trip } = search;
  const { cooler, need, member } = wanting;
  const base = withRuns(search);
  const by_s = Math.max(neededBy_s(wanting), backFirst_s(visit));
  const going = latestGoing(trip, visit, by_s);
  const tried = (pieces: number): { outcome: string; reach_h: number } => {
    const lot = lotOf(search, visit, going, pieces, cooler);
    const trial = { ...base, ice: [...base.ice, ...(pieces > 0 ? [lot] : [])] };
    const likely = judgeAfter(trials.run(trial).result, need);
    if (member === null || likely.outcome !== "holds")
      return { outcome: likely.outcome, reach_h: reach_h(likely) };
    const hard = judgeAfter(trials.run(trial, member).result, need);
    // How things are packed is not in doubt here: what fits was told by the likely case.
    return { outcome: hard.outcome === "holds" ? "holds" : "short", reach_h: reach_h(hard) + 1e6 };
  };
  let [low, high] = [0, mostPieces(search, visit, cooler) + 1];
  let [least, short] = [null as number | null, null as { pieces: number; reach_h: number } | null];
  const without = tried(0);
  while (high - low > 1 && trials.leftCount > 2) {
    // The most first: where that is too little, no smaller number has to be asked.
    const mid = low === 0 && high === mostPieces(search, visit, cooler) + 1 ? high - 1 : (low + high) >> 1;
    const answer = tried(mid);
    if (answer.outcome === "holds") least = mid;
    if (answer.outcome === "short") short = { pieces: mid, reach_h: answer.reach_h };
    if (answer.outcome === "short") low = mid;
    else high = mid;
  }
  const pieces = least ?? short?.pieces ?? 0;
  if (pieces === 0 || (least === null && short!.reach_h < without.reach_h + LEAST_h)) return null;
  const lot = lotOf(search, visit, going, pieces, cooler);
  return {
    settled: { visit, going, lot, why: whyWords(trip, wanting, visit, least !== null) },
    holds: least !== null,
  };
}

function whyWords(trip: Trip, wanting: Wanting, { supply, closes_s }: Visit, holds: boolean): string {
  const by_s = neededBy_s(wanting);
  const sure = wanting.member === null ? "likely" : `to be ${Math.round(100 * trip.confidence_frac)} % sure`;
  const shuts = closes_s === null ? "" : `; ${supply.where} shuts ${isoAt(trip, closes_s).slice(11)}`;
  const enough = holds ? "with it, it holds to the end" : "it helps, and is not enough by itself";
  return `${wanting.need.cooler} needs ice by ${hourWords(trip, by_s)}, ${sure}${shuts}; ${enough}`;
}

/** Runs for one cooler, one visit after another, until it holds or nothing more helps. */
function fetchFor(search: Search, cooler: number): void {
  const { trials, trip } = search;
  const { length: most } = search.visits;
  for (let round = 0; round < most && trials.leftCount > 4; round++) {
    const { now, result, draws } = standOf(search);
    const wanting = wantingOf(now, result, draws, cooler);
    if (wanting === null) return;
    trials.says(`ice runs for ${trip.coolers[cooler]!.name}`);
    let found: ReturnType<typeof piecesFor> = null;
    for (const visit of inOrder(search, wanting).slice(0, MOST_TRIES)) {
      const one = piecesFor(search, wanting, visit);
      if (one?.holds || (one !== null && found === null)) found = one;
      if (one?.holds) break;
    }
    if (found === null) return;
    search.runs = together([...search.runs, found.settled]);
    if (found.holds && wanting.member === null) return;
  }
}

/** Who goes to one shop for several coolers goes once: at the latest moment that serves them all. */
function together(runs: readonly Settled[]): Settled[] {
  return runs.map((run) => {
    const same = runs.filter(({ visit }) => isSameVisit(visit, run.visit));
    const first_s = Math.min(...same.map(({ going }) => going.leave_s));
    const going = goingAt(run.visit, first_s);
    return { ...run, going, lot: { ...run.lot, putIn_s: going.in_s } };
  });
}

/** Ice that the file itself has put in on the way: told as the run that it is. */
function writtenRuns(trip: Trip, trials: Trials, visits: readonly Visit[]): IceRun[] {
  const later = trip.ice.filter((lot) => lot.putIn_s !== null && lot.form !== "dry ice");
  return later.map((lot) => {
    const in_s = lot.putIn_s!;
    const visit = visits.findLast(
      ({ supply, from_s, to_s, way_s }) =>
        supply.form === lot.form &&
        supply.each === lot.each &&
        from_s + way_s <= in_s + 60 &&
        in_s - 6 * HOUR_s <= to_s + way_s,
    );
    const way_s = visit?.way_s ?? 0;
    const there_s = Math.max(0, in_s - way_s);
    return runOf(trip, lot, {
      where: visit?.supply.where ?? "where you wrote",
      going: { leave_s: Math.max(0, in_s - 2 * way_s), there_s, in_s },
      fallback: fallbackWords(trials, trip, lot, visits),
      why: "in your file",
    });
  });
}

function runOf(
  trip: Trip,
  lot: TripIce,
  how: { where: string; going: Going; fallback: string; why: string },
): IceRun {
  return {
    at: isoAt(trip, how.going.there_s),
    leaveBy: isoAt(trip, how.going.leave_s),
    where: how.where,
    form: lot.form,
    pieces: lot.pieces,
    each_kg: lot.mass_kg / lot.pieces,
    into: trip.coolers[lot.cooler]!.name,
    price: lot.price === null ? null : lot.price * lot.pieces,
    fallback: how.fallback,
    why: how.why,
  };
}

/** Why a cooler that does not hold gets no run, or not enough; and why there is none at all. */
function runWarnings(search: Search, shut: readonly string[], written: readonly IceRun[]): Warning[] {
  const { trip, visits, runs } = search;
  const { now, result, draws } = standOf(search);
  const none = visits.length > 0 ? [] : shut.length > 0 ? shut : ["no supply on the way is listed"];
  const short = trip.coolers.flatMap((cooler, i): Warning[] => {
    const wanting = wantingOf(now, result, draws, i);
    if (wanting === null) return [];
    const mine = runs.some(({ lot }) => lot.cooler === i);
    const members = draws === null || wanting.need.foods.size === 0 ? "" : memberWords(now, draws, i);
    const by = `${cooler.name} needs more ice by ${hourWords(trip, neededBy_s(wanting))}${members}`;
    const reasons = [...none, ...(mine || none.length > 0 ? [] : [lateWords(search, wanting)])];
    const says = `${by}; ${mine ? "the ice runs found are not enough" : `no ice run mends it: ${reasons.join("; ")}`}`;
    return [{ code: "ice-run-short", says, path: `coolers[${i}]` }];
  });
  if (runs.length + written.length > 0 || short.length > 0) return short;
  const sure = `${Math.round(100 * trip.confidence_frac)} %`;
  const says = `No ice run is needed: with the ice of the departure every cooler holds, ${sure} sure.`;
  return [{ code: "no-ice-run", says, path: "supply" }];
}

function memberWords(trip: Trip, draws: NonNullable<ReturnType<Trials["draws"]>>, cooler: number): string {
  const over = overCount(trip, draws, cooler);
  return over === 0 ? "" : `, its food passes the limit in ${over} of ${draws.to - draws.from} members`;
}

function lateWords({ trip, visits }: Search, wanting: Wanting): string {
  const first = visits[0]!;
  const [in_s, by_s] = [backFirst_s(first), Math.min(trip.duration_s, neededBy_s(wanting))];
  const ice = `the first ice on the way is there ${momentWords(trip, in_s)}`;
  return in_s > by_s
    ? `${ice}, too late`
    : `${ice}, and as much of it as can be had and fits gives less than an hour`;
}

function carryWarnings({ trip, runs }: Search): Warning[] {
  const heavy = runs.filter(({ visit }) => visit.way_s > 0);
  if (heavy.length === 0) return [];
  const each = `${massWords(handCarry_kg, "metric")}, ${massWords(handCarry_kg, "us")}`;
  const says = `A run brings no more than ${trip.carry.people} can carry in one go, ${each} each (common practice).`;
  return [{ code: "ice-run-carry", says, path: "carry.people" }];
}

/**
 * Ice to be fetched on the way for coolers that do not hold with what they have at departure: when to leave at the latest,
 * the fewest pieces that hold to the end or to the next chance, and what to do if the shop has none. The latest moment is
 * when ice or food of the cooler fails at the trip's confidence; opening hours, closed days, pieces a visit, and what the
 * party can carry are kept. What the file puts in itself is told and not changed.
 *
 * Limits: no run is proposed to save weight or money where the ice of the departure holds; one going a visit.
 *
 * @param trip with the ice of its departure planned
 * @throws Cancelled when the signal is given
 * @source common-practice, engineering-judgement
 */
export function proposeIceRuns(trip: Trip, options: ProposeOptions): IceRunProposal {
  const trials = new Trials(options, MOST_RUNS);
  trials.says("ice runs");
  const { visits, shut } = visitsOf(trip);
  const search: Search = { trials, trip, runs: [], visits, stood: null };
  const feeds = (i: number): number =>
    trip.food.some((food) => food.cooler === i && food.like.perishable) ? 0 : 1;
  const order = trip.coolers.map((_, i) => i).sort((a, b) => feeds(a) - feeds(b) || a - b);
  if (visits.length > 0) for (const cooler of order) fetchFor(search, cooler);
  const planned = withRuns(search);
  const written = writtenRuns(trip, trials, visits);
  const proposed = search.runs.map(({ visit, going, lot, why }) => {
    const fallback = fallbackWords(trials, planned, lot, visits);
    return runOf(trip, lot, {
      where: visit.supply.where,
      going,
      fallback,
      why: `${why}; ${pieceWords(lot.pieces, lot.each, lot.form)}`,
    });
  });
  return {
    iceRuns: [...written, ...proposed].sort((a, b) =>
      a.leaveBy < b.leaveBy ? -1 : a.leaveBy > b.leaveBy ? 1 : 0,
    ),
    ice: search.runs.map(({ lot }) => lot),
    warnings: [...runWarnings(search, shut, written), ...carryWarnings(search)],
  };
}
