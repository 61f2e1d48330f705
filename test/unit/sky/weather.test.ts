import { describe, expect, it } from "vitest";
import { standardPressure_Pa } from "../../../core/matter/moistAir.ts";
import { type AirDay, dailyAir_C } from "../../../core/sky/airTemperature.ts";
import { clearSky_W_per_m2 } from "../../../core/sky/clearSky.ts";
import { dayStart_ms, localInstant_ms } from "../../../core/sky/localTime.ts";
import { type Place, sunDay, sunHeight_deg } from "../../../core/sky/sun.ts";
import { type DayWeather, weatherFromDays } from "../../../core/sky/weather.ts";

const place: Place = {
  latitude_deg: 38.6,
  longitude_deg: -109.6,
  elevation_m: 1250,
  timezone: "America/Denver",
};
const depart_ms = localInstant_ms("2027-06-18T06:30", place.timezone);
const hour = 3600;
const day_s = 24 * hour;
const hot: DayWeather = { high_C: 34, low_C: 15, humidity_frac: 0.25, cloud_frac: 0.1, wind_m_per_s: 2 };
const cool: DayWeather = { ...hot, high_C: 22, low_C: 6, humidity_frac: null };
const weather = weatherFromDays([hot, cool, hot], place, depart_ms, 4 * day_s);

function airOver(from_s: number, to_s: number): { t_s: number; air_C: number }[] {
  const n = Math.floor((to_s - from_s) / 60);
  return Array.from({ length: n }, (_, i) => ({
    t_s: from_s + i * 60,
    air_C: weather.at(from_s + i * 60).air_C,
  }));
}

