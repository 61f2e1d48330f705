import { MaxRectsBin } from "maxrects-packer/dist/maxrects-packer.mjs";
import type { Size } from "./sizes.ts";
import type { Stow, StowLot } from "./stow.ts";

/** One box in a layer. */
export interface Put {
  lot: StowLot;
  stow: Stow;
  x_m: number;
  y_m: number;
  /** Of its underside above that of the layer. */
  up_m: number;
  length_m: number;
  width_m: number;
  height_m: number;
}

/** What is laid next: so many lots are laid, and so many boxes of the one after them. */
export interface Cursor {
  lotIndex: number;
  stowIndex: number;
}

export interface LaidLayer {
  puts: Put[];
  thick_m: number;
  next: Cursor;
}

/** The floor, cut to whole millimetres so that no rounding decides what fits. */
export interface FloorSize {
  length_m: number;
  width_m: number;
}

/** A level place to set things on: the floor of the layer, or what stands on it. */
interface Shelf {
  x_mm: number;
  y_mm: number;
  up_m: number;
  length_mm: number;
  width_mm: number;
  /** Made when the first thing is tried here. */
  bin: Bin | null;
}

type Bin = MaxRectsBin<{ width: number; height: number; x: number; y: number; rot?: boolean }>;

/** Least loss of floor to the rectangle that is chosen, as the packer numbers its ways. */
const byArea = 0;
interface BinOptions {
  smart: boolean;
  pot: boolean;
  square: boolean;
  allowRotation: boolean;
  logic: number;
}

export const binOptions: BinOptions = {
  smart: false,
  pot: false,
  square: false,
  allowRotation: true,
  logic: byArea,
};
/** Nothing is set on what leaves less than this below the height of the layer. */
const leastShelf_m = 0.015;
export const nMillimetres = (length_m: number): number => Math.max(1, Math.ceil(length_m * 1000 - 1e-6));

/** Heights that a layer could have so that something in it ends level with it; no layer is higher than `most_m`. */
function heights_m(lots: readonly StowLot[], from: Cursor, most_m: number): number[] {
  const soon = lots.slice(from.lotIndex, from.lotIndex + 6).filter((lot) => lot.sizes.length > 0);
  const all = new Set<number>();
  for (const { sizes } of soon)
    for (const { height_m } of sizes)
      for (let k = 1; k <= 4 && k * height_m <= most_m; k++) all.add(nMillimetres(k * height_m));
  // Something must go in: whatever lies next, at the least height that it has.
  const least = nMillimetres(Math.min(...lots[from.lotIndex].sizes.map(({ height_m }) => height_m)));
  return [...all, least]
    .filter((height_mm) => height_mm >= least)
    .sort((a, b) => a - b)
    .map((height_mm) => height_mm / 1000);
}

