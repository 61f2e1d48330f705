import type { Box } from "./box.ts";
import { type Contents, makeContents, type Room } from "./contents.ts";
import { makeTouching, type Touching } from "./geometry.ts";
import { type LidHeat, type LidState, makeLidHeat } from "./lidOpen.ts";
import { makeOutside, type Outside } from "./outside.ts";
import { cellCount, chainCount } from "./walls.ts";

const wallCells = chainCount * cellCount;

/** State or rate vectors of one box, as the stepper moves them: one row of numbers, and names for its stretches. */
export interface Vector {
  /** Walls, skins, cores, spine. */
  all: Float64Array;
  wall: Float64Array;
  skin: Float64Array;
  core: Float64Array;
  /** Temperatures along the spine: no state, they follow from the rest; carried along to foresee them. */
  spine_C: Float64Array;
  pool: number;
}

export function makeVector(parts: number, spine: number, room: Room): Vector {
  const all = room(wallCells + 2 * parts + spine);
  const core = wallCells + parts;
  return {
    all,
    wall: all.subarray(0, wallCells),
    skin: all.subarray(wallCells, core),
    core: all.subarray(core, core + parts),
    spine_C: all.subarray(core + parts),
    pool: 0,
  };
}

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
  /** Segment of the enthalpy curve that it is linear on. */
  segment: Int32Array;
}

const makeLine = (parts: number, room: Room): Line => ({
  at_C: room(parts),
  slope_K_per_J: room(parts),
  give_s: room(parts),
  rest_W: room(parts),
  segment: new Int32Array(parts),
});

/** Everything that solving stages of one box needs, allocated once per layout. */
export interface Bench {
  contents: Contents;
  touching: Touching;
  outside: Outside;
  lid: LidState;
  lidHeat: LidHeat;
  spine_C: Float64Array;
  right: Float64Array;
  work: Float64Array;
  workRight: Float64Array;
  /** Elimination of the wall chains: 1 / pivot and right side of each cell. */
  give_K_per_W: Float64Array;
  rhs_W: Float64Array;
  /** What the core last folded gives its skin, the skin at 0 °C. */
  fromCore_W: number;
  poolSegment: number;
  poolSlope_K_per_J: number;
  poolAt_C: number;
  /** Conductivity of each chain's wall at its mean temperature / at 10 °C. */
  warm: Float64Array;
  /** Temperatures that coefficients are reckoned at; of a wall only liner and shell. */
  seenWall_C: Float64Array;
  seenSpine_C: Float64Array;
  skinLine: Line;
  coreLine: Line;
}

export function makeBench(box: Box, room: Room): Bench {
  const parts = box.parts.length;
  const touching = makeTouching(box, room);
  const n = touching.n;
  return {
    contents: makeContents(box, room),
    touching,
    outside: makeOutside(),
    lid: { open_frac: 0, exchange_m3_per_s: 0 },
    lidHeat: makeLidHeat(),
    spine_C: room(n),
    right: room(n),
    work: room(n * n),
    workRight: room(n),
    give_K_per_W: room(wallCells),
    rhs_W: room(wallCells),
    fromCore_W: 0,
    poolSegment: 16,
    poolSlope_K_per_J: 0,
    poolAt_C: 0,
    warm: room(chainCount),
    seenWall_C: room(wallCells),
    seenSpine_C: room(n),
    skinLine: makeLine(parts, room),
    coreLine: makeLine(parts, room),
  };
}
