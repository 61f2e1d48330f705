import { localInstant_ms } from "../../core/sky/localTime.ts";
import { surroundingsAt } from "../../core/sky/surroundings.ts";
import { weatherFromDays } from "../../core/sky/weather.ts";
import { noSurroundings, stayIn, steadyWeather } from "../unit/sky/steadyWeather.ts";
import { type Sample, span } from "./sample.ts";

/** Rise of a parked car's air above outdoors, °F. */
function rise_F(minutes: number, air_C: number): number {
  const car = surroundingsAt(steadyWeather({ air_C }), stayIn("closed car"), minutes * 60, noSurroundings());
  return (car.air_C - air_C) * 1.8;
}

/** Warmest moment of a car parked all day at 34° N in July, °C; the same weather as in the test of the publication. */
function hottest_C(cloud_frac: number): number {
  const place = { latitude_deg: 34, longitude_deg: -83.4, elevation_m: 200, timezone: "America/New_York" };
  const summer = { high_C: 33, low_C: 21, humidity_frac: 0.65, cloud_frac, wind_m_per_s: 2 };
  const weather = weatherFromDays(
    [summer],
    place,
    localInstant_ms("2027-07-10T07:00", place.timezone),
    43_200,
  );
  const car = stayIn("closed car");
  const air = Array.from(
    { length: 73 },
    (_, i) => surroundingsAt(weather, car, i * 600, noSurroundings()).air_C,
  );
  return Math.max(...air);
}

/** Parked all day: range and mean of the daily maxima. */
export function parkedAllDaySamples(): Sample[] {
  const row = { source: "grundstein-2009", mark: "R" } as const;
  const clear_C = hottest_C(0);
  return [
    {
      name: "car parked all day, clear summer mean of the maxima",
      unit: "°C",
      ...row,
      published: [67, 69],
      ours: span([clear_C]),
      miss: {
        gap_frac: 0.18,
        why: "the rise was fitted to the first hour of the sun on a car, not to a whole day",
      },
    },
    {
      name: "… cloudy lower by",
      unit: "K",
      ...row,
      published: [5, 20],
      ours: span([clear_C - hottest_C(0.85)]),
    },
  ];
}

/** A car parked in the sun; averages over sixteen days at 72–96 °F, read to about 3 °F. */
export function carSamples(): Sample[] {
  const row = { unit: "°F", source: "mclaren-2005", mark: "R" } as const;
  const outdoors = [22.2, 35.6];
  return [
    [10, 19],
    [20, 29],
    [60, 40],
  ].map(([minutes, rise]) => ({
    name: `car parked in the sun, rise after ${minutes} min`,
    ...row,
    published: [rise! - 3, rise! + 3] as const,
    ours: span(outdoors.map((air_C) => rise_F(minutes!, air_C))),
  }));
}
