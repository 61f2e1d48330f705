import type { EnthalpyCurve } from "../matter/curve.ts";
import { carbonDioxideHeatCapacity_J_per_kgK, dryIce_C } from "../matter/dryIce.ts";
import { waterCurve } from "../matter/water.ts";
import type { Bench, Flows, Line, Vector } from "./bench.ts";
import { type Box, coreShare_frac, hasCore } from "./box.ts";
import { setTouching } from "./geometry.ts";
import { lidState, setLidHeat } from "./lidOpen.ts";
import { setOutside } from "./outside.ts";
import { segmentOf, slopeOf } from "./polyline.ts";
import { baseChain, cellCount, chainCount, lidChain } from "./walls.ts";

/** Water's mass below which the pool still has a heat capacity, so that an empty pool has a temperature. */
const leastPool_kg = 1e-3;
const maxRounds = 40;
/** Agreement of the temperatures that the last round was linear about; far below anything that matters. */
const settled_K = 1e-8;

export interface StageAsk {
  /** Moment of the stage. */
  t_s: number;
  /** γ·Δt: the state is `base` + this × its rate. */
  weight_s: number;
  base: Vector;
  /** What the geometry is reckoned for, and where the search starts. */
  guess: Vector;
  /** The last solved state: coefficients follow the guess only a little way from it. */
  known: Vector;
  water_kg: number;
  sheet_m2K_per_W: number;
}

/** How far ahead of the last solved temperatures a coefficient may look, K. */
const ahead_K = 2;

/** Follows a guess, but only a little way: a light shell's rate just after a jump leads far astray. */
function near(known: Float64Array, guess: Float64Array, out: Float64Array): void {
  for (let i = 0; i < out.length; i++) {
    const ahead = guess[i] - known[i];
    out[i] = known[i] + Math.min(ahead_K, Math.max(-ahead_K, ahead));
  }
}

/** Walls from the shell in: each cell's pivot and right side, then what a chain does to the spine. */
function eliminateWalls(box: Box, bench: Bench, ask: StageAsk): void {
  const { weight_s } = ask;
  const base = ask.base.wall;
  const guess = bench.seenWall_C;
  const { walls } = box;
  const { pivot, rhs, outside, touching, matrix, right } = bench;
  const n = touching.n;
  for (let chain = 0; chain < chainCount; chain++) {
    const cell = chain * cellCount;
    const link = chain * (cellCount - 1);
    const mean_C = 0.5 * (guess[cell] + guess[cell + cellCount - 1]);
    const warm = 1 + walls.growth_per_K[chain] * (mean_C - 10);
    bench.warm[chain] = warm;
    let last = cellCount - 1;
    const face = outside.face_W_per_K[chain];
    pivot[cell + last] =
      walls.heat_J_per_K[cell + last] / weight_s + face + walls.link_W_per_K[link + last - 1] * warm;
    rhs[cell + last] =
      (walls.heat_J_per_K[cell + last] * base[cell + last]) / weight_s + face * outside.equivalent_C[chain];
    for (last--; last >= 0; last--) {
      const g = walls.link_W_per_K[link + last] * warm;
      const inner = last > 0 ? walls.link_W_per_K[link + last - 1] * warm : 0;
      pivot[cell + last] =
        walls.heat_J_per_K[cell + last] / weight_s + g + inner - (g * g) / pivot[cell + last + 1];
      rhs[cell + last] =
        (walls.heat_J_per_K[cell + last] * base[cell + last]) / weight_s +
        (g * rhs[cell + last + 1]) / pivot[cell + last + 1];
    }
    let touch = 0;
    const row = chain * n;
    for (let k = 0; k < n; k++) touch += touching.wall_W_per_K[row + k];
    pivot[cell] += touch;
    for (let k = 0; k < n; k++) {
      const g = touching.wall_W_per_K[row + k];
      if (g === 0) continue;
      matrix[k * n + k] += g;
      right[k] += (g * rhs[cell]) / pivot[cell];
      for (let j = 0; j < n; j++) {
        const other = touching.wall_W_per_K[row + j];
        if (other !== 0) matrix[k * n + j] -= (g * other) / pivot[cell];
      }
    }
  }
}

