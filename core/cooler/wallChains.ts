import type { Bench } from "./bench.ts";
import type { Box } from "./box.ts";
import { cellCount, chainCount } from "./walls.ts";

const last = cellCount - 1;

/**
 * One chain from the shell in: 1 / pivot and right side of each cell. The liner's pivot also holds what it touches.
 *
 * @param per_Hz 1 / length of the stage
 */
function eliminateChain(box: Box, bench: Bench, chain: number, per_Hz: number, base: Float64Array): void {
  const { heat_J_per_K, link_W_per_K } = box.walls;
  const { give_K_per_W: give, rhs_W: rhs, outside, touching } = bench;
  const cell = chain * cellCount;
  const link = chain * last;
  const warm = bench.warm[chain];
  let touch = 0;
  const row = chain * touching.n;
  for (let k = 0; k < touching.wallTouches[chain]; k++) touch += touching.wall_W_per_K[row + k];
  // What stands outside of a cell, already eliminated: first the face, then cell after cell.
  let beyond = outside.face_W_per_K[chain];
  let drive = beyond * outside.equivalent_C[chain];
  for (let i = last; i >= 0; i--) {
    const stored = heat_J_per_K[cell + i] * per_Hz;
    const inner = i > 0 ? link_W_per_K[link + i - 1] * warm : touch;
    const one = 1 / (stored + beyond + inner);
    const sum = stored * base[cell + i] + drive;
    give[cell + i] = one;
    rhs[cell + i] = sum;
    drive = inner * one * sum;
    beyond = inner * one * (stored + beyond);
  }
}

/** Walls eliminated chain by chain, and what each then does to the spine. */
export function eliminateWalls(box: Box, bench: Bench, weight_s: number, base_C: Float64Array): void {
  const { touching, right, seenWall_C } = bench;
  const { n, balance_W_per_K: matrix, wall_W_per_K, wallNode, wallTouches } = touching;
  const { growth_per_K } = box.walls;
  const per_Hz = 1 / weight_s;
  for (let chain = 0; chain < chainCount; chain++) {
    const cell = chain * cellCount;
    const mean_C = 0.5 * (seenWall_C[cell] + seenWall_C[cell + last]);
    bench.warm[chain] = 1 + growth_per_K[chain] * (mean_C - 10);
    eliminateChain(box, bench, chain, per_Hz, base_C);
    const give = bench.give_K_per_W[cell];
    const liner_C = bench.rhs_W[cell] * give;
    const from = chain * n;
    const to = from + wallTouches[chain];
    for (let k = from; k < to; k++) {
      const g = wall_W_per_K[k];
      const node = wallNode[k];
      matrix[node * n + node] += g;
      right[node] += g * liner_C;
      const soft = g * give;
      for (let j = from; j < to; j++) matrix[node * n + wallNode[j]] -= soft * wall_W_per_K[j];
    }
  }
}

/** Wall temperatures from the solved spine, from the liner out. */
export function backWalls(box: Box, bench: Bench, wall_C: Float64Array): void {
  const { link_W_per_K } = box.walls;
  const { give_K_per_W: give, rhs_W: rhs, touching, spine_C } = bench;
  const { n, wall_W_per_K, wallNode, wallTouches } = touching;
  for (let chain = 0; chain < chainCount; chain++) {
    const cell = chain * cellCount;
    const link = chain * last;
    const warm = bench.warm[chain];
    let drive = 0;
    const to = chain * n + wallTouches[chain];
    for (let k = chain * n; k < to; k++) drive += wall_W_per_K[k] * spine_C[wallNode[k]];
    for (let i = 0; i < cellCount; i++) {
      const t_C = (rhs[cell + i] + drive) * give[cell + i];
      wall_C[cell + i] = t_C;
      if (i < last) drive = link_W_per_K[link + i] * warm * t_C;
    }
  }
}
