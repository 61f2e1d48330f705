import { describe, expect, it } from "vitest";
import { proposeIceRuns } from "../../../core/plan/iceRuns.ts";
import { latestGoing, visitsOf } from "../../../core/plan/visits.ts";
import type { Trip, TripSupply } from "../../../core/trip/types.ts";
import { toyFood, toyIce, toySupply } from "./toyTrip.ts";
import { coldCooler, warmTrip } from "./warmTrip.ts";

const options = { members: 0, seed: 1 };
const HOUR_s = 3600;
/** Departure is Friday 06:00; ten hours later it is 16:00. */
const supply = (more: Partial<TripSupply> = {}): TripSupply =>
  toySupply("cube", 2, { when_s: [10 * HOUR_s], away_s: 75 * 60, ...more });
const short = (supplies: TripSupply[], more: Partial<Trip> = {}): Trip =>
  warmTrip({
    food: [toyFood("stew", 0, { start_C: 1 })],
    ice: [toyIce("cube", 2, 2)],
    supply: supplies,
    ...more,
  });

describe("a visit", () => {
  it("is left for at 17:15 where the shop shuts at 18:00 and it is 75 min there and back", () => {
    const trip = short([supply({ open: { from_s: 8 * HOUR_s, to_s: 18 * HOUR_s } })]);
    const going = latestGoing(trip, visitsOf(trip).visits[0]!, 40 * HOUR_s);
    expect((going.leave_s + trip.departClock_s) / HOUR_s).toBe(17.25);
    expect(going.in_s - going.leave_s).toBe(75 * 60);
  });
  it("is none on a closed day, after hours, without a chance, or after the return", () => {
    const none = [
      supply({ closed: ["Friday"] }),
      supply({ open: { from_s: 8 * HOUR_s, to_s: 12 * HOUR_s } }),
      supply({ chance_frac: 0 }),
      supply({ when_s: [48 * HOUR_s] }),
    ];
    expect(visitsOf(short(none)).visits).toEqual([]);
    expect(visitsOf(short(none)).shut).toHaveLength(4);
  });
});

describe("ice runs", () => {
  it("fetch the fewest pieces that hold, with what to do if there are none", () => {
    const { iceRuns, ice } = proposeIceRuns(short([supply()]), options);
    expect(iceRuns).toHaveLength(1);
    expect(ice).toHaveLength(1);
    // 37.5 min on the way, told in whole minutes as a file has them.
    expect(ice[0]!.putIn_s).toBe(10 * HOUR_s + 38 * 60);
    expect(ice[0]!.mass_kg).toBeLessThanOrEqual(30);
    expect(iceRuns[0]!.fallback).toMatch(/Without it: costs .*food/);
    const trip = short([supply()], { ice: [toyIce("cube", 2, 2), ...ice] });
    expect(proposeIceRuns(trip, options).warnings).toEqual([]);
    const fewer = ice.map((lot) => ({ ...lot, pieces: lot.pieces - 1, mass_kg: lot.mass_kg - 2 }));
    const tight = short([], { ice: [toyIce("cube", 2, 2), ...fewer] });
    expect(proposeIceRuns(tight, options).warnings[0]!.code).toBe("ice-run-short");
  });
  it("are none where the ice of the departure holds", () => {
    const { iceRuns, warnings } = proposeIceRuns(short([supply()], { ice: [toyIce("cube", 6, 3)] }), options);
    expect(iceRuns).toEqual([]);
    expect(warnings[0]!.code).toBe("no-ice-run");
  });
  it("fetch for two coolers in one going, and carry no more than two people can", () => {
    const trip = short([supply({ open: { from_s: 8 * HOUR_s, to_s: 20 * HOUR_s } })], {
      coolers: [coldCooler("early"), coldCooler("late")],
      food: [toyFood("stew", 0, { start_C: 1 }), toyFood("chili", 1, { start_C: 1 })],
      ice: [toyIce("cube", 2, 2), toyIce("cube", 2, 1, 1)],
    });
    const { iceRuns, ice } = proposeIceRuns(trip, options);
    expect(iceRuns).toHaveLength(2);
    expect(new Set(iceRuns.map(({ leaveBy, at }) => leaveBy + at)).size).toBe(1);
    expect(new Set(ice.map(({ putIn_s }) => putIn_s)).size).toBe(1);
    expect(ice.reduce((sum, { mass_kg }) => sum + mass_kg, 0)).toBeLessThanOrEqual(30);
  });
  it("say why where nothing can be had", () => {
    for (const supplies of [[], [supply({ chance_frac: 0 })], [supply({ closed: ["Friday"] })]]) {
      const { iceRuns, warnings } = proposeIceRuns(short(supplies), options);
      expect(iceRuns).toEqual([]);
      expect(warnings[0]!.code).toBe("ice-run-short");
      expect(warnings[0]!.says).toMatch(/no ice run mends it: ./);
    }
  });
  it("tell what the file puts in itself, and leave it", () => {
    const own = { ...toyIce("cube", 6, 2), id: "own", putIn_s: 11 * HOUR_s };
    const { iceRuns, ice } = proposeIceRuns(short([], { ice: [toyIce("cube", 2, 2), own] }), options);
    expect(ice).toEqual([]);
    expect(iceRuns).toMatchObject([{ pieces: 6, why: "in your file", at: "2027-06-18T17:00" }]);
  });
});
