import type { CoolerBody } from "../../cooler/types.ts";
import { freeRectangles } from "./free.ts";
import { bare, gapRoom_m3, pourOver, type StackLayer } from "./layer.ts";
import { type Cursor, type FloorSize, type LayerRule, nextLayers, type Put } from "./oneLayer.ts";
import { pressedLayers, squeeze } from "./pressed.ts";
import type { StowLot } from "./stow.ts";

/** No layer is higher: one could not reach what stands at its bottom. */
const highest_m = 0.3;
const towel_m = 0.005;
/** Cubes do not get into narrower gaps. */
const leastGap_m = 0.015;
/** Of the room above the lower columns of a layer, what cubes shaken into it take up. */
const shakenDown_frac = 0.8;

/** Lays everything of one cooler from the base up, in as low a stack as layers in this order can make. */
export function stackUp(lots: readonly StowLot[], inside: CoolerBody["inside"]): StackLayer[] {
  const floor: FloorSize = {
    length_m: Math.floor(inside.length_m * 1000 + 1e-6) / 1000,
    width_m: Math.floor(inside.width_m * 1000 + 1e-6) / 1000,
  };
  const filler = lots.filter((lot) => lot.sizes.length === 0 && lot.berth === "fill");
  const laid = lots.filter((lot) => !filler.includes(lot));
  const stack = (apart: boolean): StackLayer[] =>
    withLevels(withFiller(lowestStack(laid, { floor, most_m: highest_m, apart }), filler, floor));
  const first = stack(true);
  if (heightOf_m(first) <= inside.height_m) return first;
  // Too high: tender food may stand beside ice that bites, with a towel between.
  const second = stack(false);
  const boxes = heightOf_m(second) < heightOf_m(first) - 1e-9 ? second : first;
  if (heightOf_m(boxes) <= inside.height_m) return boxes;
  for (const beside_m of [inside.height_m, null]) {
    const layers = pressedLayers(laid, filler, floor, beside_m);
    if (layers === null) continue;
    const closed = settled(withTowels(layers), inside.height_m);
    if (heightOf_m(closed) <= inside.height_m * (1 + 1e-9)) return closed;
    if (beside_m === null) return heightOf_m(closed) < heightOf_m(boxes) ? closed : boxes;
  }
  return boxes;
}

/** By less than this, a stack is pressed down until the lid closes: a floor in whole millimetres, beds thicker than they are. */
const give_frac = 0.05;

function settled(layers: StackLayer[], height_m: number): StackLayer[] {
  const by_frac = height_m / heightOf_m(layers);
  if (by_frac < 1 && by_frac >= 1 - give_frac) for (const layer of layers) squeeze(layer, by_frac);
  return layers;
}

/** Towels that lie in pressed layers take none of their height. */
function withTowels(layers: StackLayer[]): StackLayer[] {
  layers.forEach((layer, i) => {
    const below = layers
      .slice(0, i)
      .findLast(({ from_m, thick_m }) => from_m + thick_m <= layer.from_m + 1e-9);
    layer.towel_m = below !== undefined && bitesThrough(below, layer) ? towel_m : 0;
  });
  return layers;
}

/** From the floor to the top of what stands highest. */
export function heightOf_m(layers: readonly StackLayer[]): number {
  return Math.max(0, ...layers.map(({ from_m, thick_m }) => from_m + thick_m));
}

/** A way to lay all that is left. */
interface Way {
  layers: StackLayer[];
  high_m: number;
}

