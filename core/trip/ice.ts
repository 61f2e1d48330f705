import type { IceForm, LayerWish } from "../cooler/types.ts";
import { dryIce_C, dryIceDensity_kg_per_m3 } from "../matter/dryIce.ts";
import { iceDensity_kg_per_m3 } from "../matter/ice.ts";
import { packs } from "../matter/packs.ts";
import { parseQuantity, type Quantity, withoutComma } from "../quantity/parse.ts";
import { coolerNamed } from "./coolers.ts";
import type { AddIceFile, IceAmountFile, IceFile } from "./file.ts";
import { type Measure, measures, type Notes } from "./notes.ts";
import type { TripCooler, TripIce } from "./types.ts";

const iceTemperature: Measure = {
  dimension: "temperature",
  low: -60,
  high: 0,
  says: "a temperature from -60 C to 0 C: it is ice",
};
const dryIceTemperature: Measure = {
  dimension: "temperature",
  low: -80,
  high: -78,
  says: "about -78.5 C: it is dry ice",
};

/** Share of a bag of cubes that is ice. */
const cubeSolid_frac = 0.58;
/** Warmer than this, loose ice from a shop carries water. */
const wetFrom_C = -2;

/** What is usual for a form: how cold it comes, and where in the column it is put. */
interface Usual {
  at: string;
  atRange: readonly [string, string] | null;
  why: string;
  layer: "base" | "fill" | "top";
}
const shop = { at: "-2 C", atRange: ["-8 C", "0 C"], why: "not given: as a shop sells it" } as const;
const home = { at: "-16 C", atRange: ["-20 C", "-12 C"], why: "not given: from a home freezer" } as const;
const usual: Readonly<Record<IceForm, Usual>> = {
  block: { ...shop, layer: "base" },
  cube: { ...shop, layer: "fill" },
  crushed: { ...shop, layer: "fill" },
  jug: { ...home, layer: "base" },
  "gel pack": { ...home, layer: "top" },
  "eutectic pack": { ...home, layer: "top" },
  "dry ice": { at: `${dryIce_C} C`, atRange: null, why: "it is never warmer or colder", layer: "top" },
};

/** Where a form lies when nobody says. */
export const usualLayer = (form: IceForm): "base" | "fill" | "top" => usual[form].layer;

/** Mass per volume as bought: cubes with the air in the bag; a jug filled so that its ice just fills it. */
function stowed_kg_per_m3(form: IceForm): number {
  if (form === "dry ice") return dryIceDensity_kg_per_m3;
  if (form === "gel pack" || form === "eutectic pack") return packs[form].density_kg_per_m3;
  const solid = iceDensity_kg_per_m3(0);
  return form === "cube" || form === "crushed" ? cubeSolid_frac * solid : solid;
}

/** Room that one piece takes as it is stowed: a bag with the air in it. */
export function pieceRoom_m3(form: IceForm, each_kg: number): number {
  return each_kg / stowed_kg_per_m3(form);
}

/** A weight, or a volume times the density; NaN with the problem noted. */
export function statedMass_kg(notes: Notes, path: string, typed: string, density_kg_per_m3: number): number {
  if (parseQuantity(typed, "mass").ok) return notes.si(path, typed, measures.mass);
  if (parseQuantity(typed, "volume").ok) return density_kg_per_m3 * notes.si(path, typed, measures.volume);
  const write = withoutComma(typed);
  const must = "a weight or a volume with its unit, such as 3 lb or 355 mL";
  return notes.refuse(path, write === null ? must : `${must}; write ${write}`, typed);
}

interface IceAmount {
  mass_kg: number;
  pieces: number;
  each: string;
}

function amountOf(notes: Notes, path: string, file: IceAmountFile): IceAmount {
  const density = stowed_kg_per_m3(file.form);
  if (file.amount !== undefined && file.each !== undefined) {
    notes.refuse(`${path}.each`, "left out where amount is given", file.each);
  }
  if (file.amount !== undefined) {
    const mass_kg = statedMass_kg(notes, `${path}.amount`, file.amount, density);
    const pieces = file.pieces ?? 1;
    return { mass_kg, pieces, each: pieces === 1 ? file.amount : split(file.amount, pieces) };
  }
  if (file.each === undefined) {
    const must = "given: a weight or a volume, such as 10 lb, or else pieces with each";
    return { mass_kg: notes.refuse(`${path}.amount`, must, undefined), pieces: 1, each: "" };
  }
  const pieces = file.pieces ?? Number(notes.assume(`${path}.pieces`, "1", "not given"));
  return {
    mass_kg: pieces * statedMass_kg(notes, `${path}.each`, file.each, density),
    pieces,
    each: file.each,
  };
}

