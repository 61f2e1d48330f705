import type { EnthalpyCurve } from "../matter/curve.ts";
import { carbonDioxideHeatCapacity_J_per_kgK, dryIce_C } from "../matter/dryIce.ts";
import { waterCurve } from "../matter/water.ts";
import type { Bench, Line, Vector } from "./bench.ts";
import type { Box } from "./box.ts";
import type { Contents } from "./contents.ts";
import { segmentOf, slopesOf } from "./polyline.ts";

/** Water's mass below which the pool still has a heat capacity, so that an empty pool has a temperature. */
const leastPool_kg = 1e-3;
/** Agreement with the curves at which a stage has settled; far below anything that matters. */
const settled_K = 1e-8;
const waterSlopes = slopesOf(waterCurve);

/** What the cold gas of dry ice takes along from a layer. */
export const gas_W_per_K = (box: Box, layer: number): number =>
  box.closures.gasUsed_frac * box.gas_kg_per_s[layer] * carbonDioxideHeatCapacity_J_per_kgK;

/** What comes in past the lid, runs down with meltwater and goes out with cold gas. */
export function addDrives(box: Box, bench: Bench): void {
  const { touching, right, outside, lidHeat } = bench;
  const { n, top, balance_W_per_K: matrix } = touching;
  const head = n - 1;
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
  const pool = box.layers;
  for (let i = 0; i < box.layers; i++) {
    const fall = touching.fall_W_per_K[i];
    matrix[i * n + i] += fall;
    matrix[pool * n + i] -= fall;
    if (box.gas_kg_per_s[i] === 0) continue;
    const g = gas_W_per_K(box, i);
    matrix[i * n + i] += g;
    right[i] += g * dryIce_C;
  }
}

/** Makes one skin or core linear about its enthalpy. */
function linearize(line: Line, p: number, contents: Contents, mass_kg: number, now_J: number): void {
  const curve = contents.curves[p];
  const h = now_J / mass_kg;
  const i = segmentOf(curve, h, line.segment[p]);
  const slope = contents.slopes[p][i];
  line.segment[p] = i;
  line.slope_K_per_J[p] = slope / mass_kg;
  line.at_C[p] = curve.t_C[i] + slope * (h - curve.h_J_per_kg[i]);
}

/** A core made linear; returns what the skin gives it per kelvin and, by way of `fromCore_W`, what it gives the skin. */
function foldCore(bench: Bench, p: number, per_Hz: number, base: Vector, state: Vector): number {
  const { contents, coreLine } = bench;
  const g = bench.touching.core_W_per_K[p];
  linearize(coreLine, p, contents, contents.core_kg[p], state.core[p]);
  const slope = coreLine.slope_K_per_J[p];
  const give = 1 / (per_Hz + g * slope);
  const rest = (base.core[p] - state.core[p]) * per_Hz - g * coreLine.at_C[p];
  coreLine.give_s[p] = give;
  coreLine.rest_W[p] = rest;
  bench.fromCore_W = g * (coreLine.at_C[p] + slope * give * rest);
  return g - g * g * slope * give;
}

/** Makes every part linear about the state and folds it into the spine's equations. */
export function foldParts(box: Box, bench: Bench, weight_s: number, base: Vector, state: Vector): void {
  const { touching, contents, work, workRight, skinLine } = bench;
  const { hub_W_per_K, pool_W_per_K, n } = touching;
  const { skin_kg, core_kg, layer } = contents;
  const pool = box.layers;
  const per_Hz = 1 / weight_s;
  for (let p = 0; p < contents.nParts; p++) {
    const mass = skin_kg[p];
    if (mass <= 0) continue;
    const toHub = hub_W_per_K[p];
    const toPool = pool_W_per_K[p];
    let total = toHub + toPool;
    bench.fromCore_W = 0;
    if (core_kg[p] > 0) total += foldCore(bench, p, per_Hz, base, state);
    linearize(skinLine, p, contents, mass, state.skin[p]);
    const slope = skinLine.slope_K_per_J[p];
    const at_C = skinLine.at_C[p];
    const give = 1 / (per_Hz + total * slope);
    const rest = (base.skin[p] - state.skin[p]) * per_Hz - total * at_C + bench.fromCore_W;
    skinLine.give_s[p] = give;
    skinLine.rest_W[p] = rest;
    const soft = slope * give;
    const fixed = at_C + soft * rest;
    const hub = layer[p];
    work[hub * n + hub] += toHub - toHub * toHub * soft;
    workRight[hub] += toHub * fixed;
    if (toPool > 0) {
      const across = toHub * toPool * soft;
      work[hub * n + pool] -= across;
      work[pool * n + hub] -= across;
      work[pool * n + pool] += toPool - toPool * toPool * soft;
      workRight[pool] += toPool * fixed;
    }
  }
}

