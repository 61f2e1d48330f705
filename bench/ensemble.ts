/** How long an ensemble takes, how it grows, what a second worker gains, what memory it takes, and when it has settled. */
import { execFile } from "node:child_process";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { withMembers } from "../cli/memberPool.ts";
import { type Band, bandOf, type Draws, joinDraws, type TripSource, tasksFor } from "../core/index.ts";
import { weekOfFour } from "./cases/ensembleTrip.ts";
import { sayMachine, sayTable } from "./cases/report.ts";

interface Timed {
  ms: number;
  /** Of the process and its workers, MB. */
  rss_MB: number;
  draws: Draws;
}

/**
 * The fastest of some runs with workers that are already warm: the first run starts them and is not counted, and another
 * program's turn on a shared machine counts once at the most.
 */
async function timed(
  source: TripSource,
  members: number,
  workers: number,
  { seed = 1, times = 1 }: { seed?: number; times?: number } = {},
): Promise<Timed> {
  process.env.COLDSTOW_WORKERS = String(workers);
  return withMembers([source], async (run) => {
    await run(tasksFor(0, null, 48 * workers, seed, false));
    let best: Timed | null = null;
    for (let i = 0; i < times; i++) {
      const from = performance.now();
      const draws = joinDraws(await run(tasksFor(0, null, members, seed, true)));
      const ms = performance.now() - from;
      if (best === null || ms < best.ms) best = { ms, rss_MB: process.memoryUsage().rss / 1e6, draws };
    }
    return best!;
  });
}

const cores = availableParallelism();
sayMachine(`Ensemble of a trip; workers warm, ${cores} cores`);

const week = weekOfFour();
const one = await timed(week, 256, 1, { times: 4 });
const two = await timed(week, 256, Math.min(2, cores), { times: 4 });
/** Some programs at once that share nothing but the machine, each with half of the members; the slowest, ms. */
async function alone_ms(programs: number): Promise<number> {
  const program = fileURLToPath(new URL("./cases/loneRun.js", import.meta.url));
  const run = promisify(execFile);
  const runs = Array.from({ length: programs }, () => run(process.execPath, [program]));
  return Math.max(...(await Promise.all(runs)).map(({ stdout }) => Number(stdout)));
}

const lone_ms = await alone_ms(1);
const pair_ms = await alone_ms(Math.min(2, cores));
sayTable(
  ["256 members × 4 coolers × 7 days", "s", "ms a cooler-week", "faster"],
  [
    ["1 worker", (one.ms / 1000).toFixed(2), (one.ms / 1024).toFixed(2), "1 ×"],
    [
      "2 workers",
      (two.ms / 1000).toFixed(2),
      (two.ms / 1024).toFixed(2),
      `${(one.ms / two.ms).toFixed(2)} ×`,
    ],
    // What the machine itself gives: no two threads of one program can gain more.
    [
      "2 programs",
      (pair_ms / 1000).toFixed(2),
      (pair_ms / 1024).toFixed(2),
      `${((2 * lone_ms) / pair_ms).toFixed(2)} ×`,
    ],
  ],
);

async function grow(
  head: string,
  sizes: readonly number[],
  of: (size: number) => Promise<Timed>,
): Promise<void> {
  let before: Timed | null = null;
  const rows: string[][] = [];
  for (const size of sizes) {
    const now = await of(size);
    const ratio = before === null ? "" : `${(now.ms / before.ms).toFixed(2)} ×`;
    rows.push([String(size), (now.ms / 1000).toFixed(2), ratio, now.rss_MB.toFixed(0)]);
    before = now;
  }
  sayTable([head, "s", "ratio", "MB"], rows);
}

const both = Math.min(2, cores);
await grow("members (4 coolers, 7 days)", [64, 128, 256, 512, 1024], (n) => timed(week, n, both));
await grow("days (2 coolers, 64 members)", [2, 4, 8, 16], (days) => timed(weekOfFour(2, days), 64, both));
await grow("coolers (4 days, 64 members)", [1, 2, 4, 8], (coolers) =>
  timed(weekOfFour(coolers, 4), 64, both),
);

/** Spread of a quantile between seeds, hours: what another seed would have said. */
const seeds = [1, 2, 3, 4, 5, 6];
const small = weekOfFour(1, 5);
const rows: string[][] = [];
for (const members of [16, 32, 64, 128, 256, 512]) {
  const bands: Band[] = [];
  for (const seed of seeds)
    bands.push(bandOf((await timed(small, members, both, { seed })).draws.coolers[0]!.iceCarriedOn_h));
  const spread = (key: "p10" | "p50" | "p90"): string => {
    const values = bands.map((band) => band[key] ?? Number.NaN);
    const mean = values.reduce((a, b) => a + b) / values.length;
    return Math.sqrt(
      values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1),
    ).toFixed(2);
  };
  const middle = bands[0]!;
  rows.push([
    String(members),
    `${middle.p10!.toFixed(1)} / ${middle.p50!.toFixed(1)} / ${middle.p90!.toFixed(1)}`,
    spread("p10"),
    spread("p50"),
    spread("p90"),
  ]);
}
sayTable(["members", "ice-out p10 / p50 / p90, h", "± p10 between seeds, h", "± p50", "± p90"], rows);
