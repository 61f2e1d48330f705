import type { EnthalpyCurve } from "../matter/curve.ts";
import { dryIce_C, dryIceDensity_kg_per_m3, dryIceSublimation_J_per_kg } from "../matter/dryIce.ts";
import { packs } from "../matter/packs.ts";
import { waterConductivity_W_per_mK, waterCurve } from "../matter/water.ts";
import { coreShare_frac, isLoose, type Part, type PartForm } from "./box.ts";
import type { Closures } from "./closures.ts";
import { enthalpy_J_per_kg } from "./polyline.ts";
import type { FoodLot, IceLot, Lot } from "./types.ts";

/** Bulk depth that one row of food takes at the most before a further row is begun, and how many rows at the most. */
const rowDepth_m = 0.1;
const maxRows = 4;
/** Pieces thicker than this have a core that lags behind the skin. */
const coreFrom_m = 0.03;

/** Shop ice colder than this has no water on it. */
const wetFrom_C = -8;

/** Solid carbon dioxide against its gas at the same temperature: a plateau; what has sublimed is gone. */
const dryIceCurve: EnthalpyCurve = {
  t_C: Float64Array.of(dryIce_C - 1, dryIce_C, dryIce_C, dryIce_C + 1),
  h_J_per_kg: Float64Array.of(-dryIceSublimation_J_per_kg - 1300, -dryIceSublimation_J_per_kg, 0, 800),
};

interface Placed {
  index: number;
  lot: Lot;
}

/** Surface of one compact block of ice: sides 1.5 : 1 : 0.75. */
const blockSurface = (volume_m3: number): number => 6.24 * volume_m3 ** (2 / 3);

/** Ends of the melting plateau: the steepest rise of the curve. */
function plateauOf(curve: EnthalpyCurve): { frozen_J_per_kg: number; molten_J_per_kg: number } {
  const { t_C, h_J_per_kg: h } = curve;
  let at = 0;
  const steep = (i: number): number => (h[i + 1] - h[i]) / Math.max(1e-6, t_C[i + 1] - t_C[i]);
  for (let i = 1; i + 1 < h.length; i++) if (steep(i) > steep(at)) at = i;
  return { frozen_J_per_kg: h[at], molten_J_per_kg: h[at + 1] };
}

function icePart(lot: IceLot, index: number, closures: Closures): Part {
  const forms: Record<IceLot["form"], PartForm> = {
    block: "block",
    cube: "cube",
    crushed: "crushed",
    jug: "closed ice",
    "gel pack": "closed ice",
    "eutectic pack": "closed ice",
    "dry ice": "dry ice",
  };
  const form = forms[lot.form];
  const pack = lot.form === "gel pack" || lot.form === "eutectic pack" ? packs[lot.form] : null;
  const curve = form === "dry ice" ? dryIceCurve : pack ? pack.curve : waterCurve;
  const density = form === "dry ice" ? dryIceDensity_kg_per_m3 : pack ? pack.density_kg_per_m3 : 917;
  const piece_m3 = lot.mass_kg / lot.pieces / density;
  let area = lot.pieces * blockSurface(piece_m3);
  if (form === "cube") area = closures.cubeArea_m2_per_kg * lot.mass_kg;
  if (form === "crushed") area = closures.crushedArea_m2_per_kg * lot.mass_kg;
  // A pack or a jug melts from its skin: half its thickness of still liquid at the worst, a third of that on average.
  const inner = form === "closed ice" ? (lot.pieces * piece_m3) / area / (3 * waterConductivity_W_per_mK) : 0;
  const wet = isLoose(form) && lot.start_C >= wetFrom_C;
  const start =
    form === "dry ice"
      ? -dryIceSublimation_J_per_kg
      : wet
        ? (1 - lot.liquid_frac) * enthalpy_J_per_kg(curve, lot.start_C)
        : enthalpy_J_per_kg(curve, lot.start_C);
  return {
    lot: index,
    form,
    layer: 0,
    curve,
    mass_kg: lot.mass_kg,
    firstMass_kg: lot.mass_kg,
    firstArea_m2: area,
    density_kg_per_m3: density,
    inner_m2K_per_W: inner,
    core_W_per_kgK: 0,
    ...plateauOf(curve),
    skin_J: start * lot.mass_kg,
    core_J: 0,
  };
}

