import { dryIce_C } from "../matter/dryIce.ts";
import type { Bench, Flows, Vector } from "./bench.ts";
import type { Box } from "./box.ts";
import { meltedWater_kg } from "./contents.ts";
import { type Seen, setTouching } from "./geometry.ts";
import { lidState, setLidHeat } from "./lidOpen.ts";
import { setOutside } from "./outside.ts";
import { addDrives, foldParts, foldPool, gas_W_per_K, moveState, solveSpine } from "./spine.ts";
import { backWalls, eliminateWalls } from "./wallChains.ts";
import { baseChain, cellCount, chainCount, lidChain } from "./walls.ts";

const maxRounds = 40;

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
  sheet_m2K_per_W: number;
}

/** How far ahead of the last solved temperatures a coefficient may look, K. */
const ahead_K = 2;

/** Follows a guess, but only a little way: a light shell's rate just after a jump leads far astray. */
function near(known_C: number, guess_C: number): number {
  return known_C + Math.min(ahead_K, Math.max(-ahead_K, guess_C - known_C));
}

/** Sets the temperatures that coefficients are reckoned at: liners, shells and the spine. */
function setSeen(bench: Bench, known: Vector, guess: Vector): void {
  const { seenWall_C, seenSpine_C } = bench;
  for (let liner = 0; liner < seenWall_C.length; liner += cellCount) {
    const shell = liner + cellCount - 1;
    seenWall_C[liner] = near(known.wall[liner], guess.wall[liner]);
    seenWall_C[shell] = near(known.wall[shell], guess.wall[shell]);
  }
  for (let k = 0; k < seenSpine_C.length; k++) seenSpine_C[k] = near(known.spine_C[k], guess.spine_C[k]);
}

/** Steady conductance of a chain from its outer face to the spine: what a rise outside would drive in, storage aside. */
function steadyThrough_W_per_K(box: Box, bench: Bench, chain: number): number {
  const { touching, outside } = bench;
  let inner = 0;
  const row = chain * touching.n;
  for (let k = 0; k < touching.wallTouches[chain]; k++) inner += touching.wall_W_per_K[row + k];
  if (inner === 0) return 0;
  return (
    1 /
    (1 / outside.face_W_per_K[chain] + 1 / (box.walls.wall_W_per_K[chain] * bench.warm[chain]) + 1 / inner)
  );
}

/** Flows through the faces, and what of all that comes in the sun drives. */
function setFaceFlows(box: Box, bench: Bench, wall_C: Float64Array, out: Flows): void {
  const { outside, lidHeat } = bench;
  const { face_W_per_K, equivalent_C, sunRise_K } = outside;
  let sides = 0;
  let sun = lidHeat.exposureSun_W;
  for (let chain = 0; chain < chainCount; chain++) {
    const flow = face_W_per_K[chain] * (equivalent_C[chain] - wall_C[chain * cellCount + cellCount - 1]);
    if (chain === lidChain) out.lid_W = flow;
    else if (chain === baseChain) out.base_W = flow;
    else sides += flow;
    if (sunRise_K[chain] > 0) sun += sunRise_K[chain] * steadyThrough_W_per_K(box, bench, chain);
  }
  out.sides_W = sides;
  out.sun_W = sun;
}

/** Flows across the border at the solved stage. */
function setFlows(box: Box, bench: Bench, wall_C: Float64Array, out: Flows): void {
  const { outside, lidHeat, spine_C, touching } = bench;
  const { air_C, lidRadiant_C } = outside.around;
  setFaceFlows(box, bench, wall_C, out);
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
  for (let i = 0; i < box.layers; i++)
    if (box.gas_kg_per_s[i] !== 0) out.gas_W += gas_W_per_K(box, i) * (dryIce_C - spine_C[i]);
  out.water_kg_per_s = (sealVapour_W + airVapour_W + exposureVapour_W) / lidHeat.latent_J_per_kg;
  out.clothLoss_kg_per_s = outside.clothLoss_kg_per_s;
}

/** Reckons every coefficient of a stage, where its guess stands, and the part of the equations that stays as it is. */
function prepare(box: Box, bench: Bench, ask: StageAsk): void {
  const { touching, outside, lid, lidHeat, seenWall_C, seenSpine_C } = bench;
  const { guess } = ask;
  setSeen(bench, ask.known, guess);
  lidState(box, ask.t_s, touching.headspace_m3, lid);
  setOutside(box, ask.t_s, seenWall_C, outside);
  seen.water_kg = box.pool_kg + meltedWater_kg(bench.contents, guess.skin);
  seen.spine_C = seenSpine_C;
  seen.open_frac = lid.open_frac;
  seen.sheet_m2K_per_W = ask.sheet_m2K_per_W;
  setTouching(box, bench.contents, seen, touching);
  setLidHeat(box, outside, lid, seenSpine_C[touching.top], lidHeat);
  bench.right.fill(0);
  eliminateWalls(box, bench, ask.weight_s, ask.base.wall);
  addDrives(box, bench);
}

/** One is enough: nothing in it outlives a stage. */
const seen: Seen = { water_kg: 0, spine_C: new Float64Array(0), open_frac: 0, sheet_m2K_per_W: 0 };

/**
 * Solves one implicit stage: finds `state` = base + weight · rate(state), with the conductances held at the guess.
 * Walls are eliminated cell by cell, parts one by one, and the short spine is solved whole; on melting curves this
 * repeats until every part lies on the segment it was solved on, where the linear solution is the exact one. So the
 * heat that leaves one node is the heat that enters the next, to rounding.
 *
 * @returns rounds needed, or 0 when it did not settle (the step must be shortened)
 */
export function solveStage(box: Box, bench: Bench, ask: StageAsk, state: Vector, flows: Flows): number {
  const { touching, right, work, workRight } = bench;
  const { balance_W_per_K: matrix, n } = touching;
  const { base, guess, weight_s } = ask;
  prepare(box, bench, ask);
  const water_kg = seen.water_kg;
  state.skin.set(guess.skin);
  state.core.set(guess.core);
  state.pool = guess.pool;
  for (let round = 1; round <= maxRounds; round++) {
    for (let i = 0; i < work.length; i++) work[i] = matrix[i];
    for (let i = 0; i < n; i++) workRight[i] = right[i];
    foldParts(box, bench, weight_s, base, state);
    foldPool(box, bench, water_kg, weight_s, base, state);
    solveSpine(bench);
    if (moveState(box, bench, water_kg, state)) {
      backWalls(box, bench, state.wall);
      state.spine_C.set(bench.spine_C);
      setFlows(box, bench, state.wall, flows);
      return round;
    }
  }
  return 0;
}
