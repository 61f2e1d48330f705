import type { Stay, Surroundings, Weather, WeatherSample } from "../../../core/sky/types.ts";

/** Weather that never changes, for tests of laws that only follow the clock of a stay. */
export function steadyWeather(over: Partial<WeatherSample> = {}): Weather {
  const sample: WeatherSample = {
    air_C: 30,
    dewPoint_C: 10,
    wind_m_per_s: 3,
    cloud_frac: 0,
    global_W_per_m2: 850,
    diffuse_W_per_m2: 120,
    sunHeight_deg: 57,
    pressure_Pa: 101_325,
    ...over,
  };
  return {
    at: (_t_s, out) => Object.assign(out ?? { ...sample }, sample),
    dayMean_C: () => 25,
    sunTimes: () => ({ rise_s: [], set_s: [] }),
  };
}

export function stayIn(place: Stay["place"], over: Partial<Stay> = {}): Stay {
  const unsaid = { shade_frac: null, ground: null, air_C: null, water_C: null };
  return { place, from_s: 0, to_s: 86_400, ...unsaid, ...over };
}

export function noSurroundings(): Surroundings {
  return {
    air_C: Number.NaN,
    humidity_kg_per_kg: Number.NaN,
    pressure_Pa: Number.NaN,
    wind_m_per_s: Number.NaN,
    lidSun_W_per_m2: Number.NaN,
    sideSun_W_per_m2: Number.NaN,
    lidRadiant_C: Number.NaN,
    sideRadiant_C: Number.NaN,
    ground_C: Number.NaN,
    groundResistance_m2K_per_W: Number.NaN,
  };
}