/** One of so many equal parts, in the unit that was typed. */
function split(typed: string, pieces: number): string {
  const readings = [parseQuantity(typed, "mass"), parseQuantity(typed, "volume")];
  const found = readings.find((reading) => reading.ok) as { quantity: Quantity } | undefined;
  if (found === undefined) return typed;
  return `${Number((found.quantity.typedValue / pieces).toPrecision(3))} ${found.quantity.unit.symbol}`;
}

/** What ice is like as it goes in or is sold: cold, and how much of it water already. */
export function iceCondition(
  notes: Notes,
  file: { form: IceForm; liquid?: string | undefined },
  path: string,
  at: { path: string; typed: string | undefined },
): { start_C: number; liquid_frac: number } {
  const { at: usualAt, atRange, why } = usual[file.form];
  const typed = at.typed ?? notes.assume(at.path, usualAt, why, atRange);
  const start_C = notes.si(at.path, typed, file.form === "dry ice" ? dryIceTemperature : iceTemperature);
  const loose = file.form === "cube" || file.form === "crushed";
  if (file.liquid !== undefined) {
    const liquid_frac = notes.si(`${path}.liquid`, file.liquid, {
      ...measures.share,
      high: 0.6,
      says: "a share from 0 % to 60 %",
    });
    if (liquid_frac > 0 && start_C < -10)
      notes.refuse(`${path}.liquid`, "0 % for ice below -10 C", file.liquid);
    return { start_C, liquid_frac };
  }
  if (!loose || !(start_C >= wetFrom_C)) return { start_C, liquid_frac: 0 };
  const wet = notes.assume(`${path}.liquid`, "3 %", "not given: loose ice at its melting point is wet", [
    "0 %",
    "10 %",
  ]);
  return { start_C, liquid_frac: notes.si(`${path}.liquid`, wet, measures.share) };
}

function layerOf(
  notes: Notes,
  path: string,
  file: { form: IceForm; layer?: LayerWish | undefined },
): LayerWish {
  if (file.layer !== undefined) return file.layer;
  const { layer } = usual[file.form];
  return notes.assume(`${path}.layer`, layer, `not given: usual for ${file.form}`, null, "common-practice");
}

/** Ice aboard from the start. */
export function resolveIce(
  notes: Notes,
  coolers: readonly TripCooler[],
  file: IceFile,
  path: string,
): TripIce {
  return {
    id: path,
    path,
    form: file.form,
    ...amountOf(notes, path, file),
    ...iceCondition(notes, file, path, { path: `${path}.at`, typed: file.at }),
    cooler: iceCooler(notes, coolers, file, path),
    layer: layerOf(notes, path, file),
    price: file.price ?? null,
    putIn_s: null,
    boughtBefore_s: boughtBefore(notes, file, path),
  };
}

/** Dry ice is less every hour from when it is bought; other ice is told by its temperature and water at departure. */
function boughtBefore(notes: Notes, file: IceFile, path: string): number {
  const at = `${path}.bought`;
  if (file.form !== "dry ice") {
    const must = "left out but for dry ice: write at and liquid as they are at departure";
    return file.bought === undefined ? 0 : notes.refuse(at, must, file.bought);
  }
  const why = "not given: as if it came just before departure";
  const typed = file.bought ?? notes.assume(at, "0 h", why, ["0 h", "24 h"]);
  return notes.si(at, typed, measures.boughtBefore);
}

function iceCooler(notes: Notes, coolers: readonly TripCooler[], file: IceFile, path: string): number {
  if (file.in !== undefined) return coolerNamed(notes, coolers, `${path}.in`, file.in);
  const names = coolers.map((cooler) => cooler.name);
  if (names.length > 1)
    return notes.refuse(`${path}.in`, `the name of a cooler: ${names.slice(0, 10).join(", ")}`, undefined);
  notes.assume(`${path}.in`, names[0] as string, "not given: the only cooler");
  return 0;
}

/** Ice put in on the way. */
export function resolveAddedIce(
  notes: Notes,
  coolers: readonly TripCooler[],
  file: AddIceFile,
  path: string,
  putIn_s: number,
): TripIce {
  return {
    id: path,
    path,
    form: file.form,
    ...amountOf(notes, path, file),
    ...iceCondition(notes, file, path, { path: `${path}.from`, typed: file.from }),
    cooler: coolerNamed(notes, coolers, `${path}.to`, file.to),
    layer: layerOf(notes, path, file),
    price: file.price ?? null,
    putIn_s,
    boughtBefore_s: 0,
  };
}

/** Mass of one piece for sale. */
export function pieceMass_kg(notes: Notes, path: string, form: IceForm, typed: string): number {
  return statedMass_kg(notes, path, typed, stowed_kg_per_m3(form));
}
