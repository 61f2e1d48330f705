import { evaporation_kg_per_m2s } from "../heat/films.ts";
import { radiationFilm_W_per_m2K } from "../heat/radiation.ts";
import { quickSaturationHumidityRatio_kg_per_kg } from "../matter/moistAir.ts";
import type { Box } from "./box.ts";
import type { Outside } from "./outside.ts";

const day_s = 86_400;
const airHeat_J_per_kgK = 1006;
const vapourHeat_J_per_kgK = 1860;
const vapourAt0_J_per_kg = 2_501_000;

/** How the lid stands at one moment: the share of time it is open, and the air exchanged meanwhile. */
export interface LidState {
  open_frac: number;
  exchange_m3_per_s: number;
}

/**
 * Air that one opening exchanges: cold air is heavy and spills out over the rim, V·(1 − e^(−t/τ)).
 *
 * @source engineering-judgement
 */
export function spilled_m3(headspace_m3: number, open_s: number, spill_s: number): number {
  return headspace_m3 * (1 - Math.exp(-open_s / spill_s));
}

/** The lid by habit (a rate over the hours of the day, since the moments are unknown) or by an act. */
export function lidState(box: Box, t_s: number, clock0_s: number, headspace_m3: number, out: LidState): void {
  out.open_frac = 0;
  out.exchange_m3_per_s = 0;
  if (t_s < box.openUntil_s) {
    out.open_frac = 1;
    out.exchange_m3_per_s = box.openAir_m3_per_s;
    return;
  }
  const habit = box.input.openings;
  if (habit === null || habit.perDay <= 0) return;
  if (box.input.sealedUntil_s !== null && t_s < box.input.sealedUntil_s) return;
  const clock = (((clock0_s + t_s) % day_s) + day_s) % day_s;
  if (clock < habit.from_s || clock >= habit.to_s) return;
  const rate_per_s = habit.perDay / (habit.to_s - habit.from_s);
  out.open_frac = Math.min(1, rate_per_s * habit.each_s);
  out.exchange_m3_per_s = rate_per_s * spilled_m3(headspace_m3, habit.each_s, box.closures.spill_s);
}

/** Heat and water that come in past the lid, linear in the temperatures of the headspace and of the top layer. */
export interface LidHeat {
  /** Joint and leak, to the headspace; driven by the outside air. */
  seal_W_per_K: number;
  /** Exchanged air and exposure, to the top layer; driven by the outside air and by the surroundings' radiation. */
  air_W_per_K: number;
  exposure_W_per_K: number;
  radiation_W_per_K: number;
  /** Vapour and sun, W, by account. */
  sealVapour_W: number;
  airVapour_W: number;
  exposureVapour_W: number;
  exposureSun_W: number;
  water_kg_per_s: number;
}

export const makeLidHeat = (): LidHeat => ({
  seal_W_per_K: 0,
  air_W_per_K: 0,
  exposure_W_per_K: 0,
  radiation_W_per_K: 0,
  sealVapour_W: 0,
  airVapour_W: 0,
  exposureVapour_W: 0,
  exposureSun_W: 0,
  water_kg_per_s: 0,
});

/**
 * Sensible and latent heat of leak and openings. Air inside is saturated at the top layer's temperature while there is
 * water in the box; in a dry box it can only lose water to cold surfaces. Moist air counts from liquid water at
 * 0 °C, so that what condenses needs no further term.
 *
 * @source engineering-judgement
 */
export function setLidHeat(box: Box, outside: Outside, lid: LidState, top_C: number, out: LidHeat): void {
  const { around } = outside;
  const { closures, walls } = box;
  const density = around.pressure_Pa / (287.05 * (top_C + 273.15));
  const saturated = quickSaturationHumidityRatio_kg_per_kg(top_C, around.pressure_Pa);
  const excess = around.humidity_kg_per_kg - saturated;
  const supply = Math.min(1, box.pool_kg / 0.05);
  const drop = excess > 0 ? excess : excess * supply;
  const latent = vapourAt0_J_per_kg + vapourHeat_J_per_kgK * top_C;
  const humidHeat = airHeat_J_per_kgK + vapourHeat_J_per_kgK * around.humidity_kg_per_kg;
  const leak_kg_per_s = (density * walls.gas_m3 * box.input.body.leak_per_h) / 3600;
  const air_kg_per_s = density * lid.exchange_m3_per_s;
  const open_m2 = lid.open_frac * walls.floor_m2;
  const settling =
    -open_m2 *
    evaporation_kg_per_m2s(
      closures.openFilm_W_per_m2K,
      around.humidity_kg_per_kg - drop,
      around.humidity_kg_per_kg,
    );
  out.seal_W_per_K = walls.seal_W_per_K + leak_kg_per_s * humidHeat;
  out.sealVapour_W = leak_kg_per_s * drop * latent;
  out.air_W_per_K = air_kg_per_s * humidHeat;
  out.airVapour_W = air_kg_per_s * drop * latent;
  out.exposure_W_per_K = open_m2 * closures.openFilm_W_per_m2K;
  out.radiation_W_per_K = open_m2 * radiationFilm_W_per_m2K(0.9, top_C, around.lidRadiant_C);
  out.exposureVapour_W = settling * latent;
  out.exposureSun_W =
    open_m2 * closures.contentsAbsorptance_frac * closures.openSun_frac * around.lidSun_W_per_m2;
  out.water_kg_per_s = (leak_kg_per_s + air_kg_per_s) * drop + settling;
}
