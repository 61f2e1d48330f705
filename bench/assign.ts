/** How long it takes to decide which food goes where, and how that grows with items and coolers. */
import { assignFood } from "../core/plan/assign/assignFood.ts";
import { highsSolver, type Solve } from "../core/plan/assign/solver.ts";
import { menuOf } from "./cases/assignMenu.ts";
import { sayMachine, sayTable } from "./cases/report.ts";

/** Processor time, so that other work on the machine counts little. */
const now_ms = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

async function row(solve: Solve, items: number, coolers: number): Promise<string[]> {
  const solves_ms: number[] = [];
  const timed: Solve = async (lp) => {
    const from = now_ms();
    const solution = await solve(lp);
    solves_ms.push(now_ms() - from);
    return solution;
  };
  const from = now_ms();
  const { fits, gap_frac } = await assignFood(menuOf(items, coolers), { solve: timed });
  const all_ms = now_ms() - from;
  return [
    String(items),
    String(coolers),
    fits ? "yes" : "no",
    String(solves_ms.length),
    solves_ms[0].toFixed(0),
    Math.max(...solves_ms).toFixed(0),
    all_ms.toFixed(0),
    `${(100 * gap_frac).toFixed(2)} %`,
  ];
}

const heads = ["items", "coolers", "fits", "solves", "first ms", "slowest ms", "all ms", "gap"];

sayMachine("Which food in which cooler, a week, processor time");
const solve = await highsSolver();
// Warms the machine up, so that the first line is like the rest.
await row(solve, 10, 2);
const byItems: string[][] = [];
for (const items of [10, 20, 30, 60, 120, 400]) byItems.push(await row(solve, items, 4));
sayTable(heads, byItems);
const byCoolers: string[][] = [];
for (const coolers of [1, 2, 4, 6, 8]) byCoolers.push(await row(solve, 30, coolers));
sayTable(heads, byCoolers);
