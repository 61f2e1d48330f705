import { describe, expect, it } from "vitest";
import { countdown } from "../../../core/plan/countdown.ts";
import { freezerLeft_m3 } from "../../../core/plan/freezer.ts";
import { FREEZER_FRAC } from "../../../core/plan/freezerRoom.ts";
import type { Trip, TripFood } from "../../../core/trip/types.ts";
import { toyFood, toyTrip } from "./toyTrip.ts";

const space_m3 = 0.05;
const trip = (food: TripFood[], more: Partial<Trip> = {}): Trip =>
  toyTrip({ freezer: { space_m3, at_C: -18 }, food, ...more });
const frozen = (kg: number, more: Partial<TripFood> = {}): TripFood =>
  toyFood("stew", 0, { state: "frozen", start_C: -18, mass_kg: kg, pieces: 4, thick_m: 0.03, ...more });
const room_m3 = FREEZER_FRAC * space_m3;

describe("room for ice in the freezer at home", () => {
  it("is what the food that is frozen in it leaves", () => {
    expect(freezerLeft_m3(trip([]))).toBeCloseTo(room_m3, 12);
    // Stew is a little heavier than water: 20 kg take between 18 and 20 L.
    const left_m3 = freezerLeft_m3(trip([frozen(20)]));
    expect(room_m3 - left_m3).toBeGreaterThan(0.018);
    expect(room_m3 - left_m3).toBeLessThan(0.02);
  });

  it("does not count what is chilled, comes later, is in no cooler, or is sold frozen", () => {
    const peas = { ...frozen(5).like, kind: "frozen" as const };
    for (const item of [
      frozen(5, { state: "chilled" }),
      frozen(5, { putIn_s: 3600 }),
      frozen(5, { cooler: null }),
      frozen(5, { like: peas }),
    ])
      expect(freezerLeft_m3(trip([item]))).toBeCloseTo(room_m3, 12);
  });

  it("is never below nothing, and unknown without a freezer", () => {
    expect(freezerLeft_m3(trip([frozen(80)]))).toBe(0);
    expect(freezerLeft_m3(trip([frozen(80)], { freezer: null }))).toBe(Number.POSITIVE_INFINITY);
  });

  it("is what the countdown finds room for beside the food, and not one piece more", () => {
    const food = [frozen(20)];
    const each_kg = 2;
    const left_m3 = freezerLeft_m3(trip(food));
    const told = (pieces: number): boolean => {
      const ice = [
        {
          form: "block",
          pieces,
          each_kg,
          cooler: "galley",
          where: "home",
          by: "",
          price: null,
          weight_kg: pieces * each_kg,
        },
      ];
      const { warnings } = countdown(trip(food), { ice, states: [] });
      return warnings.some(({ code }) => code === "freezer-room");
    };
    let fit = 0;
    while (!told(fit + 1)) fit++;
    // A block of 2 kg takes 2.2 L of ice, gaps between blocks are in the share of the freezer that counts.
    expect(fit).toBeGreaterThan(0);
    expect(left_m3 / fit).toBeGreaterThan(0.0021);
    expect(left_m3 / (fit + 1)).toBeLessThan(0.0023 / FREEZER_FRAC);
  });
});
