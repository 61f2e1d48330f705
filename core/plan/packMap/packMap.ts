import { loadTrip } from "../../forecast/load.ts";
import type { PackLayer, PackPlace } from "../../forecast/planResult.ts";
import type { Warning } from "../../forecast/result.ts";
import type { Forecast } from "../../forecast/types.ts";
import type { Trip } from "../../trip/types.ts";
import { layerNotes } from "./layerNotes.ts";
import { heightOf_m, type StackLayer, stackUp } from "./stack.ts";
import { stowOrder } from "./stow.ts";

/**
 * Where every piece lies in every cooler when it is packed for departure: layers from the base up, each piece a box with
 * its place. The order is that of the reckoning (wishes, raw lowest of the food, then what is eaten last), the boxes are
 * made up from mass, density and thickness. It is a drawing to pack by, not a proof that it fits: bags give way, and a
 * stack of boxes stands higher than a cooler packed by hand. What is put in later is not in it.
 *
 * Lengths in m. A stack higher than the cooler is kept as it is, with the warning `map-full`.
 */
export function packMap(trip: Trip, forecast: Forecast): { layers: PackLayer[]; warnings: Warning[] } {
  const layers: PackLayer[] = [];
  const warnings: Warning[] = [];
  loadTrip(trip).coolers.forEach((cooler, i) => {
    const { inside } = cooler.body;
    const stack = stackUp(stowOrder(trip, cooler), inside);
    stack.forEach((layer, k) => {
      layers.push(packLayer(cooler.name, stack, k, layer));
    });
    const over_frac = heightOf_m(stack) / inside.height_m - 1;
    if (over_frac <= 1e-9) return;
    const filled = forecast.result.coolers.find(({ name }) => name === cooler.name)?.filled_frac;
    const by = filled === undefined ? "" : `; by volume it is ${Math.round(filled * 100)} % full`;
    const says = `${cooler.name}: drawn as boxes, its load stands ${Math.ceil(over_frac * 100)} % higher than the inside${by}. Press bags flat, or leave out what is on top`;
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
