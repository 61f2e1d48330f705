import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { balanceOf } from "../../core/cooler/balance.ts";
import { type ClosureKey, type Closures, closurePriors } from "../../core/cooler/closures.ts";
import { runFleet, startFleet } from "../../core/cooler/fleet.ts";
import { iceOut_s } from "../../core/forecast/run.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";
import { type AnyTrip, anyTrip, fleetOf } from "./anyCooler.ts";
import { boundsOf } from "./bounds.ts";
import { cooler, ice, runTo, trip } from "./plainTrip.ts";
import { runs } from "./runs.ts";
import { expectBooksClosed, expectWithin } from "./sound.ts";

const moments = fc
  .array(fc.integer({ min: 1, max: 100 }), { minLength: 2, maxLength: 6 })
  .map((list) => [...list.sort((a, b) => a - b), 100].map((percent) => percent / 100));

/** Runs a trip and looks at every box at every moment. */
function look(any: AnyTrip, at: readonly number[], closures?: Closures): void {
  const fleet = startFleet(fleetOf(any), closures === undefined ? {} : { closures });
  const bounds = boundsOf(fleet);
  for (const share of at) {
    runFleet(fleet, share * any.end_s);
    expectBooksClosed(fleet);
    expectWithin(fleet, bounds);
  }
  for (const track of fleet.tracks)
    for (let i = 1; i < track.t_s.length; i++) {
      expect(track.t_s[i]).toBeGreaterThanOrEqual(track.t_s[i - 1]);
      expect(track.ice_kg[i]).toBeGreaterThanOrEqual(0);
    }
}

/** Each closure at one end of its range or the other. */
const anyExtremes: fc.Arbitrary<Closures> = fc
  .record(
    Object.fromEntries(
      Object.keys(closurePriors).map((key) => [key, fc.constantFrom("p10" as const, "p90" as const)]),
    ) as Record<ClosureKey, fc.Arbitrary<"p10" | "p90">>,
  )
  .map(
    (ends) =>
      Object.fromEntries(
        Object.entries(ends).map(([key, end]) => [key, closurePriors[key as ClosureKey][end]]),
      ) as unknown as Closures,
  );

describe("any coolers, any load, any weather, anything done to them", () => {
  it("lose no heat and no water, and nothing gets colder or warmer than what makes it so", () => {
    fc.assert(
      fc.property(anyTrip, moments, (any, at) => look(any, at)),
      runs(100),
    );
  });

  it("and so with every doubtful coefficient at one end of its range", () => {
    fc.assert(fc.property(anyTrip, moments, anyExtremes, look), runs(100));
  });
});

describe("ice that is gone", () => {
  const box = fc.record({
    build: fc.constantFrom("foam" as const, "thin" as const, "standard" as const),
    mass_kg: fc.integer({ min: 2, max: 12 }),
    start_C: fc.constantFrom(0, -2, -16),
  });

  it("took up the same heat as a block, as cubes or crushed: its own, however long it took", () => {
    fc.assert(
      fc.property(box, ({ build, mass_kg, start_C }) => {
        for (const form of ["block", "cube", "crushed"] as const) {
          const load = [ice({ form, mass_kg, start_C })];
          const alone = cooler({ build, litres: 40, drain: "open", ice: load, food: [] });
          const fleet = runTo(trip({ end_s: 12 * 86_400, coolers: [alone] }));
          expect(iceOut_s(fleet, 0)).not.toBeNull();
          expect(fleet.tracks[0].ice_kg.at(-1)).toBe(0);
          const { pool_J, books } = fleet.boxes[0];
          const b = balanceOf(fleet.boxes[0]);
          const came_J = b.lid_J + b.sides_J + b.base_J + b.seal_J + b.openingAir_J + b.body_J;
          const melted_J = came_J - pool_J - books.drained_J;
          const below_K = -start_C;
          const own_J = mass_kg * (iceLatent_J_per_kg + below_K * (2110 - (7.5 / 2) * below_K));
          // Between its five-degree nodes the curve of ice is straight: 20 J/kg.
          expect(Math.abs(melted_J / own_J - 1)).toBeLessThan(1e-4);
        }
      }),
      runs(8),
    );
  });
});
