/** Speed and error side by side: one cooler-week in the middle case, against the same model in very fine steps. */
import { balanceOf } from "../core/cooler/balance.ts";
import { runFleet, type SimulateOptions, startFleet } from "../core/cooler/fleet.ts";
import type { Fleet } from "../core/cooler/fleetState.ts";
import { iceOut_s } from "../core/forecast/run.ts";
import { sayMachine, sayTable, time_ms } from "./cases/report.ts";
import { benchTrip, type Size } from "./cases/trip.ts";

const week: Size = { days: 7, coolers: 1, lots: 12, food_kg: 12 };
const input = benchTrip(week);

function run(options: SimulateOptions): Fleet {
  const fleet = startFleet(input, options);
  runFleet(fleet, fleet.input.end_s);
  return fleet;
}

const outOf = (fleet: Fleet): number => iceOut_s(fleet, 0) ?? Number.NaN;
/** Warmest that each lot ever was, °C. */
const warmest = (fleet: Fleet): number[] =>
  fleet.lotTracks.map(({ warm_C }) => warm_C.reduce((most, t) => Math.max(most, t), -99));
/** Equal steps, nothing refused; the books only at the end, since there are so many. */
const equal = (maxStep_s: number): SimulateOptions => ({ tolerance: 1e12, maxStep_s, books: "end" });

sayMachine("One cooler, one week, middle case");
const lengths_s = [64, 32, 16, 8, 4] as const;
const fines = lengths_s.map((length_s) => {
  const fleet = run(equal(length_s));
  return { length_s, fleet, out_s: outOf(fleet), ms: time_ms(() => run(equal(length_s)), 1) };
});
const truth = fines[fines.length - 1];
const off = (out_s: number): number => (out_s - truth.out_s) / truth.out_s;
sayTable(
  ["equal steps of, s", "steps", "ms", "ice-out, h", "off the finest"],
  fines.map(({ length_s, fleet, ms, out_s }) => [
    String(length_s),
    String(fleet.steps),
    ms.toFixed(0),
    (out_s / 3600).toFixed(7),
    off(out_s).toExponential(1),
  ]),
);
// The corners of melting curves and weather tables make the last moves uneven: no order can be read off them, so the
// finest is trusted no further than the finer runs agree.
const settled = fines.slice(-3);
const own_rel = Math.max(...settled.map(({ out_s }) => Math.abs(off(out_s))));
const tooFar = fines.findLastIndex(({ out_s }) => Math.abs(off(out_s)) > own_rel);
const cheapest = fines[tooFar + 1];
console.log(
  `Ice-out ${(truth.out_s / 3600).toFixed(5)} h of ${week.days * 24} h, certain to ${own_rel.toExponential(0)} of it` +
    ` (spread of the last three).\n"Faster" is first against the finest, then against equal steps of` +
    ` ${cheapest.length_s} s, the longest that lie within that spread.\n`,
);

const settings: readonly (readonly [string, SimulateOptions])[] = [
  ["16", { tolerance: 16, books: "end" }],
  ["6, books at the end (members)", { tolerance: 6, books: "end" }],
  ["2", { tolerance: 2 }],
  ["1 (middle case)", {}],
  ["1/8, half the longest step", { tolerance: 1 / 8, maxStep_s: 1800 }],
  ["1/64, a quarter", { tolerance: 1 / 64, maxStep_s: 900 }],
];
const best = warmest(truth.fleet);
const { moved_J } = truth.fleet.boxes[0].books;
const rows = settings.map(([name, options]) => {
  const fleet = run(options);
  const ms = time_ms(() => run(options));
  const late_K = warmest(fleet).reduce((most, t, i) => Math.max(most, Math.abs(t - best[i])), 0);
  const heat = Math.abs(fleet.boxes[0].books.moved_J / moved_J - 1);
  return [
    name,
    String(fleet.steps),
    String(fleet.refused),
    ms.toFixed(2),
    `${(truth.ms / ms).toFixed(0)} ×`,
    `${(cheapest.ms / ms).toFixed(0)} ×`,
    `${(off(outOf(fleet)) * 100).toFixed(4)} %`,
    `${late_K.toFixed(3)} K`,
    heat.toExponential(1),
    balanceOf(fleet.boxes[0]).energy_rel.toExponential(1),
  ];
});
sayTable(
  [
    ...["tolerance", "steps", "refused", "ms", "faster than finest", `than ${cheapest.length_s} s`],
    ...["ice-out off", "warmest food off", "heat off", "books"],
  ],
  rows,
);
