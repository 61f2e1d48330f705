import type { EnthalpyCurve } from "../matter/curve.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { type Box, coreShare_frac, hasCore, type Part } from "./box.ts";
import type { Closures } from "./closures.ts";
import { slopesOf } from "./polyline.ts";

/** Ways in which a part takes up room and changes its surface, as the geometry tells them apart. */
export const foodKind = 0;
export const looseKind = 1;
export const blockKind = 2;
export const closedKind = 3;
const dryIceKind = 4;

const kinds: Readonly<Record<Part["form"], number>> = {
  food: foodKind,
  cube: looseKind,
  crushed: looseKind,
  block: blockKind,
  "closed ice": closedKind,
  "dry ice": dryIceKind,
};

/**
 * What the solver asks of the parts, one row a part, as flat columns: the parts themselves are looked at once in a step
 * and not at every use. Only masses, and what follows from them, change between two layouts.
 */
export interface Contents {
  nParts: number;
  kind: Uint8Array;
  layer: Int32Array;
  curves: EnthalpyCurve[];
  /** Slopes of each curve, K·kg/J. */
  slopes: Float64Array[];
  mass_kg: Float64Array;
  /** Of skin and core; 0 for a core that there is not. */
  skin_kg: Float64Array;
  core_kg: Float64Array;
  /** What of it is solid at the enthalpies last asked for; the whole of what does not melt away. */
  solid_kg: Float64Array;
  firstMass_kg: Float64Array;
  firstArea_m2: Float64Array;
  /** Room of a kilogram without gaps and with them, and the conductivity of a bed of it. */
  own_m3_per_kg: Float64Array;
  bulk_m3_per_kg: Float64Array;
  bed_W_per_mK: Float64Array;
  inner_m2K_per_W: Float64Array;
  /** Surface to the air of the layer; of food it depends on the ice around it and is 0 here. */
  hub_W_per_m2K: Float64Array;
  pool_W_per_m2K: Float64Array;
  core_W_per_kgK: Float64Array;
}

/** Room of a kilogram in its layer, gaps included. */
export function bulk_m3_per_kg(part: Part, closures: Closures): number {
  const own_m3_per_kg = 1 / part.density_kg_per_m3;
  if (part.form === "food") return own_m3_per_kg / closures.foodPacking_frac;
  if (part.form === "cube") return own_m3_per_kg / closures.cubePacking_frac;
  if (part.form === "crushed") return own_m3_per_kg / closures.crushedPacking_frac;
  return own_m3_per_kg / closures.blockFloor_frac;
}

function bed_W_per_mK(part: Part, closures: Closures): number {
  if (part.form === "food") return closures.foodBed_W_per_mK;
  const loose = part.form === "cube" || part.form === "crushed";
  return loose ? closures.cubeBed_W_per_mK : closures.blockBed_W_per_mK;
}

function hub_W_per_m2K(part: Part, closures: Closures): number {
  if (part.form === "food") return 0;
  const loose = part.form === "cube" || part.form === "crushed";
  const contact = loose ? closures.iceContact_W_per_m2K : closures.contact_W_per_m2K;
  return 1 / (1 / contact + part.inner_m2K_per_W);
}

/** Cuts rows of zeros from larger pieces of memory: many small ones would cost more to get than to use. */
export type Room = (nNumbers: number) => Float64Array;

const piece = 2048;

export function makeRoom(): Room {
  let buffer = new ArrayBuffer(0);
  let used = 0;
  return (nNumbers) => {
    if (8 * nNumbers > buffer.byteLength - used) {
      buffer = new ArrayBuffer(8 * Math.max(piece, nNumbers));
      used = 0;
    }
    const row = new Float64Array(buffer, used, nNumbers);
    used += 8 * nNumbers;
    return row;
  };
}

/** Reads off all that stays the same of the parts as they lie now; `readMasses` reads the rest. */
export function makeContents({ parts, closures }: Box, room: Room): Contents {
  const column = (of: (part: Part) => number): Float64Array => {
    const out = room(parts.length);
    for (let p = 0; p < parts.length; p++) out[p] = of(parts[p]);
    return out;
  };
  const blank = (): Float64Array => room(parts.length);
  const kind = new Uint8Array(parts.length);
  const layer = new Int32Array(parts.length);
  for (let p = 0; p < parts.length; p++) {
    kind[p] = kinds[parts[p].form];
    layer[p] = parts[p].layer;
  }
  return {
    nParts: parts.length,
    kind,
    layer,
    curves: parts.map((part) => part.curve),
    slopes: parts.map((part) => slopesOf(part.curve)),
    mass_kg: blank(),
    skin_kg: blank(),
    core_kg: blank(),
    solid_kg: blank(),
    firstMass_kg: column((part) => part.firstMass_kg),
    firstArea_m2: column((part) => part.firstArea_m2),
    own_m3_per_kg: column((part) => 1 / part.density_kg_per_m3),
    bulk_m3_per_kg: column((part) => bulk_m3_per_kg(part, closures)),
    bed_W_per_mK: column((part) => bed_W_per_mK(part, closures)),
    inner_m2K_per_W: column((part) => part.inner_m2K_per_W),
    hub_W_per_m2K: column((part) => hub_W_per_m2K(part, closures)),
    pool_W_per_m2K: column((part) => 1 / (1 / closures.lotPool_W_per_m2K + part.inner_m2K_per_W)),
    core_W_per_kgK: column((part) => part.core_W_per_kgK),
  };
}

/** Reads the masses of the parts: loose ice and dry ice lose some in every step. */
export function readMasses(parts: readonly Part[], out: Contents): void {
  for (let p = 0; p < out.nParts; p++) {
    const part = parts[p];
    const mass = part.mass_kg;
    out.mass_kg[p] = mass;
    out.skin_kg[p] = hasCore(part) ? mass * (1 - coreShare_frac) : mass;
    out.core_kg[p] = hasCore(part) ? mass * coreShare_frac : 0;
  }
}

/** Sets what of each part is solid at the enthalpies given, and tells the water that has melted off loose ice. */
export function meltedWater_kg(contents: Contents, skin_J: Float64Array): number {
  const { nParts, kind, mass_kg, solid_kg } = contents;
  let water = 0;
  for (let p = 0; p < nParts; p++) {
    const mass = mass_kg[p];
    let solid = mass;
    if (kind[p] === looseKind || kind[p] === blockKind) {
      solid = -skin_J[p] / iceLatent_J_per_kg;
      if (solid >= mass) solid = mass;
      else if (!(solid > 0)) solid = 0;
      water += mass - solid;
    }
    solid_kg[p] = solid;
  }
  return water;
}
