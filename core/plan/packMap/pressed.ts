import { type EndIce, endIce } from "./endIce.ts";
import { areaOf_m2, bulkOf_m3, dealtOut, type Field, type Piece, piecesOf } from "./fields.ts";
import { bare, gapRoom_m3, pourOver, type StackLayer } from "./layer.ts";
import type { FloorSize } from "./oneLayer.ts";
import type { StowLot } from "./stow.ts";

/** As thick as one lays down and presses level at once; a layer of raw food may be thinner, so that it lies alone. */
const layer_m = 0.08;
const leastRaw_m = 0.015;
/** What is left over for a layer of its own below this share of a usual one lies in the one before. */
const least_frac = 0.4;
/** A bed that lies all in the gaps is still drawn. */
const leastBed_m = 0.002;
/** Layers beside ice are pressed or left loose by no more than this to end level with it. */
const level_frac = 0.2;

/** Loose ice that is shaken between the food. */
interface Filler {
  lots: readonly StowLot[];
  bulk_m3: number;
  /** All the food that it lies between. */
  food_m3: number;
  /** What the gaps do not take, against the room of the food. */
  over_ratio: number;
}

/**
 * The load as a hand packs it that presses bags flat and fills every gap: each piece has the room that the reckoning gives
 * it, and takes it in whatever shape is left over. Layers go in the order of the lots; none is thinner than the thinnest
 * way to lay what keeps its shape in it. Without `beside_m` the layers together are as high as the reckoning says, so that
 * this fits wherever that does. Where a piece lies is right, how long and wide it is drawn is not.
 *
 * @param beside_m height inside: blocks and jugs stand at one end and food is laid beside them; null: they fill layers of
 *   their own with what lies next
 * @returns null where ice leaves no place beside it
 */
export function pressedLayers(
  laid: readonly StowLot[],
  filler: readonly StowLot[],
  floor: FloorSize,
  beside_m: number | null,
): StackLayer[] | null {
  const isEnd = (lot: StowLot): boolean => lot.berth === "base" && lot.gaps_m3 === 0 && lot.sizes.length > 0;
  const ends = beside_m === null ? [] : laid.filter(isEnd);
  const ice = beside_m === null || ends.length === 0 ? null : endIce(ends, floor, beside_m);
  if (beside_m !== null && ice === null) return null;
  const rest = ice === null ? [...laid] : laid.filter((lot) => !isEnd(lot));
  const whole: Field = { x_m: 0, y_m: 0, ...floor };
  const poured = fillerOf(filler, rest);
  const layers = ice === null ? [] : aroundIce(ice, rest, poured);
  const left = ice === null ? rest : restAfter(layers, rest);
  let level_m = Math.max(0, ...layers.map(({ from_m, thick_m }) => from_m + thick_m));
  for (const layer of onFloor(left, poured, whole, floor)) {
    layers.push({ ...layer, from_m: level_m });
    level_m += layer.thick_m;
  }
  return layers;
}

function fillerOf(lots: readonly StowLot[], laid: readonly StowLot[]): Filler {
  const bulk_m3 = lots.reduce((sum, lot) => sum + lot.bulk_m3, 0);
  const food = laid.filter(({ gaps_m3 }) => gaps_m3 > 0);
  const food_m3 = food.reduce((sum, lot) => sum + lot.bulk_m3, 0);
  const gaps_m3 = gapRoom_m3(piecesOf(food).map(({ lot, stow }) => ({ lot, stow })));
  return { lots, bulk_m3, food_m3, over_ratio: food_m3 > 0 ? Math.max(0, bulk_m3 - gaps_m3) / food_m3 : 0 };
}

/** Room of some pieces with the loose ice that lies over them. */
const withIce_m3 = (pieces: readonly Piece[], { over_ratio }: Filler): number =>
  pieces.reduce((sum, { lot, bulk_m3 }) => sum + bulk_m3 * (lot.gaps_m3 > 0 ? 1 + over_ratio : 1), 0);

/** Ice at one end as the first layer, and as much food beside it as ends about level with it. */
function aroundIce({ puts, high_m, rest }: EndIce, laid: readonly StowLot[], poured: Filler): StackLayer[] {
  const ends = bare(puts, high_m, "end");
  const until = laid.findIndex((lot) => lot.sizes.length === 0 || lot.berth === "top");
  const pieces = piecesOf(until === -1 ? laid : laid.slice(0, until));
  const room_m3 = areaOf_m2(rest) * high_m;
  let count = 0;
  while (
    count < pieces.length &&
    withIce_m3(pieces.slice(0, count + 1), poured) <= room_m3 * (1 + level_frac / 2)
  )
    count++;
  const lots = [...new Set(puts.map(({ lot }) => lot))];
  const layers = inLayers(pieces.slice(0, count), poured, rest);
  const all_m = layers.reduce((sum, { thick_m }) => sum + thick_m, 0);
  const isNear = Math.abs(all_m / high_m - 1) <= level_frac;
  let level_m = 0;
  for (const layer of layers) {
    squeeze(layer, isNear ? high_m / all_m : 1);
    layer.from_m = level_m;
    layer.beside = lots;
    level_m += layer.thick_m;
  }
  return [ends, ...layers];
}

