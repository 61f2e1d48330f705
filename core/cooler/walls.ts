import { airLayer_W_per_m2K } from "../heat/films.ts";
import { radiationFilm_W_per_m2K } from "../heat/radiation.ts";
import { areaGrowth, cornerShape_frac, edgeShape_frac } from "../heat/wall.ts";
import { insulations } from "../matter/insulation.ts";
import { DomainError } from "../quantity/errors.ts";
import type { Closures } from "./closures.ts";
import type { CoolerBody, WallZone } from "./types.ts";

/** Bands of the side wall; the layers slide past them as the stack settles. */
export const bandCount = 12;
/** Cells across one wall: liner, foam, shell. */
const foamCells = 3;
export const cellCount: number = foamCells + 2;
export const lidChain = 0;
export const baseChain: number = bandCount + 1;
export const chainCount: number = bandCount + 2;

/**
 * The walls of one box as chains of cells from the liner out: one for the lid, one for each band of the sides from
 * the base up, one for the base. Arrays are row by row: `chain * cellCount + cell`, links `chain * (cellCount − 1) + cell`.
 */
export interface Walls {
  heat_J_per_K: Float64Array;
  /** Between a cell and the next one out, at 10 °C. */
  link_W_per_K: Float64Array;
  /** Growth of the conductivity with temperature, per K, by chain. */
  growth_per_K: Float64Array;
  inside_m2: Float64Array;
  outside_m2: Float64Array;
  /** Inside face to outside face, no films, at 10 °C, by chain. */
  wall_W_per_K: Float64Array;
  seal_W_per_K: number;
  inside_m3: number;
  floor_m2: number;
  height_m: number;
  /** Steady, outside air to a cold inside face, outer film and joint included (contract §5). */
  conductance_W_per_K: number;
  /** Heat the body gives up per kelvin that it stands warmer outside than inside: Σ C·(1 − f). */
  effective_J_per_K: number;
}

interface ZoneFacts {
  zone: WallZone;
  thickness_m: number;
  k_W_per_mK: number;
  growth_per_K: number;
  foam_J_per_m3K: number;
}

/** Emittance of plain plastic, for the hollow lid. */
const plastic_frac = 0.9;

function zoneFacts(zone: WallZone, closures: Closures): ZoneFacts {
  const kind = insulations[zone.insulation];
  if (kind.k10_W_per_mK === null) {
    const k = airLayer_W_per_m2K(zone.thickness_m, plastic_frac, 15) * zone.thickness_m;
    return { zone, thickness_m: zone.thickness_m, k_W_per_mK: k, growth_per_K: 0, foam_J_per_m3K: 1200 };
  }
  const k = kind.k10_W_per_mK.p50 * closures.foam_frac;
  return {
    zone,
    thickness_m: zone.thickness_m * closures.thickness_frac,
    k_W_per_mK: k,
    growth_per_K: kind.dk_dT_W_per_mK2.p50 / k,
    foam_J_per_m3K: kind.density_kg_per_m3 * kind.heatCapacity_J_per_kgK,
  };
}

interface ChainShape {
  facts: ZoneFacts;
  inside_m2: number;
  outside_m2: number;
  wall_W_per_K: number;
}