/** Volume over surface, as a share of the thickness or diameter: plate, long cylinder, sphere. */
const surfaceDepth_frac = { slab: 1 / 2, cylinder: 1 / 4, lump: 1 / 6 } as const;
/** Mean resistance to the inside of a thing that warms evenly: half thickness or radius / (this × k). */
const meanDepth_ratio = { slab: 3, cylinder: 4, lump: 5 } as const;

function foodPart(lot: FoodLot, index: number): Part {
  const volume_m3 = lot.mass_kg / lot.density_kg_per_m3;
  // Volume over surface gives the surface; heat still has to go half the thickness or the radius to the middle.
  const area_m2 = volume_m3 / (lot.thick_m * surfaceDepth_frac[lot.shape]);
  const half_m = lot.thick_m / 2;
  const k = 0.5 * (lot.k_W_per_mK + lot.kFrozen_W_per_mK);
  const thick = lot.thick_m > coreFrom_m;
  const h = enthalpy_J_per_kg(lot.curve, lot.start_C) * lot.mass_kg;
  return {
    lot: index,
    form: "food",
    layer: 0,
    curve: lot.curve,
    mass_kg: lot.mass_kg,
    firstMass_kg: lot.mass_kg,
    firstArea_m2: area_m2,
    density_kg_per_m3: lot.density_kg_per_m3,
    inner_m2K_per_W: half_m / k / (thick ? 4 : meanDepth_ratio[lot.shape]),
    frozen_J_per_kg: 0,
    molten_J_per_kg: 0,
    core_W_per_kgK: thick ? (k * area_m2) / (half_m / 2) / lot.mass_kg : 0,
    skin_J: thick ? h * (1 - coreShare_frac) : h,
    core_J: thick ? h * coreShare_frac : 0,
  };
}

/** A lot as one part, at its starting temperature, not yet in a layer. */
export function partOf(lot: Lot, index: number, closures: Closures): Part {
  return lot.kind === "ice" ? icePart(lot, index, closures) : foodPart(lot, index);
}

/** Splits off a share of a part; what is left keeps the rest. Mass, heat and surface go together. */
export function splitPart(part: Part, share_frac: number): Part {
  const taken: Part = { ...part };
  for (const key of ["mass_kg", "firstMass_kg", "firstArea_m2", "skin_J", "core_J"] as const) {
    taken[key] = part[key] * share_frac;
    part[key] -= taken[key];
  }
  return taken;
}

/** Room a part takes in a layer, gaps included. */
export function bulk_m3(part: Part, closures: Closures): number {
  const solid = part.mass_kg / part.density_kg_per_m3;
  if (part.form === "food") return solid / closures.foodPacking_frac;
  if (part.form === "cube") return solid / closures.cubePacking_frac;
  if (part.form === "crushed") return solid / closures.crushedPacking_frac;
  return solid / closures.blockFloor_frac;
}

type Berth = "base" | "rows" | "fill" | "top";

function berthOf(lot: Lot): Berth {
  if (typeof lot.layer === "number") return lot.layer <= 0 ? "base" : "rows";
  if (lot.layer === "base" || lot.layer === "fill" || lot.layer === "top")
    return lot.kind === "food" && lot.layer === "fill" ? "rows" : lot.layer;
  if (lot.kind === "food") return "rows";
  if (lot.form === "block" || lot.form === "jug") return "base";
  if (lot.form === "cube" || lot.form === "crushed") return "fill";
  return "top";
}

