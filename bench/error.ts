/** Speed and error side by side: one cooler-week in the middle case, against the same model in very fine steps. */
import { balanceOf } from "../core/cooler/balance.ts";
import { runFleet, type SimulateOptions, startFleet } from "../core/cooler/fleet.ts";
import type { Fleet } from "../core/cooler/fleetState.ts";
import { iceOut_s } from "../core/forecast/run.ts";
import { sayMachine, sayTable, time_ms } from "./cases/report.ts";
import { benchTrip, type Size } from "./cases/trip.ts";

const week: Size = { days: 7, coolers: 1, lots: 12, food_kg: 12 };

function run(options: SimulateOptions): Fleet {
  const fleet = startFleet(benchTrip(week), options);
  runFleet(fleet, fleet.input.end_s);
  return fleet;
}

/** Warmest that each lot ever was, °C. */
const warmest = (fleet: Fleet): number[] => fleet.lotTracks.map(({ warm_C }) => Math.max(-99, ...warm_C));

sayMachine("One cooler, one week, middle case");
const fine: SimulateOptions = { tolerance: 1e-3, maxStep_s: 60 };
const finest_ms = time_ms(() => run(fine), 1);
const truth = run(fine);
const out_s = iceOut_s(truth, 0) ?? Number.NaN;
const { moved_J } = truth.boxes[0].books;

const settings: readonly (readonly [string, SimulateOptions])[] = [
  ["loose (8)", { tolerance: 8 }],
  ["as used (1)", {}],
  ["1/8, half the longest step", { tolerance: 1 / 8, maxStep_s: 1800 }],
  ["1/64", { tolerance: 1 / 64, maxStep_s: 900 }],
];
const rows = settings.map(([name, options]) => {
  const fleet = run(options);
  const ms = time_ms(() => run(options));
  const out = iceOut_s(fleet, 0) ?? Number.NaN;
  const late_K = warmest(fleet).reduce((most, t, i) => Math.max(most, Math.abs(t - warmest(truth)[i])), 0);
  const heat = Math.abs(fleet.boxes[0].books.moved_J / moved_J - 1);
  return [
    name,
    String(fleet.steps),
    String(fleet.refused),
    ms.toFixed(1),
    `${(finest_ms / ms).toFixed(0)} ×`,
    `${(((out - out_s) / out_s) * 100).toFixed(4)} %`,
    `${late_K.toFixed(3)} K`,
    heat.toExponential(1),
    balanceOf(fleet.boxes[0]).energy_rel.toExponential(1),
  ];
});
const last = ["reference (1/1000, 60 s)", String(truth.steps), String(truth.refused), finest_ms.toFixed(1)];
sayTable(
  ["tolerance", "steps", "refused", "ms", "faster", "ice-out off", "warmest food off", "heat off", "books"],
  [...rows, [...last, "1 ×", "0", "0", "0", balanceOf(truth.boxes[0]).energy_rel.toExponential(1)]],
);
console.log(`Ice-out of the reference: ${(out_s / 3600).toFixed(2)} h of ${week.days * 24} h.`);
