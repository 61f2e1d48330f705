// grundstein-2009: Grundstein, A., Meentemeyer, V., Dowd, J. (2009), read in a copy: a car parked all day in the open at 34° N, April to
// August; daily maximum of cabin air on clear days 41–76 °C, clear summer mean 68 °C, cloudy about 10 K lower.
import { expect, it } from "vitest";
import { localInstant_ms } from "../../core/sky/localTime.ts";
import { surroundingsAt } from "../../core/sky/surroundings.ts";
import { weatherFromDays } from "../../core/sky/weather.ts";
import { noSurroundings, stayIn } from "../unit/sky/steadyWeather.ts";

const place = { latitude_deg: 34, longitude_deg: -83.4, elevation_m: 200, timezone: "America/New_York" };

function hottest_C(cloud_frac: number): number {
  const summer = { high_C: 33, low_C: 21, humidity_frac: 0.65, cloud_frac, wind_m_per_s: 2 };
  const weather = weatherFromDays(
    [summer],
    place,
    localInstant_ms("2027-07-10T07:00", place.timezone),
    43_200,
  );
  const air = Array.from({ length: 73 }, (_, i) => {
    return surroundingsAt(weather, stayIn("closed car"), i * 600, noSurroundings()).air_C;
  });
  return Math.max(...air);
}

it("a clear summer day peaks inside the measured 41–76 °C", () => {
  expect(hottest_C(0)).toBeGreaterThan(41);
  expect(hottest_C(0)).toBeLessThan(76);
});

it("the clear summer mean of 68 °C is missed by 5–12 K: an hour's rise is not a day's, the gap stays", () => {
  const gap_K = 68 - hottest_C(0);
  expect(gap_K).toBeGreaterThan(5);
  expect(gap_K).toBeLessThan(12);
});

it("cloud takes about 10 K (half as much to twice as much)", () => {
  const less_K = hottest_C(0) - hottest_C(0.85);
  expect(less_K).toBeGreaterThan(5);
  expect(less_K).toBeLessThan(20);
});
