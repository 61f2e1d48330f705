import { Cancelled } from "../../ensemble/types.ts";
import { forecast } from "../../forecast/forecast.ts";
import type { FoodResult, Result } from "../../forecast/result.ts";
import { dayIndex } from "./losses.ts";
import { placedTrip, withReserve } from "./placed.ts";
import { type Answer, answerOf, programOf } from "./program.ts";
import type { Solve } from "./solver.ts";
import type { Task } from "./task.ts";

/** How often the reserve is raised before it is said that it does not help. */
const mostRounds = 3;

export interface AssignOptions {
  solve: Solve;
  /** Seed of the members that the best other assignment is compared over. */
  seed?: number;
  /** Members that it is compared over; 0: not compared. */
  members?: number;
  onProgress?: (done_frac: number, says: string) => void;
  signal?: { readonly aborted: boolean };
}

export async function solved(task: Task, { solve, signal }: AssignOptions): Promise<Answer> {
  if (signal?.aborted) throw new Cancelled("called off");
  return answerOf(task, await solve(programOf(task)));
}

/** An answer with the middle case of it. */
export interface Settled {
  task: Task;
  answer: Answer;
  /** Perishables that pass their limit in the middle case, though they came aboard below it. */
  warm: readonly FoodResult[];
  /** Share of its room that each cooler takes. */
  filled_frac: readonly number[];
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
/** How bad an answer is: litres that do not fit come before food that warms. */
const badness = ({ answer, warm, filled_frac }: Settled): number =>
  10 * sum(answer.over_L) + sum(filled_frac.map((full) => Math.max(0, full - 1))) * 100 + warm.length;

export const fitsIn = ({ answer, filled_frac }: Settled): boolean =>
  sum(answer.over_L) === 0 && filled_frac.every((full) => full <= 1 + 1e-9);

function warmOnes({ food }: Result, limit_C: number, task: Task): FoodResult[] {
  const cameWarm = new Set(task.trip.food.filter(({ start_C }) => start_C > limit_C).map(({ name }) => name));
  const inCooler = new Set(task.trip.coolers.map(({ name }) => name));
  return food.filter(
    (one) =>
      one.perishable && one.overLimit_h.p50 !== null && inCooler.has(one.cooler) && !cameWarm.has(one.name),
  );
}

export function settle(task: Task, answer: Answer): Settled {
  const trial = withReserve(task, answer, placedTrip(task, answer));
  const { result } = forecast(trial, { effects: false });
  return {
    task,
    answer,
    warm: warmOnes(result, task.trip.limit.limit_C, task),
    filled_frac: result.coolers.map((cooler) => cooler.filled_frac),
  };
}

/** What the trial of a cooler lacked: ice from the first warm item to the end, and room where its stack is higher than reckoned. */
function raised({ task, warm, filled_frac }: Settled): Task {
  const { trip, losses } = task;
  const bins = task.bins.map((bin, c) => {
    const hours = warm
      .filter(({ cooler }) => cooler === trip.coolers[c]!.name)
      .map((one) => one.overLimit_h.p50!);
    const until_kg = losses.until_kg[c]!;
    const first_s = 3600 * Math.min(...hours);
    const lacked_kg =
      hours.length === 0 ? 0 : Math.max(1, until_kg.at(-1)! - until_kg[dayIndex(trip, first_s)]! + 1);
    const room_L = bin.room_L / Math.max(1, filled_frac[c]! * 1.005);
    return {
      ...bin,
      room_L: filled_frac[c]! > 1 + 1e-9 ? room_L : bin.room_L,
      more_kg: bin.more_kg + lacked_kg,
    };
  });
  return { ...task, bins };
}

/**
 * Solves, runs the answer in the middle case, and solves again with more ice where food warmed, or with less room where
 * the stack came out higher than reckoned. The best of these is taken: more ice does not mend everything.
 */
export async function refined(first: Task, options: AssignOptions): Promise<Settled> {
  let best = settle(first, await solved(first, options));
  let last = best;
  for (let round = 0; round < mostRounds && badness(last) > 0; round++) {
    options.onProgress?.(0.2 + 0.15 * round, "which food in which cooler");
    const task = raised(last);
    last = settle(task, await solved(task, options));
    if (badness(last) < badness(best)) best = last;
    // What does not fit by litres does not begin to fit with more ice.
    if (sum(last.answer.over_L) > 0) break;
  }
  return best;
}
