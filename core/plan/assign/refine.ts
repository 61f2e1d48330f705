import { Cancelled } from "../../ensemble/types.ts";
import { forecast } from "../../forecast/forecast.ts";
import type { FoodResult, Result } from "../../forecast/result.ts";
import type { Lay } from "../lay.ts";
import { dayIndex } from "./losses.ts";
import { fine, lumpsOf } from "./lumps.ts";
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
  /** When each cooler's ice is gone; null: there is some at the return. */
  iceEnd_s: readonly (number | null)[];
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

/** Ways to lay the reserve in the trial: cold air sinks, so that what keeps its shape may have to lie on top. */
const lays: readonly Lay[] = ["usual", "top"];

/**
 * Runs an answer in the middle case. Where food warms with the ice as it usually lies, it is not said yet that there is
 * too little of it: the search for ice may lay it otherwise, so that this is tried first.
 */
export function settle(task: Task, answer: Answer): Settled {
  const placed = placedTrip(task, answer);
  let best: Settled | null = null;
  for (const lay of lays) {
    const { result } = forecast(withReserve(task, answer, placed, { lay }), { effects: false });
    const one: Settled = {
      task,
      answer,
      warm: warmOnes(result, task.trip.limit.limit_C, task),
      filled_frac: result.coolers.map((cooler) => cooler.filled_frac),
      iceEnd_s: result.coolers.map(({ iceOut_h }) => (iceOut_h.p50 === null ? null : 3600 * iceOut_h.p50)),
    };
    if (best === null || badness(one) < badness(best)) best = one;
    if (one.warm.length === 0) break;
  }
  return best!;
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

/** Whether a task asks what was asked already: nothing but what a cooler needs or holds differs from round to round. */
const isSame = (one: Task, other: Task): boolean =>
  one.bins.every((bin, c) => bin.more_kg === other.bins[c]!.more_kg && bin.room_L === other.bins[c]!.room_L);

/**
 * Solves, runs the answer in the middle case, and solves again with more ice where food warmed, or with less room where
 * the stack came out higher than reckoned. The best of these is taken: more ice does not mend everything. What does not
 * fit as it was gathered is solved item by item.
 */
export async function refined(first: Task, options: AssignOptions): Promise<Settled> {
  let best = settle(first, await solved(first, options));
  let last = best;
  for (let round = 0; round < mostRounds && badness(last) > 0; round++) {
    const { task } = last;
    const isOver = sum(last.answer.over_L) > 0;
    const finer = isOver ? lumpsOf(task.trip, fine) : task.lumps;
    // What does not fit by litres does not begin to fit with more ice, only in smaller lumps.
    if (isOver && finer.length === task.lumps.length) break;
    options.onProgress?.(0.2 + 0.15 * round, "which food in which cooler");
    const next = isOver ? { ...task, lumps: finer } : raised(last);
    if (!isOver && isSame(next, task)) break;
    last = settle(next, await solved(next, options));
    // Ice or room that did not help this time will not the next.
    if (badness(last) >= badness(best)) break;
    best = last;
  }
  return best;
}
