import { describe, expect, it } from "vitest";
import { type HourRow, weatherFromHours } from "../../../core/sky/hourlyWeather.ts";
import { localInstant_ms } from "../../../core/sky/localTime.ts";
import { weatherFromDays } from "../../../core/sky/weather.ts";

const place = { latitude_deg: 38.6, longitude_deg: -109.6, elevation_m: 1250, timezone: "America/Denver" };
const depart_ms = localInstant_ms("2027-06-18T06:30", place.timezone);
const hour = 3600;
const duration_s = 48 * hour;
const days = [{ high_C: 34, low_C: 15, humidity_frac: 0.25, cloud_frac: 0.5, wind_m_per_s: 2 }];
const truth = weatherFromDays(days, place, depart_ms, duration_s);

function rowsFrom(over: (t_s: number) => Partial<HourRow>, from_h = 0, to_h = 48): HourRow[] {
  return Array.from({ length: to_h - from_h + 1 }, (_, i) => {
    const t_s = (from_h + i) * hour;
    const { air_C, dewPoint_C, wind_m_per_s } = truth.at(t_s);
    const sky = {
      cloud_frac: null,
      global_W_per_m2: null,
      diffuse_W_per_m2: null,
      sunOver_s: 0,
      pressure_Pa: null,
    };
    return { t_s, air_C, dewPoint_C, wind_m_per_s, ...sky, ...over(t_s) };
  });
}

function hourMean(t_s: number, what: "global_W_per_m2" | "diffuse_W_per_m2"): number {
  let sum = 0;
  for (let i = 0; i < 60; i++) sum += truth.at(t_s - hour + (i + 0.5) * 60)[what] / 60;
  return sum;
}

function sumOfSun_MJ(weather: typeof truth): number {
  let sum = 0;
  for (let t_s = 0; t_s < 24 * hour; t_s += 300) sum += weather.at(t_s).global_W_per_m2 * 300e-6;
  return sum;
}

describe("weather from hourly rows", () => {
  it("passes through its rows and in straight lines between them", () => {
    const rows = rowsFrom(() => ({ cloud_frac: 0.5 }));
    const weather = weatherFromHours(rows, place, depart_ms, duration_s);
    for (const row of rows.slice(1, 40)) expect(weather.at(row.t_s).air_C).toBeCloseTo(row.air_C, 1);
    expect(weather.at(5.5 * hour).air_C).toBeCloseTo((rows[5]!.air_C + rows[6]!.air_C) / 2, 1);
    expect(weather.at(0).pressure_Pa).toBeCloseTo(truth.at(0).pressure_Pa, 6);
  });

  it("with cloud recorded, has the sun of that cloud", () => {
    const weather = weatherFromHours(
      rowsFrom(() => ({ cloud_frac: 0.5 })),
      place,
      depart_ms,
      duration_s,
    );
    for (const t_s of [2, 7, 13, 20].map((h) => h * hour)) {
      expect(weather.at(t_s).global_W_per_m2).toBeCloseTo(truth.at(t_s).global_W_per_m2, 6);
    }
  });

  it("with sun of the moment recorded, gives it back, and the cloud that explains it", () => {
    const rows = rowsFrom((t_s) => ({ global_W_per_m2: truth.at(t_s).global_W_per_m2 }));
    const weather = weatherFromHours(rows, place, depart_ms, duration_s);
    expect(sumOfSun_MJ(weather) / sumOfSun_MJ(truth)).toBeCloseTo(1, 2);
    expect(weather.at(20 * hour).cloud_frac).toBeCloseTo(0.5, 1);
    expect(weather.at(18 * hour).global_W_per_m2).toBe(0);
  });

  it("with hourly means recorded, keeps the day's sun within 1 % and its hour", () => {
    const rows = rowsFrom((t_s) => ({
      global_W_per_m2: hourMean(t_s, "global_W_per_m2"),
      diffuse_W_per_m2: hourMean(t_s, "diffuse_W_per_m2"),
      sunOver_s: hour,
    }));
    const weather = weatherFromHours(rows, place, depart_ms, duration_s);
    expect(Math.abs(sumOfSun_MJ(weather) / sumOfSun_MJ(truth) - 1)).toBeLessThan(0.01);
    for (const t_s of [2, 4, 10].map((h) => h * hour)) {
      expect(Math.abs(weather.at(t_s).global_W_per_m2 - truth.at(t_s).global_W_per_m2)).toBeLessThan(10);
      expect(Math.abs(weather.at(t_s).diffuse_W_per_m2 - truth.at(t_s).diffuse_W_per_m2)).toBeLessThan(10);
    }
  });

  it("outside its rows takes the same hour of the next or previous day", () => {
    const rows = rowsFrom(() => ({ cloud_frac: 0 }));
    const weather = weatherFromHours(rows, place, depart_ms, duration_s);
    expect(weather.at(-3 * hour).air_C).toBeCloseTo(rows[21]!.air_C, 1);
    expect(weather.at(51 * hour).air_C).toBeCloseTo(rows[27]!.air_C, 1);
  });

  it.each([
    ["one row", rowsFrom(() => ({ cloud_frac: 0 }), 0, 0)],
    ["rows without sky", rowsFrom(() => ({}))],
    ["rows out of order", rowsFrom(() => ({ cloud_frac: 0 })).reverse()],
    ["air that is no number", rowsFrom(() => ({ cloud_frac: 0, air_C: Number.NaN }))],
  ])("refuses %s", (_, rows) => {
    expect(() => weatherFromHours(rows, place, depart_ms, duration_s)).toThrow(/must/);
  });
});
