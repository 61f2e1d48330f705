import type { Band } from "../forecast/result.ts";

interface WhatIf {
  coldstow: 1;
  trip: { title: string; depart: string; return: string; hours: number };
  limit: { profile: string; limit_C: number };
  members: number;
  seed: number;
}

/** What is gained by changing from one way to the other, over the same members; positive is gained. */
export interface Gain {
  /** Hours later that the first perishable of the trip passes its limit (the return where none does). */
  food_h: Band;
  /** Fewer hours that perishables spend over their limit, all of them together. */
  warm_h: Band;
  /**
   * Hours longer that ice lasts, in the cooler where it changes most, carried on past the return at the last day's rate.
   * Coolers that are emptied into another one on the way are not asked.
   */
  ice_h: Band;
  /** More ice and packs still frozen at the return, all coolers together. */
  ice_kg: Band;
}

/** One habit switched on this trip, all else as written. */
export interface HabitResult {
  key: string;
  /** What one does, e.g. "chill the cooler the night before". */
  says: string;
  /** Coolers it touches, by name. */
  coolers: string[];
  /** How the trip file has it, and what was tried instead. */
  now: string;
  instead: string;
  /** The way that common practice calls good is the one tried (true) or the one in the file (false). */
  insteadIsGood: boolean;
  /** From `now` to `instead`. */
  gain: Gain;
}

/** A habit that cannot be tried on this trip, with the reason. */
export interface HabitSkipped {
  key: string;
  says: string;
  why: string;
}

/** A thing people say, tried on this trip; nothing is preached: what they say stands beside what came out. */
export interface SayingResult {
  key: string;
  /** In our words. */
  saying: string;
  /** What was run against what. */
  tried: string;
  /** What the saying claims, as a number in words, and where it is from: a source key or `common-practice`. */
  claims: string;
  source: string;
  gain: Gain;
  /** What this trip says, as a ratio or difference in words that carry the band. */
  found: string;
  agrees: "yes" | "no" | "in part" | "cannot tell";
}

export interface HabitsResult extends WhatIf {
  command: "habits";
  /** By what the good way is worth, tried or given up: for the food first, then for the ice. */
  habits: HabitResult[];
  skipped: HabitSkipped[];
  sayings: SayingResult[];
  /**
   * Every habit bad and every habit good, and the trip as written: ice of the cooler with the most perishable food, and the
   * first perishable of the whole trip. Habits on which people disagree, or that change what is packed where, take no part.
   */
  all: {
    bad: { iceOut_h: Band; overLimit_h: Band };
    written: { iceOut_h: Band; overLimit_h: Band };
    good: { iceOut_h: Band; overLimit_h: Band };
    /** Ice life all good / all bad, carried on past the return. */
    iceRatio: Band;
    gain: Gain;
  };
}

export interface StressCase {
  key: "as written" | "hotter" | "opened twice" | "no shade" | "half the ice" | "started warm";
  says: string;
  /** Share of members in which a perishable passes its limit before it is eaten; all, where one lies in the dry box. */
  fails_frac: number;
  /** It holds when no more than 1 − confidence of the members fail. */
  holds: boolean;
  /** The item that fails most often, and its cooler; null where none ever fails. */
  first: { item: string; cooler: string; overLimit_h: Band } | null;
  overLimit_h: Band;
  coolers: { name: string; iceOut_h: Band }[];
}

export interface StressResult extends WhatIf {
  command: "stress";
  confidence_frac: number;
  cases: StressCase[];
  /** Only when every case holds. */
  robust: boolean;
}

export interface ComparedTrip {
  /** "A", "B", … */
  letter: string;
  title: string;
  file: string;
  /** Everything brought or added, water ice and packs, and dry ice. */
  ice_kg: number;
  dryIce_kg: number;
  /** null where a piece has no price. */
  cost: number | null;
  packedWeight_kg: number;
  coolers: { name: string; perishables: boolean; iceOut_h: Band; overLimit_h: Band }[];
  /** Names of perishables that pass their limit before they are eaten in more than 1 − confidence of the members. */
  atRisk: string[];
  fails_frac: number;
  /** Things somebody must do on the way: openings, drains, merges, moves, cloths, ice added. */
  fuss: { openings: number; acts: number };
}

export interface ComparePair {
  a: string;
  b: string;
  cooler: string;
  /** Hours longer that ice lasts in `b` than in `a`, carried on past the return at the last day's rate. */
  iceOutGain_h: Band;
}

export interface CompareResult extends Omit<WhatIf, "trip" | "limit"> {
  command: "compare";
  trips: ComparedTrip[];
  pairs: ComparePair[];
  /** Ice of every cooler against time, for the overlaid picture. */
  series: { letter: string; cooler: string; t_h: number[]; p10: number[]; p50: number[]; p90: number[] }[];
}