/** Canonical order from the base up, so that the order in which things are listed does not matter. */
function lowerFirst(a: Placed, b: Placed): number {
  const depth = (p: Placed): number => (p.lot.kind === "food" ? p.lot.depth : 0);
  const wish = (p: Placed): number => (typeof p.lot.layer === "number" ? p.lot.layer : Number.NaN);
  const both = Number.isFinite(wish(a)) && Number.isFinite(wish(b)) ? wish(a) - wish(b) : 0;
  return (
    both ||
    depth(b) - depth(a) ||
    a.lot.start_C - b.lot.start_C ||
    a.lot.mass_kg - b.lot.mass_kg ||
    (a.lot.id < b.lot.id ? -1 : a.lot.id > b.lot.id ? 1 : 0)
  );
}

/**
 * Lays parts into layers from the base up: base ice, rows of food (eaten last lowest) with loose ice in their gaps,
 * what lies on top. Sets `layer` on every part, splitting parts that span rows, and returns them with the count.
 */
export function layOut(
  parts: Part[],
  lots: readonly Lot[],
  floor_m2: number,
  closures: Closures,
): { parts: Part[]; layers: number } {
  const by: Record<Berth, Part[]> = { base: [], rows: [], fill: [], top: [] };
  const ordered = [...parts].sort((a, b) =>
    lowerFirst({ index: a.lot, lot: lots[a.lot] }, { index: b.lot, lot: lots[b.lot] }),
  );
  for (const part of ordered) by[berthOf(lots[part.lot])].push(part);
  const out: Part[] = [];
  let layer = 0;
  const lay = (list: Part[]): void => {
    for (const part of list) out.push({ ...part, layer });
    layer++;
  };
  if (by.base.length > 0) lay(by.base);
  const rowBulk = by.rows.reduce((sum, p) => sum + bulk_m3(p, closures), 0);
  if (rowBulk > 0) {
    const rows = Math.max(1, Math.min(maxRows, Math.ceil(rowBulk / floor_m2 / rowDepth_m)));
    fillRows(by.rows, rows, rowBulk, layer, closures, out);
    spreadFill(by.fill, rows, layer, out);
    layer += rows;
  } else if (by.fill.length > 0) lay(by.fill);
  if (by.top.length > 0) lay(by.top);
  return { parts: out, layers: Math.max(1, layer) };
}

function fillRows(
  list: Part[],
  rows: number,
  bulk: number,
  first: number,
  closures: Closures,
  out: Part[],
): void {
  const room = (bulk / rows) * (1 + 1e-9);
  let row = 0;
  let left = room;
  for (const whole of list) {
    const rest: Part = { ...whole };
    for (;;) {
      const need = bulk_m3(rest, closures);
      if (need <= left || row === rows - 1) {
        out.push({ ...rest, layer: first + row });
        left -= need;
        break;
      }
      // A sliver is not worth a part of its own.
      if (left > 0.02 * room) out.push({ ...splitPart(rest, left / need), layer: first + row });
      row++;
      left = room;
    }
  }
}

function spreadFill(list: Part[], rows: number, first: number, out: Part[]): void {
  for (const whole of list) {
    const rest: Part = { ...whole };
    for (let row = 0; row < rows; row++)
      out.push({ ...splitPart(rest, 1 / (rows - row)), layer: first + row });
  }
}

/** Puts a further part into a box that is already packed: food into the top row, loose ice into every row, the rest on top. */
export function addPart(box: { parts: Part[]; layers: number }, part: Part): void {
  const rows = [...new Set(box.parts.filter((p) => p.form === "food").map((p) => p.layer))].sort(
    (a, b) => a - b,
  );
  if (part.form === "food") {
    if (rows.length === 0 && box.parts.some((p) => p.mass_kg > 0)) box.layers++;
    box.parts.push({ ...part, layer: rows.at(-1) ?? box.layers - 1 });
    return;
  }
  if ((part.form === "cube" || part.form === "crushed") && rows.length > 0) {
    const rest: Part = { ...part };
    rows.forEach((layer, i) => {
      box.parts.push({ ...splitPart(rest, 1 / (rows.length - i)), layer });
    });
    return;
  }
  const onFood = rows.length > 0 && rows.at(-1) === box.layers - 1;
  if (onFood) box.layers++;
  box.parts.push({ ...part, layer: box.layers - 1 });
}
