import { evaporation_kg_per_m2s, outsideFilm_W_per_m2K } from "../heat/films.ts";
import { radiationFilm_W_per_m2K } from "../heat/radiation.ts";
import {
  quickSaturationHumidityRatio_kg_per_kg,
  quickVaporisationHeat_J_per_kg,
} from "../matter/moistAir.ts";
import { emittances, solarAbsorptances } from "../matter/shells.ts";
import type { Surroundings } from "../sky/types.ts";
import type { Box } from "./box.ts";
import type { Cover } from "./types.ts";
import { bandCount, baseChain, cellCount, chainCount, lidChain } from "./walls.ts";

/** What a cover does to the faces it hangs over; null keeps the body's own value. */
export interface CoverFacts {
  absorptance_frac: number | null;
  emittance_frac: number | null;
  resistance_m2K_per_W: number;
  /** Share of the sides it hangs over, from the top. The lid is always covered. */
  sides_frac: number;
  wet: boolean;
  source: string;
}

/**
 * Covers. A reflective sheet is foil with a little still air under it; a blanket is light and thick; a cloth hangs
 * half-way down and is about as dark as a medium colour when wet. A cloth inside covers nothing outside.
 *
 * @source engineering-judgement
 */
export const covers: Readonly<Record<Cover, CoverFacts>> = {
  none: {
    absorptance_frac: null,
    emittance_frac: null,
    resistance_m2K_per_W: 0,
    sides_frac: 0,
    wet: false,
    source: "derivation",
  },
  "wet cloth": {
    absorptance_frac: 0.6,
    emittance_frac: 0.95,
    resistance_m2K_per_W: 0.01,
    sides_frac: 0.5,
    wet: true,
    source: "engineering-judgement",
  },
  reflective: {
    absorptance_frac: solarAbsorptances.foil.p50,
    emittance_frac: emittances.foil.p50,
    resistance_m2K_per_W: 0.05,
    sides_frac: 1,
    wet: false,
    source: "engineering-judgement",
  },
  blanket: {
    absorptance_frac: solarAbsorptances.light.p50,
    emittance_frac: 0.9,
    resistance_m2K_per_W: 0.08,
    sides_frac: 1,
    wet: false,
    source: "engineering-judgement",
  },
  "wet cloth inside": {
    absorptance_frac: null,
    emittance_frac: null,
    resistance_m2K_per_W: 0,
    sides_frac: 0,
    wet: false,
    source: "derivation",
  },
};

/** The outside of one box at one moment, as a conductance and an equivalent temperature for each wall chain. */
export interface Outside {
  face_W_per_K: Float64Array;
  equivalent_C: Float64Array;
  /** How much of the equivalent temperature the sun makes. */
  sunRise_K: Float64Array;
  clothLoss_kg_per_s: number;
  around: Surroundings;
}

export function makeOutside(): Outside {
  return {
    face_W_per_K: new Float64Array(chainCount),
    equivalent_C: new Float64Array(chainCount),
    sunRise_K: new Float64Array(chainCount),
    clothLoss_kg_per_s: 0,
    around: {
      air_C: 0,
      humidity_kg_per_kg: 0,
      pressure_Pa: 101_325,
      wind_m_per_s: 0,
      lidSun_W_per_m2: 0,
      sideSun_W_per_m2: 0,
      lidRadiant_C: 0,
      sideRadiant_C: 0,
      ground_C: 0,
      groundResistance_m2K_per_W: 1,
    },
  };
}

interface Face {
  u_W_per_m2K: number;
  equivalent_C: number;
  sunRise_K: number;
  evaporation_kg_per_m2s: number;
}

const cloth_C = 0.05;