/** Conductances along the spine, and what comes in past the lid and goes out with cold gas. */
function addSpine(box: Box, bench: Bench): void {
  const { touching, matrix, right, outside, lidHeat } = bench;
  const n = touching.n;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const g = touching.spine_W_per_K[i * n + j];
      if (g === 0) continue;
      matrix[i * n + i] += g;
      matrix[i * n + j] -= g;
    }
  const head = n - 1;
  const { top } = touching;
  const { air_C, lidRadiant_C } = outside.around;
  matrix[head * n + head] += lidHeat.seal_W_per_K;
  right[head] += lidHeat.seal_W_per_K * air_C;
  const damping = lidHeat.sealVapour_W_per_K + lidHeat.airVapour_W_per_K + lidHeat.exposureVapour_W_per_K;
  matrix[top * n + top] +=
    lidHeat.air_W_per_K + lidHeat.exposure_W_per_K + lidHeat.radiation_W_per_K + damping;
  right[top] +=
    (lidHeat.air_W_per_K + lidHeat.exposure_W_per_K) * air_C +
    lidHeat.radiation_W_per_K * lidRadiant_C +
    lidHeat.sealVapour_W +
    lidHeat.airVapour_W +
    lidHeat.exposureVapour_W +
    damping * lidHeat.about_C +
    lidHeat.exposureSun_W;
  for (let i = 0; i < box.layers; i++) {
    const fall = touching.fall_W_per_K[i];
    matrix[i * n + i] += fall;
    matrix[box.layers * n + i] -= fall;
    const g = gas_W_per_K(box, i);
    matrix[i * n + i] += g;
    right[i] += g * dryIce_C;
  }
}

const gas_W_per_K = (box: Box, layer: number): number =>
  box.closures.gasUsed_frac * box.gas_kg_per_s[layer] * carbonDioxideHeatCapacity_J_per_kgK;

/** Makes one skin or core linear about its enthalpy; returns nothing, fills the line. */
function linearize(
  line: Line,
  p: number,
  segments: Int32Array,
  curve: EnthalpyCurve,
  mass_kg: number,
  now_J: number,
): void {
  const h = now_J / mass_kg;
  const i = segmentOf(curve, h, segments[p]);
  segments[p] = i;
  const slope = slopeOf(curve, i);
  line.slope_K_per_J[p] = slope / mass_kg;
  line.at_C[p] = curve.t_C[i] + slope * (h - curve.h_J_per_kg[i]);
}

/** Makes every part linear about the state and folds it into the spine's equations. */
function foldParts(box: Box, bench: Bench, ask: StageAsk, state: Vector): void {
  const { touching, work, workRight, skinLine, coreLine } = bench;
  const n = touching.n;
  const pool = box.layers;
  const per = 1 / ask.weight_s;
  for (let p = 0; p < box.parts.length; p++) {
    const part = box.parts[p];
    const two = hasCore(part);
    const skin_kg = two ? part.mass_kg * (1 - coreShare_frac) : part.mass_kg;
    if (skin_kg <= 0) continue;
    const toHub = touching.hub_W_per_K[p];
    const toPool = touching.pool_W_per_K[p];
    let total = toHub + toPool;
    let fromCore = 0;
    if (two) {
      const g = touching.core_W_per_K[p];
      linearize(coreLine, p, bench.coreSegment, part.curve, part.mass_kg * coreShare_frac, state.core[p]);
      const slope = coreLine.slope_K_per_J[p];
      coreLine.give_s[p] = 1 / (per + g * slope);
      coreLine.rest_W[p] = (ask.base.core[p] - state.core[p]) * per - g * coreLine.at_C[p];
      const soft = slope * coreLine.give_s[p];
      total += g - g * g * soft;
      fromCore = g * (coreLine.at_C[p] + soft * coreLine.rest_W[p]);
    }
    linearize(skinLine, p, bench.skinSegment, part.curve, skin_kg, state.skin[p]);
    const slope = skinLine.slope_K_per_J[p];
    skinLine.give_s[p] = 1 / (per + total * slope);
    skinLine.rest_W[p] = (ask.base.skin[p] - state.skin[p]) * per - total * skinLine.at_C[p] + fromCore;
    const soft = slope * skinLine.give_s[p];
    const fixed = skinLine.at_C[p] + soft * skinLine.rest_W[p];
    const hub = part.layer;
    work[hub * n + hub] += toHub - toHub * toHub * soft;
    workRight[hub] += toHub * fixed;
    if (toPool > 0) {
      work[hub * n + pool] -= toHub * toPool * soft;
      work[pool * n + hub] -= toHub * toPool * soft;
      work[pool * n + pool] += toPool - toPool * toPool * soft;
      workRight[pool] += toPool * fixed;
    }
  }
}

/** Gaussian elimination without pivoting: the matrix is diagonally dominant by construction. */
function solveSpine(matrix: Float64Array, right: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    const pivot = matrix[k * n + k];
    for (let i = k + 1; i < n; i++) {
      const factor = matrix[i * n + k] / pivot;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) matrix[i * n + j] -= factor * matrix[k * n + j];
      right[i] -= factor * right[k];
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k];
    for (let j = k + 1; j < n; j++) sum -= matrix[k * n + j] * right[j];
    right[k] = sum / matrix[k * n + k];
  }
}

