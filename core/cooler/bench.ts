import type { Box } from "./box.ts";
import type { Touching } from "./geometry.ts";
import { type LidHeat, type LidState, makeLidHeat } from "./lidOpen.ts";
import { makeOutside, type Outside } from "./outside.ts";
import { cellCount, chainCount } from "./walls.ts";

/** State or rate vectors of one box, as the stepper moves them. */
export interface Vector {
  wall: Float64Array;
  skin: Float64Array;
  core: Float64Array;
  pool: number;
  /** Temperatures along the spine: no state, they follow from the rest; carried along to foresee them. */
  spine_C: Float64Array;
}

export const makeVector = (parts: number, spine: number): Vector => ({
  wall: new Float64Array(chainCount * cellCount),
  skin: new Float64Array(parts),
  core: new Float64Array(parts),
  pool: 0,
  spine_C: new Float64Array(spine),
});

/** Heat flows across the border of the box at one stage, W; positive is into the box. */
export interface Flows {
  lid_W: number;
  sides_W: number;
  base_W: number;
  seal_W: number;
  openingAir_W: number;
  openingExposure_W: number;
  sun_W: number;
  gas_W: number;
  water_kg_per_s: number;
  clothLoss_kg_per_s: number;
}

export const makeFlows = (): Flows => ({
  lid_W: 0,
  sides_W: 0,
  base_W: 0,
  seal_W: 0,
  openingAir_W: 0,
  openingExposure_W: 0,
  sun_W: 0,
  gas_W: 0,
  water_kg_per_s: 0,
  clothLoss_kg_per_s: 0,
});

/**
 * Skins or cores made linear about a guess: T = at + slope·δ with δ = give·(rest + what the neighbours drive), δ the
 * move of the enthalpy. It holds on a melting plateau too, where the slope is 0.
 */
export interface Line {
  at_C: Float64Array;
  slope_K_per_J: Float64Array;
  give_s: Float64Array;
  rest_W: Float64Array;
}

const makeLine = (parts: number): Line => ({
  at_C: new Float64Array(parts),
  slope_K_per_J: new Float64Array(parts),
  give_s: new Float64Array(parts),
  rest_W: new Float64Array(parts),
});

/** Everything that solving stages of one box needs, allocated once per layout. */
export interface Bench {
  touching: Touching;
  outside: Outside;
  lid: LidState;
  lidHeat: LidHeat;
  spine_C: Float64Array;
  matrix: Float64Array;
  right: Float64Array;
  work: Float64Array;
  workRight: Float64Array;
  /** Elimination of the wall chains. */
  pivot: Float64Array;
  rhs: Float64Array;
  /** Segment of the enthalpy curve of each skin, core and of the pool. */
  skinSegment: Int32Array;
  coreSegment: Int32Array;
  poolSegment: number;
  poolSlope_K_per_J: number;
  poolAt_C: number;
  /** Conductivity of each chain's wall at its mean temperature / at 10 °C. */
  warm: Float64Array;
  /** Temperatures that coefficients are reckoned at. */
  seenWall_C: Float64Array;
  seenSpine_C: Float64Array;
  skin_C: Float64Array;
  core_C: Float64Array;
  skinLine: Line;
  coreLine: Line;
}

export function makeBench(box: Box, touching: Touching): Bench {
  const parts = box.parts.length;
  const n = touching.n;
  return {
    touching,
    outside: makeOutside(),
    lid: { open_frac: 0, exchange_m3_per_s: 0 },
    lidHeat: makeLidHeat(),
    spine_C: new Float64Array(n),
    matrix: new Float64Array(n * n),
    right: new Float64Array(n),
    work: new Float64Array(n * n),
    workRight: new Float64Array(n),
    pivot: new Float64Array(chainCount * cellCount),
    rhs: new Float64Array(chainCount * cellCount),
    skinSegment: new Int32Array(parts),
    coreSegment: new Int32Array(parts),
    poolSegment: 16,
    poolSlope_K_per_J: 0,
    poolAt_C: 0,
    warm: new Float64Array(chainCount),
    seenWall_C: new Float64Array(chainCount * cellCount),
    seenSpine_C: new Float64Array(n),
    skin_C: new Float64Array(parts),
    core_C: new Float64Array(parts),
    skinLine: makeLine(parts),
    coreLine: makeLine(parts),
  };
}
