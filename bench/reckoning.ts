/** How long a person waits: reading, forecast and plan of each example, the least of some runs after a warm-up. */
import { readdirSync, readFileSync } from "node:fs";
import { forecast, planIce, readTrip, type Trip } from "../core/index.ts";

const runs = 3;

function least_ms(work: () => unknown): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const from = performance.now();
    work();
    return performance.now() - from;
  });
  return Math.min(...times);
}

function tripOf(text: string, file: string): Trip | null {
  const reading = readTrip(text, { file });
  return reading.ok ? reading.trip : null;
}

const examples = new URL("../../examples/", import.meta.url);
const row = (cells: readonly (string | number)[]): string =>
  cells.map((cell) => String(cell).padStart(16)).join("");
console.log(`${row(["read", "middle case", "with effects", "plan"])}  ms`);
for (const file of readdirSync(examples).filter((name) => name.endsWith(".yaml"))) {
  const text = readFileSync(new URL(file, examples), "utf8");
  const trip = tripOf(text, file);
  if (trip === null) continue;
  const times_ms = [
    least_ms(() => tripOf(text, file)),
    least_ms(() => forecast(trip, { effects: false })),
    least_ms(() => forecast(trip)),
    least_ms(() => planIce(trip, { aim: "pieces" })),
  ];
  console.log(`${row(times_ms.map((time_ms) => time_ms.toFixed(0)))}  ${file}`);
}
