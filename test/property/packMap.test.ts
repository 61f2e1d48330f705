import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { forecast } from "../../core/forecast/forecast.ts";
import type { PackLayer, PackPlace } from "../../core/forecast/planResult.ts";
import { packMap } from "../../core/plan/packMap/packMap.ts";
import type { Trip, TripFood, TripIce } from "../../core/trip/types.ts";
import { toyFood, toyForecast, toyIce, toyTrip } from "../unit/plan/toyTrip.ts";

const shape = fc.constantFrom("slab", "cylinder", "lump");
const wish = fc.constantFrom(null, null, null, "base", "top", 1, 2);

const anyFood = fc.record({
  mass_kg: fc.double({ min: 0.05, max: 3, noNaN: true }),
  pieces: fc.integer({ min: 1, max: 15 }),
  thick_m: fc.double({ min: 0.015, max: 0.12, noNaN: true }),
  shape,
  raw: fc.boolean(),
  state: fc.constantFrom("frozen", "chilled"),
  freezesBadly: fc.boolean(),
  eat_s: fc.option(fc.integer({ min: 1, max: 47 }).map((h) => h * 3600)),
  layer: wish,
});

const anyIce = fc.record({
  form: fc.constantFrom("block", "cube", "crushed", "jug", "gel pack", "eutectic pack", "dry ice"),
  pieces: fc.integer({ min: 1, max: 4 }),
  each_kg: fc.double({ min: 0.4, max: 5, noNaN: true }),
  start_C: fc.constantFrom(-16, -2, 0),
  layer: fc.constantFrom(null, null, "base", "fill", "top", 2),
});

const anyTrip = fc
  .record({
    food: fc.array(anyFood, { maxLength: 9 }),
    ice: fc.array(anyIce, { maxLength: 4 }),
  })
  .map(({ food, ice }) =>
    toyTrip({
      food: food.map((more, i): TripFood => toyFood(`food ${i}`, 0, more as Partial<TripFood>)),
      ice: ice.map(
        ({ form, pieces, each_kg, start_C, layer }, i): TripIce => ({
          ...toyIce(form as TripIce["form"], pieces, each_kg),
          id: `ice ${i}`,
          start_C,
          layer: layer as TripIce["layer"],
        }),
      ),
    }),
  );

const mapOf = (trip: Trip): ReturnType<typeof packMap> => packMap(trip, toyForecast(trip));
const isApart = (from1: number, length1: number, from2: number, length2: number): boolean =>
  from1 + length1 <= from2 + 1e-9 || from2 + length2 <= from1 + 1e-9;
const footprintsApart = (a: PackPlace, b: PackPlace): boolean =>
  isApart(a.x_m, a.length_m, b.x_m, b.length_m) || isApart(a.y_m, a.width_m, b.y_m, b.width_m);
const holding = (layers: readonly PackLayer[], item: string): number[] =>
  layers.filter(({ items }) => items.includes(item)).map(({ layer }) => layer);

describe("a pack map", () => {
  it("has no two things in one place, and everything within the walls", () => {
    fc.assert(
      fc.property(anyTrip, (trip) => {
        const { layers, warnings } = mapOf(trip);
        const { length_m, width_m, height_m } = trip.coolers[0]!.body.inside;
        const full = warnings.some(({ code }) => code === "map-full");
        const places = layers.flatMap((layer) => layer.places);
        for (const [i, one] of places.entries()) {
          expect(Math.min(one.x_m, one.y_m, one.z_m)).toBeGreaterThanOrEqual(0);
          expect(one.x_m + one.length_m).toBeLessThanOrEqual(length_m + 1e-9);
          expect(one.y_m + one.width_m).toBeLessThanOrEqual(width_m + 1e-9);
          if (!full) expect(one.z_m + one.height_m).toBeLessThanOrEqual(height_m + 1e-9);
          for (const two of places.slice(i + 1))
            expect(footprintsApart(one, two) || isApart(one.z_m, one.height_m, two.z_m, two.height_m)).toBe(
              true,
            );
        }
      }),
      { numRuns: 60 },
    );
  });

  it("holds everything once", () => {
    fc.assert(
      fc.property(anyTrip, (trip) => {
        const places = mapOf(trip).layers.flatMap((layer) => layer.places);
        const share = (mine: readonly PackPlace[]): number =>
          mine.reduce((sum, place) => sum + place.share_frac, 0);
        for (const { name } of trip.food)
          expect(share(places.filter(({ item }) => item === name))).toBeCloseTo(1, 6);
        const firm = trip.ice.filter(({ form }) => form !== "cube" && form !== "crushed");
        expect(share(places.filter(({ kind }) => kind === "ice" || kind === "pack"))).toBeCloseTo(
          firm.length,
          6,
        );
        if (firm.length < trip.ice.length)
          expect(places.filter(({ kind }) => kind === "loose ice").length).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it("has raw below what is eaten as it is, and of one kind what is eaten last below what is eaten first", () => {
    const unpinned = anyTrip.map((trip) => ({
      ...trip,
      food: trip.food.map((item) => ({ ...item, layer: null })),
    }));
    fc.assert(
      fc.property(unpinned, (trip) => {
        const { layers } = mapOf(trip);
        const eaten_s = ({ eat_s }: TripFood): number => eat_s ?? trip.duration_s / 2;
        for (const one of trip.food)
          for (const two of trip.food) {
            const lower = (one.raw && !two.raw) || (one.raw === two.raw && eaten_s(one) > eaten_s(two));
            if (lower)
              expect(Math.max(...holding(layers, one.name))).toBeLessThanOrEqual(
                Math.min(...holding(layers, two.name)),
              );
            const above = layers
              .flatMap(({ places }) => places)
              .filter(({ item }) => item === two.name)
              .some((high) =>
                layers
                  .flatMap(({ places }) => places)
                  .some(
                    (low) =>
                      low.item === one.name && !footprintsApart(low, high) && low.z_m > high.z_m + 1e-9,
                  ),
              );
            if (lower) expect(above).toBe(false);
          }
      }),
      { numRuns: 60 },
    );
  });

  it("fits wherever the forecast says that the load does", () => {
    fc.assert(
      fc.property(anyTrip, (trip) => {
        const real = forecast(trip, { effects: false });
        const { filled_frac } = real.result.coolers[0]!;
        const told = packMap(trip, real).warnings.filter(({ code }) => code === "map-full");
        const high = told.filter(({ says }) => /higher than the inside/.test(says));
        if (filled_frac <= 1) expect(high).toEqual([]);
        // Pieces go closer together than the reckoning has them, but not into nothing.
        if (filled_frac > 1.9) expect(high).toHaveLength(1);
      }),
      { numRuns: 150, seed: 7 },
    );
  });

  it("does not ask in which order the file names things", () => {
    fc.assert(
      fc.property(anyTrip, (trip) => {
        const turned = { ...trip, food: [...trip.food].reverse(), ice: [...trip.ice].reverse() };
        expect(mapOf(turned).layers).toEqual(mapOf(trip).layers);
      }),
      { numRuns: 40 },
    );
  });
});
