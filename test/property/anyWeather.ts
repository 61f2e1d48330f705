import fc from "fast-check";
import type { Around } from "../../core/cooler/types.ts";
import { quickSaturationHumidityRatio_kg_per_kg } from "../../core/matter/moistAir.ts";
import type { Surroundings } from "../../core/sky/types.ts";

/** Weather around a box as a few numbers: a daily wave, a half sine of sun, and one jump (a move to another place). */
export interface AnyWeather {
  mean_C: number;
  swing_K: number;
  /** At the coldest moment of the day; the vapour in the air stays the same all day. */
  humidity_frac: number;
  wind_m_per_s: number;
  sunPeak_W_per_m2: number;
  /** How much colder than the air the sky looks. */
  sky_K: number;
  ground_K: number;
  groundResistance_m2K_per_W: number;
  jump_frac: number;
  jump_K: number;
}

const day_s = 86_400;

const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

/** From a snow camp to a desert; one in four is constant and dark. */
export const anyWeather: fc.Arbitrary<AnyWeather> = fc.oneof(
  {
    weight: 1,
    arbitrary: whole(-15, 45).map((mean_C) => ({
      mean_C,
      swing_K: 0,
      humidity_frac: 0.5,
      wind_m_per_s: 0,
      sunPeak_W_per_m2: 0,
      sky_K: 0,
      ground_K: 0,
      groundResistance_m2K_per_W: 0.2,
      jump_frac: 0,
      jump_K: 0,
    })),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      mean_C: whole(-12, 38),
      swing_K: whole(0, 10),
      humidity_frac: fc.constantFrom(0.05, 0.3, 0.6, 0.9, 1),
      wind_m_per_s: whole(0, 8),
      sunPeak_W_per_m2: fc.constantFrom(0, 300, 700, 1050),
      sky_K: whole(0, 18),
      ground_K: whole(-5, 15),
      groundResistance_m2K_per_W: fc.constantFrom(0.05, 0.2, 0.5),
      jump_frac: fc.constantFrom(0.1, 0.37, 0.8),
      jump_K: fc.constantFrom(-15, 0, 0, 12),
    }),
  },
);

/** The surroundings of a box in this weather. */
export function aroundIn(weather: AnyWeather, clock_s: number, end_s: number): Around {
  const jump_s = weather.jump_frac * end_s;
  const coldest_C = weather.mean_C - weather.swing_K + Math.min(0, weather.jump_K);
  const humidity_kg_per_kg =
    weather.humidity_frac * quickSaturationHumidityRatio_kg_per_kg(coldest_C, 101_325);
  const breaks_s = [jump_s];
  for (let t = -clock_s; t < end_s; t += day_s / 4) breaks_s.push(t);
  return {
    stays: [],
    breaks_s,
    at: (t_s: number, out: Surroundings): Surroundings => {
      const turn = ((clock_s + t_s) / day_s) * 2 * Math.PI;
      const air_C =
        weather.mean_C -
        weather.swing_K * Math.cos(turn - Math.PI / 4) +
        (t_s >= jump_s ? weather.jump_K : 0);
      const sun = weather.sunPeak_W_per_m2 * Math.max(0, -Math.cos(turn));
      out.air_C = air_C;
      out.humidity_kg_per_kg = humidity_kg_per_kg;
      out.pressure_Pa = 101_325;
      out.wind_m_per_s = weather.wind_m_per_s;
      out.lidSun_W_per_m2 = sun;
      out.sideSun_W_per_m2 = 0.45 * sun;
      out.lidRadiant_C = air_C - weather.sky_K;
      out.sideRadiant_C = air_C - 0.5 * weather.sky_K + 0.007 * sun;
      out.ground_C = weather.mean_C + weather.ground_K;
      out.groundResistance_m2K_per_W = weather.groundResistance_m2K_per_W;
      return out;
    },
  };
}
