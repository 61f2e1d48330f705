import type { WeatherSample } from "../../../core/sky/types.ts";
import type { Trip, TripCooler } from "../../../core/trip/types.ts";
import { toyCooler, toyTrip } from "./toyTrip.ts";

const weather: WeatherSample = {
  air_C: 28,
  dewPoint_C: 12,
  wind_m_per_s: 1,
  cloud_frac: 0.5,
  global_W_per_m2: 0,
  diffuse_W_per_m2: 0,
  sunHeight_deg: 0,
  pressure_Pa: 101_325,
};

/** A cooler that is cold already when it is packed. */
export const coldCooler = (name: string, more: Partial<TripCooler> = {}): TripCooler =>
  toyCooler(name, { start: { kind: "uniform", body_C: 3 }, ...more });

/** Two days in a room at 28 °C, to be run for real: ice melts at about a quarter of a kilogram an hour. */
export function warmTrip(more: Partial<Trip>): Trip {
  const trip = toyTrip({ coolers: [coldCooler("galley")], ...more });
  return {
    ...trip,
    weather: {
      ...trip.weather,
      at: (_, out) => Object.assign(out ?? { ...weather }, weather),
      dayMean_C: () => 28,
    },
    legs: trip.legs.map((leg) => ({ ...leg, place: "indoors" as const, air_C: 28 })),
  };
}