/** One face: convection, radiation by the secant at the last shell temperature, sun, evaporation made linear there. */
function setFace(
  box: Box,
  around: Surroundings,
  facts: CoverFacts,
  shell_C: number,
  lid: boolean,
  wetness_frac: number,
  face: Face,
): void {
  const { closures, input } = box;
  const film = outsideFilm_W_per_m2K(around.wind_m_per_s, closures.stillAir_W_per_m2K);
  const radiant_C = lid ? around.lidRadiant_C : around.sideRadiant_C;
  const emittance = facts.emittance_frac ?? closures.outsideEmittance_frac;
  const sun =
    (facts.absorptance_frac ?? input.body.absorptance_frac) *
    (lid ? around.lidSun_W_per_m2 : around.sideSun_W_per_m2);
  const r = facts.resistance_m2K_per_W;
  // A few passes find the temperature of the cover itself; without a cover it is the shell's.
  let surface = shell_C;
  for (let pass = 0; pass < (r > 0 ? 3 : 1); pass++) {
    const radiation = radiationFilm_W_per_m2K(emittance, surface, radiant_C);
    let total = film + radiation;
    let drive = film * around.air_C + radiation * radiant_C + sun;
    if (wetness_frac > 0) {
      const at = quickSaturationHumidityRatio_kg_per_kg(surface, around.pressure_Pa);
      const slope =
        (quickSaturationHumidityRatio_kg_per_kg(surface + cloth_C, around.pressure_Pa) - at) / cloth_C;
      const heat = quickVaporisationHeat_J_per_kg(surface) * wetness_frac;
      const latent = (film / 1006) * heat * slope;
      total += latent;
      drive += latent * surface - (film / 1006) * heat * (at - around.humidity_kg_per_kg);
      face.evaporation_kg_per_m2s =
        wetness_frac * evaporation_kg_per_m2s(film, at, around.humidity_kg_per_kg);
    } else face.evaporation_kg_per_m2s = 0;
    face.u_W_per_m2K = 1 / (1 / total + r);
    face.equivalent_C = drive / total;
    face.sunRise_K = sun / total;
    if (r > 0) surface = face.equivalent_C - ((face.equivalent_C - shell_C) * face.u_W_per_m2K) / total;
  }
}

const face: Face = { u_W_per_m2K: 0, equivalent_C: 0, sunRise_K: 0, evaporation_kg_per_m2s: 0 };

/**
 * Reckons what the outside does to each chain of the box at the moment `t_s`.
 *
 * @source engineering-judgement
 */
export function setOutside(box: Box, t_s: number, wall_C: Float64Array, out: Outside): void {
  const around = box.input.around.at(t_s, out.around);
  const { walls } = box;
  const facts = covers[box.cover];
  const full = clothFull_kg(box);
  const cloth_kg = Math.max(0, box.cloth_kg - (t_s - box.t_s) * box.clothLoss_kg_per_s);
  const wetness = full > 0 ? Math.min(1, cloth_kg / (fading_frac * full)) : 0;
  out.clothLoss_kg_per_s = 0;
  const put = (chain: number): void => {
    out.face_W_per_K[chain] = face.u_W_per_m2K * walls.outside_m2[chain];
    out.equivalent_C[chain] = face.equivalent_C;
    out.sunRise_K[chain] = face.sunRise_K;
    out.clothLoss_kg_per_s += face.evaporation_kg_per_m2s * walls.outside_m2[chain];
  };
  const shellOf = (chain: number): number => wall_C[chain * cellCount + cellCount - 1];
  setFace(box, around, facts, shellOf(lidChain), true, wetness, face);
  put(lidChain);
  const coveredFrom = Math.round(bandCount * (1 - facts.sides_frac));
  if (coveredFrom > 0) setFace(box, around, covers.none, shellOf(1 + (coveredFrom >> 1)), false, 0, face);
  for (let band = 0; band < coveredFrom; band++) put(1 + band);
  if (coveredFrom < bandCount)
    setFace(box, around, facts, shellOf(1 + ((coveredFrom + bandCount) >> 1)), false, wetness, face);
  for (let band = coveredFrom; band < bandCount; band++) put(1 + band);
  out.face_W_per_K[baseChain] = walls.outside_m2[baseChain] / around.groundResistance_m2K_per_W;
  out.equivalent_C[baseChain] = around.ground_C;
  out.sunRise_K[baseChain] = 0;
}

/** A cloth dries out over its last water, not all at once. */
const fading_frac = 0.15;

/** Water that the cover of this box holds when wet through; 0 for a cover that takes none. */
export function clothFull_kg(box: Box): number {
  const facts = covers[box.cover];
  if (!facts.wet) return 0;
  let area = box.walls.outside_m2[lidChain];
  for (let band = 0; band < bandCount; band++) area += facts.sides_frac * box.walls.outside_m2[1 + band];
  return area * box.closures.cloth_kg_per_m2;
}
