import type { CoolerBody } from "./types.ts";

/** Plastic or cloth on each face of the insulation: common for moulded chests; a bag is thinner, so this errs to the large. */
const skin_m = 0.003;

/** A box as it stands: length and width lie flat. */
export interface BoxOutside {
  length_m: number;
  width_m: number;
  height_m: number;
}

/**
 * Outside of a shut body: inside, stated walls and the skins on both faces of each. Handles, latches, feet and a lid that
 * stands over are not in it.
 */
export function outerSize_m({ inside, lid, sides, base }: CoolerBody): BoxOutside {
  const around_m = 2 * (sides.thickness_m + 2 * skin_m);
  return {
    length_m: inside.length_m + around_m,
    width_m: inside.width_m + around_m,
    height_m: inside.height_m + lid.thickness_m + base.thickness_m + 4 * skin_m,
  };
}
