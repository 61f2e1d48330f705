import { describe, expect, it } from "vitest";
import { Cancelled } from "../../../core/ensemble/types.ts";
import { forecast } from "../../../core/forecast/forecast.ts";
import type { WarmLoadPlan } from "../../../core/forecast/planResult.ts";
import { findFood } from "../../../core/matter/foods.ts";
import { centreCold_h, loadRoom_L } from "../../../core/plan/warmCooling.ts";
import { warmLoadPlan } from "../../../core/plan/warmLoad.ts";
import type { Trip, TripWarmLoad } from "../../../core/trip/types.ts";
import { toyCooler, toyFood, toyIce, toyTrip } from "./toyTrip.ts";

const found = findFood("venison");
if (!("food" in found)) throw new Error("venison");
const h = 3600;
const LIMIT_C = 40 / 9;

const load: TripWarmLoad = {
  path: "warm load",
  name: "venison",
  amount: "8 kg",
  mass_kg: 8,
  pieces: 4,
  like: found.food,
  start_C: 36,
  thick_m: 0.16,
  shape: "cylinder",
  boneIn: true,
  latest_s: 24 * h,
  cooler: 0,
};

function plan(more: Partial<TripWarmLoad>, trip: Partial<Trip> = {}, ice_kg = 12): WarmLoadPlan {
  const whole = toyTrip({
    coolers: [toyCooler("game", { volume_m3: 0.05 })],
    food: [toyFood("stew", 0, { eat_s: 30 * h })],
    ice: [toyIce("block", 2, ice_kg / 2)],
    warmLoad: { ...load, ...more },
    ...trip,
  });
  return warmLoadPlan(whole, forecast(whole, { effects: false }), { seed: 1, members: 9 })!;
}

describe("cooling to the middle", () => {
  it("takes bone-in longer than boned, thick longer than thin, and slow longer than fast", () => {
    const bone = centreCold_h(load, LIMIT_C);
    const boned = centreCold_h({ ...load, boneIn: false }, LIMIT_C);
    const thicker = centreCold_h({ ...load, thick_m: 0.22 }, LIMIT_C);
    for (const p of ["p10", "p50", "p90"] as const) {
      expect(bone[p]!).toBeGreaterThan(boned[p]!);
      expect(thicker[p]!).toBeGreaterThan(bone[p]!);
    }
    expect(bone.p10!).toBeLessThan(bone.p50!);
    expect(bone.p50!).toBeLessThan(bone.p90!);
  });

  it("of a 160-mm cylinder lies near the one-term series for the same Biot number", () => {
    // Slow film, thickness + 15 %: r = 92 mm, Bi = 15·0.092/0.46 = 3, first root 1.79, factor 1.42 (tables, from memory);
    // (4.44 − 1)/(36 − 1) = 0.098, Fo = ln(1.42/0.098)/1.79² = 0.83, a = 1.28e-7 m²/s: 15.3 h.
    expect(centreCold_h(load, LIMIT_C).p90!).toBeGreaterThan(15.3 * 0.85);
    expect(centreCold_h(load, LIMIT_C).p90!).toBeLessThan(15.3 * 1.15);
  });

  it("thin fish stays as it is: nothing is gained by bagging it thicker", () => {
    const fish = centreCold_h({ ...load, boneIn: false, thick_m: 0.03, shape: "slab" }, LIMIT_C);
    const bagged = centreCold_h({ ...load, boneIn: false }, LIMIT_C);
    expect(fish.p50!).toBeLessThan(bagged.p50!);
    expect(fish.p90!).toBeLessThan(bagged.p90!);
  });
});

describe("reserve for a big warm load", () => {
  it("is none where there is no load", () => {
    const trip = toyTrip({});
    expect(warmLoadPlan(trip, forecast(trip, { effects: false }), { seed: 1 })).toBeNull();
  });

  it("grows with the load and takes at least the heat of it, unless ice is there already", () => {
    const little = plan({ mass_kg: 3 }, {}, 4);
    const much = plan({ mass_kg: 12 }, {}, 4);
    expect(much.reserveIce_kg).toBeGreaterThanOrEqual(little.reserveIce_kg);
    expect(much.reserveIce_kg).toBeGreaterThan(0);
    expect(plan({ mass_kg: 3 }, {}, 16).reserveIce_kg).toBeLessThanOrEqual(little.reserveIce_kg);
    expect(much.space_L).toBeCloseTo(4 * little.space_L, 6);
  });

  it("that holds needs no going home early; one that cannot says so and by when", () => {
    const good = plan({ mass_kg: 3 });
    expect(good.keepsFor_h.p10).toBeNull();
    expect(good.goHomeBy).toBeNull();
    const bad = plan({ mass_kg: 30, latest_s: 8 * h }, {}, 4);
    expect(bad.keepsFor_h.p10).not.toBeNull();
    expect(bad.goHomeBy! >= bad.at).toBe(true);
    expect(bad.goHomeBy! <= "2027-06-20T06:00").toBe(true);
    expect(bad.says).toMatch(/does not (?:fit|keep)/);
  });

  it("says how to lay it, asks for the rules of the place, and clears nothing", () => {
    const { layout, says } = plan({ mass_kg: 3 });
    const all = [...layout, says].join(" ");
    for (const word of ["ice below", "Drain", "Lid shut", "bone", "agency", "thermometer"])
      expect(all).toContain(word);
    const rules = { ...toyTrip({}).rules!, carcass: "tag on the antler" } as NonNullable<Trip["rules"]>;
    expect(plan({ mass_kg: 3 }, { rules }).layout.join(" ")).toContain("tag on the antler");
    expect(plan({ mass_kg: 3, boneIn: false }).layout.join(" ")).toContain("50–80 mm");
  });

  it("can be called off, and runs the middle case alone where no members are asked for", () => {
    const trip = toyTrip({ ice: [toyIce("block", 2, 6)], warmLoad: { ...load, mass_kg: 3 } });
    const told = forecast(trip, { effects: false });
    expect(() => warmLoadPlan(trip, told, { seed: 1, signal: { aborted: true } })).toThrow(Cancelled);
    const { keepsFor_h } = warmLoadPlan(trip, told, { seed: 1, members: 0 })!;
    expect(keepsFor_h.p10).toBe(keepsFor_h.p90);
    const gone = { ...trip, ice: [], warmLoad: { ...load, mass_kg: 40, latest_s: 8 * h } };
    const { keepsFor_h: short } = warmLoadPlan(gone, told, { seed: 1, members: 0 })!;
    expect(short.p50).not.toBeNull();
  });

  it("takes the room that its mass and gaps do", () => {
    // 8 kg at about 1060 kg/m³, three tenths of gaps: 10.8 L.
    expect(loadRoom_L(load)).toBeGreaterThan(10);
    expect(loadRoom_L(load)).toBeLessThan(11.5);
  });
});
