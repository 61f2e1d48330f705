import { describe, expect, it } from "vitest";
import { humidityRatioFromDewPoint_kg_per_kg } from "../../../core/matter/moistAir.ts";
import { medianSky, skyPriors } from "../../../core/sky/closures.ts";
import { grounds } from "../../../core/sky/grounds.ts";
import { localInstant_ms } from "../../../core/sky/localTime.ts";
import { placeDefaults } from "../../../core/sky/places.ts";
import { mixedRadiant_C, skyTemperature_C } from "../../../core/sky/skyTemperature.ts";
import { surroundingsAt, weatherBreaks_s } from "../../../core/sky/surroundings.ts";
import type { PlaceKind, Stay, Surroundings } from "../../../core/sky/types.ts";
import { weatherFromDays } from "../../../core/sky/weather.ts";
import { noSurroundings, stayIn, steadyWeather } from "./steadyWeather.ts";

const place = { latitude_deg: 38.6, longitude_deg: -109.6, elevation_m: 1250, timezone: "America/Denver" };
const hour = 3600;
const day_s = 24 * hour;
const dry = { high_C: 34, low_C: 15, humidity_frac: 0.25, cloud_frac: 0, wind_m_per_s: 2 };
const weather = weatherFromDays([dry], place, localInstant_ms("2027-06-18T06:30", place.timezone), 3 * day_s);
const noon_s = 7 * hour;
const night_s = 20 * hour;

function seen(kind: PlaceKind, t_s: number, over: Partial<Stay> = {}): Surroundings {
  return surroundingsAt(weather, stayIn(kind, over), t_s, noSurroundings());
}
const kinds = Object.keys(placeDefaults) as PlaceKind[];

describe("every place", () => {
  it.each(kinds)("%s gives numbers everywhere, by day and by night", (kind) => {
    for (const t_s of [0, noon_s, night_s]) {
      for (const value of Object.values(seen(kind, t_s))) expect(Number.isFinite(value)).toBe(true);
    }
  });

  it.each(kinds)("%s names a source, words and a range around its own shade", (kind) => {
    const row = placeDefaults[kind];
    expect(row.says.length).toBeGreaterThan(15);
    expect(row.shade_frac).toBeGreaterThanOrEqual(row.shadeRange_frac[0]);
    expect(row.shade_frac).toBeLessThanOrEqual(row.shadeRange_frac[1]);
    for (const share of [row.sunPass_frac, row.dayMean_frac, row.water_frac]) {
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
    }
    expect(row.warming_K).toBeLessThanOrEqual(40);
  });

  it("the moisture is the weather's, and no more than the air there can hold", () => {
    const { dewPoint_C, pressure_Pa } = weather.at(noon_s);
    const there = humidityRatioFromDewPoint_kg_per_kg(dewPoint_C, pressure_Pa);
    expect(seen("camp", noon_s).humidity_kg_per_kg / there).toBeCloseTo(1, 4);
    expect(seen("indoors", noon_s, { air_C: -10 }).humidity_kg_per_kg).toBeLessThan(0.5 * there);
    const damp = steadyWeather({ air_C: 32, dewPoint_C: 26 });
    const cabin = surroundingsAt(damp, stayIn("cabin"), 0, noSurroundings());
    expect(cabin.humidity_kg_per_kg / humidityRatioFromDewPoint_kg_per_kg(12, 101_325)).toBeCloseTo(1, 4);
  });

  it("known air stands for the place's rule", () => {
    for (const kind of kinds) expect(seen(kind, noon_s, { air_C: 30 }).air_C).toBe(30);
  });
});

