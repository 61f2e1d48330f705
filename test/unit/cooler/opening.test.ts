import { describe, expect, it } from "vitest";
import { medianClosures } from "../../../core/cooler/closures.ts";
import { runFleet, startFleet } from "../../../core/cooler/fleet.ts";
import type { AnyAct, AnyTrip } from "../../property/anyCooler.ts";
import { fleetOf } from "../../property/anyCooler.ts";
import { cooler, food, ice, runTo, trip, weather } from "../../property/plainTrip.ts";
import { expectBooksClosed } from "../../property/sound.ts";

const open = (for_s: number, at_frac = 0.1): AnyAct => ({ do: "open", at_frac, cooler: 0, for_s });

/** Air over the contents through an opening stays between the coldest inside and the air outside. */
function expectCalmAir(any: AnyTrip): void {
  const fleet = startFleet(fleetOf(any));
  runFleet(fleet, any.end_s);
  expectBooksClosed(fleet);
  const { air_C, t_s } = fleet.tracks[0];
  air_C.forEach((air, i) => {
    expect(air, `at ${t_s[i]} s`).toBeGreaterThan(-3);
    expect(air, `at ${t_s[i]} s`).toBeLessThan(any.weather.mean_C + 0.5);
  });
}

describe("an open lid", () => {
  it("over a little ice in a big bag in damp heat", () => {
    for (const for_s of [1, 5, 20, 120, 1800])
      expectCalmAir(
        trip({
          end_s: 6 * 3600,
          weather: weather({ mean_C: 44 }),
          coolers: [
            cooler({
              build: "soft",
              litres: 62.8,
              ice: [ice({ form: "block", mass_kg: 4, start_C: 0 })],
              food: [],
            }),
          ],
          acts: [open(for_s)],
        }),
      );
  });

  it("over crushed ice that has nearly gone, on food", () => {
    for (const at_frac of [0.3, 0.4, 0.5, 0.6, 0.7])
      expectCalmAir(
        trip({
          end_s: 6 * 3600,
          weather: weather({ mean_C: 37, humidity_frac: 0.7 }),
          coolers: [
            cooler({
              build: "foam",
              litres: 177.6,
              ice: [ice({ form: "crushed", mass_kg: 1, start_C: -0.5, layer: "top" })],
              food: [food({ food: "tofu", mass_kg: 3, start_C: 0, thick_m: 0.03, layer: "base" })],
            }),
          ],
          acts: [open(5, at_frac)],
        }),
      );
  });

  it("lets in the same heat with steps a tenth as long, within 6 %", () => {
    for (const for_s of [10, 60, 300]) {
      const bare = cooler({ ice: [ice({ form: "block", mass_kg: 2 })], food: [] });
      const damp = weather({ mean_C: 32, humidity_frac: 0.6 });
      const any = trip({ end_s: 24 * 3600, weather: damp, coolers: [bare], acts: [open(for_s, 0.5)] });
      const heat = (options = {}): number => {
        const { books } = runTo(any, options).boxes[0];
        return books.openingAir_J + books.openingExposure_J;
      };
      expect(Math.abs(heat() / heat({ tolerance: 1e-3, maxStep_s: 60 }) - 1)).toBeLessThan(0.06);
    }
  });
});

describe("steps at the edge", () => {
  it("very fine ones settle, with water on the ice from the start", () => {
    const rows = [
      food({ food: "tortilla", mass_kg: 0.3, start_C: 20, thick_m: 0.004, shape: "lump", layer: "base" }),
      food({ food: "shrimp", mass_kg: 5.4, start_C: -2, thick_m: 0.02 }),
    ];
    const melting = [ice({ form: "crushed", mass_kg: 1.7, liquid_frac: 0.1 })];
    const wet = cooler({ litres: 104, start: { kind: "uniform", body_C: 36 }, ice: melting, food: rows });
    const fleet = runTo(trip({ end_s: 60, coolers: [wet] }), { tolerance: 1e-4, maxStep_s: 30 });
    expectBooksClosed(fleet);
  });

  it("a cloth that dries in the sun in still air gets hot and nothing breaks", () => {
    const sun = weather({ mean_C: 42, humidity_frac: 0.6, sunPeak_W_per_m2: 1100, wind_m_per_s: 0 });
    const dark = cooler({
      cover: "wet cloth",
      absorptance_frac: 0.88,
      start: { kind: "uniform", body_C: 40 },
    });
    for (const stillAir_W_per_m2K of [2, 3])
      expectBooksClosed(
        runTo(trip({ weather: sun, coolers: [dark] }), {
          closures: { ...medianClosures, stillAir_W_per_m2K },
        }),
      );
  });
});
