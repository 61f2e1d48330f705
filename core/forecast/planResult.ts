import type { Band, BandSeries } from "./result.ts";

/*
 * What `plan` adds to a result. Moments are local ISO without offset, as the trip has them. Every list that stays empty
 * has a reason in the result's warnings.
 */

export interface IcePiece {
  form: string;
  pieces: number;
  each_kg: number;
  cooler: string;
  where: string;
  by: string;
  price: number | null;
  weight_kg: number;
}

/** Where one item goes. */
export interface Assignment {
  item: string;
  /** A cooler's name, or "dry box". */
  cooler: string;
  why: string;
  /** The file says so, and the plan was found around it. */
  pinned: boolean;
}

/** The best assignment that was not taken, and what it would cost against the one that was. */
export interface OtherAssignment {
  says: string;
  foodGain_h: Band | null;
  iceGain_h: Band | null;
}

export interface ItemState {
  item: string;
  state: "frozen" | "chilled" | "ambient" | "dry";
  why: string;
  pinned: boolean;
}

/** Something with a place in a cooler; lengths from the left, front, lower corner of the inside. */
export interface PackPlace {
  /** "chili, bag 2 of 3", "10-lb block". */
  what: string;
  /** Name of the food, or form of the ice. */
  item: string;
  kind: "ice" | "pack" | "frozen" | "raw" | "ready" | "produce" | "drink" | "loose ice";
  /** Part of the item that lies here; over a cooler's places the parts of an item add up to 1. */
  share_frac: number;
  x_m: number;
  y_m: number;
  /** Height of its underside. */
  z_m: number;
  length_m: number;
  width_m: number;
  height_m: number;
}

/** One layer of a cooler, 0 at the base. */
export interface PackLayer {
  cooler: string;
  layer: number;
  items: string[];
  from_m: number;
  thick_m: number;
  places: PackPlace[];
  /** What to mind here: "raw: lowest, in a tray", "keep off the block". */
  notes: string[];
}

/** One act of the countdown. */
export interface PrepAct {
  at: string;
  does: string;
  why: string;
  /** Stable over replanning as long as the act is the same. */
  id: string;
  /** How long it takes by itself (freezing, chilling), hours; null where it takes no waiting. */
  lasts_h: Band | null;
}

export interface IceRun {
  at: string;
  leaveBy: string;
  where: string;
  form: string;
  pieces: number;
  each_kg: number;
  into: string;
  price: number | null;
  /** What to do when there is none, with what it costs in hours. */
  fallback: string;
  why: string;
}

export interface Merge {
  at: string;
  from: string;
  into: string;
  gain_h: Band;
  /** Gain of food within its limit; null where no food passes it either way. */
  foodGain_h: Band | null;
  fits_frac: number;
  why: string;
  course: MergeCourse;
}

/**
 * Ice left in the two coolers of a merge together, the trip without it and with it; the same members in both. One value
 * in every band where there are no members.
 */
export interface MergeCourse {
  t_h: number[];
  apart_kg: BandSeries;
  joined_kg: BandSeries;
  /** Each of the two, left apart: likely. */
  from_kg: number[];
  into_kg: number[];
}

/** One opening of a cooler for a meal. */
export interface PullCard {
  at: string;
  day: number;
  meal: string;
  take: { item: string; amount: string; cooler: string; from: string }[];
  /** To move so that it is thawed in time. */
  thaw: { item: string; from: string; to: string; for: string; takes_h: Band | null }[];
  back: string[];
}

/** What a loaded cooler means for the backs that lift it. */
export interface LiftAdvice {
  cooler: string;
  weight_kg: number;
  /** From the ground to a tailgate. */
  one: { limit_kg: number; index: number };
  two: { limit_kg: number; index: number };
  says: string;
}

/** Drinks that are cold at once, and what warm ones cost. */
export interface DrinkAdvice {
  cooler: string;
  drink: string;
  count: number;
  /** Ice that cooling one piece from outside takes. */
  eachIce_kg: number;
  /** How long one takes to be cold in there, hours. */
  cold_h: number;
  /** Of both, over the members; left out where there are none. */
  bands?: { eachIce_kg: Band; cold_h: Band };
  says: string;
}

/** A big warm load that may come: what to keep ready, how long it takes, and when to go home. */
export interface WarmLoadPlan {
  name: string;
  cooler: string;
  amount_kg: number;
  /** Put in at the latest moment the file names. */
  at: string;
  reserveIce_kg: number;
  /** The same as it is bought; `holds` false: it is what fits, and too little. */
  reserve: { pieces: number; each: string; form: string; holds: boolean };
  space_L: number;
  /** Hours until its centre is below the limit. */
  centreCold_h: Band;
  /** Hours from being put in until it passes the limit again. */
  keepsFor_h: Band;
  goHomeBy: string | null;
  layout: string[];
  says: string;
}

/** How much of one item was counted from heads and meals. */
export interface Amount {
  item: string;
  amount: string;
  heads: number;
  meals: number;
  says: string;
}

export interface AllergenRow {
  item: string;
  /** null: the file does not say, which counts as may contain. */
  contains: string[] | null;
  /** Allergies of the party that it meets, or may meet. */
  meets: string[];
}

/** What three ways out were tried where it does not fit or hold. */
export interface WayOut {
  says: string;
  holds: boolean;
}

/** The contract's `plan` part. */
export interface PlanResult {
  file: string | null;
  book: string | null;
  calendar: string | null;
  ice: IcePiece[];
  assign: Assignment[];
  otherwise: OtherAssignment[];
  states: ItemState[];
  layers: PackLayer[];
  prep: PrepAct[];
  iceRuns: IceRun[];
  merges: Merge[];
  pull: PullCard[];
  drinks: DrinkAdvice[];
  lifts: LiftAdvice[];
  warmLoad: WarmLoadPlan | null;
  amounts: Amount[];
  allergens: AllergenRow[];
  waysOut: WayOut[];
  /** Ice and food; null parts where a price is missing. */
  budget: { ice: number | null; food: number | null; unpriced: string[] };
  cost: number | null;
  weight_kg: number;
}
