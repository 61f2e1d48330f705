import { describe, expect, it } from "vitest";
import { erringWeather, type WeatherError } from "../../../core/sky/weatherError.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const told = smallTrip().weather;
const none: WeatherError = {
  t_s: [0, 86_400],
  air_K: [0, 0],
  dewPoint_K: [0, 0],
  cloudShift_frac: 0,
  wind_frac: 1,
};
const noon_s = 4 * 3600;

describe("weather that errs", () => {
  it("is the told one where nothing errs", () => {
    const same = erringWeather(told, none);
    for (const t_s of [0, noon_s, 20 * 3600]) expect(same.at(t_s)).toEqual(told.at(t_s));
  });

  it("shifts the air straight between its days, and the day's mean with it", () => {
    const warm = erringWeather(told, { ...none, air_K: [2, 4] });
    expect(warm.at(43_200).air_C - told.at(43_200).air_C).toBeCloseTo(3, 9);
    expect(warm.at(172_800 / 2 + 40_000).air_C - told.at(126_400).air_C).toBeCloseTo(4, 9);
    expect(warm.dayMean_C(43_200) - told.dayMean_C(43_200)).toBeCloseTo(3, 9);
  });

  it("never has a dew point over the air", () => {
    const damp = erringWeather(told, { ...none, dewPoint_K: [40, 40] }).at(noon_s);
    expect(damp.dewPoint_C).toBe(damp.air_C);
  });

  it("takes sun away under more cloud and scatters more of the rest; never a negative beam", () => {
    const clear = told.at(noon_s);
    const dull = erringWeather(told, { ...none, cloudShift_frac: 0.5 }).at(noon_s);
    expect(dull.global_W_per_m2).toBeLessThan(0.95 * clear.global_W_per_m2);
    expect(dull.diffuse_W_per_m2 / dull.global_W_per_m2).toBeGreaterThan(
      clear.diffuse_W_per_m2 / clear.global_W_per_m2,
    );
    const overcast = erringWeather(told, { ...none, cloudShift_frac: 5 }).at(noon_s);
    expect(overcast.cloud_frac).toBe(1);
    expect(overcast.diffuse_W_per_m2).toBeLessThanOrEqual(overcast.global_W_per_m2);
  });
});