/** Splits the box into chains: plane part, half an edge to each zone, corners by thirds. */
function chainShapes(body: CoolerBody, closures: Closures): ChainShape[] {
  const { length_m: a, width_m: b, height_m: c } = body.inside;
  const lid = zoneFacts(body.lid, closures);
  const sides = zoneFacts(body.sides, closures);
  const base = zoneFacts(body.base, closures);
  const edge = (length_m: number, one: ZoneFacts, two: ZoneFacts): number =>
    edgeShape_frac * length_m * 0.5 * (one.k_W_per_mK + two.k_W_per_mK);
  const corner = (one: ZoneFacts): number =>
    cornerShape_frac *
    4 *
    0.5 *
    (one.thickness_m + sides.thickness_m) *
    0.5 *
    (one.k_W_per_mK + sides.k_W_per_mK);
  const rim_m = 2 * (a + b);
  const outerA = a + 2 * body.sides.thickness_m;
  const outerB = b + 2 * body.sides.thickness_m;
  const outerC = c + body.lid.thickness_m + body.base.thickness_m;
  const flat = (facts: ZoneFacts): ChainShape => ({
    facts,
    inside_m2: a * b,
    outside_m2: outerA * outerB,
    wall_W_per_K:
      (facts.k_W_per_mK * a * b) / facts.thickness_m + 0.5 * edge(rim_m, facts, sides) + corner(facts) / 3,
  });
  const shapes: ChainShape[] = [flat(lid)];
  for (let band = 0; band < bandCount; band++) {
    const inside_m2 = (rim_m * c) / bandCount;
    let wall = (sides.k_W_per_mK * inside_m2) / sides.thickness_m + edge((4 * c) / bandCount, sides, sides);
    if (band === 0) wall += 0.5 * edge(rim_m, base, sides) + (corner(base) * 2) / 3;
    if (band === bandCount - 1) wall += 0.5 * edge(rim_m, lid, sides) + (corner(lid) * 2) / 3;
    shapes.push({
      facts: sides,
      inside_m2,
      outside_m2: (2 * (outerA + outerB) * outerC) / bandCount,
      wall_W_per_K: wall,
    });
  }
  shapes.push(flat(base));
  return shapes;
}

/** Fills one chain's links and foam heats: cells of equal thickness, areas growing so that the steady limit is exact. */
function fillChain(walls: Walls, chain: number, shape: ChainShape): number {
  const { facts } = shape;
  const g = areaGrowth((shape.wall_W_per_K * facts.thickness_m) / (facts.k_W_per_mK * shape.inside_m2));
  const volumeTo = (x: number): number =>
    shape.inside_m2 * facts.thickness_m * (g === 0 ? x : (Math.exp(g * x) - 1) / g);
  const resistance = (from: number, to: number): number =>
    (facts.thickness_m / (facts.k_W_per_mK * shape.inside_m2)) *
    (g === 0 ? to - from : (Math.exp(-g * from) - Math.exp(-g * to)) / g);
  const centres = [0, ...Array.from({ length: foamCells }, (_, j) => (j + 0.5) / foamCells), 1];
  for (let cell = 0; cell + 1 < cellCount; cell++)
    walls.link_W_per_K[chain * (cellCount - 1) + cell] = 1 / resistance(centres[cell], centres[cell + 1]);
  let foam = 0;
  for (let j = 0; j < foamCells; j++) {
    const heat = facts.foam_J_per_m3K * (volumeTo((j + 1) / foamCells) - volumeTo(j / foamCells));
    walls.heat_J_per_K[chain * cellCount + 1 + j] = heat;
    foam += heat;
  }
  return foam;
}

/** Share of the outside-to-inside difference that stands at each cell in the steady state; Σ C·(1 − f) counts. */
function effectiveHeat(walls: Walls): number {
  let sum = 0;
  for (let chain = 0; chain < chainCount; chain++) {
    const outer = outerFilm_W_per_m2K * walls.outside_m2[chain];
    const total = 1 / walls.wall_W_per_K[chain] + 1 / outer;
    let resistance = 0;
    for (let cell = 0; cell < cellCount; cell++) {
      sum += walls.heat_J_per_K[chain * cellCount + cell] * (1 - resistance / total);
      if (cell + 1 < cellCount) resistance += 1 / walls.link_W_per_K[chain * (cellCount - 1) + cell];
    }
  }
  return sum;
}

/** Film outside in a room: still air and radiation, for the stated conductance. */
const outerFilm_W_per_m2K: number = 3 + radiationFilm_W_per_m2K(0.92, 20, 20);

function steady_W_per_K(walls: Walls, scale: number, leak_W_per_K: number): number {
  let sum = walls.seal_W_per_K + leak_W_per_K;
  for (let chain = 0; chain < chainCount; chain++)
    sum +=
      1 / (1 / (scale * walls.wall_W_per_K[chain]) + 1 / (outerFilm_W_per_m2K * walls.outside_m2[chain]));
  return sum;
}

/**
 * The span in which a measured conductance of a body must lie: its joint and films alone at the low end, walls of next to
 * no insulation at the high end, neither included.
 *
 * @param body what stands in `measured_W_per_K` is left aside
 */
