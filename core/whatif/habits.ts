import type { EnsembleOptions } from "../ensemble/ensemble.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import type { Draws, RunTasks } from "../ensemble/types.ts";
import type { Band } from "../forecast/result.ts";
import type { Trip } from "../trip/types.ts";
import { type DrawsOf, headOf, runVariants } from "./batch.ts";
import { isMade, mainCoolerIndex } from "./change.ts";
import { firstOver_h, gainOf } from "./gains.ts";
import type { Habit } from "./habit.ts";
import { habitsFor } from "./habitTable.ts";
import { foundIn, sayingTrials } from "./sayings.ts";
import { ice_ratio } from "./sayingWords.ts";
import type { HabitResult, HabitSkipped, HabitsResult } from "./types.ts";
import { allKey, habitKey, variantOf } from "./variants.ts";

/** One switch of a habit that will be run. */
interface Trial {
  habit: Habit;
  good: boolean;
  trip: Trip;
  coolers: string[];
  now: string;
}

/** A trip that has a habit the good way is tried the bad way; any other is tried the good way. */
function trialOf(trip: Trip, habit: Habit): Trial | HabitSkipped {
  const { key, says, goodWords, badWords } = habit;
  const standing = habit.standing(trip);
  if ("why" in standing) return { key, says, why: standing.why };
  const good = standing.way !== "good";
  const made = habit.make(trip, good);
  if (!isMade(made)) return { key, says, why: made.why };
  const { way, from } = standing;
  const now = way === "good" ? goodWords : from === "bad" ? (habit.badNow ?? badWords) : "as written";
  return { habit, good, trip: made, coolers: good ? standing.toGood : standing.toBad, now };
}

const isTrial = (one: Trial | HabitSkipped): one is Trial => "habit" in one;

function resultOf(trip: Trip, trial: Trial, drawsOf: DrawsOf): HabitResult {
  const { habit, good, coolers, now } = trial;
  const after = { trip: trial.trip, draws: drawsOf(habitKey(habit.key, good)) };
  return {
    key: habit.key,
    says: habit.says,
    coolers,
    now,
    instead: good ? habit.goodWords : habit.badWords,
    insteadIsGood: good,
    gain: gainOf({ trip, draws: drawsOf(null) }, after),
  };
}

/** To a tenth of an hour: less is no reason to stand first. */
const likely_h = ({ p50 }: Band): number => Math.round(10 * (p50 ?? 0)) / 10;

/** Gain, in either direction: what is given up by a bad way is what the good way is worth. */
function worthMost(a: HabitResult, b: HabitResult): number {
  const worth = ({ gain, insteadIsGood }: HabitResult): number[] =>
    [gain.food_h, gain.warm_h, gain.ice_h].map((band) => (insteadIsGood ? 1 : -1) * likely_h(band));
  const [one, two] = [worth(a), worth(b)];
  const i = one.findIndex((hours, k) => hours !== two[k]);
  return i < 0 ? 0 : two[i] - one[i];
}

function allOf(trip: Trip, drawsOf: DrawsOf): HabitsResult["all"] {
  const main = mainCoolerIndex(trip);
  const ends = (draws: Draws): { iceOut_h: Band; overLimit_h: Band } => ({
    iceOut_h: bandOf(draws.coolers[main].iceOut_h),
    overLimit_h: bandOf(firstOver_h(draws)),
  });
  const [bad, written, good] = [drawsOf(allKey(false)), drawsOf(null), drawsOf(allKey(true))];
  return {
    bad: ends(bad),
    written: ends(written),
    good: ends(good),
    iceRatio: bandOf(ice_ratio(good, bad, main)),
    gain: gainOf(
      { trip: variantOf(trip, allKey(false))!, draws: bad },
      { trip: variantOf(trip, allKey(true))!, draws: good },
    ),
  };
}

/**
 * What each habit is worth on this trip: every one switched by itself, all bad and all good, and what people say tried on
 * the trip. The same members stand on both sides of each comparison, so a gain is not blurred by what nobody knows of both.
 *
 * @param run the trip is its number 0
 * @throws Cancelled when the signal is given
 * @throws DomainError for fewer than one member
 */
export async function habits(trip: Trip, run: RunTasks, options: EnsembleOptions): Promise<HabitsResult> {
  const tried = habitsFor(trip).map((habit) => trialOf(trip, habit));
  const trials = tried.filter(isTrial);
  const sayings = sayingTrials(trip);
  const keys = trials.map(({ habit, good }) => habitKey(habit.key, good));
  const variants = [null, allKey(true), allKey(false), ...keys, ...sayings.keys];
  const drawsOf = await runVariants(run, variants, options);
  return {
    ...headOf(trip, options),
    command: "habits",
    habits: trials.map((trial) => resultOf(trip, trial, drawsOf)).sort(worthMost),
    skipped: [...tried.filter((one): one is HabitSkipped => !isTrial(one)), ...sayings.skipped],
    sayings: foundIn(trip, sayings, drawsOf),
    all: allOf(trip, drawsOf),
  };
}
