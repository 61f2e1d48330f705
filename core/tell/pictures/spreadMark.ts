import type { ScaleLinear } from "d3-scale";
import type { Band } from "../../forecast/result.ts";
import { box, line, px, tag } from "./svg.ts";
import { textureFill } from "./texture.ts";

/** What a mark is about: food is a dot on a line, ice a diamond in a hatched bar. Shapes tell them apart without colour. */
export type Marked = "food" | "ice";

const ARROW_PX = 7;

/**
 * A likely value with its range on a scale of hours: from the end one in ten lies below to the end one in ten lies above.
 * An end that is not known points out of the scale with an arrow.
 */
export function spreadMark(
  what: Marked,
  band: Band,
  x: ScaleLinear<number, number>,
  y: number,
  id: string,
): string {
  const [, right] = x.range() as [number, number];
  const at = (value: number | null): number => (value === null ? right : x(value));
  const [from, middle, to] = [at(band.p10), at(band.p50), at(band.p90)];
  const parts =
    what === "food"
      ? [
          line(from, y, band.p90 === null ? to - 2 : to, y, "ink", 2.6),
          line(from, y - 4, from, y + 4, "ink", 1.6),
          band.p90 === null ? "" : line(to, y - 4, to, y + 4, "ink", 1.6),
        ]
      : [
          box(
            from,
            y - 4,
            band.p90 === null ? to - ARROW_PX - 2 : to,
            y + 4,
            textureFill("likely", id),
            "sure",
          ),
        ];
  if (band.p90 === null) parts.push(arrow(right, y));
  if (band.p50 !== null) parts.push(what === "food" ? dot(middle, y) : diamond(middle, y));
  return parts.join("");
}

/** The sign alone, for a key. */
export function spreadSign(what: Marked, x: number, y: number, id: string): string {
  return what === "food"
    ? line(x - 9, y, x + 9, y, "ink", 2.6) + dot(x, y)
    : box(x - 9, y - 4, x + 9, y + 4, textureFill("likely", id), "sure") + diamond(x, y);
}

function dot(x: number, y: number): string {
  return tag("circle", {
    cx: x,
    cy: y,
    r: 5.5,
    fill: "var(--ink)",
    stroke: "var(--sheet)",
    "stroke-width": 1.6,
  });
}

function diamond(x: number, y: number): string {
  const d = `M${px(x)},${px(y - 7)}l7,7l-7,7l-7,-7Z`;
  return tag("path", { d, fill: "var(--sheet)", stroke: "var(--sure)", "stroke-width": 2.4 });
}

function arrow(x: number, y: number): string {
  const d = `M${px(x - ARROW_PX)},${px(y - 5)}l${ARROW_PX},5l${-ARROW_PX},5`;
  return tag("path", { d, fill: "none", stroke: "var(--ink)", "stroke-width": 2.4 });
}
