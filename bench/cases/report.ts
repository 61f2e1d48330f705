import { cpus } from "node:os";

/** The machine that the times belong to. */
export function sayMachine(title: string): void {
  const [first] = cpus();
  console.log(`\n${title}\n${first?.model ?? "unknown processor"}, node ${process.version}\n`);
}

/** Processor time of the fastest of several runs, ms, after some that warm up: other work on the machine counts little. */
export function time_ms(run: () => void, times = 9): number {
  for (let i = 0; i < Math.min(3, times); i++) run();
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i++) {
    const from = process.cpuUsage();
    run();
    least = Math.min(least, process.cpuUsage(from).user / 1000);
  }
  return least;
}

/** Prints rows under heads, columns flush right. */
export function sayTable(heads: readonly string[], rows: readonly (readonly string[])[]): void {
  const wide = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => row[i].length)));
  for (const row of [heads, ...rows]) console.log(row.map((cell, i) => cell.padStart(wide[i])).join("  "));
  console.log("");
}
