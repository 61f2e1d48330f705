/** A packed cooler at an hour of the trip: what is eaten is gone, ice only shrinks, and nothing rises or leaves the box. */
import { describe, expect, it } from "vitest";
import type { Forecast } from "../../../core/forecast/types.ts";
import { packMap } from "../../../core/plan/packMap/packMap.ts";
import { coolerMoment, momentSaid, openings_h } from "../../../core/tell/coolerMoment.ts";
import { section } from "../../../core/tell/pictures/section.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const bare = plannedForecast();
const { layers } = packMap(bare.trip, bare);
const forecast: Forecast = {
  ...bare,
  result: { ...bare.result, plan: { ...bare.result.plan!, layers } },
};
const coolers = forecast.trip.coolers.flatMap(({ name }, i) =>
  layers.some((layer) => layer.cooler === name) ? [[name, i] as const] : [],
);
const { hours } = forecast.result.trip;

describe.each(coolers)("%s, hour by hour", (name, index) => {
  const packed = layers.filter((layer) => layer.cooler === name).flatMap(({ places }) => places);

  it("is the pack map at departure: every piece of it, where it was packed", () => {
    const now = coolerMoment(forecast, index, 0);
    const places = now.layers.flatMap((layer) => layer.places);
    expect(places.length).toBe(packed.length);
    const heights = (of: readonly { what: string; z_m: number }[]): string[] =>
      of.map(({ what, z_m }) => `${what} ${z_m.toFixed(6)}`).sort();
    expect(heights(places)).toEqual(heights(packed));
    expect(momentSaid(now)).toContain("as packed");
  });

  it("never has what was eaten, and sinks without rising out of the box", () => {
    const { height_m } = forecast.trip.coolers[index]!.body.inside;
    const top = Math.max(height_m, ...packed.map((place) => place.z_m + place.height_m)) + 1e-9;
    for (let t_h = 0; t_h <= hours; t_h += 7) {
      const now = coolerMoment(forecast, index, t_h);
      const places = now.layers.flatMap((layer) => layer.places);
      expect(places.filter(({ z_m, height_m: tall }) => z_m < -1e-9 || z_m + tall > top)).toEqual([]);
      for (const food of forecast.trip.food) {
        if (food.cooler !== index || food.eat_s === null || food.parts_s !== null || food.putIn_s !== null)
          continue;
        if (food.eat_s <= t_h * 3600) expect(places.map(({ item }) => item)).not.toContain(food.name);
      }
      expect(now.left_frac).toBeGreaterThanOrEqual(0);
      expect(now.left_frac).toBeLessThanOrEqual(1);
    }
  });

  it("draws the same body at every hour", () => {
    const bodies = [0, Math.floor(hours / 2), hours].map((t_h) => {
      const svg = section(coolerMoment(forecast, index, t_h), { width: 480, units: "us", id: "cut" });
      return [...svg.matchAll(/<rect[^>]*fill="var\(--paper\)"[^>]*>/g)].map(([rect]) =>
        /width="([^"]+)" height="([^"]+)"/.exec(rect)!.slice(1),
      );
    });
    expect(bodies[0]).toHaveLength(4);
    expect(bodies[1]).toEqual(bodies[0]);
    expect(bodies[2]).toEqual(bodies[0]);
  });

  it("is opened at moments of the trip, in their order", () => {
    const times = openings_h(forecast, index);
    expect([...times].sort((a, b) => a - b)).toEqual(times);
    expect(times.filter((t_h) => t_h <= 0 || t_h > hours)).toEqual([]);
  });
});

it("refuses an hour outside the trip and a cooler without a map", () => {
  expect(() => coolerMoment(forecast, 0, -1)).toThrow(/t_h/);
  expect(() => coolerMoment(forecast, 0, hours + 1)).toThrow(/t_h/);
  expect(() => coolerMoment(forecast, 99, 0)).toThrow(/pack map/);
});
