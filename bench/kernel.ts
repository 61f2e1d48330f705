/**
 * What the step kernel costs against its own arithmetic: the same week as it is used, the steps it keeps replayed with
 * nothing around them, and the stages of these alone. What lies between is the price of steps refused, of beginning
 * anew after jumps, and of writing down.
 */
import { Session } from "node:inspector/promises";
import { basename } from "node:path";
import { type BoxAct, doAct } from "../core/cooler/acts.ts";
import { runFleet, startFleet } from "../core/cooler/fleet.ts";
import type { Fleet } from "../core/cooler/fleetState.ts";
import { solveStage } from "../core/cooler/stage.ts";
import { accept, makeStepper, tryStep } from "../core/cooler/stepper.ts";
import { sayMachine, sayTable, time_ms } from "./cases/report.ts";
import { benchTrip, type Size } from "./cases/trip.ts";

const week: Size = { days: 7, coolers: 1, lots: 12, food_kg: 12 };
const input = benchTrip(week);
const asUsed = { books: "end" } as const;

function run(): Fleet {
  const fleet = startFleet(input, asUsed);
  runFleet(fleet, input.end_s);
  return fleet;
}

/** Replays the steps that end at `ends_s`; a moment named twice is an act. Each last stage is solved `more` times again. */
function replay(ends_s: readonly number[], more: number): Fleet {
  const fleet = startFleet(input, asUsed);
  const [box] = fleet.boxes;
  let next = 0;
  for (let i = 1; i < ends_s.length; i++) {
    const t_s = ends_s[i - 1];
    const span_s = ends_s[i] - t_s;
    const [stepper] = fleet.steppers;
    if (span_s > 0) {
      tryStep(box, stepper, t_s, span_s, 0, 1);
      for (let n = 0; n < more; n++)
        solveStage(box, stepper.bench, stepper.ask, stepper.second, stepper.flowsSecond);
      accept(box, stepper, span_s);
      continue;
    }
    for (; next < fleet.acts.length && fleet.acts[next].t_s <= t_s; next++)
      doAct(fleet, box, fleet.acts[next] as BoxAct);
    box.melt_kg_per_s = new Float64Array(box.layers);
    box.gas_kg_per_s = new Float64Array(box.layers);
    fleet.steppers[0] = makeStepper(box, t_s, 0, stepper);
  }
  return fleet;
}

/** Shares of the time by function, from the engine's own profiler. */
async function profile(): Promise<string[][]> {
  const session = new Session();
  session.connect();
  await session.post("Profiler.enable");
  await session.post("Profiler.setSamplingInterval", { interval: 200 });
  await session.post("Profiler.start");
  for (let i = 0; i < 600; i++) run();
  const { profile: found } = await session.post("Profiler.stop");
  session.disconnect();
  const names = new Map(
    found.nodes.map(({ id, callFrame: { functionName, url } }) => [id, `${functionName} ${basename(url)}`]),
  );
  const spent = new Map<string, number>();
  let all = 0;
  found.samples?.forEach((id, i) => {
    const name = names.get(id) ?? "?";
    const micros = found.timeDeltas?.[i] ?? 0;
    spent.set(name, (spent.get(name) ?? 0) + micros);
    all += micros;
  });
  const most = [...spent].sort((a, b) => b[1] - a[1]).slice(0, 16);
  return most.map(([name, micros]) => [name, `${((100 * micros) / all).toFixed(1)} %`]);
}

sayMachine("One cooler, one week, middle case, books at the end");
const fleet = run();
const ends_s = fleet.tracks[0].t_s;
const again = 8;
const used_ms = time_ms(() => run());
const kept_ms = time_ms(() => replay(ends_s, 0));
const stages_ms = (2 * (time_ms(() => replay(ends_s, again)) - kept_ms)) / again;
const start_ms = time_ms(() => startFleet(input, asUsed));
const row = (name: string, ms: number, tries: number): string[] => [
  name,
  String(tries),
  ms.toFixed(2),
  `${((500 * ms) / tries).toFixed(1)}`,
  `${(used_ms / ms).toFixed(2)} ×`,
];
sayTable(
  ["", "steps tried", "ms", "µs a stage", "as used / this"],
  [
    row("as used", used_ms, fleet.steps + fleet.refused),
    row("kept steps and acts alone", kept_ms, fleet.steps),
    row("their stages alone", stages_ms, fleet.steps),
  ],
);
console.log(`Packing the cooler, in the first two rows: ${start_ms.toFixed(2)} ms.\n`);
sayTable(["function", "own time"], await profile());
