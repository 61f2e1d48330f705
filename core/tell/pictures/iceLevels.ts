import type { IceLevel } from "../../camp/logFile.ts";
import { tag } from "./svg.ts";

const SHARES: Readonly<Record<IceLevel, number>> = {
  full: 1,
  "3/4": 0.75,
  "1/2": 0.5,
  "1/4": 0.25,
  slush: 0,
  water: 0,
};

/** Inside of the drawn box: its left, its floor, its width and its height. */
const INSIDE = { x: 5, floor: 27, width: 30, height: 21 } as const;

/**
 * A cooler cut open, with so much ice in it: the picture that stands for a level where it is logged, beside its word.
 * It takes the colour of the text around it, so that it can stand on any ground; it says nothing to a screen reader, for
 * its word does. Ice is a block, slush lumps, water a wave.
 */
export function iceLevel(level: IceLevel): string {
  const wall = tag("path", {
    d: "M3,3V29H37V3",
    fill: "none",
    stroke: "currentColor",
    "stroke-width": 2.4,
  });
  return tag(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: 40,
      height: 32,
      viewBox: "0 0 40 32",
      "aria-hidden": "true",
      focusable: "false",
    },
    wall + content(level),
  );
}

function content(level: IceLevel): string {
  const { x, floor, width, height } = INSIDE;
  if (level === "water")
    return tag("path", {
      d: "M6,19q3.5,-5 7,0t7,0t7,0t7,0",
      fill: "none",
      stroke: "currentColor",
      "stroke-width": 2,
    });
  if (level === "slush")
    return [9, 19, 29]
      .map((at, i) => {
        const y = i === 1 ? 22 : 19.5;
        return tag("path", { d: `M${at - 3.5},${y}l3.5,-3.5l4,3l-3.5,4z`, fill: "currentColor" });
      })
      .join("");
  const ice = height * SHARES[level];
  return tag("rect", { x, y: floor - ice, width, height: ice, fill: "currentColor" });
}
