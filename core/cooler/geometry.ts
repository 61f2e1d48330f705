import { parallelViewFactor_frac } from "../heat/radiation.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { waterDensity_kg_per_m3 } from "../matter/water.ts";
import { type Box, hasCore, isLoose, type Part } from "./box.ts";
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
  /** By chain and spine node, row by row. */
  wall_W_per_K: Float64Array;
  /** Between spine nodes, symmetric, row by row. */
  spine_W_per_K: Float64Array;
  /** Meltwater falling past each layer at 0 °C: it takes this much per kelvin along, into the pool. One way. */
  fall_W_per_K: Float64Array;
  /** The spine node that the lid looks down on: the top layer, or the water over it. */
  top: number;
  /** Bottom of each layer, then the top of the stack, m above the liner. */
  level_m: Float64Array;
  waterline_m: number;
  wet_frac: Float64Array;
  headspace_m3: number;
}

/** Room for the numbers of one box, made anew only when layers or parts change. */
export function makeTouching(box: Box): Touching {
  const n = box.layers + 2;
  const parts = box.parts.length;
  return {
    n,
    hub_W_per_K: new Float64Array(parts),
    pool_W_per_K: new Float64Array(parts),
    core_W_per_K: new Float64Array(parts),
    wall_W_per_K: new Float64Array(chainCount * n),
    spine_W_per_K: new Float64Array(n * n),
    fall_W_per_K: new Float64Array(box.layers),
    top: 0,
    level_m: new Float64Array(box.layers + 1),
    waterline_m: 0,
    wet_frac: new Float64Array(box.layers),
    headspace_m3: 0,
  };
}

