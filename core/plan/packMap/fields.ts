import type { Put } from "./oneLayer.ts";
import type { Stow, StowLot } from "./stow.ts";

/** A rectangle of the floor. */
export type Field = Pick<Put, "x_m" | "y_m" | "length_m" | "width_m">;

/** One piece, or one tray, with the room that the reckoning gives it. */
export interface Piece {
  lot: StowLot;
  stow: Stow;
  bulk_m3: number;
}

export const piecesOf = (lots: readonly StowLot[]): Piece[] =>
  lots.flatMap((lot) => lot.stows.map((stow) => ({ lot, stow, bulk_m3: stow.share_frac * lot.bulk_m3 })));

export const bulkOf_m3 = (pieces: readonly Piece[]): number =>
  pieces.reduce((all_m3, { bulk_m3 }) => all_m3 + bulk_m3, 0);

export const areaOf_m2 = ({ length_m, width_m }: Field): number => length_m * width_m;

/** Cuts a field between pieces by their room, each time across its longer side, lots left whole as long as it goes. */
export function dealtOut(pieces: readonly Piece[], field: Field, height_m: number): Put[] {
  if (pieces.length === 0) return [];
  if (pieces.length === 1) {
    const { lot, stow } = pieces[0]!;
    return [{ lot, stow, up_m: 0, height_m, ...field }];
  }
  const cut = bestCut(pieces);
  const [one, two] = [pieces.slice(0, cut), pieces.slice(cut)];
  const [near, far] = halves(field, bulkOf_m3(one) / bulkOf_m3(pieces));
  return [...dealtOut(one, near, height_m), ...dealtOut(two, far, height_m)];
}

/** Two parts of a field, the first with this share of it. */
function halves(field: Field, share_frac: number): [Field, Field] {
  const { x_m, y_m, length_m, width_m } = field;
  if (length_m >= width_m) {
    const at_m = length_m * share_frac;
    return [
      { ...field, length_m: at_m },
      { ...field, x_m: x_m + at_m, length_m: length_m - at_m },
    ];
  }
  const at_m = width_m * share_frac;
  return [
    { ...field, width_m: at_m },
    { ...field, y_m: y_m + at_m, width_m: width_m - at_m },
  ];
}

/** Between two lots where there are several, as near to half of the room as it goes. */
function bestCut(pieces: readonly Piece[]): number {
  const all_m3 = bulkOf_m3(pieces);
  const isMixed = pieces[0]!.lot !== pieces.at(-1)!.lot;
  let [best, least, sum_m3] = [1, Number.POSITIVE_INFINITY, 0];
  for (let cut = 1; cut < pieces.length; cut++) {
    sum_m3 += pieces[cut - 1]!.bulk_m3;
    if (isMixed && pieces[cut]!.lot === pieces[cut - 1]!.lot) continue;
    const off_m3 = Math.abs(sum_m3 - all_m3 / 2);
    if (off_m3 < least - 1e-12) [best, least] = [cut, off_m3];
  }
  return best;
}