/** Of all rows of layers, the lowest; of equally low ones, the first tried. Ways from one place on are found once. */
function lowestStack(lots: readonly StowLot[], rule: LayerRule): StackLayer[] {
  const known = new Map<string, Way>();
  const from = (at: Cursor): Way => {
    if (at.lotIndex >= lots.length) return { layers: [], high_m: 0 };
    const key = `${at.lotIndex} ${at.stowIndex}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let best: Way = { layers: [], high_m: Number.POSITIVE_INFINITY };
    for (const { layer, next } of steps(lots, at, rule)) {
      const rest = from(next);
      const high_m = layer.thick_m + rest.high_m;
      if (high_m < best.high_m - 1e-9) best = { layers: [layer, ...rest.layers], high_m };
    }
    known.set(key, best);
    return best;
  };
  return from({ lotIndex: 0, stowIndex: 0 }).layers;
}

function steps(lots: readonly StowLot[], at: Cursor, rule: LayerRule): { layer: StackLayer; next: Cursor }[] {
  const lot = lots[at.lotIndex];
  if (lot.sizes.length > 0)
    return nextLayers(lots, at, rule).map(({ puts, thick_m, next }) => ({
      layer: bare(puts, thick_m),
      next,
    }));
  const layer = bare([], 0);
  pourOver(layer, [lot], lot.bulk_m3, 1, rule.floor);
  return [{ layer, next: { lotIndex: at.lotIndex + 1, stowIndex: 0 } }];
}

/** Loose ice between the food: to every layer with food by its thickness, as the reckoning spreads it. */
function withFiller(layers: StackLayer[], filler: readonly StowLot[], floor: FloorSize): StackLayer[] {
  const bulk_m3 = filler.reduce((sum, lot) => sum + lot.bulk_m3, 0);
  if (bulk_m3 === 0) return layers;
  const rows = layers.filter(({ puts }) => puts.some(({ lot }) => lot.berth === "rows"));
  if (rows.length === 0) {
    const bed = bare([], 0);
    pourOver(bed, filler, bulk_m3, 1, floor);
    const top = layers.findIndex(({ puts }) => puts.some(({ lot }) => lot.berth === "top"));
    layers.splice(top === -1 ? layers.length : top, 0, bed);
    return layers;
  }
  const all_m = rows.reduce((sum, { thick_m }) => sum + thick_m, 0);
  for (const layer of rows) pourInto(layer, filler, bulk_m3, layer.thick_m / all_m, floor);
  return layers;
}

/** Into the gaps first; what they do not hold lies over the layer as a bed. */
function pourInto(
  layer: StackLayer,
  lots: readonly StowLot[],
  bulk_m3: number,
  share_frac: number,
  floor: FloorSize,
): void {
  const part_m3 = share_frac * bulk_m3;
  const high_m = layer.thick_m;
  const standing = layer.puts.filter(({ up_m }) => up_m === 0);
  const gaps = freeRectangles(standing, floor).filter(
    ({ length_m, width_m }) => Math.min(length_m, width_m) >= leastGap_m,
  );
  const gap_m2 = gaps.reduce((sum, { length_m, width_m }) => sum + length_m * width_m, 0);
  const height_m = gap_m2 > 0 ? Math.min(high_m, part_m3 / gap_m2) : 0;
  for (const gap of gaps) {
    const held_frac = (gap.length_m * gap.width_m * height_m) / bulk_m3;
    layer.pours.push({ lots, share_frac: held_frac, ...gap, up_m: 0, height_m });
  }
  const over_m3 = part_m3 - gap_m2 * height_m;
  if (over_m3 <= 1e-9 * bulk_m3) return;
  const under_m3 = standing.reduce((sum, { length_m, width_m }) => sum + high_m * length_m * width_m, 0);
  const above_m3 = layer.puts.reduce(
    (left, { length_m, width_m, height_m: tall_m }) => left - length_m * width_m * tall_m,
    under_m3,
  );
  // Into the gaps within trays and around bags as well, as far as the reckoning lets it.
  const within_m3 = Math.max(0, gapRoom_m3(layer.puts) - gap_m2 * height_m);
  const bed_m3 = Math.max(0.02 * over_m3, over_m3 - Math.max(shakenDown_frac * above_m3, within_m3));
  pourOver(layer, lots, bed_m3, over_m3 / bulk_m3, floor);
}

/** Less than this between two boxes does not keep the cold off. */
const touching_m = 0.01;

/** True where a towel must come between two layers: ice that bites would touch tender food. */
function bitesThrough(below: StackLayer, above: StackLayer): boolean {
  // A bed of wet ice is at its melting point and keeps them apart.
  if (below.pours.some(({ up_m }) => up_m > 0)) return false;
  const uppermost = below.puts.filter(({ up_m, height_m }) => up_m + height_m > below.thick_m - touching_m);
  const lowermost = above.puts.filter(({ up_m }) => up_m < touching_m);
  return uppermost.some(({ lot: one, ...low }) =>
    lowermost.some(
      ({ lot: two, ...high }) =>
        ((one.bites && two.tender) || (one.tender && two.bites)) && overlap(low, high),
    ),
  );
}

type Footprint = Pick<Put, "x_m" | "y_m" | "length_m" | "width_m">;

function overlap(one: Footprint, two: Footprint): boolean {
  return (
    one.x_m < two.x_m + two.length_m &&
    two.x_m < one.x_m + one.length_m &&
    one.y_m < two.y_m + two.width_m &&
    two.y_m < one.y_m + one.width_m
  );
}

function withLevels(layers: StackLayer[]): StackLayer[] {
  let level_m = 0;
  layers.forEach((layer, i) => {
    layer.towel_m = i > 0 && bitesThrough(layers[i - 1], layer) ? towel_m : 0;
    layer.from_m = level_m + layer.towel_m;
    level_m = layer.from_m + layer.thick_m;
  });
  return layers;
}
