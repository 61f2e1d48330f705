import { runFleet, startFleet } from "../cooler/fleet.ts";
import { drawWorld } from "../ensemble/drawWorld.ts";
import { normalQuantile } from "../ensemble/normalQuantile.ts";
import { valueAtScore } from "../ensemble/priors.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import { sobol_frac } from "../ensemble/sobol.ts";
import { inWorld } from "../forecast/inWorld.ts";
import { loadTrip } from "../forecast/load.ts";
import { valueAt } from "../forecast/series.ts";
import type { World } from "../forecast/world.ts";
import type { Contrast, ExperimentResult } from "./experimentResult.ts";
import type { Arm, Experiment } from "./readExperiment.ts";
import { roomAround, roomError_K } from "./room.ts";

const hour_s = 3600;
const tolerance = 6;

/** Water that clings and ice that melts in the hand, as a share of the ice weighed: a standard deviation. Our own choice. */
export const handling_frac = 0.01;

export interface ExperimentOptions {
  members: number;
  seed: number;
}

/** Ice left at each weighing, kg. */
type Course_kg = readonly number[];

/**
 * A world of one run: the physics and the box of its member, and what is new at every run (how cold box and ice are, how
 * long the lid is up) from draws of that run's own. Ice in a kitchen is weighed, so its weight is what was written.
 */
function worldOf({ trip }: Arm, member: number, seed: number, own: number): World {
  const shared = drawWorld(trip, member, seed);
  const fresh = drawWorld(trip, member, own);
  const [box, freshBox] = [shared.coolers[0], fresh.coolers[0]];
  return {
    ...shared,
    coolers: [{ ...box, bodyShift_K: freshBox.bodyShift_K, openFor_frac: freshBox.openFor_frac }],
    lots: new Map([...fresh.lots].map(([id, lot]) => [id, { ...lot, mass_frac: 1 }])),
  };
}

function courseOf(arm: Arm, { humidity_frac, weigh_s }: Experiment, world: World, room_K: number): Course_kg {
  const input = inWorld(loadTrip(arm.trip), arm.trip.weather, world);
  const around = roomAround(() => arm.room_C + room_K, humidity_frac);
  const [cooler] = input.coolers;
  const fleet = startFleet({ ...input, coolers: [{ ...cooler, around }] }, { tolerance, books: "end" });
  runFleet(fleet, weigh_s.at(-1)!);
  const { t_s, ice_kg } = fleet.tracks[0];
  return weigh_s.map((at_s) => valueAt(t_s, ice_kg, at_s));
}

/** Two runs of every arm in every member: `[arm][member][run]`. */
function runsOf(experiment: Experiment, { members, seed }: ExperimentOptions): Course_kg[][][] {
  return experiment.arms.map((arm, i) =>
    Array.from({ length: members }, (_, member) =>
      [0, 1].map((run) => {
        const own = (seed + 1 + 2 * i + run * 7919) >>> 0;
        const room_K = valueAtScore(roomError_K, normalQuantile(sobol_frac(member, 4096 + i, own)));
        return courseOf(arm, experiment, worldOf(arm, member, seed, own), room_K);
      }),
    ),
  );
}

/**
 * What a kitchen experiment will show, reckoned with the model of the trips: ice left in each arm at each weighing with its
 * range, the difference between arms over the same members, whether a kitchen scale can tell it and how often it would have
 * to be repeated; with guesses and measurements beside it. It does not fit the model to what was measured.
 *
 * @throws ModelError when no step settles
 */
export function experiment(asked: Experiment, options: ExperimentOptions): ExperimentResult {
  const runs = runsOf(asked, options);
  const { file, weigh_s, arms, oneBox, scale_kg } = asked;
  const pairs = arms.flatMap((_, a) => arms.slice(a + 1).map((_other, k) => [a, a + 1 + k] as const));
  return {
    coldstow: 1,
    command: "experiment",
    title: file.title,
    question: file.question ?? null,
    ...options,
    oneBox,
    scale_kg,
    arms: arms.map(({ name, trip }, i) => ({
      name,
      ice_kg: trip.ice.reduce((sum, { mass_kg }) => sum + mass_kg, 0),
      cover: trip.coolers[0].cover,
      weighings: weigh_s.map((at_s, k) => ({
        after_h: at_s / hour_s,
        thought_kg: bandOf(runs[i].flatMap((member) => member.map((course) => course[k]))),
        measured_kg: measuredAt(asked, i, at_s),
      })),
      guesses: asked.guesses.filter(({ arm }) => arm === i).map(({ who, ice_kg }) => ({ who, ice_kg })),
    })),
    contrasts: pairs.flatMap(([a, b]) => weigh_s.map((_, k) => contrastOf(asked, runs, a, b, k))),
  };
}

const measuredAt = ({ measured }: Experiment, arm: number, at_s: number): number[] =>
  measured
    .filter((one) => one.arm === arm && Math.abs(one.after_s - at_s) < 1)
    .sort((one, other) => one.run - other.run)
    .map(({ ice_kg }) => ice_kg);

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** What one weighed run of an arm scatters by itself, as a variance: half the mean square between two runs of a member. */
function ownVariance(members: readonly Course_kg[][], k: number, scale_kg: number): number {
  const between = meanOf(members.map(([one, two]) => (one[k] - two[k]) ** 2)) / 2;
  const left_kg = meanOf(members.map(([one]) => one[k]));
  // A step of the scale is as likely anywhere within itself: its standard deviation is a twelfth under the root.
  return between + (scale_kg * scale_kg) / 12 + (handling_frac * left_kg) ** 2;
}

/** One in twenty to be misled where there is no difference, one in ten to miss one that is there. */
const sure = 1.6448536269514722 + 1.2815515655446004;
/** More pairs than this nobody weighs in a kitchen. */
const mostRepeats = 20;

/**
 * Pairs that must be weighed to see the sign of a difference through the noise of one pair; null where they are too many.
 *
 * @source derivation
 */
export function repeatsFor(difference_kg: number, noise_kg: number): number | null {
  const count = Math.max(1, Math.ceil((sure * noise_kg) ** 2 / difference_kg ** 2));
  return count <= mostRepeats ? count : null;
}

function contrastOf(
  asked: Experiment,
  runs: readonly Course_kg[][][],
  a: number,
  b: number,
  k: number,
): Contrast {
  const { arms, scale_kg, weigh_s } = asked;
  const differences = runs[a].flatMap((member, at) =>
    member.map((course, run) => course[k] - runs[b][at][run][k]),
  );
  const thought_kg = bandOf(differences);
  const noise_kg = Math.sqrt(ownVariance(runs[a], k, scale_kg) + ownVariance(runs[b], k, scale_kg));
  const [ofA, ofB] = [measuredAt(asked, a, weigh_s[k]), measuredAt(asked, b, weigh_s[k])];
  return {
    a: arms[a].name,
    b: arms[b].name,
    after_h: weigh_s[k] / hour_s,
    thought_kg,
    noise_kg,
    repeats: repeatsFor(thought_kg.p50 ?? 0, noise_kg),
    runs: Math.min(ofA.length, ofB.length),
    measured_kg: ofA.length === 0 || ofB.length === 0 ? null : meanOf(ofA) - meanOf(ofB),
  };
}
