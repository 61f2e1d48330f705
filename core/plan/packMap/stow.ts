import { medianClosures } from "../../cooler/closures.ts";
import { type Berth, berthOf, iceLotDensity_kg_per_m3, layOut, partOf } from "../../cooler/layout.ts";
import type { CoolerInput, FoodLot, IceLot } from "../../cooler/types.ts";
import type { PackPlace } from "../../forecast/planResult.ts";
import { pieceRoom_m3 } from "../../trip/ice.ts";
import type { Trip, TripFood, TripIce } from "../../trip/types.ts";
import { foodSizes, iceSizes, isTooLong, perTrayCount, portionCount, type Size, traySizes } from "./sizes.ts";

/** One box to stow: a piece, or a tray of small ones. */
export interface Stow {
  what: string;
  share_frac: number;
}

/** Everything of one lot, in the order from the base up. */
export interface StowLot {
  item: string;
  kind: PackPlace["kind"];
  berth: Berth;
  /** Ice that freezes what it touches. */
  bites: boolean;
  /** Food that freezing ruins. */
  tender: boolean;
  /** Ways in which a box may lie; empty for loose ice, which is poured. */
  sizes: readonly Size[];
  stows: readonly Stow[];
  /** As the file counts them: bags of loose ice, pieces of the rest. */
  pieces: number;
  /** Room that the reckoning gives it, with the gaps between its pieces; of loose ice, with the air in it. */
  bulk_m3: number;
  /** Of the gaps between pieces of food. */
  gaps_m3: number;
  /** Keeps its shape: a can, a block, a frozen bag; what is soft gives way to what lies beside it. */
  rigid: boolean;
  /** A piece of ice that, as it is usually shaped, is too long for the cooler. */
  isLarge: boolean;
  /** What the file does not say and the map had to assume. */
  note: string | null;
}

/** Ice warmer than this hardly freezes anything. */
const bitesBelow_C = -1;

function kindOf(food: TripFood): PackPlace["kind"] {
  if (food.raw) return "raw";
  if (food.state === "frozen") return "frozen";
  if (food.like.kind === "drink") return "drink";
  return food.like.kind === "produce" ? "produce" : "ready";
}

/** Numbers from–to of a whole, as one writes them on tape. */
function counted(name: string, noun: string, from: number, to: number, of: number): string {
  if (of === 1) return name;
  if (from === 1 && to === of) return `${name}, all ${of}`;
  return from === to ? `${name}, ${noun}${from} of ${of}` : `${name}, ${from}–${to} of ${of}`;
}

/** Pieces dealt into trays as evenly as whole pieces go. */
function dealt(name: string, noun: string, pieces: number, perTray: number): Stow[] {
  const trays = Math.ceil(pieces / perTray);
  let from = 1;
  return Array.from({ length: trays }, (_, i) => {
    const count = Math.ceil((pieces - from + 1) / (trays - i));
    const what = counted(name, noun, from, from + count - 1, pieces);
    from += count;
    return { what, share_frac: count / pieces };
  });
}

function foodStow(food: TripFood, lot: FoodLot, inside: CoolerInput["body"]["inside"]): StowLot {
  const split = portionCount(lot);
  const pieces = lot.pieces * split;
  const volume_m3 = lot.mass_kg / lot.density_kg_per_m3;
  const perTray = perTrayCount(pieces, volume_m3 / pieces);
  const noun = lot.shape === "slab" ? "bag " : "";
  const bulk_m3 = volume_m3 / medianClosures.foodPacking_frac;
  return {
    item: food.name,
    kind: kindOf(food),
    berth: berthOf(lot),
    bites: false,
    tender: food.freezesBadly && food.state !== "frozen",
    sizes: traySizes(perTray, foodSizes(lot, volume_m3 / pieces, inside), inside),
    stows: dealt(food.name, noun, pieces, perTray),
    pieces: lot.pieces,
    bulk_m3,
    gaps_m3: bulk_m3 - volume_m3,
    rigid: lot.shape === "cylinder" || food.state === "frozen",
    isLarge: false,
    note: split === 1 ? null : `${food.name}: one amount in the file, drawn as ${split} pieces`,
  };
}

const packForms: ReadonlySet<string> = new Set(["gel pack", "eutectic pack"]);

function iceStow(ice: TripIce, lot: IceLot, inside: CoolerInput["body"]["inside"]): StowLot {
  const { form } = lot;
  const loose = form === "cube" || form === "crushed";
  const each_m3 = loose ? pieceRoom_m3(form, lot.mass_kg / lot.pieces) : 0;
  const solid_m3 = lot.mass_kg / lot.pieces / iceLotDensity_kg_per_m3(form);
  const name = `${ice.each.trim().replace(/\s+/g, "-")} ${form}`;
  return {
    item: form,
    kind: loose ? "loose ice" : packForms.has(form) ? "pack" : "ice",
    berth: berthOf(lot),
    bites: !loose && lot.start_C < bitesBelow_C,
    tender: false,
    sizes: loose ? [] : iceSizes(form, solid_m3, inside),
    stows: loose ? [{ what: looseName(form, lot.pieces), share_frac: 1 }] : dealt(name, "", lot.pieces, 1),
    pieces: lot.pieces,
    bulk_m3: loose ? each_m3 * lot.pieces : (solid_m3 * lot.pieces) / medianClosures.blockFloor_frac,
    gaps_m3: 0,
    rigid: !loose,
    isLarge: !loose && isTooLong(form, solid_m3, inside),
    note: null,
  };
}

const looseName = (form: "cube" | "crushed", pieces: number): string =>
  `${form === "cube" ? "cubes" : "crushed ice"}, ${pieces === 1 ? "1 bag" : `${pieces} bags`}`;

/**
 * What goes into one cooler before departure, from the base up, in the order in which the reckoning lays it: wishes first,
 * then raw, then what is eaten last. The order of the trip file plays no part in it.
 */
export function stowOrder(trip: Trip, cooler: CoolerInput): StowLot[] {
  const { inside } = cooler.body;
  const foods = new Map(trip.food.map((food) => [food.id, food]));
  const ices = new Map(trip.ice.map((ice) => [ice.id, ice]));
  // Lots alike in everything else are told apart by name instead of their place in the file.
  const named = cooler.lots.map((lot) => ({
    ...lot,
    id: foods.get(lot.id)?.name ?? ices.get(lot.id)!.each,
  }));
  const parts = named.map((lot, i) => partOf(lot, i, medianClosures));
  const laid = layOut(parts, named, inside.length_m * inside.width_m, medianClosures);
  return [...new Set(laid.parts.map((part) => part.lot))].map((i) => {
    const lot = cooler.lots[i];
    return lot.kind === "food"
      ? foodStow(foods.get(lot.id)!, lot, inside)
      : iceStow(ices.get(lot.id)!, lot, inside);
  });
}