describe("weather from daily figures", () => {
  it("each day has its own low at sunrise and its own high about two hours after solar noon", () => {
    [hot, cool, hot, hot].forEach((day, k) => {
      const sun = sunDay(depart_ms + (k * day_s + 6 * hour) * 1000, place);
      const [rise_s, noon_s] = [sun.rise_ms!, sun.noon_ms].map((ms) => (ms - depart_ms) / 1000) as [
        number,
        number,
      ];
      const air = airOver(rise_s - 3 * hour, rise_s + 15 * hour);
      const least = air.reduce((a, b) => (b.air_C < a.air_C ? b : a));
      const most = air.reduce((a, b) => (b.air_C > a.air_C ? b : a));
      expect(Math.abs(least.t_s - rise_s)).toBeLessThan(700);
      expect(least.air_C).toBeCloseTo(day.low_C, 0);
      expect(Math.abs(most.t_s - noon_s - 1.86 * hour)).toBeLessThan(700);
      expect(most.air_C).toBeCloseTo(day.high_C, 1);
    });
  });

  it("runs on without a jump through nights between unlike days", () => {
    const air = airOver(-day_s / 2, 5 * day_s - 8 * hour);
    const steps = air.slice(1).map(({ air_C }, i) => Math.abs(air_C - air[i]!.air_C));
    // 16 K in 8 hours of morning is 0.06 K a minute at the steepest.
    expect(Math.max(...steps)).toBeLessThan(0.09);
  });

  it("knows the day before departure, like the first, and the day after return, like the last", () => {
    expect(weather.at(-12 * hour).air_C).toBeGreaterThan(28);
    expect(weather.at(4 * day_s + 10 * hour).air_C).toBeGreaterThan(28);
    expect(() => weather.at(-3 * day_s)).toThrow(/t_s must be/);
    expect(() => weather.at(Number.NaN)).toThrow(/t_s must be/);
    expect(() => weather.dayMean_C(9 * day_s)).toThrow(/t_s must be/);
  });

  it("day means belong to local days and lie near the middle of low and high", () => {
    const midnight_s = (dayStart_ms(depart_ms, place.timezone, 1) - depart_ms) / 1000;
    expect(weather.dayMean_C(0)).toBe(weather.dayMean_C(midnight_s - 1));
    expect(weather.dayMean_C(midnight_s + 1)).not.toBe(weather.dayMean_C(midnight_s - 1));
    expect(Math.abs(weather.dayMean_C(0) - 24.5)).toBeLessThan(2);
    expect(Math.abs(weather.dayMean_C(day_s) - 14)).toBeLessThan(2);
  });

  it("dew point: stated humidity at the mean of low and high; the low when silent; never above the air", () => {
    const noon_s = 6.83 * hour;
    // 25 % at 24.5 °C: 769 Pa of vapour (Magnus), dew point 3.2 °C.
    expect(Math.abs(weather.at(noon_s).dewPoint_C - 3.2)).toBeLessThan(0.3);
    expect(weather.at(day_s + noon_s).dewPoint_C).toBeCloseTo(cool.low_C, 1);
    const damp = weatherFromDays([{ ...hot, humidity_frac: 0.95 }], place, depart_ms, day_s);
    for (let t_s = 0; t_s < day_s; t_s += 900) {
      const { dewPoint_C, air_C } = damp.at(t_s);
      expect(dewPoint_C).toBeLessThanOrEqual(air_C + 1e-9);
    }
  });

  it("pressure is that of the place's height", () => {
    expect(weather.at(0).pressure_Pa).toBeCloseTo(standardPressure_Pa(1250), 6);
  });

  it("sun times are in the asked span, one rise and one set a day", () => {
    const { rise_s, set_s } = weather.sunTimes(0, 2 * day_s);
    expect([rise_s.length, set_s.length]).toEqual([2, 2]);
    for (const t_s of [...rise_s, ...set_s])
      expect(Math.abs(weather.at(t_s).sunHeight_deg)).toBeLessThan(0.5);
  });

  it("nothing shines at night, and diffuse is a part of global", () => {
    for (let t_s = 0; t_s < 2 * day_s; t_s += 500) {
      const { sunHeight_deg: height, global_W_per_m2, diffuse_W_per_m2 } = weather.at(t_s);
      if (height < -2) expect(global_W_per_m2).toBe(0);
      expect(diffuse_W_per_m2).toBeLessThanOrEqual(global_W_per_m2 + 1e-9);
    }
  });

  it("keeps an air curve under the midnight sun and in polar night", () => {
    const north: Place = {
      latitude_deg: 78,
      longitude_deg: 16,
      elevation_m: 0,
      timezone: "Arctic/Longyearbyen",
    };
    for (const date of ["2027-06-20T08:00", "2027-12-20T08:00"]) {
      const polar = weatherFromDays(
        [{ ...hot, high_C: 6, low_C: 1 }],
        north,
        localInstant_ms(date, north.timezone),
        2 * day_s,
      );
      const air = Array.from({ length: 48 }, (_, i) => polar.at(i * hour).air_C);
      expect(Math.max(...air)).toBeGreaterThan(5.5);
      expect(Math.min(...air)).toBeLessThan(1.5);
      expect(polar.sunTimes(0, 2 * day_s)).toEqual({ rise_s: [], set_s: [] });
    }
  });

  it.each([
    ["no days", []],
    ["low above high", [{ ...hot, low_C: 40 }]],
    ["humidity of 0", [{ ...hot, humidity_frac: 0 }]],
    ["cloud above 1", [{ ...hot, cloud_frac: 10 }]],
    ["wind that is no number", [{ ...hot, wind_m_per_s: Number.NaN }]],
  ])("refuses %s", (_, days) => {
    expect(() => weatherFromDays(days, place, depart_ms, day_s)).toThrow(/must/);
  });
});

describe("the ten-minute table against the laws", () => {
  const clear = weatherFromDays([{ ...hot, cloud_frac: 0 }], place, depart_ms, day_s);

  it("sun: within 0.4 W/m² when it stands above 5°, within 2.5 near the horizon", () => {
    for (let t_s = 0; t_s < day_s; t_s += 37) {
      const height_deg = sunHeight_deg(depart_ms + t_s * 1000, place);
      const error = Math.abs(clear.at(t_s).global_W_per_m2 - clearSky_W_per_m2(height_deg));
      expect(error).toBeLessThan(height_deg > 5 ? 0.4 : 2.5);
    }
  });

  it("air: within 0.2 K, the worst at the bends of sunrise and sunset", () => {
    const days: AirDay[] = [-1, 0, 1, 2].map((k) => {
      const sun = sunDay(depart_ms + (k * day_s + 6 * hour) * 1000, place);
      const onTrip = (ms: number): number => (ms - depart_ms) / 1000;
      const half_s = sun.light_s / 2;
      return {
        rise_s: onTrip(sun.noon_ms) - half_s,
        set_s: onTrip(sun.noon_ms) + half_s,
        low_C: 15,
        high_C: 34,
      };
    });
    let worst_K = 0;
    for (let t_s = 0; t_s < day_s; t_s += 37) {
      worst_K = Math.max(worst_K, Math.abs(clear.at(t_s).air_C - dailyAir_C(days, t_s)));
    }
    expect(worst_K).toBeLessThan(0.2);
  });
});
