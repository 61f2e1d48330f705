import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diffuseShare_frac } from "../../core/sky/diffuse.ts";
import { localInstant_ms } from "../../core/sky/localTime.ts";
import { placeDefaults } from "../../core/sky/places.ts";
import { surroundingsAt } from "../../core/sky/surroundings.ts";
import type { PlaceKind, Surroundings, Weather } from "../../core/sky/types.ts";
import { weatherFromDays } from "../../core/sky/weather.ts";
import { noSurroundings, stayIn } from "../unit/sky/steadyWeather.ts";

const kinds = Object.keys(placeDefaults) as PlaceKind[];
const duration_s = 2 * 86_400;

const anyWeather: fc.Arbitrary<Weather> = fc
  .record({
    low_C: fc.double({ min: -10, max: 28, noNaN: true }),
    range_K: fc.double({ min: 1, max: 22, noNaN: true }),
    humidity_frac: fc.option(fc.double({ min: 0.05, max: 1, noNaN: true })),
    cloud_frac: fc.double({ min: 0, max: 1, noNaN: true }),
    latitude_deg: fc.integer({ min: -65, max: 65 }),
    month: fc.integer({ min: 1, max: 12 }),
  })
  .map(({ low_C, range_K, humidity_frac, cloud_frac, latitude_deg, month }) => {
    const place = { latitude_deg, longitude_deg: 15, elevation_m: 300, timezone: "Europe/Berlin" };
    const depart_ms = localInstant_ms(`2027-${String(month).padStart(2, "0")}-10T08:00`, place.timezone);
    const day = { low_C, high_C: low_C + range_K, humidity_frac, cloud_frac, wind_m_per_s: 3 };
    return weatherFromDays([day], place, depart_ms, duration_s);
  });

const moment = fc.integer({ min: 0, max: duration_s });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const seen = (weather: Weather, kind: PlaceKind, t_s: number, shade_frac: number): Surroundings =>
  surroundingsAt(weather, stayIn(kind, { shade_frac }), t_s, noSurroundings());

describe("shade, in every place, weather and moment", () => {
  it("more of it never lets more sun in and never warms the air", () => {
    fc.assert(
      fc.property(anyWeather, fc.constantFrom(...kinds), moment, share, share, (weather, kind, t_s, a, b) => {
        const less = seen(weather, kind, t_s, Math.min(a, b));
        const more = seen(weather, kind, t_s, Math.max(a, b));
        expect(more.lidSun_W_per_m2).toBeLessThanOrEqual(less.lidSun_W_per_m2 + 1e-9);
        expect(more.sideSun_W_per_m2).toBeLessThanOrEqual(less.sideSun_W_per_m2 + 1e-9);
        expect(more.air_C).toBeLessThanOrEqual(less.air_C + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it("warms what a lid in the open looks at, and never what a closed place's lid looks at", () => {
    fc.assert(
      fc.property(anyWeather, fc.constantFrom(...kinds), moment, share, share, (weather, kind, t_s, a, b) => {
        const less = seen(weather, kind, t_s, Math.min(a, b)).lidRadiant_C;
        const more = seen(weather, kind, t_s, Math.max(a, b)).lidRadiant_C;
        if (placeDefaults[kind].isOpen) expect(more).toBeGreaterThanOrEqual(less - 1e-9);
        else expect(more).toBeLessThanOrEqual(less + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it("under a high sun takes more heat from a light lid than the warmer view gives", () => {
    fc.assert(
      fc.property(anyWeather, moment, share, share, (weather, t_s, a, b) => {
        fc.pre(weather.at(t_s).global_W_per_m2 > 350);
        const heat = (shade: number): number => {
          const { lidSun_W_per_m2, lidRadiant_C } = seen(weather, "camp", t_s, shade);
          return 0.25 * lidSun_W_per_m2 + 0.92 * 5.67e-8 * (lidRadiant_C + 273.15) ** 4;
        };
        expect(heat(Math.max(a, b))).toBeLessThanOrEqual(heat(Math.min(a, b)) + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});

describe("bounds", () => {
  it("the diffuse share stays in 0…1", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1.5, noNaN: true }), (clearness) => {
        expect(diffuseShare_frac(clearness)).toBeGreaterThan(0);
        expect(diffuseShare_frac(clearness)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("air of daily figures stays between the low and the high, the dew point below it", () => {
    const place = { latitude_deg: 40, longitude_deg: 15, elevation_m: 300, timezone: "Europe/Berlin" };
    const depart_ms = localInstant_ms("2027-05-10T08:00", place.timezone);
    const low = fc.double({ min: -20, max: 28, noNaN: true });
    const range = fc.double({ min: 0, max: 25, noNaN: true });
    fc.assert(
      fc.property(low, range, moment, (low_C, range_K, t_s) => {
        const day = { low_C, high_C: low_C + range_K, humidity_frac: 0.6, cloud_frac: 0, wind_m_per_s: 1 };
        const { air_C, dewPoint_C } = weatherFromDays([day], place, depart_ms, duration_s).at(t_s);
        expect(air_C).toBeGreaterThanOrEqual(low_C - 1e-9);
        expect(air_C).toBeLessThanOrEqual(low_C + range_K + 1e-9);
        expect(dewPoint_C).toBeLessThanOrEqual(air_C + 1e-9);
      }),
      { numRuns: 30 },
    );
  });
});
