import { tag } from "./svg.ts";

/** Textures tell areas apart without colour. `sure` is solid and needs none; `dry` is dry ice, `tape` a lid that stays shut. */
export type Texture = "likely" | "luck" | "night" | "dry" | "tape";

/** The definitions of the textures a picture uses, their ids ending in the picture's own. */
export function textures(id: string, ...used: readonly Texture[]): string {
  return used.map((name) => pattern(name, id)).join("");
}

/** What to write into `fill`. */
export function textureFill(name: Texture, id: string): string {
  return `url(#${name}-${id})`;
}

/** Textures for areas that lie over each other: open ground, so what is below shows. Slanted either way, dotted, level. */
const OVERLAYS: readonly ((stroke: string) => string)[] = [
  (stroke) => tag("path", { d: "M-2,14L14,-2M-2,2L2,-2M10,14L14,10", stroke, "stroke-width": 1.2 }),
  (stroke) => tag("path", { d: "M-2,-2L14,14M-2,10L2,14M10,-2L14,2", stroke, "stroke-width": 1.2 }),
  (stroke) => tag("circle", { cx: 6, cy: 6, r: 1.3, fill: stroke }),
  (stroke) => tag("path", { d: "M0,6h12", stroke, "stroke-width": 1.2 }),
];

/** The definitions of the first `count` overlay textures, 0…4. */
export function overlayTextures(id: string, count: number): string {
  return OVERLAYS.slice(0, count)
    .map((mark, i) =>
      tag(
        "pattern",
        { id: `over${i}-${id}`, width: 12, height: 12, patternUnits: "userSpaceOnUse" },
        mark("var(--likely)"),
      ),
    )
    .join("");
}

/** What to write into `fill` for the overlay texture with a number. */
export function overlayFill(i: number, id: string): string {
  return `url(#over${i}-${id})`;
}

/** Waves of meltwater: for the picture of a cooler's inside alone. */
export function waterTexture(id: string): string {
  const ground = tag("rect", { width: 16, height: 7, fill: "var(--waterFill)" });
  const wave = tag("path", {
    d: "M0,4q4,-4 8,0t8,0",
    fill: "none",
    stroke: "var(--water)",
    "stroke-width": 1,
  });
  return tag(
    "pattern",
    { id: `water-${id}`, width: 16, height: 7, patternUnits: "userSpaceOnUse" },
    ground + wave,
  );
}

export function waterFill(id: string): string {
  return `url(#water-${id})`;
}

function pattern(name: Texture, id: string): string {
  if (name === "luck") {
    const ground = tag("rect", { width: 7, height: 7, fill: "var(--luckyBg)" });
    const dots = [1.7, 5.2]
      .map((at) => tag("circle", { cx: at, cy: at, r: 0.9, fill: "var(--likely)" }))
      .join("");
    return tag(
      "pattern",
      { id: `luck-${id}`, width: 7, height: 7, patternUnits: "userSpaceOnUse" },
      ground + dots,
    );
  }
  if (name === "likely") {
    const ground = tag("rect", { width: 6, height: 6, fill: "var(--likelyBg)" });
    const stroke = tag("line", { x1: 0, y1: 0, x2: 0, y2: 6, stroke: "var(--likely)", "stroke-width": 3.4 });
    const turned = { patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" };
    return tag("pattern", { id: `likely-${id}`, width: 6, height: 6, ...turned }, ground + stroke);
  }
  if (name === "tape") {
    const ground = tag("rect", { width: 8, height: 8, fill: "var(--sheet)" });
    const stroke = tag("line", { x1: 0, y1: 0, x2: 0, y2: 8, stroke: "var(--ink)", "stroke-width": 3 });
    const turned = { patternUnits: "userSpaceOnUse", patternTransform: "rotate(20)" };
    return tag("pattern", { id: `tape-${id}`, width: 8, height: 8, ...turned }, ground + stroke);
  }
  if (name === "dry") {
    const ground = tag("rect", { width: 7, height: 8, fill: "var(--likelyBg)" });
    const fringe = tag("path", { d: "M2,1v4M5.5,5v4M5.5,-3v4", stroke: "var(--sure)", "stroke-width": 1.5 });
    return tag(
      "pattern",
      { id: `dry-${id}`, width: 7, height: 8, patternUnits: "userSpaceOnUse" },
      ground + fringe,
    );
  }
  const ground = tag("rect", { width: 6, height: 6, fill: "var(--night)" });
  const level = tag("line", { x1: 0, y1: 3, x2: 6, y2: 3, stroke: "var(--nightLine)", "stroke-width": 0.6 });
  return tag(
    "pattern",
    { id: `night-${id}`, width: 6, height: 6, patternUnits: "userSpaceOnUse" },
    ground + level,
  );
}
