import { parallelViewFactor_frac } from "../heat/radiation.ts";
import { waterDensity_kg_per_m3 } from "../matter/water.ts";
import type { Box } from "./box.ts";
import type { Closures } from "./closures.ts";
import { blockKind, type Contents, closedKind, foodKind, looseKind, type Room } from "./contents.ts";
import { bandCount, baseChain, chainCount, lidChain } from "./walls.ts";

/**
 * What touches what in one box at one moment, as conductances. The spine is the short row of nodes on which everything
 * hangs: the air between the lots of each layer, then the water, then the air of the headspace.
 */
export interface Touching {
  /** Spine nodes: layers, pool, head. */
  n: number;
  /** By part: to the air of its layer, to the water, from skin to core. */
  hub_W_per_K: Float64Array;
  pool_W_per_K: Float64Array;
  core_W_per_K: Float64Array;
  /** A liner touches few spine nodes: how many, which, and how well; a row of `n` places for each chain. */
  wallTouches: Int32Array;
  wallNode: Int32Array;
  wall_W_per_K: Float64Array;
  /** Heat balance of the spine, row by row: a node's own conductances on the diagonal, its neighbours' negative. */
  balance_W_per_K: Float64Array;
  /** Meltwater falling past each layer at 0 °C: it takes this much per kelvin along, into the pool. One way. */
  fall_W_per_K: Float64Array;
  /** The spine node that the lid looks down on: the top layer, or the water over it. */
  top: number;
  /** Bottom of each layer, then the top of the stack, m above the liner. */
  level_m: Float64Array;
  waterline_m: number;
  wet_frac: Float64Array;
  /** On dry food, by layer. */
  contact_m2K_per_W: Float64Array;
  headspace_m3: number;
}

/** Room for the numbers of one box, made anew only when layers or parts change. */
export function makeTouching(box: Box, room: Room): Touching {
  const n = box.layers + 2;
  const parts = box.parts.length;
  return {
    n,
    hub_W_per_K: room(parts),
    pool_W_per_K: room(parts),
    core_W_per_K: room(parts),
    wallTouches: new Int32Array(chainCount),
    wallNode: new Int32Array(chainCount * n),
    wall_W_per_K: room(chainCount * n),
    balance_W_per_K: room(n * n),
    fall_W_per_K: room(box.layers),
    top: 0,
    level_m: room(box.layers + 1),
    waterline_m: 0,
    wet_frac: room(box.layers),
    contact_m2K_per_W: room(box.layers),
    headspace_m3: 0,
  };
}

const ratio_frac = (part: number, whole: number): number =>
  part <= 0 ? 0 : part >= whole ? 1 : part / whole;
/** Ice stands this share of its depth under water; it floats when little lies on it. */
const draught_frac = 0.92;
const floatLoad_frac = 0.09;
/** Depth of water over which the floor, or the top of the stack, counts as half covered and more. */
const wetting_m = 0.003;

/** Bulk volumes of one layer. */
interface LayerSum {
  solid_m3: number;
  food_m3: number;
  rigid_m3: number;
  loose_m3: number;
  looseSolid_m3: number;
  mass_kg: number;
  looseMass_kg: number;
  bed: number;
}

const blank = (): LayerSum => ({
  solid_m3: 0,
  food_m3: 0,
  rigid_m3: 0,
  loose_m3: 0,
  looseSolid_m3: 0,
  mass_kg: 0,
  looseMass_kg: 0,
  bed: 0,
});
const scratch: LayerSum[] = [];

function clear(sum: LayerSum): void {
  sum.solid_m3 = 0;
  sum.food_m3 = 0;
  sum.rigid_m3 = 0;
  sum.loose_m3 = 0;
  sum.looseSolid_m3 = 0;
  sum.mass_kg = 0;
  sum.looseMass_kg = 0;
  sum.bed = 0;
}

