import type { PackPlace } from "../../forecast/planResult.ts";
import { box, line, px, tag, textWidth_px, words } from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

/** The textures of a pack picture: hatched ice, dotted loose ice, frozen food with small plus signs. */
export function packTextures(id: string): string {
  const ground = tag("rect", { width: 8, height: 8, fill: "var(--sheet)" });
  const plus = tag("path", { d: "M4,2v4M2,4h4", stroke: "var(--edge)", "stroke-width": 1 });
  const size = { width: 8, height: 8, patternUnits: "userSpaceOnUse" };
  return (
    textures(id, "likely", "luck", "dry") + tag("pattern", { id: `frozen-${id}`, ...size }, ground + plus)
  );
}

function fillOf({ kind, item }: Pick<PackPlace, "kind" | "item">, id: string): string {
  if (kind === "ice") return textureFill(item === "dry ice" ? "dry" : "likely", id);
  if (kind === "loose ice") return textureFill("luck", id);
  if (kind === "pack") return "likelyBg";
  return kind === "frozen" ? `url(#frozen-${id})` : "sheet";
}

/** One box: what it is can be told by its pattern and frame alone; `tint` is a token for food that is not frozen. */
export function packBox(
  place: Pick<PackPlace, "kind" | "item">,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  id: string,
  tint?: string,
): string {
  const fill = tint === undefined || place.kind === "frozen" ? fillOf(place, id) : tint;
  if (place.kind === "loose ice") return box(x0, y0, x1, y1, fill);
  const frame = box(x0, y0, x1, y1, fill, "ink", place.kind === "raw" ? 1.8 : 1.2);
  if (place.kind === "raw" && x1 - x0 > 8 && y1 - y0 > 8)
    return frame + box(x0 + 3, y0 + 3, x1 - 3, y1 - 3, fill, "ink", 1.2);
  return place.kind === "pack" ? frame + ladder(x0, y0, x1, y1) : frame;
}

function ladder(x0: number, y0: number, x1: number, y1: number): string {
  const steps = Math.max(3, Math.round((x1 - x0) / 14));
  return Array.from({ length: steps - 1 }, (_, i) => {
    const x = x0 + ((x1 - x0) * (i + 1)) / steps;
    return line(x, y0, x, y1, "sure", 1);
  }).join("");
}

/** A short word in the middle of a box, where it fits. */
export function wordIn(
  text: string,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  bold = true,
): string {
  if (textWidth_px(text, 12, bold) > x1 - x0 || y1 - y0 < 13) return "";
  return words(text, (x0 + x1) / 2, (y0 + y1) / 2 + 4.5, { anchor: "middle", bold, halo: true });
}

const SIGNS = [
  { kind: "ice", item: "block", says: "ice" },
  { kind: "loose ice", item: "cube", says: "loose ice" },
  { kind: "pack", item: "gel pack", says: "pack" },
  { kind: "frozen", item: "", says: "frozen" },
  { kind: "raw", item: "", says: "RAW" },
] as const;

/** What the patterns mean, in rows no wider than `width`. */
export function packKey(x: number, y: number, width: number, id: string): { svg: string; height: number } {
  const parts: string[] = [];
  let [left, top] = [x, y];
  for (const sign of SIGNS) {
    const needs = 22 + textWidth_px(sign.says, 12) + 12;
    if (left > x && left + needs > x + width) {
      left = x;
      top += 20;
    }
    const frame = [left, top, left + 18, top + 13] as const;
    const rim = sign.kind === "loose ice" ? box(...frame, "sheet", "edge", 1) : "";
    parts.push(rim, packBox(sign, frame, id), words(sign.says, left + 23, top + 11));
    left += needs;
  }
  return { svg: parts.join(""), height: px(top + 16 - y) };
}
