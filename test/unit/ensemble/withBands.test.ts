import { describe, expect, it } from "vitest";
import { ensemble } from "../../../core/ensemble/ensemble.ts";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import type { RunTasks } from "../../../core/ensemble/types.ts";
import { withBands } from "../../../core/ensemble/withBands.ts";
import { forecast } from "../../../core/forecast/forecast.ts";
import type { Band } from "../../../core/forecast/result.ts";
import { carriedOnUntil_s } from "../../../core/forecast/run.ts";
import { failuresOf } from "../../../core/plan/need.ts";
import { forecastText } from "../../../core/tell/forecastText.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const run =
  (trip: Trip): RunTasks =>
  async (tasks) =>
    tasks.map((task) => runMembers(trip, task));
const banded = (trip: Trip, members = 48): ReturnType<typeof ensemble> =>
  ensemble(forecast(trip, { effects: false }), run(trip), { members, seed: 1 });

const inOrder = ({ p10, p50, p90 }: Band): boolean =>
  (p10 ?? 1e9) <= (p50 ?? 1e9) && (p50 ?? 1e9) <= (p90 ?? 1e9);

describe("a forecast with bands", () => {
  it("has every band in order, with a width, and says how many members it has", async () => {
    const { result } = await banded(smallTrip());
    expect(result.ensemble).toEqual({ members: 48, seed: 1, confidence_frac: 0.9 });
    const [chest] = result.coolers;
    for (const band of [
      chest!.iceOut_h,
      chest!.overLimit_h,
      ...result.food.flatMap((f) => [f.coreMax_C, f.warm_h]),
    ])
      expect(inOrder(band)).toBe(true);
    expect(chest!.iceOut_h.p10).toBeLessThan(chest!.iceOut_h.p50!);
    chest!.series.ice_kg.p50.forEach((mass, i) => {
      expect(chest!.series.ice_kg.p10[i]).toBeLessThanOrEqual(mass);
      expect(chest!.series.ice_kg.p90[i]).toBeGreaterThanOrEqual(mass);
    });
  });

  it("rules at the trip's confidence: surer is never milder, and the reason tells the likely case too", async () => {
    const order = ["keep", "eat next", "discard"];
    const at = async (confidence_frac: number): Promise<number[]> => {
      const trip = { ...smallTrip({ ice_kg: 3 }), confidence_frac };
      const { result } = await banded(trip);
      return trip.food.map(({ name }) =>
        order.indexOf(result.food.find((food) => food.name === name)!.verdict),
      );
    };
    const [loose, strict] = [await at(0.5), await at(0.95)];
    loose.forEach((verdict, i) => {
      expect(strict[i]).toBeGreaterThanOrEqual(verdict);
    });
  });

  it("fails only when more members fail than the confidence leaves", async () => {
    const few = await banded(smallTrip({ ice_kg: 1.5, high_C: 38 }));
    const warm = few.result.food.filter((food) => food.perishable && food.overLimit_frac! > 0.1);
    expect(warm.length).toBeGreaterThan(0);
    expect(failuresOf(few.result).length).toBeGreaterThanOrEqual(warm.length);
    const much = await banded(smallTrip({ ice_kg: 14, high_C: 22 }));
    for (const food of much.result.food)
      if (food.overLimit_frac! <= 0.1)
        expect(failuresOf(much.result)).not.toContain(`${food.name} passes the limit before it is eaten`);
  });

  it("names the walls of an untested cooler as a doubt, and fewer of them once it is measured", async () => {
    const share = async (trip: Trip): Promise<number> => {
      const { result } = await banded(trip, 128);
      return result.coolers[0]!.doubts!.find(({ about }) => about.includes("walls"))?.share_frac ?? 0;
    };
    const untested = await share(smallTrip());
    expect(untested).toBeGreaterThan(0.3);
    expect(await share(smallTrip({ cooler: "conductance: 1.1 W/K" }))).toBeLessThan(0.6 * untested);
  });

  it("stays the middle case with no members", async () => {
    const middle = forecast(smallTrip(), { effects: false });
    expect(await ensemble(middle, run(smallTrip()), { members: 0, seed: 1 })).toBe(middle);
  });

  it("tells a trip in deep cold, where nothing melts and nothing can be carried on", async () => {
    const trip = smallTrip({ high_C: -10 });
    const told = await ensemble(forecast(trip), run(trip), { members: 8, seed: 1 });
    expect(forecastText(told, { units: "us" })).toContain("ice to the return");
    const { iceCarriedOn_h } = runMembers(trip, { from: 0, to: 8, seed: 1, series: false }).coolers[0]!;
    for (const hours of iceCarriedOn_h)
      expect(hours).toBeLessThanOrEqual(carriedOnUntil_s(trip.duration_s) / 3600);
  });

  it("refuses draws without series", () => {
    const trip = smallTrip();
    const draws = runMembers(trip, { from: 0, to: 2, seed: 1, series: false });
    expect(() => withBands(forecast(trip, { effects: false }), draws, 1)).toThrow("with series");
  });
});
