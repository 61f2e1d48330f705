import type { Closures } from "../cooler/closures.ts";
import type { SkyClosures } from "../sky/closures.ts";
import type { WeatherError } from "../sky/weatherError.ts";

/** How one cooler really is and is used, against what the trip file says of it. */
export interface CoolerWorld {
  closures: Readonly<Closures>;
  /** True conductance / measured one; only for a cooler that was measured. */
  measured_frac: number;
  seal_W_per_mK: number;
  leak_per_h: number;
  absorptance_frac: number;
  /** Body at packing, against what was said. */
  bodyShift_K: number;
  /** Times opened / said, and how long each time / said. */
  openings_frac: number;
  openFor_frac: number;
}

/** How one lot really is. */
export interface LotWorld {
  /** Real weight / stated. */
  mass_frac: number;
  start_C: number;
  /** Share of ice that is water already when it is put in. */
  liquid_frac: number;
  /** Enthalpy of food / what its composition says. */
  heat_frac: number;
}

/**
 * One way in which everything that nobody knows may stand: a draw from the priors. The middle case is no world: it takes
 * the medians of the closures, and what is stated as it is stated.
 */
export interface World {
  sky: Readonly<SkyClosures>;
  weather: WeatherError;
  coolers: readonly CoolerWorld[];
  /** By the id of the lot. */
  lots: ReadonlyMap<string, LotWorld>;
}
