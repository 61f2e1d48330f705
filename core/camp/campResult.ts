import type { Band, Result } from "../forecast/result.ts";
import type { Verdict } from "../safety/verdict.ts";
import type { Gain } from "../whatif/types.ts";
import type { SaidEntry } from "./logFile.ts";

/** One look of the log, and what it did to the end of the ice of its cooler. */
export interface LookResult {
  id: string;
  at_h: number;
  cooler: string;
  /** As logged: "1/2", "38 F", "2.7 L". */
  saw: string;
  of: "ice" | "air" | "water";
  before_h: Band;
  after_h: Band;
  /** Chance that it was of the wrong cooler, hour or tap. */
  wrong_frac: number;
}

/** What the log taught of one cooler. */
export interface LearnedResult {
  cooler: string;
  nLooks: number;
  /** End of the ice as it would be told of the same trip without any look, and with all of them. */
  iceOutBefore_h: Band;
  iceOut_h: Band;
  conductanceBefore_W_per_K: Band;
  conductance_W_per_K: Band;
  /** Members of equal weight that the bands rest on. */
  members: number;
}

/** Something to do now, tried on members that fit the log. */
export interface ActResult {
  key: string;
  does: string;
  gain: Gain;
  /** Entries that a log gets once it was done, without id, moment and who; empty: it is not done at once. */
  logs: SaidEntry[];
}

export interface EatNext {
  name: string;
  cooler: string;
  /** When it passes its limit; null inside: not before it is eaten. */
  overLimit_h: Band;
  eaten_h: number | null;
  verdict: Verdict;
}

/** What `coldstow camp` adds to a forecast. */
export interface CampResult {
  now_h: number;
  /** Entries that stand, and those that were withdrawn. */
  nEntries: number;
  nWithdrawn: number;
  looks: LookResult[];
  learned: LearnedResult[];
  /** The act that gains most; null: none is needed, or none gains anything that can be told. */
  now: ActResult | null;
  /** Whether food or ice that food needs would fail if nothing was done, at the trip's confidence; null: nothing was tried. */
  needed: boolean | null;
  others: ActResult[];
  /** Perishables still aboard, the one that passes its limit first leading. */
  eatOrder: EatNext[];
  /** Coolers that were swamped or lost: what is told of their ice holds no more. */
  unreckoned: string[];
}

/** The result of `coldstow camp`: a forecast, and what the log adds. */
export type CampJson = Omit<Result, "command"> & { command: "camp"; camp: CampResult };
