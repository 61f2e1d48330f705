import { evaporation_kg_per_m2s } from "../heat/films.ts";
import { radiationFilm_W_per_m2K } from "../heat/radiation.ts";
import { quickSaturationHumidityRatio_kg_per_kg } from "../matter/moistAir.ts";
import type { Surroundings } from "../sky/types.ts";
import type { Box } from "./box.ts";
import type { Outside } from "./outside.ts";

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
export function lidState(box: Box, t_s: number, headspace_m3: number, out: LidState): void {
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
  const span = habit.spans_s.find(([from_s, to_s]) => t_s >= from_s && t_s < to_s);
  if (span === undefined) return;
  const rate_per_s = habit.perDay / (span[1] - span[0]);
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
  /** Top-layer temperature about which the vapour terms are linear. */
  about_C: number;
  /** Vapour at `about_C`, W, and how much less it is for each kelvin that the top layer is warmer, by account. */
  sealVapour_W: number;
  airVapour_W: number;
  exposureVapour_W: number;
  sealVapour_W_per_K: number;
  airVapour_W_per_K: number;
  exposureVapour_W_per_K: number;
  exposureSun_W: number;
  /** Condensed water for each watt of vapour heat. */
  latent_J_per_kg: number;
}

export const makeLidHeat = (): LidHeat => ({
  seal_W_per_K: 0,
  air_W_per_K: 0,
  exposure_W_per_K: 0,
  radiation_W_per_K: 0,
  about_C: 0,
  sealVapour_W: 0,
  airVapour_W: 0,
  exposureVapour_W: 0,
  sealVapour_W_per_K: 0,
  airVapour_W_per_K: 0,
  exposureVapour_W_per_K: 0,
  exposureSun_W: 0,
  latent_J_per_kg: vapourAt0_J_per_kg,
});

/** Step for the slope of the saturation curve. */
const slopeStep_K = 0.05;

/** Dry air in a cubic metre of outside air: a volume that spills out is made up from there. */
const dryAir_kg_per_m3 = ({ air_C, humidity_kg_per_kg, pressure_Pa }: Surroundings): number =>
  pressure_Pa / (287.055 * (air_C + 273.15) * (1 + 1.6078 * humidity_kg_per_kg));

/** Flows of dry air past the lid that carry vapour, kg/s: by the joint, by exchange, and the film of the open top. */
interface DryAir {
  leak_kg_per_s: number;
  exchange_kg_per_s: number;
  film_kg_per_s: number;
}

/** Vapour inside is saturated at the top layer; without water in the box it can only settle, not leave. */
function setVapour(box: Box, outside: Outside, air: DryAir, top_C: number, out: LidHeat): void {
  const { humidity_kg_per_kg, pressure_Pa } = outside.around;
  const saturated = quickSaturationHumidityRatio_kg_per_kg(top_C, pressure_Pa);
  const rise =
    (quickSaturationHumidityRatio_kg_per_kg(top_C + slopeStep_K, pressure_Pa) - saturated) / slopeStep_K;
  const excess = humidity_kg_per_kg - saturated;
  const share = excess > 0 ? 1 : Math.min(1, box.pool_kg / enoughWater_kg);
  const latent = vapourAt0_J_per_kg + vapourHeat_J_per_kgK * top_C;
  const heat = share * excess * latent;
  const slope = share * rise * latent;
  out.about_C = top_C;
  out.latent_J_per_kg = latent;
  out.sealVapour_W = air.leak_kg_per_s * heat;
  out.airVapour_W = air.exchange_kg_per_s * heat;
  out.exposureVapour_W = air.film_kg_per_s * heat;
  out.sealVapour_W_per_K = air.leak_kg_per_s * slope;
  out.airVapour_W_per_K = air.exchange_kg_per_s * slope;
  out.exposureVapour_W_per_K = air.film_kg_per_s * slope;
}

/** Water below which a box has less and less to evaporate. */
const enoughWater_kg = 0.05;
const contentsEmittance_frac = 0.9;

/**
 * Sensible and latent heat of leak and openings, made linear about the top layer's temperature so that they damp
 * themselves within a step. Moist air counts from liquid water at 0 °C, so that what condenses needs no further term.
 *
 * @source engineering-judgement
 */
export function setLidHeat(box: Box, outside: Outside, lid: LidState, top_C: number, out: LidHeat): void {
  const { around } = outside;
  const { closures, walls } = box;
  const density = dryAir_kg_per_m3(around);
  const humidHeat = airHeat_J_per_kgK + vapourHeat_J_per_kgK * around.humidity_kg_per_kg;
  const leak_kg_per_s = (density * walls.inside_m3 * box.input.body.leak_per_h) / 3600;
  const exchange_kg_per_s = density * lid.exchange_m3_per_s;
  const open_m2 = lid.open_frac * walls.floor_m2;
  const film_kg_per_s = open_m2 * evaporation_kg_per_m2s(closures.openFilm_W_per_m2K, 1, 0);
  setVapour(box, outside, { leak_kg_per_s, exchange_kg_per_s, film_kg_per_s }, top_C, out);
  out.seal_W_per_K = walls.seal_W_per_K + leak_kg_per_s * humidHeat;
  out.air_W_per_K = exchange_kg_per_s * humidHeat;
  out.exposure_W_per_K = open_m2 * closures.openFilm_W_per_m2K;
  out.radiation_W_per_K =
    open_m2 * radiationFilm_W_per_m2K(contentsEmittance_frac, top_C, around.lidRadiant_C);
  out.exposureSun_W =
    open_m2 * closures.contentsAbsorptance_frac * closures.openSun_frac * around.lidSun_W_per_m2;
}