function sumLayers(layers: number, contents: Contents): LayerSum[] {
  const { nParts, kind, layer, solid_kg, own_m3_per_kg, bulk_m3_per_kg, bed_W_per_mK } = contents;
  while (scratch.length < layers) scratch.push(blank());
  for (let i = 0; i < layers; i++) clear(scratch[i]);
  for (let p = 0; p < nParts; p++) {
    const sum = scratch[layer[p]];
    const mass = solid_kg[p];
    const volume = mass * own_m3_per_kg[p];
    const bulk = mass * bulk_m3_per_kg[p];
    const what = kind[p];
    sum.solid_m3 += volume;
    sum.mass_kg += mass;
    sum.bed += volume * bed_W_per_mK[p];
    if (what === foodKind) sum.food_m3 += bulk;
    else if (what === looseKind) {
      sum.loose_m3 += bulk;
      sum.looseSolid_m3 += volume;
      sum.looseMass_kg += mass;
    } else {
      sum.rigid_m3 += bulk;
      if (what === blockKind) sum.looseMass_kg += mass;
    }
  }
  return scratch;
}

/** Gaps between everything in a layer but loose ice, m³. */
function gaps_m3(sum: LayerSum): number {
  const firm = sum.food_m3 + sum.rigid_m3;
  return Math.max(0, firm - (sum.solid_m3 - sum.looseSolid_m3));
}

/** Depth of a layer: loose ice first fills the gaps it can reach between the rest. */
function depth_m(sum: LayerSum, box: Box): number {
  const firm = sum.food_m3 + sum.rigid_m3;
  const gaps = gaps_m3(sum);
  const filled = Math.min(sum.loose_m3, gaps * box.closures.gapFill_frac);
  return (firm + sum.loose_m3 - filled) / box.walls.floor_m2;
}

/**
 * Levels of the layers and of the water, at the solid masses given. Water fills the gaps from
 * below; a stack of loose ice with little on it floats.
 */
function setLevels(box: Box, contents: Contents, water_kg: number, out: Touching): LayerSum[] {
  const sums = sumLayers(box.layers, contents);
  const floor = box.walls.floor_m2;
  const level = out.level_m;
  level[0] = 0;
  for (let i = 0; i < box.layers; i++) level[i + 1] = level[i] + depth_m(sums[i], box);
  let left = water_kg / waterDensity_kg_per_m3;
  let line = 0;
  for (let i = 0; i < box.layers && left > 0; i++) {
    const depth = level[i + 1] - level[i];
    const gap = Math.max(0, depth * floor - sums[i].solid_m3);
    if (left <= gap) {
      line = level[i] + (depth * left) / Math.max(gap, 1e-12);
      left = 0;
    } else {
      line = level[i + 1];
      left -= gap;
    }
  }
  if (left > 0) line += left / floor;
  const depth = level[1];
  let load = 0;
  for (let i = 1; i < box.layers; i++) load += sums[i].mass_kg;
  const loose = sums[0].mass_kg > 0 && sums[0].looseMass_kg === sums[0].mass_kg;
  const lift = line - draught_frac * depth;
  if (loose && lift > 0 && load < floatLoad_frac * sums[0].mass_kg)
    for (let i = 0; i <= box.layers; i++) level[i] += lift;
  out.waterline_m = line;
  for (let i = 0; i < box.layers; i++) {
    const deep = level[i + 1] - level[i];
    out.wet_frac[i] = deep < 1e-6 ? (line > level[i] ? 1 : 0) : ratio_frac(line - level[i], deep);
  }
  return sums;
}

/** Resistance on the dry surface of food: loose ice wets what lies among it, as far as it fills the gaps. */
function foodContact_m2K_per_W(sum: LayerSum, closures: Closures): number {
  const { contact_W_per_m2K: dry, iceContact_W_per_m2K: wet } = closures;
  if (sum.loose_m3 === 0) return 1 / dry;
  return 1 / (dry + (wet - dry) * ratio_frac(sum.loose_m3, gaps_m3(sum)));
}

