import { inputsOf } from "../ensemble/inputs.ts";
import { runMembers } from "../ensemble/runMembers.ts";
import { Cancelled, type Draws } from "../ensemble/types.ts";
import type { Trip } from "../trip/types.ts";
import { gainOf, holds } from "../whatif/gains.ts";
import type { Gain } from "../whatif/types.ts";
import type { ActResult } from "./campResult.ts";
import { jointScores, meanScores, scoresFor } from "./posterior.ts";
import { possibleActs, type TriedAct } from "./tryActs.ts";
import type { Weighed } from "./weighLooks.ts";

export interface TryOptions {
  /** Members that the best acts are tried on. */
  nTryMembers: number;
  /** Awaited before each trial, so that whoever tries can hear of other things. */
  pause?: () => Promise<void>;
  signal?: { readonly aborted: boolean };
}

/** Acts that go on from the first trial, in the middle of what was learned, to the second. */
const tried = 3;
/** Hours below which nobody would get up. */
const worth_h = 0.5;
const hour_s = 3600;

function drawsAt(
  trip: Trip,
  inputs: Weighed["inputs"],
  scores: readonly Float64Array[],
  { signal }: TryOptions,
): Draws {
  if (signal?.aborted) throw new Cancelled("called off");
  const nInputs = inputsOf(trip).length;
  const all = new Float64Array(scores.length * nInputs);
  scores.forEach((own, i) => {
    all.set(scoresFor(trip, inputs, own), i * nInputs);
  });
  return runMembers(trip, { from: 0, to: scores.length, seed: 0, series: false, scores: all });
}

const likely = (gain: Gain): readonly number[] => [
  gain.food_h.p50 ?? 0,
  gain.warm_h.p50 ?? 0,
  gain.ice_h.p50 ?? 0,
];

/** The first of food hours, warm hours and ice hours in which two gains differ so that one would notice. */
function better(a: Gain, b: Gain): number {
  const [one, two] = [likely(a), likely(b)];
  for (let i = 0; i < one.length; i++) if (Math.abs(one[i]! - two[i]!) >= worth_h) return two[i]! - one[i]!;
  return 0;
}

/** Whether an act helps nine times in ten, and harms no food in one of ten. */
function helps(gain: Gain): boolean {
  const { food_h, warm_h, ice_h } = gain;
  if ((food_h.p10 ?? 0) < -worth_h || (warm_h.p10 ?? 0) < -worth_h) return false;
  const most = [food_h, warm_h, ice_h].filter(({ p50 }) => (p50 ?? 0) >= worth_h);
  return most.some(({ p10 }) => (p10 ?? 0) > 0);
}

/** Whether food passes its limit from now on in a member: what did before cannot be helped any more. */
function failsLater(trip: Trip, draws: Draws, member: number, now_s: number): boolean {
  const inCoolers = trip.food.filter(({ cooler }) => cooler !== null);
  return inCoolers.some(
    ({ like }, k) => like.perishable && draws.food[k]!.overLimit_h[member]! * hour_s > now_s,
  );
}

/** Whether food would pass its limit, or ice that food needs end before it is eaten, more often than the trip allows. */
function isNeeded(trip: Trip, draws: Draws, now_s: number): boolean {
  const n = draws.to - draws.from;
  const failing = Array.from({ length: n }, (_, i) => failsLater(trip, draws, i, now_s));
  if (!holds(trip, failing.filter((fails) => fails).length / n)) return true;
  const emptied = new Set(trip.events.flatMap((event) => (event.do === "merge" ? [event.from] : [])));
  return trip.coolers.some((_, i) => {
    const eaten = trip.food.filter(({ cooler, like }) => cooler === i && like.perishable);
    const last_s = eaten.reduce((last, { eat_s }) => Math.max(last, eat_s ?? trip.duration_s), 0);
    if (last_s === 0 || emptied.has(i)) return false;
    const ends = draws.coolers[i]!.iceOut_h.filter((out_h) => out_h * hour_s < last_s).length;
    return !holds(trip, ends / n);
  });
}

/** The cooler whose ice ends first of those with some. */
function neediest(trip: Trip, draws: Draws): number {
  const ends = trip.coolers.map((_, i) => {
    const { iceCarriedOn_h } = draws.coolers[i]!;
    const mean = iceCarriedOn_h.reduce((sum, end) => sum + end, 0) / iceCarriedOn_h.length;
    return trip.food.some(({ cooler, like }) => cooler === i && like.perishable) ? mean : mean + 1e6;
  });
  return ends.indexOf(Math.min(...ends));
}

interface Trial {
  act: TriedAct;
  gain: Gain;
  /** In the middle of what was learned nothing fails any more. */
  isEnough: boolean;
}

/** Of acts that differ in how much is done, the least that is enough; where none is, the most. */
function leastOfGroups(trials: readonly Trial[]): Trial[] {
  const groups = new Map<string, Trial[]>();
  for (const trial of trials) {
    const key = trial.act.group ?? trial.act.key;
    groups.set(key, [...(groups.get(key) ?? []), trial]);
  }
  return [...groups.values()].map((group) => group.find(({ isEnough }) => isEnough) ?? group.at(-1)!);
}

export interface OneThing {
  needed: boolean | null;
  now: ActResult | null;
  others: ActResult[];
}

/**
 * The one thing to do now: every possible act is tried in the middle of what was learned, the best few on members that
 * fit the log, against the same members with nothing done. With no members nothing is tried and nothing told.
 *
 * @throws Cancelled when the signal is given
 */
export async function oneThing(
  trip: Trip,
  learned: Weighed,
  now_s: number,
  options: TryOptions,
): Promise<OneThing> {
  if (options.nTryMembers === 0) return { needed: null, now: null, others: [] };
  const { pause = async () => {} } = options;
  const joint = jointScores(learned, options.nTryMembers);
  const run = async (tried: Trip, scores: readonly Float64Array[]): Promise<{ trip: Trip; draws: Draws }> => {
    await pause();
    return { trip: tried, draws: drawsAt(tried, learned.inputs, scores, options) };
  };
  const before = await run(trip, joint);
  const needed = isNeeded(trip, before.draws, now_s);
  const middle = [meanScores(learned)];
  const beforeMiddle = await run(trip, middle);
  const trials: Trial[] = [];
  for (const act of possibleActs(trip, now_s, neediest(trip, before.draws))) {
    const after = await run(act.trip, middle);
    const isEnough = !isNeeded(act.trip, after.draws, now_s);
    trials.push({ act, gain: gainOf(beforeMiddle, after), isEnough });
  }
  const best = leastOfGroups(trials)
    .sort((a, b) => better(a.gain, b.gain) || (a.act.key < b.act.key ? -1 : 1))
    .slice(0, tried);
  const all: ActResult[] = [];
  for (const { act } of best) {
    const gain = gainOf(before, await run(act.trip, joint));
    if (helps(gain)) all.push({ key: act.key, does: act.says, gain, logs: [...act.logs] });
  }
  all.sort((a, b) => better(a.gain, b.gain) || (a.key < b.key ? -1 : 1));
  return { needed, now: needed ? (all[0] ?? null) : null, others: needed ? all.slice(1) : all };
}