/** Solid mass of a part at an enthalpy: what of loose ice has not melted; the whole of anything else. */
export function solid_kg(part: Part, skin_J: number): number {
  if (!isLoose(part.form)) return part.mass_kg;
  const solid = -skin_J / iceLatent_J_per_kg;
  return solid >= part.mass_kg ? part.mass_kg : Math.max(solid, 0);
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

function sumLayers(box: Box, skin_J: Float64Array): LayerSum[] {
  const { closures } = box;
  while (scratch.length < box.layers) scratch.push(blank());
  for (let i = 0; i < box.layers; i++) Object.assign(scratch[i], empty);
  for (let p = 0; p < box.parts.length; p++) {
    const part = box.parts[p];
    const sum = scratch[part.layer];
    const mass = part.form === "dry ice" ? part.mass_kg : solid_kg(part, skin_J[p]);
    const volume = mass / part.density_kg_per_m3;
    sum.solid_m3 += volume;
    sum.mass_kg += mass;
    if (part.form === "food") {
      sum.food_m3 += volume / closures.foodPacking_frac;
      sum.bed += volume * closures.foodBed_W_per_mK;
    } else if (part.form === "cube" || part.form === "crushed") {
      sum.loose_m3 +=
        volume / (part.form === "cube" ? closures.cubePacking_frac : closures.crushedPacking_frac);
      sum.looseSolid_m3 += volume;
      sum.looseMass_kg += mass;
      sum.bed += volume * closures.cubeBed_W_per_mK;
    } else {
      sum.rigid_m3 += volume / closures.blockFloor_frac;
      if (part.form === "block") sum.looseMass_kg += mass;
      sum.bed += volume * closures.blockBed_W_per_mK;
    }
  }
  return scratch;
}
const empty: Readonly<LayerSum> = blank();

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
 * Levels of the layers and of the water, at the masses that the enthalpies `skin_J` imply. Water fills the gaps from
 * below; a stack of loose ice with little on it floats.
 */
function setLevels(box: Box, skin_J: Float64Array, water_kg: number, out: Touching): LayerSum[] {
  const sums = sumLayers(box, skin_J);
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

/** What a part's dry surface exchanges with: loose ice wets what lies among it, as far as it fills the gaps. */
function contact_W_per_m2K(part: Part, sum: LayerSum, box: Box): number {
  const { contact_W_per_m2K: dry, iceContact_W_per_m2K: wet } = box.closures;
  if (part.form === "cube" || part.form === "crushed") return wet;
  if (part.form !== "food" || sum.loose_m3 === 0) return dry;
  return dry + (wet - dry) * ratio_frac(sum.loose_m3, gaps_m3(sum));
}

/** By part: surface shared between the air of the layer and the water. */
function setParts(box: Box, sums: LayerSum[], skin_J: Float64Array, out: Touching): void {
  const { closures } = box;
  for (let p = 0; p < box.parts.length; p++) {
    const part = box.parts[p];
    let area = part.firstArea_m2;
    if (isLoose(part.form) || part.form === "dry ice") {
      const mass = part.form === "dry ice" ? part.mass_kg : solid_kg(part, skin_J[p]);
      area *= Math.cbrt((mass / part.firstMass_kg) ** 2);
    }
    const wet = out.wet_frac[part.layer];
    out.hub_W_per_K[p] =
      ((1 - wet) * area) / (1 / contact_W_per_m2K(part, sums[part.layer], box) + part.inner_m2K_per_W);
    out.pool_W_per_K[p] =
      wet === 0 ? 0 : (wet * area) / (1 / closures.lotPool_W_per_m2K + part.inner_m2K_per_W);
    out.core_W_per_K[p] = hasCore(part) ? part.core_W_per_kgK * part.mass_kg : 0;
  }
}

function link(out: Touching, one: number, two: number, g_W_per_K: number): void {
  out.spine_W_per_K[one * out.n + two] += g_W_per_K;
  out.spine_W_per_K[two * out.n + one] += g_W_per_K;
}

/** A layer thinner than this no longer keeps its neighbours fully apart; one that has vanished joins them. */
const thinLayer_m = 0.01;
const leastBed_m2K_per_W = 1e-3;
const waterHeat_J_per_kgK = 4210;

/** Layer to layer, through beds in contact and by cold air that sinks; and meltwater on its way down. */
function setColumn(box: Box, sums: LayerSum[], spine_C: Float64Array, out: Touching): void {
  const { closures } = box;
  const floor = box.walls.floor_m2;
  const depth = (i: number): number => out.level_m[i + 1] - out.level_m[i];
  const half = (i: number): number => {
    const bed = sums[i].solid_m3 > 1e-9 ? sums[i].bed / sums[i].solid_m3 : closures.foodBed_W_per_mK;
    return depth(i) / (2 * bed);
  };
  // Air above the water in a layer touches its surface; a layer under water has no air, its node is the water.
  for (let i = 0; i < box.layers; i++) {
    const wet = out.wet_frac[i];
    if (wet === 0) continue;
    const surface = (1 - closures.foodPacking_frac) * closures.wallLot_W_per_m2K * ratio_frac(wet, 0.05);
    link(out, i, box.layers, floor * (surface + closures.lotPool_W_per_m2K * ratio_frac(wet - 0.8, 0.2)));
  }
  let trickle = 0;
  for (let i = box.layers - 1; i > 0; i--) {
    const colder = Math.min(1, Math.max(0, spine_C[i - 1] - spine_C[i]));
    const between = ratio_frac(Math.min(depth(i), depth(i - 1)), thinLayer_m) / closures.contact_W_per_m2K;
    const beds = floor / (half(i) + between + half(i - 1) + leastBed_m2K_per_W);
    link(out, i, i - 1, beds + floor * closures.sinkingAir_W_per_m2K * colder);
    trickle += box.melt_kg_per_s[i];
    out.fall_W_per_K[i - 1] = closures.percolation_frac * trickle * waterHeat_J_per_kgK;
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
  const covered = (film: number): number => walls.floor_m2 / (1 / film + sheet_m2K_per_W);
  link(out, head, top, covered(closures.headTop_W_per_m2K));
  const radiant = covered(closures.insideRadiation_W_per_m2K);
  const at = out.wall_W_per_K;
  at[lidChain * out.n + head] += closures.headLid_W_per_m2K * walls.floor_m2;
  at[lidChain * out.n + top] += radiant * seen * (1 - open_frac);
  const band_m = walls.height_m / bandCount;
  for (let band = 0; band < bandCount; band++) {
    const above = ratio_frac((band + 1) * band_m - stack, band_m);
    if (above === 0) continue;
    const chain = (1 + band) * out.n;
    at[chain + head] += closures.headWall_W_per_m2K * walls.inside_m2[1 + band] * above;
    at[chain + top] += radiant * (1 - seen) * ((above * band_m) / Math.max(gap, 1e-9));
  }
}

/** Sides and base: through air to the layer beside them, through water below the waterline. */
function setSides(box: Box, out: Touching): void {
  const { closures, walls } = box;
  const band_m = walls.height_m / bandCount;
  const stack = out.level_m[box.layers];
  const pool = box.layers;
  const at = out.wall_W_per_K;
  for (let band = 0; band < bandCount; band++) {
    const from = band * band_m;
    const to = from + band_m;
    const chain = (1 + band) * out.n;
    const area = walls.inside_m2[1 + band] / band_m;
    const wet = Math.min(to, out.waterline_m) - from;
    if (wet > 0) at[chain + pool] += closures.wallPool_W_per_m2K * area * wet;
    const dryFrom = Math.max(from, out.waterline_m);
    if (dryFrom >= Math.min(to, stack)) continue;
    for (let i = 0; i < box.layers; i++) {
      const beside = Math.min(to, out.level_m[i + 1]) - Math.max(dryFrom, out.level_m[i]);
      if (beside > 0) at[chain + i] += closures.wallLot_W_per_m2K * area * beside;
    }
  }
  const wet = ratio_frac(out.waterline_m, wetting_m);
  const dry =
    closures.foodPacking_frac * closures.contact_W_per_m2K +
    (1 - closures.foodPacking_frac) * closures.wallLot_W_per_m2K;
  at[baseChain * out.n + pool] += closures.wallPool_W_per_m2K * walls.floor_m2 * wet;
  at[baseChain * out.n] += dry * walls.floor_m2 * (1 - wet);
}

/**
 * Reckons all conductances inside the box for the enthalpies and water given (usually a forecast of the middle of a
 * step, so that the geometry is second-order too).
 *
 * @param open_frac share of the time that the lid stands open
 * @param sheet_m2K_per_W resistance of what lies on the top layer
 * @source engineering-judgement
 */
export function setTouching(
  box: Box,
  skin_J: Float64Array,
  water_kg: number,
  spine_C: Float64Array,
  open_frac: number,
  sheet_m2K_per_W: number,
  out: Touching,
): void {
  out.wall_W_per_K.fill(0);
  out.spine_W_per_K.fill(0);
  out.fall_W_per_K.fill(0);
  const sums = setLevels(box, skin_J, water_kg, out);
  setParts(box, sums, skin_J, out);
  setColumn(box, sums, spine_C, out);
  setSides(box, out);
  setHead(box, open_frac, sheet_m2K_per_W, out);
}