/** Makes a layer higher or lower with all that is in it. */
export function squeeze(layer: StackLayer, by_frac: number): void {
  layer.from_m *= by_frac;
  layer.thick_m *= by_frac;
  layer.towel_m *= by_frac;
  for (const one of [...layer.puts, ...layer.pours]) {
    one.up_m *= by_frac;
    one.height_m *= by_frac;
  }
}

/** Lots without the pieces that lie beside the ice already. */
function restAfter(layers: readonly StackLayer[], laid: readonly StowLot[]): StowLot[] {
  const gone = new Set(layers.flatMap(({ puts }) => puts.map(({ stow }) => stow)));
  return laid.flatMap((lot) => {
    const stows = lot.stows.filter((stow) => !gone.has(stow));
    return lot.sizes.length === 0 || stows.length === lot.stows.length
      ? [lot]
      : stows.length === 0
        ? []
        : [{ ...lot, stows }];
  });
}

/** Layers over the whole floor, with beds of loose ice where their turn comes. */
function onFloor(lots: readonly StowLot[], poured: Filler, whole: Field, floor: FloorSize): StackLayer[] {
  const layers: StackLayer[] = [];
  const bed = (over: readonly StowLot[], bulk_m3: number): void => {
    const layer = bare([], 0, "pressed");
    pourOver(layer, over, bulk_m3, 1, floor);
    layers.push(layer);
  };
  let run: StowLot[] = [];
  const lay = (): void => {
    layers.push(...inLayers(piecesOf(run), poured, whole));
    run = [];
  };
  for (const lot of lots) {
    if (lot.sizes.length > 0) {
      run.push(lot);
      continue;
    }
    lay();
    bed([lot], lot.bulk_m3);
  }
  lay();
  if (poured.food_m3 === 0 && poured.bulk_m3 > 0) bed(poured.lots, poured.bulk_m3);
  return layers;
}

/** The least height that a piece can be laid at; what is soft has none. */
const leastHeight_m = ({ lot }: Piece): number =>
  lot.rigid ? Math.min(...lot.sizes.map(({ height_m }) => height_m)) : 0;

function inLayers(pieces: readonly Piece[], poured: Filler, field: Field): StackLayer[] {
  const area_m2 = areaOf_m2(field);
  const high_m = (some: readonly Piece[]): number => withIce_m3(some, poured) / area_m2;
  const usual_m = high_m(pieces) / Math.max(1, Math.round(high_m(pieces) / layer_m));
  const groups: Piece[][] = [];
  let open: Piece[] = [];
  for (const [i, piece] of pieces.entries()) {
    open.push(piece);
    const stiff_m = Math.max(...open.map(leastHeight_m));
    const endsRaw =
      piece.lot.kind === "raw" && pieces[i + 1] !== undefined && pieces[i + 1]!.lot.kind !== "raw";
    const enough_m = Math.max(stiff_m, endsRaw ? leastRaw_m : usual_m);
    if (high_m(open) < enough_m - 1e-9) continue;
    groups.push(open);
    open = [];
  }
  const last = groups.at(-1);
  const isThin = high_m(open) < Math.max(least_frac * usual_m, ...open.map(leastHeight_m));
  if (last !== undefined && isThin && open[0]?.lot.kind === last.at(-1)!.lot.kind) last.push(...open);
  else if (last !== undefined && isThin && last[0]!.lot.kind !== "raw") last.push(...open);
  else if (open.length > 0) groups.push(open);
  return groups.map((group) => oneLayer(group, poured, field, high_m(group)));
}

/** Food at the bottom of its layer, and over it the loose ice that its gaps do not take. */
function oneLayer(pieces: readonly Piece[], poured: Filler, field: Field, high_m: number): StackLayer {
  const food_m3 = bulkOf_m3(pieces.filter(({ lot }) => lot.gaps_m3 > 0));
  const share_frac = poured.food_m3 > 0 ? food_m3 / poured.food_m3 : 0;
  if (poured.bulk_m3 === 0 || share_frac === 0)
    return bare(dealtOut(pieces, field, high_m), high_m, "pressed");
  const over_m = (food_m3 * poured.over_ratio) / areaOf_m2(field);
  const bed_m = Math.min(0.5 * high_m, Math.max(leastBed_m, over_m));
  const layer = bare(dealtOut(pieces, field, high_m - bed_m), high_m, "pressed");
  layer.pours.push({ lots: poured.lots, share_frac, ...field, up_m: high_m - bed_m, height_m: bed_m });
  return layer;
}
