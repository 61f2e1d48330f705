import { type Box, coreShare_frac, hasCore } from "../../core/cooler/box.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import { covers } from "../../core/cooler/outside.ts";
import { temperature_C } from "../../core/cooler/polyline.ts";
import type { Cover, FleetInput, Lot } from "../../core/cooler/types.ts";
import { outsideFilm_W_per_m2K } from "../../core/heat/films.ts";
import { radiationFilm_W_per_m2K } from "../../core/heat/radiation.ts";
import { dryIce_C } from "../../core/matter/dryIce.ts";
import {
  quickSaturationHumidityRatio_kg_per_kg,
  vaporisationHeat_J_per_kg,
} from "../../core/matter/moistAir.ts";
import { waterCurve } from "../../core/matter/water.ts";
import type { Surroundings } from "../../core/sky/types.ts";

/** Coldest and warmest that anything in these coolers can be. */
export interface Bounds {
  low_C: number;
  high_C: number;
}

/** Where a wet face in this air comes to rest: all its heat goes into vapour. By halving; sky and air as one. */
function wetBulb_C(around: Surroundings, air_C: number): number {
  let low = -60;
  let high = air_C;
  for (let n = 0; n < 50; n++) {
    const mid = 0.5 * (low + high);
    const gain =
      1006 * (air_C - mid) -
      vaporisationHeat_J_per_kg(mid) *
        (quickSaturationHumidityRatio_kg_per_kg(mid, around.pressure_Pa) - around.humidity_kg_per_kg);
    if (gain > 0) low = mid;
    else high = mid;
  }
  return low;
}

/** Hottest that the sun can make a face under this cover, or the contents under an open lid, were they insulated. */
function sunlit_C(fleet: Fleet, box: Box, cover: Cover, around: Surroundings): number {
  const { closures } = box;
  const film = outsideFilm_W_per_m2K(around.wind_m_per_s, closures.stillAir_W_per_m2K);
  const facts = covers[cover];
  const emittance = facts.emittance_frac ?? closures.outsideEmittance_frac;
  const absorptance = facts.absorptance_frac ?? fleet.input.coolers[box.index].body.absorptance_frac;
  const warmest = Math.max(around.air_C, around.lidRadiant_C, around.sideRadiant_C);
  const coldest = Math.min(around.air_C, around.lidRadiant_C);
  const sun = Math.max(around.lidSun_W_per_m2, around.sideSun_W_per_m2);
  const shell = film + radiationFilm_W_per_m2K(emittance, coldest, coldest);
  const open = closures.openFilm_W_per_m2K + radiationFilm_W_per_m2K(0.9, coldest, coldest);
  const contents = closures.contentsAbsorptance_frac * closures.openSun_frac;
  return warmest + Math.max((absorptance * sun) / shell, (contents * sun) / open);
}

const startOf = (lot: Lot): number => (lot.kind === "ice" && lot.form === "dry ice" ? dryIce_C : lot.start_C);

/** From what goes in and what the outside does; nothing else can drive a temperature. */
export function boundsOf(fleet: Fleet): Bounds {
  const { input } = fleet;
  let low_C = Number.POSITIVE_INFINITY;
  let high_C = Number.NEGATIVE_INFINITY;
  const take = (...t_C: number[]): void => {
    low_C = Math.min(low_C, ...t_C);
    high_C = Math.max(high_C, ...t_C);
  };
  for (const lot of lotsOf(input)) take(startOf(lot));
  const around = { ...fleet.steppers[0].bench.outside.around };
  fleet.boxes.forEach((box) => {
    const { start } = box.input;
    if (start.kind === "uniform") take(start.body_C);
    else take(0, start.room_C);
    for (let t_s = 0; t_s <= input.end_s; t_s += 1800) {
      box.input.around.at(t_s, around);
      const coldest = Math.min(around.air_C, around.lidRadiant_C, around.sideRadiant_C);
      take(coldest, around.ground_C, wetBulb_C(around, coldest));
      for (const cover of Object.keys(covers) as Cover[]) take(sunlit_C(fleet, box, cover, around));
    }
  });
  return { low_C, high_C };
}

const lotsOf = (input: FleetInput): Lot[] => [
  ...input.coolers.flatMap((cooler) => cooler.lots),
  ...input.acts.flatMap((act) => (act.do === "put in" ? [act.lot] : [])),
];

/** Every temperature in a box, each with the name of what has it. */
export function temperaturesIn(fleet: Fleet, box: Box): { what: string; t_C: number }[] {
  const out: { what: string; t_C: number }[] = [];
  box.wall_C.forEach((t_C, i) => {
    out.push({ what: `wall ${i}`, t_C });
  });
  fleet.steppers[box.index].bench.spine_C.forEach((t_C, i) => {
    out.push({ what: `air ${i}`, t_C });
  });
  box.parts.forEach((part, p) => {
    if (part.mass_kg <= 0) return;
    const two = hasCore(part);
    const skin = part.skin_J / (part.mass_kg * (two ? 1 - coreShare_frac : 1));
    out.push({ what: `${part.form} ${p}`, t_C: temperature_C(part.curve, skin) });
    if (two) {
      const core = part.core_J / (part.mass_kg * coreShare_frac);
      out.push({ what: `core ${p}`, t_C: temperature_C(part.curve, core) });
    }
  });
  out.push({ what: "pool", t_C: temperature_C(waterCurve, box.pool_J / Math.max(1e-3, box.pool_kg)) });
  return out;
}
