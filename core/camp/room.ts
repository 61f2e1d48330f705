import type { Around } from "../cooler/types.ts";
import type { InputPrior } from "../ensemble/priors.ts";
import { humidityRatio_kg_per_kg } from "../matter/moistAir.ts";
import { grounds } from "../sky/grounds.ts";

const seaLevel_Pa = 101_325;

/**
 * How far the mean temperature of a room is off what was read beside the box, anew for every run.
 *
 * @source engineering-judgement
 */
export const roomError_K: InputPrior = {
  p10: -1,
  p50: 0,
  p90: 1,
  scale: "linear",
  source: "engineering-judgement",
};

/**
 * A room without sun or wind, its walls and floor as warm as its air.
 *
 * @param room_C air beside the box at a moment since the lid was shut, s
 */
export function roomAround(room_C: (t_s: number) => number, humidity_frac: number): Around {
  return {
    stays: [],
    breaks_s: [],
    at: (t_s, out) => {
      const air_C = room_C(t_s);
      return Object.assign(out, {
        air_C,
        humidity_kg_per_kg: humidityRatio_kg_per_kg(air_C, humidity_frac, seaLevel_Pa),
        pressure_Pa: seaLevel_Pa,
        wind_m_per_s: 0,
        lidSun_W_per_m2: 0,
        sideSun_W_per_m2: 0,
        lidRadiant_C: air_C,
        sideRadiant_C: air_C,
        ground_C: air_C,
        groundResistance_m2K_per_W: grounds.boards.resistance_m2K_per_W.p50,
      });
    },
  };
}
