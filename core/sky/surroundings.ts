import { quickSaturationHumidityRatio_kg_per_kg } from "../matter/moistAir.ts";
import { DomainError, requireFinite } from "../quantity/errors.ts";
import { medianSky, type SkyClosures } from "./closures.ts";
import { uprightSun_W_per_m2 } from "./faces.ts";
import { ground_C, grounds, unmeasuredWater_C } from "./grounds.ts";
import { fullSun_W_per_m2, type PlaceRow, placeDefaults } from "./places.ts";
import { mixedRadiant_C, skyTemperature_C } from "./skyTemperature.ts";
import type { Stay, Surroundings, Weather, WeatherSample } from "./types.ts";
import { emptySample } from "./weatherGrid.ts";

/** One sample is enough: nothing here outlives a call. */
const sky: WeatherSample = emptySample();

/**
 * What reaches a box in a stay at a moment: air, moisture, wind, sun on lid and sides, what they radiate to, and the
 * ground. Colour, covers and wet cloths are the box's own and not in it.
 *
 * One share of shade cuts sun and sky alike, so at night shade makes the radiant temperature warmer. A stay's own
 * `air_C` stands for the place's rule and its sun-warming; null shade and ground are the place's.
 *
 * @param t_s within the weather; before `stay.from_s` the place has not begun to warm
 * @param closures one number for each judgement; the medians when left out
 * @returns `out`
 * @source engineering-judgement, mclaren-2005, liu-jordan-1960
 */
export function surroundingsAt(
  weather: Weather,
  stay: Stay,
  t_s: number,
  out: Surroundings,
  closures: Readonly<SkyClosures> = medianSky,
): Surroundings {
  weather.at(t_s, sky);
  const place = placeDefaults[stay.place];
  const groundKind = stay.ground ?? place.ground;
  const ground = grounds[groundKind];
  const shade = Math.min(1, Math.max(0, (stay.shade_frac ?? place.shade_frac) + closures.shadeShift_frac));
  const lit = (1 - shade) * place.sunPass_frac;
  const sunStrength = (sky.global_W_per_m2 / fullSun_W_per_m2) * (1 - shade) * closures.warming_frac;
  const dayMean_C = weather.dayMean_C(t_s);
  out.air_C = stay.air_C ?? placeAir_C(place, stay, t_s, sunStrength, dayMean_C);
  const dew_C = Math.min(sky.dewPoint_C, out.air_C, place.dryTo_C ?? Infinity);
  out.humidity_kg_per_kg = quickSaturationHumidityRatio_kg_per_kg(dew_C, sky.pressure_Pa);
  out.pressure_Pa = sky.pressure_Pa;
  out.wind_m_per_s = place.draught_m_per_s ?? closures.windAtBox_frac * sky.wind_m_per_s;
  out.ground_C = ground_C(groundKind, lit, out.air_C, dayMean_C, stay.water_C, sky, closures);
  out.groundResistance_m2K_per_W = ground.resistance_m2K_per_W.p50 * closures.groundResistance_frac;
  const albedo = Math.min(1, ground.albedo_frac * closures.albedo_frac);
  out.lidSun_W_per_m2 = lit * sky.global_W_per_m2;
  out.sideSun_W_per_m2 =
    lit * uprightSun_W_per_m2(sky.global_W_per_m2, sky.diffuse_W_per_m2, sky.sunHeight_deg, albedo);
  if (place.isOpen) {
    const sky_C = skyTemperature_C(out.air_C, sky.cloud_frac, closures.clearSkyDepression_K);
    out.lidRadiant_C = mixedRadiant_C(shade, out.air_C, sky_C);
    out.sideRadiant_C = mixedRadiant_C(0.5, out.lidRadiant_C, out.ground_C);
  } else {
    out.lidRadiant_C = out.air_C + place.skinWarming_K * sunStrength;
    out.sideRadiant_C = out.lidRadiant_C;
  }
  return out;
}

/**
 * Air in a place that follows the weather. A parked car: T = T_out + ΔT·(sun/full sun)·(1 − e^(−t/τ)), t since the stay
 * began: the car was as outdoors then.
 */
function placeAir_C(
  place: PlaceRow,
  stay: Stay,
  t_s: number,
  sunStrength: number,
  dayMean_C: number,
): number {
  if (place.air_C !== null) return place.air_C;
  let air_C = sky.air_C + place.dayMean_frac * (dayMean_C - sky.air_C);
  if (place.water_frac > 0) {
    air_C += place.water_frac * ((stay.water_C ?? unmeasuredWater_C(dayMean_C)) - air_C);
  }
  if (place.warming_K === 0) return air_C;
  const since_s = Math.max(0, t_s - stay.from_s);
  const settled = place.settle_s === 0 ? 1 : 1 - Math.exp(-since_s / place.settle_s);
  return air_C + place.warming_K * sunStrength * settled;
}

/**
 * Moments of a stay at which its surroundings jump or bend, both ends included, in order: sunrise, sunset, and the
 * midnights at which the day's mean changes. Between them they bend only at the ten-minute nodes of the weather,
 * slightly; hourly records bend at their rows.
 *
 * @throws DomainError on a stay that ends before it begins or holds a number out of range
 * @source derivation
 */
export function weatherBreaks_s(weather: Weather, stay: Stay): number[] {
  checkStay(stay);
  const { from_s, to_s } = stay;
  const { rise_s, set_s } = weather.sunTimes(from_s, to_s);
  const all = [from_s, ...rise_s, ...set_s, ...midnights(weather, from_s, to_s), to_s];
  return [...new Set(all)].sort((a, b) => a - b);
}

function checkStay(stay: Stay): void {
  const { from_s, to_s, shade_frac, air_C, water_C } = stay;
  if (!(from_s <= to_s)) throw new DomainError(`to_s must not be before from_s ${from_s}, got ${to_s}`);
  if (shade_frac !== null) requireFinite("shade_frac", shade_frac, 0, 1);
  if (air_C !== null) requireFinite("air_C", air_C, -60, 90);
  if (water_C !== null) requireFinite("water_C", water_C, -2, 45);
}

/** Where the day's mean changes, to the second: the weather's own days, whatever clock they follow. */
function midnights(weather: Weather, from_s: number, to_s: number): number[] {
  const found: number[] = [];
  for (let before = from_s; before < to_s; before += 3600) {
    const after = Math.min(to_s, before + 3600);
    const mean_C = weather.dayMean_C(before);
    if (weather.dayMean_C(after) === mean_C) continue;
    let low = before;
    let high = after;
    while (high - low > 0.5) {
      const middle = (low + high) / 2;
      if (weather.dayMean_C(middle) === mean_C) low = middle;
      else high = middle;
    }
    found.push(Math.round(high));
  }
  return found;
}