export function conductanceRange_W_per_K(
  body: CoolerBody,
  closures: Closures,
): { least_W_per_K: number; most_W_per_K: number } {
  const walls = buildWalls({ ...body, measured_W_per_K: null }, closures);
  return fitRange(walls, leakage_W_per_K(body, walls.inside_m3));
}

function fitRange(walls: Walls, leak_W_per_K: number): { least_W_per_K: number; most_W_per_K: number } {
  return {
    least_W_per_K: steady_W_per_K(walls, 1e-3, leak_W_per_K),
    most_W_per_K: steady_W_per_K(walls, 1e3, leak_W_per_K),
  };
}

/** What the air that a shut lid lets through carries. */
function leakage_W_per_K(body: CoolerBody, inside_m3: number): number {
  return (body.leak_per_h / 3600) * inside_m3 * 1.2 * 1006;
}

/** Makes the insulation fit a measured conductance; the joint and the films stay as they are. */
function scaleTo(walls: Walls, measured_W_per_K: number, leak_W_per_K: number): number {
  const { least_W_per_K: least, most_W_per_K: most } = fitRange(walls, leak_W_per_K);
  if (measured_W_per_K <= least || measured_W_per_K >= most)
    throw new DomainError(
      `measured_W_per_K must be ${least.toFixed(2)}…${most.toFixed(2)} for this body, got ${measured_W_per_K}`,
    );
  let low = 1e-3;
  let high = 1e3;
  for (let n = 0; n < 80; n++) {
    const mid = Math.sqrt(low * high);
    if (steady_W_per_K(walls, mid, leak_W_per_K) < measured_W_per_K) low = mid;
    else high = mid;
  }
  return Math.sqrt(low * high);
}

/**
 * Builds the walls of a body: transient chains whose steady limit is the shape-factor conductance.
 *
 * @throws DomainError when a measured conductance cannot belong to this body
 * @source langmuir-1913
 */
export function buildWalls(body: CoolerBody, closures: Closures): Walls {
  const { length_m: a, width_m: b, height_m: c } = body.inside;
  const shapes = chainShapes(body, closures);
  const walls: Walls = {
    heat_J_per_K: new Float64Array(chainCount * cellCount),
    link_W_per_K: new Float64Array(chainCount * (cellCount - 1)),
    growth_per_K: Float64Array.from(shapes, (s) => s.facts.growth_per_K),
    inside_m2: Float64Array.from(shapes, (s) => s.inside_m2),
    outside_m2: Float64Array.from(shapes, (s) => s.outside_m2),
    wall_W_per_K: Float64Array.from(shapes, (s) => s.wall_W_per_K),
    seal_W_per_K: body.seal_W_per_mK * 2 * (a + b),
    inside_m3: a * b * c,
    floor_m2: a * b,
    height_m: c,
    conductance_W_per_K: 0,
    effective_J_per_K: 0,
  };
  let foam_J_per_K = 0;
  shapes.forEach((shape, chain) => {
    foam_J_per_K += fillChain(walls, chain, shape);
  });
  const plastic_J_per_K = Math.max(
    0.3 * closures.body_J_per_kgK * body.emptyWeight_kg,
    closures.body_J_per_kgK * body.emptyWeight_kg - foam_J_per_K,
  );
  const skin_m2 = shapes.reduce((sum, s) => sum + s.inside_m2 + s.outside_m2, 0);
  shapes.forEach((shape, chain) => {
    walls.heat_J_per_K[chain * cellCount] = (plastic_J_per_K * shape.inside_m2) / skin_m2;
    walls.heat_J_per_K[chain * cellCount + cellCount - 1] = (plastic_J_per_K * shape.outside_m2) / skin_m2;
  });
  const leak_W_per_K = leakage_W_per_K(body, walls.inside_m3);
  if (body.measured_W_per_K !== null) {
    const scale = scaleTo(walls, body.measured_W_per_K, leak_W_per_K);
    for (let i = 0; i < walls.link_W_per_K.length; i++) walls.link_W_per_K[i] *= scale;
    for (let i = 0; i < chainCount; i++) walls.wall_W_per_K[i] *= scale;
  }
  walls.conductance_W_per_K = steady_W_per_K(walls, 1, leak_W_per_K);
  walls.effective_J_per_K = effectiveHeat(walls);
  return walls;
}
