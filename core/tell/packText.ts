import type { PackLayer } from "../forecast/planResult.ts";
import { hanging, paddedLeft } from "./lines.ts";
import { layerItems, layersOf } from "./packWords.ts";
import type { Voice } from "./voice.ts";
import { printable } from "./words.ts";

/**
 * How one cooler is packed, drawn as it stands: the top row is the top layer, rows are numbered from the base, where one
 * begins. A cooler without layers has no lines.
 */
export function packText(
  layers: readonly PackLayer[],
  cooler: string,
  { width, paint }: Pick<Voice, "width" | "paint">,
): string[] {
  const mine = layersOf(layers, cooler);
  if (mine.length === 0) return [];
  const rows = [...mine].reverse().flatMap((layer) => {
    const items = layerItems(layer).map(({ says }) => says);
    return [
      ...hanging(`${paddedLeft(String(layer.layer + 1), 3)}  `, items.join("; "), width),
      ...layer.notes.flatMap((note) => hanging("     - ", printable(note), width, paint.faint)),
    ];
  });
  return [paint.strong(`${printable(cooler)}: pack from 1 at the base up`), ...rows];
}
