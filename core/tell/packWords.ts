import type { PackLayer, PackPlace } from "../forecast/planResult.ts";
import { printable } from "./words.ts";

/** The layers of one cooler, from the base up. */
export function layersOf(layers: readonly PackLayer[], cooler: string): PackLayer[] {
  return layers.filter((layer) => layer.cooler === cooler).sort((a, b) => a.layer - b.layer);
}

/** What one item of a layer is called there: how many of it, or which part. */
export interface LayerItem {
  item: string;
  kind: PackPlace["kind"];
  says: string;
}

/** The items of a layer in the order in which they are laid. */
export function layerItems({ places }: PackLayer): LayerItem[] {
  const groups = new Map<string, PackPlace[]>();
  for (const place of places) {
    const key = `${place.kind} ${place.item}`;
    groups.set(key, [...(groups.get(key) ?? []), place]);
  }
  return [...groups.values()].map((group) => {
    const { item, kind } = group[0]!;
    return { item, kind, says: `${kind === "raw" ? "RAW " : ""}${saysOf(group)}` };
  });
}

function saysOf(group: readonly PackPlace[]): string {
  const [{ item, kind, what }] = group as [PackPlace];
  if (kind === "loose ice") return "loose ice";
  if (group.length === 1) return printable(what);
  if (kind === "ice" || kind === "pack")
    return `${group.length} × ${printable(what).replace(/, \d+ of \d+$/, "")}`;
  const share_frac = group.reduce((sum, place) => sum + place.share_frac, 0);
  return share_frac > 0.999 ? printable(item) : `${printable(item)} (part)`;
}