/** Gaussian elimination without pivoting: the matrix is diagonally dominant by construction. */
export function solveSpine({ work: matrix, workRight: right, touching: { n } }: Bench): void {
  for (let k = 0; k < n; k++) {
    const row = k * n;
    const one = 1 / matrix[row + k];
    for (let i = k + 1; i < n; i++) {
      const below = i * n;
      const factor = matrix[below + k] * one;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) matrix[below + j] -= factor * matrix[row + j];
      right[i] -= factor * right[k];
    }
    matrix[row + k] = one;
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k];
    for (let j = k + 1; j < n; j++) sum -= matrix[k * n + j] * right[j];
    right[k] = sum * matrix[k * n + k];
  }
}

/** The pool's row: its unknown is the move of its enthalpy, since a half-frozen pool has no slope of temperature. */
export function foldPool(
  box: Box,
  bench: Bench,
  water_kg: number,
  weight_s: number,
  base: Vector,
  state: Vector,
): void {
  const { work, workRight } = bench;
  const n = bench.touching.n;
  const pool = box.layers;
  const per_Hz = 1 / weight_s;
  const mass = Math.max(leastPool_kg, water_kg);
  const h = state.pool / mass;
  const i = segmentOf(waterCurve, h, bench.poolSegment);
  bench.poolSegment = i;
  const slope = waterSlopes[i];
  const at_C = waterCurve.t_C[i] + slope * (h - waterCurve.h_J_per_kg[i]);
  bench.poolSlope_K_per_J = slope / mass;
  bench.poolAt_C = at_C;
  for (let k = 0; k < n; k++) {
    workRight[k] -= work[k * n + pool] * at_C;
    work[k * n + pool] *= bench.poolSlope_K_per_J;
  }
  work[pool * n + pool] += per_Hz;
  workRight[pool] -= (state.pool - base.pool) * per_Hz;
}

/** How far a temperature of the linear solution is from the curve, K; nothing while it is on the segment solved on. */
function miss_K(
  curve: EnthalpyCurve,
  slopes: Float64Array,
  h_J_per_kg: number,
  solvedOn: number,
  linear_C: number,
): number {
  const i = segmentOf(curve, h_J_per_kg, solvedOn);
  if (i === solvedOn) return 0;
  return Math.abs(curve.t_C[i] + slopes[i] * (h_J_per_kg - curve.h_J_per_kg[i]) - linear_C);
}

/** Moves skins, cores and the pool to the linear solution; true when that lies on the curves. */
export function moveState(box: Box, bench: Bench, water_kg: number, state: Vector): boolean {
  const pool = box.layers;
  const { touching, contents, spine_C, workRight, skinLine, coreLine } = bench;
  const { hub_W_per_K, pool_W_per_K, core_W_per_K } = touching;
  const { skin_kg, core_kg, layer, curves, slopes } = contents;
  for (let k = 0; k < touching.n; k++) spine_C[k] = workRight[k];
  const poolMove = workRight[pool];
  const pool_C = bench.poolAt_C + bench.poolSlope_K_per_J * poolMove;
  state.pool += poolMove;
  spine_C[pool] = pool_C;
  const h = state.pool / Math.max(leastPool_kg, water_kg);
  let worst = miss_K(waterCurve, waterSlopes, h, bench.poolSegment, pool_C);
  for (let p = 0; p < contents.nParts; p++) {
    const mass = skin_kg[p];
    if (mass <= 0) continue;
    const drive = hub_W_per_K[p] * spine_C[layer[p]] + pool_W_per_K[p] * pool_C;
    const move = skinLine.give_s[p] * (skinLine.rest_W[p] + drive);
    const skin = state.skin[p] + move;
    const skin_C = skinLine.at_C[p] + skinLine.slope_K_per_J[p] * move;
    state.skin[p] = skin;
    worst = Math.max(worst, miss_K(curves[p], slopes[p], skin / mass, skinLine.segment[p], skin_C));
    if (core_kg[p] <= 0) continue;
    const coreMove = coreLine.give_s[p] * (coreLine.rest_W[p] + core_W_per_K[p] * skin_C);
    const core = state.core[p] + coreMove;
    const core_C = coreLine.at_C[p] + coreLine.slope_K_per_J[p] * coreMove;
    state.core[p] = core;
    worst = Math.max(worst, miss_K(curves[p], slopes[p], core / core_kg[p], coreLine.segment[p], core_C));
  }
  return worst < settled_K;
}
