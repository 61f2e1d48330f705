import type { Spread } from "../matter/spread.ts";
import type { Verdict } from "../safety/verdict.ts";
import type { PlanResult } from "./planResult.ts";

/** What `forecast --json` prints: the contract's §3 and §5. Units are in the names; hours count from departure. */
export interface Band {
  p10: number | null;
  p50: number | null;
  p90: number | null;
}

/** A band at every time of a series. */
export interface BandSeries {
  p10: number[];
  p50: number[];
  p90: number[];
}

export interface HeatBudget {
  lid: number;
  sides: number;
  base: number;
  seal: number;
  openingAir: number;
  openingExposure: number;
  /** Heat that food and drink gave up to the ice (negative where frozen food took it up). */
  warmItems: number;
  /** Heat that the cooler's own walls gave up. */
  body: number;
  /** Of which: the sun's share of lid, sides and opening exposure. */
  sun: number;
  /** Of which: taken away by cold gas from dry ice (negative). */
  dryIceGas: number;
}

/** Where the cold went between two hours of the trip, middle case. */
export interface ColdHours {
  from_h: number;
  to_h: number;
  coolers: { name: string; heat_kJ: HeatBudget }[];
}

/** What the other drain habit would do to this cooler on this trip: one more run, all else as written. */
export interface DrainSwitch {
  /** The habit tried instead. */
  to: "keep" | "open";
  iceGain_h: Band;
  /** Hours later that the first perishable passes its limit; null where none passes it in either run. */
  foodGain_h: Band | null;
}

/** One input's share of what is not known of the end of the ice, and what would make it less. */
export interface Doubt {
  /** "weight of the ice", "this cooler's walls and joint". */
  about: string;
  says: string;
  /** "weigh the bags". */
  advice: string;
  share_frac: number;
  /** How much narrower the range would be if this alone were known: 1 − √(1 − share). */
  narrows_frac: number;
}

/** What earlier trips taught of a cooler's conductance: before the first of them, and now. */
export interface HistoryResult {
  records: number;
  before_W_per_K: Spread;
  now_W_per_K: Spread;
  /** Trips that the others contradict. */
  odd: string[];
}

export interface CoolerResult {
  name: string;
  volume_L: number;
  conductance_W_per_K: number;
  body_kJ_per_K: number;
  packedWeight_kg: number;
  filled_frac: number;
  /** Volume of ice, frozen food counted, to the volume of the rest; null where there is no rest. */
  iceToLoad_ratio: number | null;
  /** Ice that would take up as much heat as the frozen food aboard at departure does until it is thawed, at 0 °C. */
  frozenFoodAsIce_kg: number;
  iceOut_h: Band;
  /** Stretches without ice before more was put in, middle case. */
  iceGaps_h: [number, number][];
  overLimit_h: Band;
  series: {
    t_h: number[];
    outside_C: number[];
    air_C: BandSeries;
    ice_kg: BandSeries;
    dryIce_kg: BandSeries;
    water_L: BandSeries;
    /** Height of the water above the inside of the base, middle case. */
    waterline_m: number[];
    warmestPerishable_C: { p10: (number | null)[]; p50: (number | null)[]; p90: (number | null)[] };
  };
  /** From departure until the ice is gone, or the return: what the cold was spent on while there was some. */
  heat_kJ: HeatBudget;
  heatUntil_h: number;
  /** What the eight accounts of `heat_kJ` add up to: the change of ice and water, and what left with drains and gas. */
  coldStore_kJ: number;
  /** null where it was not asked for. */
  drainSwitch: DrainSwitch | null;
  iceMelted_kg: number;
  drained_L: number;
  condensed_g: number;
  balance: { energy_rel: number; water_g: number };
  /** Only where earlier trips of this cooler are known. */
  history?: HistoryResult;
  /** Largest share first; only with members. */
  doubts?: Doubt[];
}

export interface FoodResult {
  name: string;
  cooler: string;
  perishable: boolean;
  /** null: it is still aboard at return. */
  eaten_h: number | null;
  coreMax_C: Band;
  coreMin_C: Band;
  belowLimit_h: Band;
  overLimit_h: Band;
  /** Share of the members in which it passes its limit before it is eaten; only with members. */
  overLimit_frac?: number;
  warm_h: Band;
  warmAllowed_h: number | null;
  thawed_h: Band;
  /** null: watertight, or never under water. */
  wet_h: Band | null;
  verdict: Verdict;
  rule: string;
  why: string;
}

export interface AssumedResult {
  path: string;
  value: string;
  why: string;
  /** How far ice-out moves across its plausible range, hours; null where it moves nothing that can be reckoned. */
  effect_h: number | null;
}

export interface Warning {
  code: string;
  says: string;
  path: string;
}

export interface Result {
  coldstow: 1;
  command: "forecast" | "plan";
  trip: { title: string; depart: string; return: string; hours: number };
  limit: { profile: string; limit_C: number };
  assumed: AssumedResult[];
  /** Most urgent first: the perishable that passes its limit first leads. */
  food: FoodResult[];
  coolers: CoolerResult[];
  warnings: Warning[];
  /** How many runs the bands come from; without, every band holds the middle case three times. */
  ensemble?: { members: number; seed: number; confidence_frac: number };
  /** Only where it was asked for. */
  coldHours?: ColdHours;
  plan?: PlanResult;
}