/** The pool's row: its unknown is the move of its enthalpy, since a half-frozen pool has no slope of temperature. */
function foldPool(box: Box, bench: Bench, ask: StageAsk, state: Vector): void {
  const { work, workRight } = bench;
  const n = bench.touching.n;
  const pool = box.layers;
  const mass = Math.max(leastPool_kg, ask.water_kg);
  const h = state.pool / mass;
  const i = segmentOf(waterCurve, h, bench.poolSegment);
  bench.poolSegment = i;
  const slope = slopeOf(waterCurve, i);
  const at_C = waterCurve.t_C[i] + slope * (h - waterCurve.h_J_per_kg[i]);
  bench.poolSlope_K_per_J = slope / mass;
  bench.poolAt_C = at_C;
  for (let k = 0; k < n; k++) {
    workRight[k] -= work[k * n + pool] * at_C;
    work[k * n + pool] *= bench.poolSlope_K_per_J;
  }
  work[pool * n + pool] += 1 / ask.weight_s;
  workRight[pool] -= (state.pool - ask.base.pool) / ask.weight_s;
}

/** How far a temperature of the linear solution is from the curve, K. */
function miss_K(curve: EnthalpyCurve, h_J_per_kg: number, guess: number, linear_C: number): number {
  const i = segmentOf(curve, h_J_per_kg, guess);
  return Math.abs(curve.t_C[i] + slopeOf(curve, i) * (h_J_per_kg - curve.h_J_per_kg[i]) - linear_C);
}

/** Moves skins, cores and the pool to the linear solution; returns its worst distance from the curves, K. */
function moveState(box: Box, bench: Bench, ask: StageAsk, state: Vector): number {
  const { touching, spine_C, workRight, skinLine, coreLine } = bench;
  const pool = box.layers;
  for (let k = 0; k < touching.n; k++) spine_C[k] = workRight[k];
  state.pool += workRight[pool];
  spine_C[pool] = bench.poolAt_C + bench.poolSlope_K_per_J * workRight[pool];
  let worst = miss_K(
    waterCurve,
    state.pool / Math.max(leastPool_kg, ask.water_kg),
    bench.poolSegment,
    spine_C[pool],
  );
  for (let p = 0; p < box.parts.length; p++) {
    const part = box.parts[p];
    const two = hasCore(part);
    const skin_kg = two ? part.mass_kg * (1 - coreShare_frac) : part.mass_kg;
    if (skin_kg <= 0) continue;
    const drive = touching.hub_W_per_K[p] * spine_C[part.layer] + touching.pool_W_per_K[p] * spine_C[pool];
    const move = skinLine.give_s[p] * (skinLine.rest_W[p] + drive);
    state.skin[p] += move;
    const skin_C = skinLine.at_C[p] + skinLine.slope_K_per_J[p] * move;
    bench.skin_C[p] = skin_C;
    worst = Math.max(worst, miss_K(part.curve, state.skin[p] / skin_kg, bench.skinSegment[p], skin_C));
    if (!two) continue;
    const coreMove = coreLine.give_s[p] * (coreLine.rest_W[p] + touching.core_W_per_K[p] * skin_C);
    state.core[p] += coreMove;
    bench.core_C[p] = coreLine.at_C[p] + coreLine.slope_K_per_J[p] * coreMove;
    worst = Math.max(
      worst,
      miss_K(
        part.curve,
        state.core[p] / (part.mass_kg * coreShare_frac),
        bench.coreSegment[p],
        bench.core_C[p],
      ),
    );
  }
  return worst;
}

/** Wall temperatures from the solved spine, from the liner out. */
function backWalls(box: Box, bench: Bench, wall_C: Float64Array): void {
  const { walls } = box;
  const { pivot, rhs, touching, spine_C } = bench;
  const n = touching.n;
  for (let chain = 0; chain < chainCount; chain++) {
    const cell = chain * cellCount;
    const warm = bench.warm[chain];
    let sum = rhs[cell];
    for (let k = 0; k < n; k++) sum += touching.wall_W_per_K[chain * n + k] * spine_C[k];
    wall_C[cell] = sum / pivot[cell];
    for (let i = 1; i < cellCount; i++) {
      const g = walls.link_W_per_K[chain * (cellCount - 1) + i - 1] * warm;
      wall_C[cell + i] = (rhs[cell + i] + g * wall_C[cell + i - 1]) / pivot[cell + i];
    }
  }
}