/** By part: surface shared between the air of the layer and the water. */
function setParts(box: Box, contents: Contents, sums: LayerSum[], out: Touching): void {
  const { nParts, kind, layer, solid_kg, firstMass_kg, firstArea_m2, inner_m2K_per_W } = contents;
  const { hub_W_per_K, pool_W_per_K, core_W_per_K, wet_frac, contact_m2K_per_W } = out;
  for (let i = 0; i < box.layers; i++) contact_m2K_per_W[i] = foodContact_m2K_per_W(sums[i], box.closures);
  for (let p = 0; p < nParts; p++) {
    const what = kind[p];
    let area = firstArea_m2[p];
    if (what !== foodKind && what !== closedKind) {
      const left = solid_kg[p] / firstMass_kg[p];
      area *= left === 1 ? 1 : Math.cbrt(left * left);
    }
    const wet = wet_frac[layer[p]];
    const dry =
      what === foodKind ? 1 / (contact_m2K_per_W[layer[p]] + inner_m2K_per_W[p]) : contents.hub_W_per_m2K[p];
    hub_W_per_K[p] = (1 - wet) * area * dry;
    pool_W_per_K[p] = wet * area * contents.pool_W_per_m2K[p];
    core_W_per_K[p] = contents.core_W_per_kgK[p] * contents.mass_kg[p];
  }
}

function link(out: Touching, one: number, two: number, g_W_per_K: number): void {
  const { n, balance_W_per_K: balance } = out;
  balance[one * n + one] += g_W_per_K;
  balance[two * n + two] += g_W_per_K;
  balance[one * n + two] -= g_W_per_K;
  balance[two * n + one] -= g_W_per_K;
}

/** Adds to what the liner of a chain gives a spine node. */
function touch(out: Touching, chain: number, node: number, g_W_per_K: number): void {
  const { wallNode, wall_W_per_K, wallTouches } = out;
  const from = chain * out.n;
  const to = from + wallTouches[chain];
  for (let k = from; k < to; k++)
    if (wallNode[k] === node) {
      wall_W_per_K[k] += g_W_per_K;
      return;
    }
  wallNode[to] = node;
  wall_W_per_K[to] = g_W_per_K;
  wallTouches[chain]++;
}

/** A layer thinner than this no longer keeps its neighbours fully apart; one that has vanished joins them. */
const thinLayer_m = 0.01;
const leastBed_m2K_per_W = 1e-3;
const waterHeat_J_per_kgK = 4210;

/** Half of a layer on the way up or down, m²K/W. */
function halfBed_m2K_per_W(sum: LayerSum, depth_m: number, closures: Closures): number {
  const bed = sum.solid_m3 > 1e-9 ? sum.bed / sum.solid_m3 : closures.foodBed_W_per_mK;
  return depth_m / (2 * bed);
}

/** Layer to layer, through beds in contact and by cold air that sinks; and meltwater on its way down. */
function setColumn(box: Box, sums: LayerSum[], spine_C: Float64Array, out: Touching): void {
  const { closures } = box;
  const floor = box.walls.floor_m2;
  const level = out.level_m;
  // Air above the water in a layer touches its surface; a layer under water has no air, its node is the water.
  for (let i = 0; i < box.layers; i++) {
    const wet = out.wet_frac[i];
    if (wet === 0) continue;
    const surface = (1 - closures.foodPacking_frac) * closures.wallLot_W_per_m2K * ratio_frac(wet, 0.05);
    link(out, i, box.layers, floor * (surface + closures.lotPool_W_per_m2K * ratio_frac(wet - 0.8, 0.2)));
  }
  let trickle = 0;
  let upper = box.layers > 1 ? level[box.layers] - level[box.layers - 1] : 0;
  for (let i = box.layers - 1; i > 0; i--) {
    const lower = level[i] - level[i - 1];
    const colder = Math.min(1, Math.max(0, spine_C[i - 1] - spine_C[i]));
    const between = ratio_frac(Math.min(upper, lower), thinLayer_m) / closures.contact_W_per_m2K;
    const halves =
      halfBed_m2K_per_W(sums[i], upper, closures) + halfBed_m2K_per_W(sums[i - 1], lower, closures);
    const beds = floor / (halves + between + leastBed_m2K_per_W);
    link(out, i, i - 1, beds + floor * closures.sinkingAir_W_per_m2K * colder);
    trickle += box.melt_kg_per_s[i];
    out.fall_W_per_K[i - 1] = closures.percolation_frac * trickle * waterHeat_J_per_kgK;
    upper = lower;
  }
}