/** Sets a column of equal boxes on a shelf, as many as the height takes; null where there is no place for any. */
function setOn(
  shelf: Shelf,
  lot: StowLot,
  from: number,
  high_m: number,
): { puts: Put[]; shelf: Shelf } | null {
  const left = lot.stows.length - from;
  const room_m = high_m - shelf.up_m + 1e-9;
  const ways = lot.sizes
    .map((size) => ({ size, count: Math.min(left, Math.floor(room_m / size.height_m)) }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count * b.size.height_m - a.count * a.size.height_m);
  for (const { size, count } of ways) {
    const spot = spotFor(shelf, size);
    if (spot === null) continue;
    const [x_m, y_m] = [spot.x_mm / 1000, spot.y_mm / 1000];
    const [length_m, width_m] = [spot.length_mm / 1000, spot.width_mm / 1000];
    const puts = lot.stows.slice(from, from + count).map((stow, k): Put => {
      const up_m = shelf.up_m + k * size.height_m;
      return { lot, stow, x_m, y_m, up_m, length_m, width_m, height_m: size.height_m };
    });
    return { puts, shelf: { ...spot, up_m: shelf.up_m + count * size.height_m, bin: null } };
  }
  return null;
}

type Spot = Pick<Shelf, "x_mm" | "y_mm" | "length_mm" | "width_mm">;

function spotFor(shelf: Shelf, { length_m, width_m }: Size): Spot | null {
  const [long, short] = [
    Math.max(shelf.length_mm, shelf.width_mm),
    Math.min(shelf.length_mm, shelf.width_mm),
  ];
  // Rounded up to the millimetre, a box as large as the floor must still fit it.
  const slack = shelf.up_m === 0 ? 1 : 0;
  const [width, height] = [nMillimetres(length_m), nMillimetres(width_m)].map((side, i) =>
    side <= (i === 0 ? long : short) + slack ? Math.min(side, i === 0 ? long : short) : side,
  ) as [number, number];
  if (Math.max(width, height) > long || Math.min(width, height) > short) return null;
  shelf.bin ??= new MaxRectsBin(shelf.length_mm, shelf.width_mm, 0, binOptions);
  const put = shelf.bin.add({ width, height, x: 0, y: 0 });
  if (put === undefined) return null;
  const [length_mm, width_mm] = put.rot === true ? [height, width] : [width, height];
  return { x_mm: shelf.x_mm + put.x, y_mm: shelf.y_mm + put.y, length_mm, width_mm };
}

/** How layers are laid. */
export interface LayerRule {
  floor: FloorSize;
  /** No layer is higher. */
  most_m: number;
  /** Tender food shares no layer with ice that bites; else a towel must keep them apart. */
  apart: boolean;
}

/** Poured ice and what lies over everything begin a layer of their own; so may tender food after ice that bites. */
function beginsLayer(lot: StowLot, puts: readonly Put[], apart: boolean): boolean {
  const last = puts.at(-1);
  if (last === undefined) return false;
  if (lot.sizes.length === 0 || (lot.berth === "top" && last.lot.berth !== "top")) return true;
  return apart && puts.some((put) => (lot.tender && put.lot.bites) || (lot.bites && put.lot.tender));
}

const floorShelf = ({ length_m, width_m }: FloorSize): Shelf => ({
  x_mm: 0,
  y_mm: 0,
  up_m: 0,
  length_mm: Math.round(1000 * length_m),
  width_mm: Math.round(1000 * width_m),
  bin: null,
});

function layAt(
  lots: readonly StowLot[],
  from: Cursor,
  { floor, apart }: LayerRule,
  high_m: number,
): LaidLayer {
  const shelves: Shelf[] = [floorShelf(floor)];
  const puts: Put[] = [];
  let { lotIndex, stowIndex } = from;
  while (lotIndex < lots.length) {
    const lot = lots[lotIndex];
    if (beginsLayer(lot, puts, apart)) break;
    let set: ReturnType<typeof setOn> = null;
    for (let i = 0; i < shelves.length && set === null; i++) set = setOn(shelves[i], lot, stowIndex, high_m);
    if (set === null) break;
    puts.push(...set.puts);
    if (high_m - set.shelf.up_m >= leastShelf_m) {
      shelves.push(set.shelf);
      shelves.sort((a, b) => a.up_m - b.up_m);
    }
    stowIndex += set.puts.length;
    if (stowIndex < lot.stows.length) continue;
    lotIndex++;
    stowIndex = 0;
  }
  const thick_m = Math.max(0, ...puts.map(({ up_m, height_m }) => up_m + height_m));
  return { puts, thick_m, next: { lotIndex, stowIndex } };
}

/**
 * The layers that may come next: boxes in their order as long as one finds a place, on the floor or on a box laid before.
 * Of two that lay as much, the thinner.
 */
export function nextLayers(lots: readonly StowLot[], from: Cursor, rule: LayerRule): LaidLayer[] {
  const best = new Map<string, LaidLayer>();
  for (const high_m of heights_m(lots, from, rule.most_m)) {
    const one = layAt(lots, from, rule, high_m);
    if (one.puts.length === 0) continue;
    const key = `${one.next.lotIndex} ${one.next.stowIndex}`;
    const other = best.get(key);
    if (other === undefined || one.thick_m < other.thick_m - 1e-9) best.set(key, one);
  }
  return [...best.values()];
}
