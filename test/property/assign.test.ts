import fc from "fast-check";
import { expect, it } from "vitest";
import { medianClosures } from "../../core/cooler/closures.ts";
import { foodDensity_kg_per_m3 } from "../../core/matter/foodProperties.ts";
import { assignFood } from "../../core/plan/assign/assignFood.ts";
import { assignTrip, cooler, solver } from "../unit/fixtures/assignTrip.ts";

const likes = ["stew", "ham", "chicken breast", "tomato", "yogurt", "soft drink", "bread"] as const;
const item = fc.record({
  like: fc.constantFrom(...likes),
  mass_g: fc.integer({ min: 100, max: 3000 }),
  day: fc.integer({ min: 1, max: 3 }),
  frozen: fc.boolean(),
});
const box = fc.record({
  size_L: fc.integer({ min: 15, max: 90 }),
  holds: fc.constantFrom("food", "drinks", "any"),
  sealed: fc.boolean(),
});

type Item = typeof item extends fc.Arbitrary<infer T> ? T : never;

function line({ like, mass_g, day, frozen }: Item, i: number): string {
  const warm = like === "soft drink" || like === "bread";
  const state = warm ? "ambient" : frozen && like !== "tomato" ? "frozen" : "chilled";
  return `{ name: item ${i}, amount: ${mass_g} g, like: ${like}, state: ${state}, eat: day ${day} dinner }`;
}

it("every item has one place, obeys the rules where any cooler does, and takes the room that there is", {
  timeout: 120_000,
}, async () => {
  const solve = await solver();
  await fc.assert(
    fc.asyncProperty(
      fc.array(item, { minLength: 1, maxLength: 8 }),
      fc.array(box, { minLength: 1, maxLength: 3 }),
      async (items, boxes) => {
        const coolers = boxes.map(({ size_L, holds, sealed }, i) =>
          cooler(`c${i}`, size_L, `holds: ${holds}${sealed ? ", sealed until: day 2 dinner" : ""}`),
        );
        const trip = assignTrip({ days: 3, coolers, food: items.map(line) });
        const got = await assignFood(trip, { solve, members: 0 });
        expect(got.assign.map((one) => one.item)).toEqual(trip.food.map(({ name }) => name));
        const told = new Set(
          got.warnings.filter(({ code }) => code === "no-right-cooler").map(({ path }) => path),
        );
        for (const food of got.trip.food) {
          if (food.cooler === null) expect(food.like.perishable).toBe(false);
          else if (!told.has(food.path)) {
            const { holds, sealedUntil_s } = got.trip.coolers[food.cooler]!;
            expect(["any", food.like.kind === "drink" ? "drinks" : "food"]).toContain(holds);
            expect(food.eat_s!).toBeGreaterThanOrEqual(sealedUntil_s ?? 0);
          }
        }
        if (!got.fits) return expect(got.waysOut.length).toBeGreaterThanOrEqual(3);
        got.trip.coolers.forEach(({ volume_m3 }, c) => {
          const bulk_m3 = got.trip.food
            .filter((food) => food.cooler === c)
            .reduce((sum, { mass_kg, like }) => sum + mass_kg / foodDensity_kg_per_m3(like, 5), 0);
          expect(bulk_m3 / medianClosures.foodPacking_frac).toBeLessThanOrEqual(volume_m3 * (1 + 1e-6));
        });
      },
    ),
    { numRuns: 25, seed: 4 },
  );
});