/** The lid, the headspace and the top of the stack. */
function setHead(box: Box, open_frac: number, sheet_m2K_per_W: number, out: Touching): void {
  const { closures, walls } = box;
  const head = box.layers + 1;
  let highest = 0;
  for (let i = 0; i < box.layers; i++) if (out.level_m[i + 1] - out.level_m[i] > 1e-4) highest = i;
  const stack = Math.min(walls.height_m, Math.max(out.level_m[box.layers], out.waterline_m));
  const under = out.waterline_m - out.level_m[box.layers] > wetting_m;
  const top = under ? box.layers : highest;
  out.top = top;
  const gap = walls.height_m - stack;
  out.headspace_m3 = gap * walls.floor_m2;
  const { length_m, width_m } = box.input.body.inside;
  const seen = parallelViewFactor_frac(length_m, width_m, gap);
  link(out, head, top, walls.floor_m2 / (1 / closures.headTop_W_per_m2K + sheet_m2K_per_W));
  const radiant = walls.floor_m2 / (1 / closures.insideRadiation_W_per_m2K + sheet_m2K_per_W);
  touch(out, lidChain, head, closures.headLid_W_per_m2K * walls.floor_m2);
  touch(out, lidChain, top, radiant * seen * (1 - open_frac));
  const band_m = walls.height_m / bandCount;
  for (let band = 0; band < bandCount; band++) {
    const above = ratio_frac((band + 1) * band_m - stack, band_m);
    if (above === 0) continue;
    touch(out, 1 + band, head, closures.headWall_W_per_m2K * walls.inside_m2[1 + band] * above);
    touch(out, 1 + band, top, radiant * (1 - seen) * ((above * band_m) / Math.max(gap, 1e-9)));
  }
}

/** Sides and base: through air to the layer beside them, through water below the waterline. */
function setSides(box: Box, out: Touching): void {
  const { closures, walls } = box;
  const band_m = walls.height_m / bandCount;
  const stack = out.level_m[box.layers];
  const pool = box.layers;
  for (let band = 0; band < bandCount; band++) {
    const from = band * band_m;
    const to = from + band_m;
    const area = walls.inside_m2[1 + band] / band_m;
    const wet = Math.min(to, out.waterline_m) - from;
    if (wet > 0) touch(out, 1 + band, pool, closures.wallPool_W_per_m2K * area * wet);
    const dryFrom = Math.max(from, out.waterline_m);
    if (dryFrom >= Math.min(to, stack)) continue;
    for (let i = 0; i < box.layers; i++) {
      const beside = Math.min(to, out.level_m[i + 1]) - Math.max(dryFrom, out.level_m[i]);
      if (beside > 0) touch(out, 1 + band, i, closures.wallLot_W_per_m2K * area * beside);
    }
  }
  const wet = ratio_frac(out.waterline_m, wetting_m);
  const dry =
    closures.foodPacking_frac * closures.contact_W_per_m2K +
    (1 - closures.foodPacking_frac) * closures.wallLot_W_per_m2K;
  if (wet > 0) touch(out, baseChain, pool, closures.wallPool_W_per_m2K * walls.floor_m2 * wet);
  if (wet < 1) touch(out, baseChain, 0, dry * walls.floor_m2 * (1 - wet));
}

/** What the geometry is reckoned for. */
export interface Seen {
  water_kg: number;
  /** Temperatures along the spine, for cold air that sinks. */
  spine_C: Float64Array;
  /** Share of the time that the lid stands open. */
  open_frac: number;
  /** Resistance of what lies on the top layer. */
  sheet_m2K_per_W: number;
}

/**
 * Reckons all conductances inside the box for the solid masses and water given (usually a forecast of the middle of a
 * step, so that the geometry is second-order too).
 *
 * @source engineering-judgement
 */
export function setTouching(box: Box, contents: Contents, seen: Seen, out: Touching): void {
  out.wallTouches.fill(0);
  out.balance_W_per_K.fill(0);
  const sums = setLevels(box, contents, seen.water_kg, out);
  setParts(box, contents, sums, out);
  setColumn(box, sums, seen.spine_C, out);
  setSides(box, out);
  setHead(box, seen.open_frac, seen.sheet_m2K_per_W, out);
}
