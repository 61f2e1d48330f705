/**
 * Every coefficient of the model that is a judgement and not a law, in one table, with its 10–90 % range.
 * A run takes one number of each; the middle case takes the medians.
 *
 * @source engineering-judgement
 */
export interface Closures {
  /** Insulation really there / stated. */
  thickness_frac: number;
  /** Foam conductivity / median of its kind. */
  foam_frac: number;
  /** Heat capacity of the whole empty body per kg of its weight. */
  body_J_per_kgK: number;
  /** Inside wall to the air between the lots, convection and radiation together. */
  wallLot_W_per_m2K: number;
  wallPool_W_per_m2K: number;
  lotPool_W_per_m2K: number;
  /** A dry lot to the air and the dry lots around it, over its whole surface. */
  contact_W_per_m2K: number;
  /** Cubes and crushed ice, and what lies among them: melting ice lies close and wet. */
  iceContact_W_per_m2K: number;
  headWall_W_per_m2K: number;
  /** Headspace air to the lid above it: stable, hardly moving. */
  headLid_W_per_m2K: number;
  headTop_W_per_m2K: number;
  /** Radiation between cold plastic, food and ice. */
  insideRadiation_W_per_m2K: number;
  /** Cold air sinking through the gaps from a colder layer to a warmer one below. */
  sinkingAir_W_per_m2K: number;
  stillAir_W_per_m2K: number;
  outsideEmittance_frac: number;
  /** Time in which the cold air of an open box spills out once. */
  spill_s: number;
  openFilm_W_per_m2K: number;
  /** Share of the sun on the lid that reaches the contents when the lid is open. */
  openSun_frac: number;
  contentsAbsorptance_frac: number;
  /** Share of the heat that meltwater could take up on its way down that it does take up. */
  percolation_frac: number;
  /** Share of the cold of sublimed gas that the load gets. */
  gasUsed_frac: number;
  /** Solid share of a bed of cubes, of crushed ice, of packed food. */
  cubePacking_frac: number;
  crushedPacking_frac: number;
  foodPacking_frac: number;
  /** Share of the floor that blocks, jugs and packs take up in their layer. */
  blockFloor_frac: number;
  cubeArea_m2_per_kg: number;
  crushedArea_m2_per_kg: number;
  /** Share of the gaps between food that cubes can fill. */
  gapFill_frac: number;
  /** Conductivity of a bed: cubes, packed food, block. */
  cubeBed_W_per_mK: number;
  foodBed_W_per_mK: number;
  blockBed_W_per_mK: number;
  /** Depth of water that a drained box keeps on its floor. */
  drainFilm_m: number;
  /** A foam sheet, and a wet cloth, on the top layer. */
  foamSheet_m2K_per_W: number;
  innerCloth_m2K_per_W: number;
  /** Water that a cloth holds when wet through. */
  cloth_kg_per_m2: number;
}

export type ClosureKey = keyof Closures;

/** One row of the table: median, 10 % and 90 %. */
export interface Prior {
  p50: number;
  p10: number;
  p90: number;
  source: "engineering-judgement" | "common-practice" | "sintef-2023";
}

const judged = (p50: number, p10: number, p90: number): Prior => ({
  p50,
  p10,
  p90,
  source: "engineering-judgement",
});

/**
 * The priors. Ice contact and lot to pool are set so that a can and a bottle cool in snow and in ice water in the times
 * that SINTEF measured (ranges by judgement); the rest has no published source. Replace a row when a published value is found; docs/model.md tells which rows move the answer.
 *
 * @source engineering-judgement, sintef-2023
 */
export const closurePriors: Readonly<Record<ClosureKey, Prior>> = {
  thickness_frac: judged(0.92, 0.8, 1),
  foam_frac: judged(1, 0.88, 1.15),
  body_J_per_kgK: judged(1900, 1700, 2100),
  wallLot_W_per_m2K: judged(5.5, 3, 12),
  wallPool_W_per_m2K: judged(120, 50, 300),
  lotPool_W_per_m2K: { p50: 140, p10: 60, p90: 250, source: "sintef-2023" },
  contact_W_per_m2K: judged(15, 7, 35),
  iceContact_W_per_m2K: { p50: 60, p10: 30, p90: 90, source: "sintef-2023" },
  headWall_W_per_m2K: judged(2.5, 1.5, 4),
  headLid_W_per_m2K: judged(0.8, 0.3, 2),
  headTop_W_per_m2K: judged(1.5, 0.7, 3),
  insideRadiation_W_per_m2K: judged(4.1, 3.4, 4.6),
  sinkingAir_W_per_m2K: judged(2.5, 1, 5),
  stillAir_W_per_m2K: judged(3, 2, 4.5),
  outsideEmittance_frac: judged(0.92, 0.88, 0.95),
  spill_s: judged(25, 10, 90),
  openFilm_W_per_m2K: judged(6, 4, 12),
  openSun_frac: judged(0.6, 0.3, 0.9),
  contentsAbsorptance_frac: judged(0.5, 0.3, 0.8),
  percolation_frac: judged(0.5, 0.1, 0.9),
  gasUsed_frac: judged(0.6, 0.2, 0.9),
  cubePacking_frac: judged(0.58, 0.52, 0.64),
  crushedPacking_frac: judged(0.62, 0.5, 0.7),
  foodPacking_frac: judged(0.62, 0.5, 0.75),
  blockFloor_frac: judged(0.8, 0.5, 0.95),
  cubeArea_m2_per_kg: judged(0.2, 0.14, 0.3),
  crushedArea_m2_per_kg: judged(0.5, 0.3, 0.9),
  gapFill_frac: judged(0.5, 0.3, 0.7),
  cubeBed_W_per_mK: judged(0.7, 0.4, 1),
  foodBed_W_per_mK: judged(0.35, 0.2, 0.5),
  blockBed_W_per_mK: judged(2.2, 2.1, 2.4),
  drainFilm_m: judged(0.002, 0.001, 0.005),
  foamSheet_m2K_per_W: judged(0.27, 0.15, 0.4),
  innerCloth_m2K_per_W: judged(0.05, 0.02, 0.08),
  cloth_kg_per_m2: { p50: 1, p10: 0.5, p90: 1.6, source: "common-practice" },
};

/** The middle case: every closure at its median. @source engineering-judgement */
export const medianClosures: Readonly<Closures> = Object.fromEntries(
  Object.entries(closurePriors).map(([key, prior]) => [key, prior.p50]),
) as unknown as Closures;
