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

/**
 * The one thing to do now: every possible act is tried in the middle of what was learned, the best few on members that
 * fit the log, against the same members with nothing done.
 *
 * @throws Cancelled when the signal is given
 */
export function oneThing(
  trip: Trip,
  learned: Weighed,
  now_s: number,
  options: TryOptions,
): { needed: boolean; now: ActResult | null; others: ActResult[] } {
  const { inputs } = learned;
  const joint = jointScores(learned, options.nTryMembers);
  const before = { trip, draws: drawsAt(trip, inputs, joint, options) };
  const needed = isNeeded(trip, before.draws, now_s);
  const middle = [meanScores(learned)];
  const beforeMiddle = { trip, draws: drawsAt(trip, inputs, middle, options) };
  const rough = (act: TriedAct): Gain =>
    gainOf(beforeMiddle, { trip: act.trip, draws: drawsAt(act.trip, inputs, middle, options) });
  const acts = possibleActs(trip, now_s, neediest(trip, before.draws))
    .map((act) => ({ act, gain: rough(act) }))
    .sort((a, b) => better(a.gain, b.gain) || (a.act.key < b.act.key ? -1 : 1))
    .slice(0, tried);
  const all = acts
    .map(({ act }) => ({
      key: act.key,
      does: act.says,
      gain: gainOf(before, { trip: act.trip, draws: drawsAt(act.trip, inputs, joint, options) }),
    }))
    .filter(({ gain }) => helps(gain))
    .sort((a, b) => better(a.gain, b.gain) || (a.key < b.key ? -1 : 1));
  return { needed, now: needed ? (all[0] ?? null) : null, others: needed ? all.slice(1) : all };
}
