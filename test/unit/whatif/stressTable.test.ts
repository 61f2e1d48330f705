import { describe, expect, it } from "vitest";
import type { Trip } from "../../../core/trip/types.ts";
import { stressKey, variantOf } from "../../../core/whatif/variants.ts";
import { smallTrip } from "./smallTrip.ts";

const trip = smallTrip((draft) => {
  draft.legs = [
    { until: "day 1 09:00", where: "cabin", air: "20 C" },
    { until: "day 1 10:00", where: "trunk", air: "30 C" },
    { where: "camp", shade: "50 %" },
  ];
});
const stressed = (key: string): Trip => variantOf(trip, stressKey(key))!;

describe("things that may go worse", () => {
  it("hotter air is 5 K hotter at every hour and as moist, and a held cabin stays", () => {
    const hot = stressed("hotter");
    for (let hour = 0; hour <= 36; hour += 3) {
      const told = { ...trip.weather.at(hour * 3600) };
      const came = { ...hot.weather.at(hour * 3600) };
      expect(came.air_C).toBeCloseTo(told.air_C + 5, 9);
      expect(came.dewPoint_C).toBe(told.dewPoint_C);
      expect(came.global_W_per_m2).toBe(told.global_W_per_m2);
    }
    expect(hot.weather.dayMean_C(3600)).toBeCloseTo(trip.weather.dayMean_C(3600) + 5, 9);
    expect(hot.legs.map(({ air_C }) => air_C)).toEqual([20, 35, null]);
  });

  it("half the ice is half of every lot, what comes later too", () => {
    expect(stressed("half the ice").ice.map(({ mass_kg }) => mass_kg)).toEqual([3, 0.5, 2.5]);
  });

  it("a warm start is 32 °C or the first day's high, and chilled food is 5 K warmer", () => {
    const warm = stressed("started warm");
    for (const { start } of warm.coolers) expect(start).toMatchObject({ kind: "uniform" });
    const body_C = warm.coolers.map(({ start }) => (start.kind === "uniform" ? start.body_C : Number.NaN));
    expect(Math.min(...body_C)).toBeGreaterThan(35.5);
    expect(warm.food.map(({ start_C }) => start_C)).toEqual([9, 9, 25]);
  });

  it("no shade is none anywhere that the sun counts", () => {
    expect(stressed("no shade").legs.map(({ shade_frac }) => shade_frac)).toEqual([0, 0, 0]);
  });
});
