/** A stretch of members of one trip, or of one variant of it, to be run by whoever has time. Plain data: it can be sent to a worker. */
export interface MemberTask {
  /** Which of the trips that the runner was given. */
  trip: number;
  /** Key of a variant (`core/whatif/variants.ts`); null: the trip as written. */
  variant: string | null;
  /** First member, and the one after the last. */
  from: number;
  to: number;
  seed: number;
  /** Also keep every series hour by hour, for bands; else only the numbers of `Draws`. */
  series: boolean;
  /**
   * Members that are not drawn from the priors: the standard scores of every input (`worldAt`), one member after the other
   * from `from` on; left out: drawn.
   */
  scores?: Float64Array;
  /**
   * Coolers whose numbers are wanted; those that a merge joins to them are run as well, all others have no number. Left out:
   * every one. What is kept of a cooler does not depend on which others are run, but for the step tolerance where a merge of two
   * makes all of them halt.
   */
  only?: readonly number[];
}

/** Numbers of one cooler by member, in the order of the members; NaN: not before the return, or there is none. */
export interface CoolerDraws {
  /** Last solid ice gone; 0 without ice. */
  iceOut_h: Float64Array;
  /** The same carried on past the return at the last day's rate, so that members can be ranked. */
  iceCarriedOn_h: Float64Array;
  /** First perishable over its limit while it lay here. */
  overLimit_h: Float64Array;
  /** Ice and packs still frozen at the return. */
  iceLeft_kg: Float64Array;
  /** Warmest that a perishable packed here ever is. */
  warmest_C: Float64Array;
}

/** Numbers of one item by member; NaN: never. */
export interface FoodDraws {
  belowLimit_h: Float64Array;
  overLimit_h: Float64Array;
  warm_h: Float64Array;
  hotAir_h: Float64Array;
  over10C_h: Float64Array;
  coreMax_C: Float64Array;
  coreMin_C: Float64Array;
  thawed_h: Float64Array;
  wet_h: Float64Array;
}

/** A series of every member, hour by hour, each value as the bin it falls in: two bytes, fine enough for a band. */
export interface SeriesBins {
  nBins: number;
  nMoments: number;
  /** Lower end of the first bin and width of one. */
  from: number;
  width: number;
  /** By member, then by moment of the grid; see `seriesBins.ts`. */
  bins: Uint16Array;
}

export interface CoolerSeriesBins {
  air_C: SeriesBins;
  ice_kg: SeriesBins;
  dryIce_kg: SeriesBins;
  water_L: SeriesBins;
  warmestPerishable_C: SeriesBins;
}

/** What is kept of a stretch of members. Coolers in the trip's order; food in the trip's order, the dry box left out. */
export interface Draws {
  from: number;
  to: number;
  coolers: CoolerDraws[];
  food: FoodDraws[];
  series: CoolerSeriesBins[] | null;
}

export interface RunHooks {
  /** Share done so far, 0…1. */
  onProgress?: (done_frac: number) => void;
  signal?: { readonly aborted: boolean };
}

/**
 * Runs tasks wherever there is time (this thread, workers) and answers in the order of the tasks, whatever the number of
 * workers. Rejects with `Cancelled` when the signal was given.
 */
export type RunTasks = (tasks: readonly MemberTask[], hooks?: RunHooks) => Promise<readonly Draws[]>;

/** The run was called off. Nothing is wrong. */
export class Cancelled extends Error {
  override readonly name: string = "Cancelled";
}