describe("places compared", () => {
  it("a tent at noon is worse than the shade of the camp: air and what the lid looks at", () => {
    const [tent, camp] = [seen("tent", noon_s), seen("camp", noon_s, { shade_frac: 0.8 })];
    expect(tent.air_C).toBeGreaterThan(camp.air_C + 5);
    expect(tent.lidRadiant_C).toBeGreaterThan(camp.lidRadiant_C + 10);
    expect(tent.lidSun_W_per_m2).toBeGreaterThan(camp.lidSun_W_per_m2);
    expect(seen("tent", night_s).air_C).toBe(seen("camp", night_s).air_C);
  });

  it("a trunk is cooler in the sun than the closed car, and smoother over the day", () => {
    const [car, trunk] = (["closed car", "trunk"] as const).map((kind) =>
      Array.from({ length: 24 }, (_, h) => seen(kind, (h + 3) * hour, { from_s: -12 * hour }).air_C),
    ) as [number[], number[]];
    expect(Math.max(...trunk)).toBeLessThan(Math.max(...car) - 8);
    expect(Math.max(...trunk) - Math.min(...trunk)).toBeLessThan(Math.max(...car) - Math.min(...car));
  });

  it("a closed car at night is as outdoors, and in the shade warms less", () => {
    expect(seen("closed car", night_s).air_C).toBe(weather.at(night_s).air_C);
    expect(seen("closed car", noon_s, { shade_frac: 0.9 }).air_C).toBeLessThan(weather.at(noon_s).air_C + 4);
  });

  it("a driven cabin is 22 °C whatever the weather; a room 21 °C without sun", () => {
    expect(seen("cabin", noon_s).air_C).toBe(22);
    expect(seen("cabin", noon_s).lidSun_W_per_m2).toBeLessThan(0.15 * weather.at(noon_s).global_W_per_m2);
    expect(seen("indoors", noon_s)).toMatchObject({ air_C: 21, lidSun_W_per_m2: 0, sideSun_W_per_m2: 0 });
  });

  it("rafts and hulls stand on the river, measured or guessed", () => {
    expect(seen("raft", noon_s, { water_C: 12 }).ground_C).toBe(12);
    expect(seen("boat", noon_s, { water_C: 12 }).air_C).toBeCloseTo((12 + weather.at(noon_s).air_C) / 2, 6);
    expect(seen("raft", noon_s).ground_C).toBeCloseTo(weather.dayMean_C(noon_s) - 5, 6);
  });

  it("snow under the box is at most 0 °C and throws more sun at the sides", () => {
    const [snow, soil] = [seen("camp", noon_s, { ground: "snow" }), seen("camp", noon_s, { ground: "soil" })];
    expect(snow.ground_C).toBe(0);
    expect(snow.sideSun_W_per_m2).toBeGreaterThan(1.5 * soil.sideSun_W_per_m2);
  });
});

describe("sky and ground", () => {
  it("a clear sky is 14 K colder than the air, an overcast one as warm", () => {
    expect(skyTemperature_C(20, 0, 14)).toBe(6);
    expect(skyTemperature_C(20, 1, 14)).toBe(20);
  });

  it("views mix by fourth powers: a little warmer than the mean", () => {
    expect(mixedRadiant_C(1, 20, -20)).toBeCloseTo(20, 9);
    const half = mixedRadiant_C(0.5, 20, -20);
    expect(half).toBeCloseTo(((293.15 ** 4 + 253.15 ** 4) / 2) ** 0.25 - 273.15, 9);
    expect(half).toBeGreaterThan(0);
  });

  it("earth in full shade is the day's mean + 2 K, in full sun the air + 0.015 K per W/m²", () => {
    expect(seen("camp", noon_s, { shade_frac: 1 }).ground_C).toBeCloseTo(weather.dayMean_C(noon_s) + 2, 9);
    const { air_C, global_W_per_m2 } = weather.at(noon_s);
    expect(seen("camp", noon_s, { shade_frac: 0 }).ground_C).toBeCloseTo(air_C + 0.015 * global_W_per_m2, 9);
  });

  it("at night shade warms what the lid looks at: that is physical", () => {
    const open = seen("camp", night_s, { shade_frac: 0 }).lidRadiant_C;
    expect(seen("camp", night_s, { shade_frac: 1 }).lidRadiant_C).toBeGreaterThan(open + 10);
  });

  it("ranges hold their medians", () => {
    for (const { p10, p50, p90 } of [
      ...Object.values(skyPriors),
      ...Object.values(grounds).map((g) => g.resistance_m2K_per_W),
    ]) {
      expect(p10).toBeLessThan(p50);
      expect(p50).toBeLessThan(p90);
    }
    for (const { albedo_frac } of Object.values(grounds)) {
      expect(albedo_frac).toBeGreaterThan(0.02);
      expect(albedo_frac).toBeLessThan(0.95);
    }
  });

  it("a sampled shade beyond 0…1 is held at the end", () => {
    const stay = stayIn("camp", { shade_frac: 0.95 });
    const more = { ...medianSky, shadeShift_frac: 0.1 };
    expect(surroundingsAt(weather, stay, noon_s, noSurroundings(), more).lidSun_W_per_m2).toBe(0);
  });
});

describe("breaks of a stay", () => {
  it("are its ends, sunrises, sunsets and local midnights, in order", () => {
    const mixed = weatherFromDays(
      [dry, { ...dry, high_C: 25 }],
      place,
      localInstant_ms("2027-06-18T06:30", place.timezone),
      3 * day_s,
    );
    const breaks = weatherBreaks_s(mixed, stayIn("camp", { from_s: 0, to_s: 1.5 * day_s }));
    const { rise_s, set_s } = mixed.sunTimes(0, 1.5 * day_s);
    expect(breaks).toEqual([0, set_s[0], 17.5 * hour, rise_s[0], 1.5 * day_s]);
  });

  it.each([
    ["ends before it begins", { from_s: 10, to_s: 5 }],
    ["has shade above 1", { shade_frac: 80 }],
    ["has air that is no number", { air_C: Number.NaN }],
    ["has boiling water", { water_C: 100 }],
  ])("refuses a stay that %s", (_, over) => {
    expect(() => weatherBreaks_s(weather, stayIn("camp", over))).toThrow(/must/);
  });
});
