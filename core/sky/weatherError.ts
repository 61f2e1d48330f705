import { cloudTransmission_frac } from "./cloud.ts";
import { diffuseShare_frac } from "./diffuse.ts";
import { sine_ratio, solarConstant_W_per_m2 } from "./sun.ts";
import type { Weather, WeatherSample } from "./types.ts";
import { between } from "./weather.ts";

/** How far the weather that comes is from the one that was told. */
export interface WeatherError {
  /** Moments of the errors below, rising; between them straight, beyond them level. */
  t_s: readonly number[];
  air_K: readonly number[];
  dewPoint_K: readonly number[];
  /** Added to the share of sky covered; the sum is held within 0…1. */
  cloudShift_frac: number;
  /** Wind that blows / told. */
  wind_frac: number;
}

/** Under this height of the sun its light is too little to be worth splitting anew. */
const lowSun_deg = 1;

function shiftCloud(out: WeatherSample, shift_frac: number): void {
  const before = out.cloud_frac;
  out.cloud_frac = Math.min(1, Math.max(0, before + shift_frac));
  if (out.global_W_per_m2 <= 0 || out.cloud_frac === before) return;
  const global =
    (out.global_W_per_m2 * cloudTransmission_frac(out.cloud_frac)) / cloudTransmission_frac(before);
  if (out.sunHeight_deg > lowSun_deg) {
    // The split follows the clearness; the sun's distance from the earth cancels in the ratio, nearly.
    const outside = solarConstant_W_per_m2 * sine_ratio(out.sunHeight_deg);
    const more = diffuseShare_frac(global / outside) / diffuseShare_frac(out.global_W_per_m2 / outside);
    out.diffuse_W_per_m2 *= more;
  }
  out.diffuse_W_per_m2 = Math.min(global, (out.diffuse_W_per_m2 * global) / out.global_W_per_m2);
  out.global_W_per_m2 = global;
}

/**
 * A weather as it may turn out: the told one with its errors of air, dew point, cloud and wind. Sun times stay.
 *
 * @source kasten-czeplak-1980, erbs-1982
 */
export function erringWeather(told: Weather, error: WeatherError): Weather {
  const { t_s: times, air_K, dewPoint_K, cloudShift_frac, wind_frac } = error;
  return {
    at: (t_s, into) => {
      const out = told.at(t_s, into);
      out.air_C += between(times, air_K, t_s);
      out.dewPoint_C = Math.min(out.air_C, out.dewPoint_C + between(times, dewPoint_K, t_s));
      out.wind_m_per_s *= wind_frac;
      shiftCloud(out, cloudShift_frac);
      return out;
    },
    dayMean_C: (t_s) => told.dayMean_C(t_s) + between(times, air_K, t_s),
    sunTimes: (from_s, to_s) => told.sunTimes(from_s, to_s),
  };
}
