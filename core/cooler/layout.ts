import type { EnthalpyCurve } from "../matter/curve.ts";
import { dryIce_C, dryIceDensity_kg_per_m3, dryIceSublimation_J_per_kg } from "../matter/dryIce.ts";
import { iceDensity_kg_per_m3 } from "../matter/ice.ts";
import { packs } from "../matter/packs.ts";
import { waterConductivity_W_per_mK, waterCurve } from "../matter/water.ts";
import { coreShare_frac, isLoose, type Part, type PartForm, solid_kg } from "./box.ts";
import type { Closures } from "./closures.ts";
import { bulk_m3_per_kg } from "./contents.ts";
import { enthalpy_J_per_kg } from "./polyline.ts";
import type { FoodLot, IceLot, LayerWish, Lot } from "./types.ts";

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
const blockSurface = (volume_m3: number): number => 6.24 * Math.cbrt(volume_m3 ** 2);

/** Ends of the melting plateau: the steepest rise of the curve. */
function plateauOf(curve: EnthalpyCurve): { frozen_J_per_kg: number; molten_J_per_kg: number } {
  const { t_C, h_J_per_kg: h } = curve;
  let at = 0;
  const steep = (i: number): number => (h[i + 1] - h[i]) / Math.max(1e-6, t_C[i + 1] - t_C[i]);
  for (let i = 1; i + 1 < h.length; i++) if (steep(i) > steep(at)) at = i;
  return { frozen_J_per_kg: h[at], molten_J_per_kg: h[at + 1] };
}

/** Density of a piece of ice, a pack or dry ice, without the gaps between pieces. */
export function iceLotDensity_kg_per_m3(form: IceLot["form"]): number {
  if (form === "dry ice") return dryIceDensity_kg_per_m3;
  return form === "gel pack" || form === "eutectic pack"
    ? packs[form].density_kg_per_m3
    : iceDensity_kg_per_m3(0);
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
  const density = iceLotDensity_kg_per_m3(lot.form);
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
const bulk_m3 = (part: Part, closures: Closures): number => part.mass_kg * bulk_m3_per_kg(part, closures);

/** Where in the column a lot is laid: under everything, in the rows of food, in their gaps, over everything. */
export type Berth = "base" | "rows" | "fill" | "top";

export function berthOf(lot: Lot): Berth {
  if (typeof lot.layer === "number") return lot.layer <= 0 ? "base" : "rows";
  if (lot.layer === "base" || lot.layer === "fill" || lot.layer === "top")
    return lot.kind === "food" && lot.layer === "fill" ? "rows" : lot.layer;
  if (lot.kind === "food") return "rows";
  if (lot.form === "block" || lot.form === "jug") return "base";
  if (lot.form === "cube" || lot.form === "crushed") return "fill";
  return "top";
}

/** Canonical order from the base up, so that the order in which things are listed does not matter; wishes come first. */
function lowerFirst(a: Placed, b: Placed): number {
  const one = rank(a.lot);
  const two = rank(b.lot);
  const i = one.findIndex((value, k) => value !== two[k]);
  // What agrees in all of these is the same matter: then the name may decide.
  return i >= 0 ? one[i] - two[i] : a.lot.id < b.lot.id ? -1 : a.lot.id > b.lot.id ? 1 : 0;
}

/** What decides how low a lot lies, first things first. */
function rank(lot: Lot): number[] {
  const wish = typeof lot.layer === "number" ? lot.layer : Number.MAX_VALUE;
  const common = [lot.start_C, lot.mass_kg, lot.pieces];
  if (lot.kind === "ice") return [wish, 0, ...common, iceForms.indexOf(lot.form), lot.liquid_frac];
  const { curve, density_kg_per_m3, thick_m, k_W_per_mK, kFrozen_W_per_mK, shape } = lot;
  const matter = [
    density_kg_per_m3,
    thick_m,
    k_W_per_mK,
    kFrozen_W_per_mK,
    Object.keys(surfaceDepth_frac).indexOf(shape),
  ];
  return [wish, -lot.depth, ...common, ...matter, ...curve.h_J_per_kg];
}

const iceForms: readonly IceLot["form"][] = [
  "block",
  "cube",
  "crushed",
  "jug",
  "gel pack",
  "eutectic pack",
  "dry ice",
];

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

/** Rows that hold food now, from the base up. */
function foodRows(box: { parts: Part[] }): number[] {
  const rows = new Set(box.parts.filter((part) => part.form === "food").map((part) => part.layer));
  return [...rows].sort((a, b) => a - b);
}

/**
 * Puts a further part into a box that is already packed: where its wish says; else food into the top row, loose ice
 * into every row of food, the rest on top.
 */
export function addPart(box: { parts: Part[]; layers: number }, part: Part, wish: LayerWish): void {
  const rows = foodRows(box);
  const loose = part.form === "cube" || part.form === "crushed";
  if (loose && (wish === null || wish === "fill") && rows.length > 0) {
    const rest: Part = { ...part };
    rows.forEach((layer, i) => {
      box.parts.push({ ...splitPart(rest, 1 / (rows.length - i)), layer });
    });
    return;
  }
  const layer = layerFor(box, part, wish, rows.at(-1) ?? null);
  box.layers = Math.max(box.layers, layer + 1);
  box.parts.push({ ...part, layer });
}

function layerFor(
  box: { parts: Part[]; layers: number },
  part: Part,
  wish: LayerWish,
  topRow: number | null,
): number {
  if (wish === "base") return 0;
  if (typeof wish === "number") return Math.min(Math.max(0, Math.floor(wish)), box.layers);
  if (part.form === "food" && wish !== "top") return topRow ?? (box.parts.length > 0 ? box.layers : 0);
  // On top of the food, or beside what lies on top already.
  return topRow === box.layers - 1 ? box.layers : box.layers - 1;
}

/** Drops what has melted away and closes up layers that nothing lies in any more. */
export function tidy(box: { parts: Part[]; layers: number }): void {
  box.parts = box.parts.filter((part) => part.mass_kg > 0);
  const used = [...new Set(box.parts.map((part) => part.layer))].sort((a, b) => a - b);
  for (const part of box.parts) part.layer = used.indexOf(part.layer);
  box.layers = Math.max(1, used.length);
}

/** Water that loose ice brings along (shop ice) runs down at once. */
export function shedWater(box: { parts: Part[]; pool_kg: number }): void {
  for (const part of box.parts) {
    if (!isLoose(part.form)) continue;
    const left = solid_kg(part, part.skin_J);
    box.pool_kg += part.mass_kg - left;
    part.mass_kg = left;
  }
}
