import type { CoolerBody, FoodLot, IceForm } from "../../cooler/types.ts";

/** A box as it stands: how high, and how much of the floor it takes. */
export interface Size {
  height_m: number;
  length_m: number;
  width_m: number;
}

type Inside = CoolerBody["inside"];

/** A bag that one can still lay flat and lift, and the longest round and the largest lump that are one piece. */
const largestBag_m2 = 0.075;
const longest_m = 0.3;
const largestLump_m3 = 0.0025;
/** Length to width of a bag lying flat: usual, then as one may fold or fill it. */
const bagLength_ratios: readonly number[] = [1.5, 1.1, 2];

const size = (height_m: number, length_m: number, width_m: number): Size => ({ height_m, length_m, width_m });

/** A box of the same volume that fits the floor: what is cut off its sides is added to its height. */
function bounded({ height_m, length_m, width_m }: Size, inside: Inside): Size {
  const long = Math.max(inside.length_m, inside.width_m);
  const short = Math.min(inside.length_m, inside.width_m);
  const one = Math.min(Math.max(length_m, width_m), long);
  const two = Math.min(Math.min(length_m, width_m), short);
  return size((height_m * length_m * width_m) / (one * two), one, two);
}

/**
 * In how many pieces an amount comes that the file gives as one: nobody packs a stew for twelve as one bag.
 *
 * @source common-practice
 */
export function portionCount(lot: FoodLot): number {
  if (lot.pieces > 1) return 1;
  const volume_m3 = lot.mass_kg / lot.density_kg_per_m3;
  const most_m3 =
    lot.shape === "slab"
      ? largestBag_m2 * lot.thick_m
      : lot.shape === "cylinder"
        ? longest_m * (Math.PI / 4) * lot.thick_m ** 2
        : Math.max(largestLump_m3, lot.thick_m * lot.thick_m * lot.thick_m);
  return Math.max(1, Math.ceil(volume_m3 / most_m3 - 1e-9));
}

/** The ways in which a piece of food may lie: a bag flat, a round standing or lying, a lump on any side. */
export function foodSizes(lot: FoodLot, volume_m3: number, inside: Inside): Size[] {
  const { thick_m: thick, shape } = lot;
  if (shape === "slab") {
    return bagLength_ratios.map((ratio) => {
      const width = Math.sqrt(volume_m3 / thick / ratio);
      return bounded(size(thick, ratio * width, width), inside);
    });
  }
  if (shape === "cylinder") {
    const length = volume_m3 / ((Math.PI / 4) * thick ** 2);
    return [bounded(size(length, thick, thick), inside), bounded(size(thick, length, thick), inside)];
  }
  const least = Math.min(thick, Math.cbrt(volume_m3));
  const side = Math.sqrt(volume_m3 / least);
  return [bounded(size(least, side, side), inside), bounded(size(side, side, least), inside)];
}

/** Height, length and width of ice as it is made or sold, up to its size; all the ways in which it may lie. */
const iceShapes: Readonly<Record<Exclude<IceForm, "cube" | "crushed">, readonly Size[]>> = {
  block: [size(0.75, 1.5, 1), size(1, 1.5, 0.75)],
  jug: [size(1.6, 1, 1), size(1, 1.6, 1)],
  "gel pack": [size(1, 8, 6)],
  "eutectic pack": [size(1, 8, 6)],
  "dry ice": [size(1, 4, 4)],
};

type FirmIce = Exclude<IceForm, "cube" | "crushed">;

const scaled = ({ height_m, length_m, width_m }: Size, volume_m3: number): Size => {
  const unit = Math.cbrt(volume_m3 / (height_m * length_m * width_m));
  return size(height_m * unit, length_m * unit, width_m * unit);
};

/**
 * The ways in which a block, a jug, a pack or dry ice may lie. The proportions are usual ones, scaled to the volume.
 *
 * @source common-practice
 */
export function iceSizes(form: FirmIce, volume_m3: number, inside: Inside): Size[] {
  return iceShapes[form].map((one) => bounded(scaled(one, volume_m3), inside));
}

const sides_m = ({ height_m, length_m, width_m }: Size): number[] =>
  [height_m, length_m, width_m].sort((a, b) => a - b);

/** Whether a piece of usual proportions is too long for a cooler in each of its ways to lie; a twentieth is forgiven. */
export function isTooLong(form: FirmIce, volume_m3: number, inside: Inside): boolean {
  const room_m = sides_m(inside);
  return iceShapes[form].every((one) =>
    sides_m(scaled(one, volume_m3)).some((side_m, i) => side_m > 1.05 * room_m[i]!),
  );
}

/** A tray of small pieces holds no more than this, in pieces and in room. */
const mostInTray = 12;
const tray_m3 = 0.003;
const small_m3 = 0.0007;
const trayHeight_m = 0.16;

/** How many pieces are handled as one tray; 1 where they are few or large. */
export function perTrayCount(pieces: number, piece_m3: number): number {
  if (pieces <= 4 || piece_m3 > small_m3) return 1;
  const most = Math.max(2, Math.min(mostInTray, Math.floor(tray_m3 / piece_m3)));
  return Math.ceil(pieces / Math.ceil(pieces / most));
}

/** The ways to set so many equal pieces beside and on each other, for every way in which one may lie. */
export function traySizes(pieces: number, one: readonly Size[], inside: Inside): Size[] {
  if (pieces === 1) return [...one];
  const all = one.flatMap((piece) => {
    const high = Math.max(1, Math.min(3, Math.floor(trayHeight_m / piece.height_m)));
    return Array.from({ length: high }, (_, k) => grid(Math.ceil(pieces / (k + 1)), k + 1, piece));
  });
  const fitting = all.filter(({ length_m, width_m }) => fits(length_m, width_m, inside));
  return fitting.length > 0 ? fitting : [bounded(all[0], inside)];
}

function fits(length_m: number, width_m: number, inside: Inside): boolean {
  const long = Math.max(inside.length_m, inside.width_m);
  const short = Math.min(inside.length_m, inside.width_m);
  return Math.max(length_m, width_m) <= long && Math.min(length_m, width_m) <= short;
}

/** The rows and files that waste the fewest places, and among those the squarest. */
function grid(count: number, levels: number, { height_m, length_m, width_m }: Size): Size {
  let best = size(levels * height_m, count * length_m, width_m);
  let least = Number.POSITIVE_INFINITY;
  for (let rows = 1; rows <= count; rows++) {
    const files = Math.ceil(count / rows);
    const [long, wide] = [files * length_m, rows * width_m];
    const cost = rows * files - count + 0.4 * (Math.max(long, wide) / Math.min(long, wide));
    if (cost < least - 1e-9) {
      least = cost;
      best = size(levels * height_m, long, wide);
    }
  }
  return best;
}