/** Steady conductance of a chain from its outer face to the spine: what a rise outside would drive in, storage aside. */
function steadyThrough_W_per_K(box: Box, bench: Bench, chain: number): number {
  const { touching, outside } = bench;
  let inner = 0;
  for (let k = 0; k < touching.n; k++) inner += touching.wall_W_per_K[chain * touching.n + k];
  if (inner === 0) return 0;
  return (
    1 /
    (1 / outside.face_W_per_K[chain] + 1 / (box.walls.wall_W_per_K[chain] * bench.warm[chain]) + 1 / inner)
  );
}

/** Flows across the border at the solved stage. */
function setFlows(box: Box, bench: Bench, wall_C: Float64Array, out: Flows): void {
  const { outside, lidHeat, spine_C, touching } = bench;
  const { air_C, lidRadiant_C } = outside.around;
  let sides = 0;
  let sun = lidHeat.exposureSun_W;
  for (let chain = 0; chain < chainCount; chain++) {
    const face = outside.face_W_per_K[chain];
    const flow = face * (outside.equivalent_C[chain] - wall_C[chain * cellCount + cellCount - 1]);
    if (chain === lidChain) out.lid_W = flow;
    else if (chain === baseChain) out.base_W = flow;
    else sides += flow;
    if (outside.sunRise_K[chain] > 0)
      sun += outside.sunRise_K[chain] * steadyThrough_W_per_K(box, bench, chain);
  }
  out.sides_W = sides;
  out.sun_W = sun;
  const top_C = spine_C[touching.top];
  const warmer_K = top_C - lidHeat.about_C;
  const sealVapour_W = lidHeat.sealVapour_W - lidHeat.sealVapour_W_per_K * warmer_K;
  const airVapour_W = lidHeat.airVapour_W - lidHeat.airVapour_W_per_K * warmer_K;
  const exposureVapour_W = lidHeat.exposureVapour_W - lidHeat.exposureVapour_W_per_K * warmer_K;
  out.seal_W = lidHeat.seal_W_per_K * (air_C - spine_C[touching.n - 1]) + sealVapour_W;
  out.openingAir_W = lidHeat.air_W_per_K * (air_C - top_C) + airVapour_W;
  out.openingExposure_W =
    lidHeat.exposure_W_per_K * (air_C - top_C) +
    lidHeat.radiation_W_per_K * (lidRadiant_C - top_C) +
    exposureVapour_W +
    lidHeat.exposureSun_W;
  out.gas_W = 0;
  for (let i = 0; i < box.layers; i++) out.gas_W += gas_W_per_K(box, i) * (dryIce_C - spine_C[i]);
  out.water_kg_per_s = (sealVapour_W + airVapour_W + exposureVapour_W) / lidHeat.latent_J_per_kg;
  out.clothLoss_kg_per_s = outside.clothLoss_kg_per_s;
}

/**
 * Solves one implicit stage: finds `state` = base + weight · rate(state), with the conductances held at the guess.
 * Walls are eliminated cell by cell, parts one by one, and the short spine is solved whole; on melting curves this
 * repeats until every part lies on the segment it was solved on, where the linear solution is the exact one. So the
 * heat that leaves one node is the heat that enters the next, to rounding.
 *
 * @returns rounds needed, or 0 when it did not settle (the step must be shortened)
 */
export function solveStage(box: Box, bench: Bench, ask: StageAsk, state: Vector, flows: Flows): number {
  const { touching, matrix, right, work, workRight } = bench;
  const n = touching.n;
  lidState(box, ask.t_s, touching.headspace_m3, bench.lid);
  const { seenWall_C: wall_C, seenSpine_C: spine_C } = bench;
  near(ask.known.wall, ask.guess.wall, wall_C);
  near(ask.known.spine_C, ask.guess.spine_C, spine_C);
  setOutside(box, ask.t_s, wall_C, bench.outside);
  setTouching(box, ask.guess.skin, ask.water_kg, spine_C, bench.lid.open_frac, ask.sheet_m2K_per_W, touching);
  setLidHeat(box, bench.outside, bench.lid, spine_C[touching.top], bench.lidHeat);
  matrix.fill(0);
  right.fill(0);
  eliminateWalls(box, bench, ask);
  addSpine(box, bench);
  state.skin.set(ask.guess.skin);
  state.core.set(ask.guess.core);
  state.pool = ask.guess.pool;
  for (let round = 1; round <= maxRounds; round++) {
    work.set(matrix);
    workRight.set(right);
    foldParts(box, bench, ask, state);
    foldPool(box, bench, ask, state);
    solveSpine(work, workRight, n);
    if (moveState(box, bench, ask, state) < settled_K) {
      backWalls(box, bench, state.wall);
      state.spine_C.set(bench.spine_C);
      setFlows(box, bench, state.wall, flows);
      return round;
    }
  }
  return 0;
}
