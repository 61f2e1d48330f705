import { expect, it } from "vitest";
import { proposeMerges } from "../../../core/plan/merges.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { toyFood, toyIce } from "./toyTrip.ts";
import { coldCooler, warmTrip } from "./warmTrip.ts";

const sealed = [coldCooler("early"), coldCooler("late", { sealedUntil_s: 30 * 3600 })];
const options = { members: 4, seed: 1 };
const pair = (more: Partial<Trip> = {}): Trip =>
  warmTrip({
    coolers: [coldCooler("early"), coldCooler("late")],
    food: [toyFood("stew", 0, { start_C: 1 }), toyFood("chili", 1, { start_C: 1 })],
    ice: [toyIce("block", 2, 4, 0), toyIce("block", 2, 4, 1)],
    ...more,
  });

it("joins two coolers with room, for more hours of ice than the better of the two has", () => {
  const { merges, events, warnings } = proposeMerges(pair(), options);
  expect(merges).toHaveLength(1);
  expect(merges[0]!.fits_frac).toBeLessThanOrEqual(1);
  expect(merges[0]!.gain_h.p50).toBeGreaterThan(1);
  expect(merges[0]!.gain_h.p10!).toBeLessThanOrEqual(merges[0]!.gain_h.p90!);
  expect(merges[0]!.why).toMatch(/Joined.*apart/);
  expect(warnings).toEqual([]);
  expect(events[0]).toMatchObject({ do: "merge" });
  expect(events.slice(1).every((event) => event.do === "open")).toBe(true);
  expect(events.length).toBeGreaterThan(1);
});

it("waits for the seal to be broken", () => {
  const ice = [toyIce("block", 2, 3, 0), toyIce("block", 2, 3, 1)];
  const { events } = proposeMerges(pair({ coolers: sealed, ice }), { ...options, members: 0 });
  expect(events[0]!.t_s).toBeGreaterThanOrEqual(30 * 3600);
});

const refused: [string, Partial<Trip>, RegExp][] = [
  ["one cooler", { coolers: [coldCooler("early")], food: [], ice: [] }, /only one cooler/],
  [
    "raw food that drips",
    { food: [toyFood("chicken", 0, { raw: true, watertight: false }), toyFood("chili", 1, { start_C: 1 })] },
    /chicken.*raw and not watertight/,
  ],
  [
    "a merge of the file",
    { events: [{ do: "merge", t_s: 36_000, from: 0, into: 1, path: "events[0]" }] },
    /the file empties early already/,
  ],
  ["no room", { ice: [toyIce("block", 9, 4, 0), toyIce("block", 9, 4, 1)] }, /no room|% full/],
  [
    "ice to the return in both anyway",
    { coolers: sealed, ice: [toyIce("block", 2, 5, 0), toyIce("block", 2, 5, 1)] },
    /apart, ice is left at the return as well/,
  ],
  ["a gain whose range reaches below zero", { coolers: sealed }, /longer or shorter cannot be told/],
  ["nothing inside", { food: [], ice: [] }, /nothing is left/],
];
it.each(refused)("proposes none with %s, and says why", (_, more, why) => {
  const { merges, events, warnings } = proposeMerges(pair(more), options);
  expect(merges).toEqual([]);
  expect(events).toEqual([]);
  expect(warnings).toEqual([{ code: "no-merge", says: expect.stringMatching(why), path: "coolers" }]);
});

it("stops when it is called off", () => {
  expect(() => proposeMerges(pair(), { ...options, signal: { aborted: true } })).toThrow("called off");
});
