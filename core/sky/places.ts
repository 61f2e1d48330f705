import type { GroundKind, PlaceKind } from "./types.ts";

/** Where a cooler may ride or stand: what the place does to air, sun, sky and wind, and what it takes for unsaid things. */
export interface PlaceRow {
  /** The rule in words, for the list of what was assumed. */
  says: string;
  /** Share of shade when none is given, and its plausible range. */
  shade_frac: number;
  shadeRange_frac: readonly [number, number];
  ground: GroundKind;
  /** Air held at this temperature; null: it follows the weather. */
  air_C: number | null;
  /** Faces look at the sky and the ground around; else at the inside of the place. */
  isOpen: boolean;
  /** Share of the sun that passes walls, glass or cloth. */
  sunPass_frac: number;
  /** Air above the outdoor air in full sun, once settled. */
  warming_K: number;
  /** Time constant of that warming after the stay begins; 0: settled from the start. */
  settle_s: number;
  /** Inside surfaces above the air in full sun. */
  skinWarming_K: number;
  /** Share of the day's mean in the air: thick walls smooth day and night. */
  dayMean_frac: number;
  /** Share of the water's temperature in the air: a hull in it. */
  water_frac: number;
  /** Moving air; null: the wind at the box. */
  draught_m_per_s: number | null;
  /** A cooling coil dries the air to this dew point; null: none. */
  dryTo_C: number | null;
  source: "engineering-judgement" | "common-practice" | "mclaren-2005";
}

/** Global irradiance at which a place warms by its full figure: clear, the sun about 57° up. @source engineering-judgement */
export const fullSun_W_per_m2: number = 850;

/** Rise and time constant of a parked car's air that fit the measured averages within 3 °F. @source mclaren-2005 */
const parkedCar: { readonly warming_K: number; readonly settle_s: number } = {
  warming_K: 23,
  settle_s: 18.6 * 60,
};

const open = {
  shade_frac: 0,
  shadeRange_frac: [0, 0.5],
  air_C: null,
  isOpen: true,
  sunPass_frac: 1,
  warming_K: 0,
  settle_s: 0,
  skinWarming_K: 0,
  dayMean_frac: 0,
  water_frac: 0,
  draught_m_per_s: null,
  dryTo_C: null,
  source: "engineering-judgement",
} as const;

const closed = { ...open, isOpen: false, sunPass_frac: 0, draught_m_per_s: 0.1 } as const;

/**
 * What each place means, and what it takes when the trip is silent on shade, ground and air.
 *
 * The parked car's air is measured (rise and time constant; that the rise follows the sun is judgement). Everything
 * else stands on judgement: of a trunk only the sign is known, cooler and smoother than the cabin.
 *
 * @source mclaren-2005, engineering-judgement, common-practice
 */
export const placeDefaults: Readonly<Record<PlaceKind, PlaceRow>> = {
  cabin: {
    ...closed,
    says: "a driven cabin with climate control: 22 °C, dried air, a tenth of the sun through the glass",
    ground: "carpet",
    air_C: 22,
    sunPass_frac: 0.1,
    draught_m_per_s: 0.3,
    dryTo_C: 12,
    source: "common-practice",
  },
  "closed car": {
    ...closed,
    ...parkedCar,
    says: "a parked car, windows shut: up to 23 K above the outdoor air in full sun, most of it in half an hour; as outdoors at night",
    ground: "carpet",
    sunPass_frac: 0.1,
    skinWarming_K: 5,
    source: "mclaren-2005",
  },
  trunk: {
    ...closed,
    says: "a trunk: warms more slowly and less than the cabin, and smooths day and night",
    ground: "carpet",
    warming_K: 10,
    settle_s: 45 * 60,
    skinWarming_K: 4,
    dayMean_frac: 0.4,
    draught_m_per_s: 0,
  },
  "truck bed": {
    ...open,
    says: "an open bed: in the sun and the wind, on sun-warmed metal",
    ground: "boards",
  },
  roof: { ...open, says: "a roof rack: in the sun and the wind, on sun-warmed metal", ground: "boards" },
  raft: { ...open, says: "a raft: open to the sun, its floor at the water's temperature", ground: "water" },
  boat: {
    ...closed,
    says: "a bilge below deck: no sun, air halfway between outdoors and the water, hull at the water's temperature",
    ground: "water",
    water_frac: 0.5,
    draught_m_per_s: 0,
  },
  tent: {
    ...closed,
    says: "a tent: in full sun 10 K above the outdoor air, cloth hotter still, a third of the sun through it",
    ground: "soil",
    sunPass_frac: 0.33,
    warming_K: 10,
    skinWarming_K: 8,
  },
  indoors: {
    ...closed,
    says: "a room at 21 °C without sun",
    ground: "boards",
    air_C: 21,
    source: "common-practice",
  },
  camp: {
    ...open,
    says: "a camp: in the open, half of sky and sun taken by trees or a tarp",
    ground: "soil",
    shade_frac: 0.5,
    shadeRange_frac: [0, 0.9],
  },
};
