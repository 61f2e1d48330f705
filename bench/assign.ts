/** How long it takes to decide which food goes where, and to plan the whole trip, and how that grows with items and coolers. */
import { assignFood } from "../core/plan/assign/assignFood.ts";
import { highsSolver, type Solve } from "../core/plan/assign/solver.ts";
import { wholePlan } from "../core/plan/wholePlan.ts";
import { menuOf } from "./cases/assignMenu.ts";
import { sayMachine, sayTable } from "./cases/report.ts";

/** Processor time, so that other work on the machine counts little. */
const now_ms = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

interface Measured {
  fits: boolean;
  gap_frac: number;
  solves_ms: number[];
  assign_ms: number;
  whole_ms: number;
}

async function measure(solve: Solve, items: number, coolers: number): Promise<Measured> {
  const solves_ms: number[] = [];
  const timed: Solve = async (lp) => {
    const from = now_ms();
    const solution = await solve(lp);
    solves_ms.push(now_ms() - from);
    return solution;
  };
  const trip = menuOf(items, coolers);
  const from = now_ms();
  const { fits, gap_frac } = await assignFood(trip, { solve: timed, members: 0 });
  const assign_ms = now_ms() - from;
  const then = now_ms();
  const never = (): Promise<never> => Promise.reject(new Error("no members are drawn"));
  await wholePlan(trip, { aim: "pieces", members: 0, seed: 1, solve, draw: never });
  return { fits, gap_frac, solves_ms, assign_ms, whole_ms: now_ms() - then };
}

const heads = [
  "items",
  "coolers",
  "fits",
  "solves",
  "slowest ms",
  "gap",
  "assign ms",
  "ratio",
  "whole ms",
  "ratio",
];

const ratio = (now: number, before: number | undefined): string =>
  before === undefined ? "" : `${(now / before).toFixed(2)} ×`;

async function grow(
  solve: Solve,
  sizes: readonly (readonly [items: number, coolers: number])[],
): Promise<void> {
  let before: Measured | null = null;
  const rows: string[][] = [];
  for (const [items, coolers] of sizes) {
    const now: Measured = await measure(solve, items, coolers);
    rows.push([
      String(items),
      String(coolers),
      now.fits ? "yes" : "no",
      String(now.solves_ms.length),
      Math.max(...now.solves_ms).toFixed(0),
      `${(100 * now.gap_frac).toFixed(2)} %`,
      now.assign_ms.toFixed(0),
      ratio(now.assign_ms, before?.assign_ms),
      now.whole_ms.toFixed(0),
      ratio(now.whole_ms, before?.whole_ms),
    ]);
    before = now;
  }
  sayTable(heads, rows);
}

sayMachine("Which food in which cooler, and the whole plan in the middle case; a week, processor time");
const solve = await highsSolver();
// Warms the machine up, so that the first line is like the rest: the solver's code is made fast while it runs.
for (let i = 0; i < 3; i++) await assignFood(menuOf(30, 3), { solve, members: 0 });
await grow(
  solve,
  [5, 10, 20, 40, 80].map((items) => [items, 4] as const),
);
await grow(
  solve,
  [1, 2, 4, 8].map((coolers) => [20, coolers] as const),
);
