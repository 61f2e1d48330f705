import { group } from "d3-array";
import type { Mark } from "../../forecast/types.ts";
import { printable } from "../words.ts";
import type { TimeScale } from "./marks.ts";
import { fitted, line, px, tag, textWidth_px, words } from "./svg.ts";

/** Which words are placed first where there is little room, and how each act is drawn. */
export const RANK = ["merge", "add ice", "put in", "move", "cover", "drain", "take out"] as const;
export type Told = (typeof RANK)[number];

const ROW_PX = 16;
const GLYPH_PX = 14;
/** Widest sign: two nearer than this would cover each other. */
const SIGN_PX = 11;
const LONGEST_PX = 190;

/** An act with its place on the ruler. */
export interface Act {
  what: Told;
  x: number;
  words: string;
}

/** An act whose words found room. */
export interface Placed extends Act {
  row: number;
  /** Middle of the words. */
  at: number;
}

/** What happens to a cooler, drawn above its lane: words, signs, then the row of lids: ticks for openings, ▼ for pulls. */
export interface ActStrip {
  height: number;
  /** The kinds of act that are drawn. */
  drawn: ReadonlySet<Mark["what"]>;
  /** Draws with the lane's top at `y`, drop lines down to `bottom`. */
  draw(y: number, bottom: number): string;
}

/**
 * Lays out the acts of one cooler. Signs and words that would cover others are left out; the picture's
 * description has them all. Merges and ice runs drop a dashed line through the lane.
 */
export function actStrip(marks: readonly Mark[], x: TimeScale, rows: number): ActStrip {
  const [x0, x1] = x.range() as [number, number];
  const acts = gathered(marks, x);
  const signed = apart(acts.filter((act) => act.what !== "take out"));
  const pulled = acts.filter((act) => act.what === "take out");
  const placed = place([...signed, ...pulled], x0, x1, rows);
  const rowsUsed = placed.reduce((most, one) => Math.max(most, one.row + 1), 0);
  const opened = marks.filter((mark) => mark.what === "open");
  const low_px = pulled.length > 0 || opened.length > 0 ? 10 : 0;
  const high_px = signed.length > 0 ? GLYPH_PX : 0;
  return {
    drawn: new Set([...[...signed, ...pulled].map((act) => act.what), ...opened.map((mark) => mark.what)]),
    height: rowsUsed * ROW_PX + high_px + low_px + 2,
    draw(y, bottom) {
      const signY = y - low_px - high_px / 2;
      const wordsY = y - low_px - high_px - 4;
      const ticks = opened.map((mark) => line(x(mark.t_h), y - 7, x(mark.t_h), y - 1, "ink", 1.5));
      const pulls = pulled.map((act) => sign(act.what, act.x, y - 6));
      const drops = acts
        .filter((act) => act.what === "merge" || act.what === "add ice")
        .map((act) => line(act.x, signY + 6, act.x, bottom, "ink", 1.5, "4 3"));
      const leaders = placed
        .filter((one) => one.row > 0)
        .map((one) => line(one.x, signY - 6, one.x, wordsY + 3 - one.row * ROW_PX, "edge", 1));
      const signs = signed.map((act) => sign(act.what, act.x, signY));
      const texts = placed.map((one) =>
        words(one.words, one.at, wordsY - one.row * ROW_PX, { bold: true, anchor: "middle", halo: true }),
      );
      return [...drops, ...leaders, ...ticks, ...pulls, ...signs, ...texts].join("");
    },
  };
}

/** Acts of one kind at one time share a sign and their words. */
function gathered(marks: readonly Mark[], x: TimeScale): Act[] {
  const told = marks.filter((mark): mark is Mark & { what: Told } => mark.what !== "open");
  return [...group(told, (mark) => `${mark.what} ${mark.t_h.toFixed(2)}`).values()].map((same) => {
    const first = printable(same[0]!.words);
    const more = same.length > 1 ? ` +${same.length - 1}` : "";
    return { what: same[0]!.what, x: x(same[0]!.t_h), words: fitted(first, LONGEST_PX, 12, true) + more };
  });
}

/** Signs that would cover each other: the one that comes first in rank stays. */
function apart(acts: readonly Act[]): Act[] {
  const kept: Act[] = [];
  for (const act of ranked(acts)) if (kept.every((one) => Math.abs(one.x - act.x) >= SIGN_PX)) kept.push(act);
  return kept;
}

function ranked(acts: readonly Act[]): Act[] {
  return [...acts].sort((a, b) => RANK.indexOf(a.what) - RANK.indexOf(b.what) || a.x - b.x);
}

/** Words beside their signs, in rows away from the lane; what would cover others is left out. */
export function place(acts: readonly Act[], x0: number, x1: number, rows: number): Placed[] {
  const placed: (Placed & { from: number; to: number })[] = [];
  for (const act of ranked(acts)) {
    const half = textWidth_px(act.words, 12, true) / 2 + 3;
    const at = Math.min(Math.max(act.x, x0 + half), x1 - half);
    for (let row = 0; row < rows; row += 1) {
      const clear = placed.every((one) => {
        const touches = one.row === row && one.from < at + half && at - half < one.to;
        const crossed = one.row > row && one.x > at - half && one.x < at + half;
        const crosses = one.row < row && act.x > one.from && act.x < one.to;
        return !touches && !crossed && !crosses;
      });
      if (!clear) continue;
      placed.push({ ...act, row, at, from: at - half, to: at + half });
      break;
    }
  }
  return placed;
}

/** The sign of an act, its middle at x, y. */
export function sign(what: Told, x: number, y: number): string {
  const at = `M${px(x)},${px(y)}`;
  const shapes: Record<Told, string> = {
    merge: `${at}m-5,-5v5h10m-4,-4l4,4l-4,4`,
    "add ice": `${at}m-5,0h10m-5,-5v10`,
    "put in": `${at}m0,-5v9m-4,-4l4,4l4,-4`,
    move: `${at}m-4,-5v10m0,-5h9`,
    cover: `${at}m-6,3v-5h12v5`,
    drain: `${at}m-4,-4v4a4,4 0 0 0 8,0v-4`,
    "take out": `${at}m-4.5,-3h9l-4.5,7Z`,
  };
  const solid = what === "take out";
  return tag("path", {
    d: shapes[what],
    fill: solid ? "var(--ink)" : "none",
    stroke: solid ? undefined : "var(--ink)",
    "stroke-width": solid ? undefined : 2.4,
  });
}
