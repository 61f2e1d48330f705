import type { Mark } from "../../forecast/types.ts";
import { RANK, sign, type Told } from "./acts.ts";
import { flagSign } from "./marks.ts";
import { line, textWidth_px, words } from "./svg.ts";

const SIGN_WORDS: Readonly<Record<Told, string>> = {
  "add ice": "ice added",
  "put in": "put in",
  "take out": "taken out",
  move: "moved",
  cover: "cover changed",
  drain: "drained",
  merge: "merged",
};
const ROW_PX = 18;

interface KeyItem {
  name: string;
  draw: (x: number, y: number) => string;
}

/** What the signs of a lane mean, in a line or two under it: each that occurs, once. `end`: the diamond is among them. */
export function actKey(
  marks: readonly Mark[],
  end: { name: string; id: string } | null,
  [x0, x1]: readonly [number, number],
  y: number,
): { svg: string; height: number } {
  const items: KeyItem[] = RANK.filter((what) => marks.some((mark) => mark.what === what)).map((what) => ({
    name: SIGN_WORDS[what],
    draw: (x, at) => sign(what, x, at),
  }));
  if (marks.some((mark) => mark.what === "open"))
    items.push({ name: "opened", draw: (x, at) => line(x, at - 4, x, at + 4, "ink", 1.5) });
  if (end !== null) items.push({ name: end.name, draw: (x, at) => flagSign(x, at, end.id) });
  let x = x0;
  let row = 0;
  const drawn = items.map(({ name, draw }) => {
    const width = 36 + textWidth_px(name, 12);
    if (x > x0 && x + width > x1) [x, row] = [x0, row + 1];
    const middle = y + row * ROW_PX + 8;
    const svg = draw(x + 8, middle) + words(name, x + 20, middle + 4, { fill: "ink2" });
    x += width;
    return svg;
  });
  return { svg: drawn.join(""), height: items.length === 0 ? 0 : (row + 1) * ROW_PX };
}
