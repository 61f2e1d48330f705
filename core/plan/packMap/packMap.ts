import { loadTrip } from "../../forecast/load.ts";
import type { PackLayer, PackPlace } from "../../forecast/planResult.ts";
import type { Warning } from "../../forecast/result.ts";
import type { Forecast } from "../../forecast/types.ts";
import type { Trip } from "../../trip/types.ts";
import type { StackLayer } from "./layer.ts";
import { layerNotes } from "./layerNotes.ts";
import { heightOf_m, stackUp } from "./stack.ts";
import { type StowLot, stowOrder } from "./stow.ts";

/**
 * Where every piece lies in every cooler when it is packed for departure: layers from the base up, each piece a box with
 * its place. The order is that of the reckoning (wishes, raw lowest of the food, then what is eaten last), the boxes are
 * made up from mass, density and thickness. Where stiff boxes would stand over the rim, bags are pressed into what is left
 * and every piece has the room that the reckoning gives it: a map that fits wherever the forecast says that the load does.
 * It is a drawing to pack by, not a proof. What is put in later is not in it.
 *
 * Lengths in m. A stack higher than the cooler is kept as it is, with the warning `map-full`; so is a piece of ice that
 * as it is usually shaped does not go in.
 */
export function packMap(trip: Trip, forecast: Forecast): { layers: PackLayer[]; warnings: Warning[] } {
  const layers: PackLayer[] = [];
  const warnings: Warning[] = [];
  loadTrip(trip).coolers.forEach((cooler, i) => {
    const lots = stowOrder(trip, cooler);
    const stack = stackUp(lots, cooler.body.inside);
    stack.forEach((layer, k) => {
      layers.push(packLayer(cooler.name, stack, k, layer));
    });
    const filled = forecast.result.coolers.find(({ name }) => name === cooler.name)?.filled_frac;
    const over_frac = heightOf_m(stack) / cooler.body.inside.height_m - 1;
    for (const says of fullWords(cooler.name, lots, over_frac, filled))
      warnings.push({ code: "map-full", says, path: `coolers[${i}]` });
  });
  if (layers.length === 0)
    warnings.push({
      code: "map-empty",
      says: "nothing goes into a cooler before departure, so there is nothing to draw a pack map of",
      path: "coolers",
    });
  return { layers, warnings };
}

/** What does not go in, and what to do about it. */
function fullWords(
  name: string,
  lots: readonly StowLot[],
  over_frac: number,
  filled_frac: number | undefined,
): string[] {
  const large = [...new Set(lots.filter((lot) => lot.isLarge).map(({ stows }) => stows[0].what))];
  const out = large.map(
    (what) =>
      `${name}: ${what}, as it is usually shaped, is longer than the inside however it is turned. Measure it, or have it in smaller pieces`,
  );
  if (over_frac <= 1e-9) return out;
  const by = filled_frac === undefined ? "" : `; by volume it is ${Math.round(filled_frac * 100)} % full`;
  return [
    ...out,
    `${name}: pressed flat and with its gaps filled, its load stands ${Math.ceil(over_frac * 100)} % higher than the inside${by}. Leave out what is on top, or take a larger cooler`,
  ];
}

function packLayer(
  cooler: string,
  stack: readonly StackLayer[],
  index: number,
  layer: StackLayer,
): PackLayer {
  const places = [...putPlaces(layer), ...pourPlaces(layer)];
  return {
    cooler,
    layer: index,
    items: [...new Set(places.map(({ item }) => item))],
    from_m: layer.from_m,
    thick_m: layer.thick_m,
    places,
    notes: layerNotes(stack, index),
  };
}

function putPlaces({ puts, from_m }: StackLayer): PackPlace[] {
  return puts.map(
    ({ lot, stow, x_m, y_m, up_m, length_m, width_m, height_m }): PackPlace => ({
      what: stow.what,
      item: lot.item,
      kind: lot.kind,
      share_frac: stow.share_frac,
      x_m,
      y_m,
      z_m: from_m + up_m,
      length_m,
      width_m,
      height_m,
    }),
  );
}

function pourPlaces({ pours, from_m }: StackLayer): PackPlace[] {
  return pours.map(
    ({ lots, share_frac, x_m, y_m, length_m, width_m, up_m, height_m }): PackPlace => ({
      what: lots.map(({ stows }) => stows[0].what).join(" and "),
      item: [...new Set(lots.map(({ item }) => item))].join(" and "),
      kind: "loose ice",
      share_frac,
      x_m,
      y_m,
      z_m: from_m + up_m,
      length_m,
      width_m,
      height_m,
    }),
  );
}
