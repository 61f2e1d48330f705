/** How time grows with days, rows of food, coolers and lots; each line doubles one of them. */
import { runFleet, startFleet } from "../core/cooler/fleet.ts";
import { sayMachine, sayTable, time_ms } from "./cases/report.ts";
import { benchTrip, type Size } from "./cases/trip.ts";

const base: Size = { days: 3, coolers: 1, lots: 12, food_kg: 8 };

interface Measured {
  ms: number;
  steps: number;
  layers: number;
  parts: number;
}

function measure(size: Size): Measured {
  const start = startFleet(benchTrip(size));
  const [box] = start.boxes;
  const out = { layers: box.layers, parts: box.parts.length, steps: 0 };
  const ms = time_ms(() => {
    const fleet = startFleet(benchTrip(size));
    runFleet(fleet, fleet.input.end_s);
    out.steps = fleet.steps;
  });
  return { ...out, ms };
}

function grow(head: string, sizes: readonly Size[], shown: (size: Size) => number): void {
  let before: Measured | null = null;
  const rows = sizes.map((size) => {
    const now = measure(size);
    const row = [
      String(shown(size)),
      String(now.layers),
      String(now.parts),
      String(now.steps),
      now.ms.toFixed(1),
      ((1000 * now.ms) / now.steps).toFixed(0),
      before === null ? "" : `${(now.ms / before.ms).toFixed(2)} ×`,
    ];
    before = now;
    return row;
  });
  sayTable([head, "layers", "parts", "steps", "ms", "µs/step", "ratio"], rows);
}

sayMachine(
  `Growth from ${base.days} days, ${base.coolers} cooler, ${base.lots} lots, ${base.food_kg} kg of food`,
);
// Warms the machine up, so that the first line is like the rest.
measure(base);
const doubled = (from: number, times: number): number[] =>
  Array.from({ length: times }, (_, i) => from * 2 ** i);
grow(
  "days",
  doubled(2, 4).map((days) => ({ ...base, days })),
  ({ days }) => days,
);
grow(
  "food kg",
  doubled(4, 4).map((food_kg) => ({ ...base, food_kg })),
  ({ food_kg }) => food_kg,
);
grow(
  "coolers",
  doubled(1, 4).map((coolers) => ({ ...base, coolers })),
  ({ coolers }) => coolers,
);
grow(
  "lots",
  doubled(6, 6).map((lots) => ({ ...base, lots })),
  ({ lots }) => lots,
);
