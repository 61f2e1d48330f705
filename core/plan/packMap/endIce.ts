import { MaxRectsBin } from "maxrects-packer/dist/maxrects-packer.mjs";
import type { Field } from "./fields.ts";
import { binOptions, type FloorSize, nMillimetres, type Put } from "./oneLayer.ts";
import type { Size } from "./sizes.ts";
import type { Stow, StowLot } from "./stow.ts";

/** Ice that stands at one end of the cooler, and the field of the floor that it leaves. */
export interface EndIce {
  puts: Put[];
  high_m: number;
  rest: Field;
}

/** Beside ice that takes more of the floor than this there is no place for food worth the name. */
const most_frac = 0.7;
const step_mm = 10;

/**
 * Stands blocks and jugs at one end, on as little of the floor as they take in one storey, so that food can be laid beside
 * them in layers of its own. Of the ways in which each kind may lie, the one that wastes least room.
 *
 * @returns null where they leave too little beside them or stand higher than the inside
 */
export function endIce(lots: readonly StowLot[], floor: FloorSize, height_m: number): EndIce | null {
  let best: EndIce | null = null;
  let least_m3 = Number.POSITIVE_INFINITY;
  for (const ways of waysOf(lots)) {
    const one = inOneStorey(lots, ways, floor);
    if (one === null || one.high_m > height_m) continue;
    const taken_m3 = (floor.length_m - one.rest.length_m) * floor.width_m * one.high_m;
    if (taken_m3 < least_m3 - 1e-9) [best, least_m3] = [one, taken_m3];
  }
  return best;
}

/** One way to lie for each lot, in all combinations: there are two for most and hardly ever three kinds. */
function waysOf(lots: readonly StowLot[]): Size[][] {
  return lots
    .slice(0, 6)
    .reduce<Size[][]>((ways, { sizes }) => ways.flatMap((way) => sizes.map((size) => [...way, size])), [[]]);
}

function inOneStorey(
  lots: readonly StowLot[],
  ways: readonly Size[],
  { length_m, width_m }: FloorSize,
): EndIce | null {
  const pieces = lots.flatMap((lot, i) =>
    lot.stows.map((stow) => ({ lot, stow, size: ways[i] ?? lot.sizes[0]! })),
  );
  const [long_mm, wide_mm] = [Math.round(1000 * length_m), Math.round(1000 * width_m)];
  const area_mm2 = pieces.reduce(
    (sum, { size }) => sum + nMillimetres(size.length_m) * nMillimetres(size.width_m),
    0,
  );
  const first_mm = Math.max(step_mm, Math.floor(area_mm2 / wide_mm));
  for (let end_mm = first_mm; end_mm <= most_frac * long_mm; end_mm += step_mm) {
    const puts = within(pieces, end_mm, wide_mm);
    if (puts === null) continue;
    // What was stepped over is given back.
    const x_m = Math.max(...puts.map((put) => put.x_m + put.length_m));
    const high_m = Math.max(...puts.map((put) => put.height_m));
    return { puts, high_m, rest: { x_m, y_m: 0, length_m: length_m - x_m, width_m } };
  }
  return null;
}

function within(
  pieces: readonly { lot: StowLot; stow: Stow; size: Size }[],
  end_mm: number,
  wide_mm: number,
): Put[] | null {
  const bin = new MaxRectsBin(end_mm, wide_mm, 0, binOptions);
  const puts: Put[] = [];
  for (const { lot, stow, size } of pieces) {
    const [width, height] = [nMillimetres(size.length_m), nMillimetres(size.width_m)];
    const spot = bin.add({ width, height, x: 0, y: 0 });
    if (spot === undefined) return null;
    const [long_mm, short_mm] = spot.rot === true ? [height, width] : [width, height];
    const [x_m, y_m, length_m, width_m] = [spot.x, spot.y, long_mm, short_mm].map((side) => side / 1000);
    const place = { x_m: x_m!, y_m: y_m!, length_m: length_m!, width_m: width_m! };
    puts.push({ lot, stow, ...place, up_m: 0, height_m: size.height_m });
  }
  return puts;
}
