import { expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import type { Warning } from "../../../core/forecast/result.ts";
import { settledWarnings } from "../../../core/plan/settledWarnings.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { toyFood, toyIce } from "./toyTrip.ts";
import { warmTrip } from "./warmTrip.ts";

const path = "coolers[0]";
const said: Warning[] = ["ice-short", "way-out", "no-room-for-ice", "heavy-cooler", "freezes"].map(
  (code) => ({
    code,
    says: code,
    path,
  }),
);
// Two days at a quarter of a kilogram an hour: 4 kg are gone on the first evening, 6 kg more last into the second morning.
const trip = (fetched_kg: number): Trip =>
  warmTrip({
    food: [toyFood("stew", 0, { start_C: 1 })],
    ice: [
      toyIce("cube", 2, 2),
      ...(fetched_kg === 0 ? [] : [{ ...toyIce("cube", 1, fetched_kg), id: "run", putIn_s: 6 * 3600 }]),
    ],
  });
const told = (fetched_kg: number): Warning[] => {
  const planned = trip(fetched_kg);
  return settledWarnings(planned, forecast(planned).result, null, said);
};
const codes = (warnings: readonly Warning[]): string[] => warnings.map(({ code }) => code);

it("what the ice of the way mends is told as resting on it, and a guessed weight is past", () => {
  expect(codes(told(14))).toEqual(["ice-on-way", "freezes"]);
});

it("what it does not mend is told as what is left of it, ways out and all", () => {
  const warnings = told(2);
  expect(codes(warnings)).toEqual(["ice-short", "way-out", "no-room-for-ice", "freezes"]);
  expect(warnings[0]!.says).toMatch(/of the departure and of the way together is not enough: .*hour \d/);
});

it("where nothing comes on the way all stays as it was said", () => {
  expect(told(0).map(({ says }) => says)).toEqual(["ice-short", "way-out", "no-room-for-ice", "freezes"]);
});
