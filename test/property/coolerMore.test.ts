import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runFleet, startFleet } from "../../core/cooler/fleet.ts";
import type { FleetInput } from "../../core/cooler/types.ts";
import { iceOut_s } from "../../core/forecast/run.ts";
import { type AnyTrip, anyTrip, fleetOf } from "./anyCooler.ts";
import { runs } from "./runs.ts";

/*
 * What must never end the ice sooner. It holds where heat flows one way, into the box. So these trips start cold, stay
 * warm outside, and hold no eutectic pack or dry ice: a pack at −10.7 °C refreezes what lies beside it, warm food in a
 * cold camp is cooled by a poorer wall, and a better one keeps it in.
 */

const fine = { tolerance: 0.25, maxStep_s: 1800 };
const end_s = 8 * 86_400;

const warmTrip: fc.Arbitrary<AnyTrip> = anyTrip
  .map((any): AnyTrip => {
    const [first] = any.coolers;
    const weather = {
      ...any.weather,
      mean_C: 20 + (Math.abs(any.weather.mean_C) % 21),
      swing_K: Math.min(5, any.weather.swing_K),
      sky_K: Math.min(5, any.weather.sky_K),
      jump_K: Math.max(0, any.weather.jump_K),
      ground_K: Math.max(0, any.weather.ground_K),
    };
    const cold = {
      ...first,
      measured_frac: null,
      start: { kind: "uniform", body_C: 5 } as const,
      ice: first.ice.filter(({ form }) => form !== "dry ice" && form !== "eutectic pack"),
      food: first.food.map((row) => ({ ...row, start_C: Math.min(10, row.start_C) })),
    };
    return { ...any, end_s, weather, coolers: [cold], acts: [] };
  })
  .filter(({ coolers }) => coolers[0].ice.length > 0);

function out_s(input: FleetInput): number {
  const fleet = startFleet(input, fine);
  runFleet(fleet, input.end_s);
  return iceOut_s(fleet, 0) ?? end_s;
}

/** 0.2 % and three minutes are the steps' own. */
function neverSooner(change: (any: AnyTrip, input: FleetInput) => FleetInput, allowed_frac = 0.002): void {
  fc.assert(
    fc.property(warmTrip, (any) => {
      const before_s = out_s(fleetOf(any));
      const after_s = out_s(change(any, fleetOf(any)));
      expect(after_s).toBeGreaterThan(before_s * (1 - allowed_frac) - 180);
    }),
    runs(12),
  );
}

const inWeather = (any: AnyTrip, over: Partial<AnyTrip["weather"]>): FleetInput =>
  fleetOf({ ...any, weather: { ...any.weather, ...over } });

const withCooler = (any: AnyTrip, over: Partial<AnyTrip["coolers"][number]>): FleetInput =>
  fleetOf({ ...any, coolers: [{ ...any.coolers[0], ...over }] });

describe("ice never ends sooner with", () => {
  it("thicker walls", () => {
    neverSooner((_, input) => {
      const { body } = input.coolers[0];
      for (const zone of [body.lid, body.sides, body.base]) zone.thickness_m *= 1.3;
      return input;
    });
  });

  it("a tighter lid", () => {
    neverSooner((_, input) => {
      input.coolers[0].body.seal_W_per_mK *= 0.5;
      input.coolers[0].body.leak_per_h *= 0.5;
      return input;
    });
  });

  it("a lighter colour", () => {
    neverSooner((any) => withCooler(any, { absorptance_frac: 0.1 }));
  });

  it("less sun", () => {
    neverSooner((any) => inWeather(any, { sunPeak_W_per_m2: 0.5 * any.weather.sunPeak_W_per_m2 }));
  });

  it("cooler air", () => {
    neverSooner((any) => inWeather(any, { mean_C: any.weather.mean_C - 4 }));
  });

  it("no openings", () => {
    neverSooner((any) => withCooler(any, { openings: null }));
  });

  // Kept meltwater touches more wall, and lifts into the water what lay dry: with more ice both come sooner.
  it("more of it (within 1 %, since more melt wets more)", () => {
    const more = 1.25;
    neverSooner(
      (any) =>
        withCooler(any, {
          ice: any.coolers[0].ice.map((row) => ({ ...row, mass_kg: row.mass_kg * more })),
        }),
      0.01,
    );
  });
});
