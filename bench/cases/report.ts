import { cpus } from "node:os";

/** The machine that the times belong to. */
export function sayMachine(title: string): void {
  const [first] = cpus();
  console.log(`\n${title}\n${first?.model ?? "unknown processor"}, node ${process.version}\n`);
}

/** The system counts processor time in ticks of some milliseconds: less than this tells nothing. */
const batch_ms = 200;

function cpu_ms(run: () => void, times: number): number {
  const from = process.cpuUsage();
  for (let i = 0; i < times; i++) run();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

/**
 * Processor time of one run, ms, garbage collection included: the best of several batches, each long enough for the
 * clock, after some runs that warm up. Other work on the machine counts little.
 */
export function time_ms(run: () => void, batches = 7): number {
  let times = 1;
  let spent_ms = cpu_ms(run, times);
  while (spent_ms < batch_ms) {
    times = Math.ceil(times * Math.min(8, Math.max(1.5, (1.2 * batch_ms) / Math.max(1, spent_ms))));
    spent_ms = cpu_ms(run, times);
  }
  let least = spent_ms / times;
  for (let i = 1; i < batches; i++) least = Math.min(least, cpu_ms(run, times) / times);
  return least;
}

/** Prints rows under heads, columns flush right. */
export function sayTable(heads: readonly string[], rows: readonly (readonly string[])[]): void {
  const wide = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => row[i].length)));
  for (const row of [heads, ...rows]) console.log(row.map((cell, i) => cell.padStart(wide[i])).join("  "));
  console.log("");
}
