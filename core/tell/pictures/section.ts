import type { CoolerMoment, Due, MomentLayer, MomentPlace } from "../coolerMoment.ts";
import { momentLines, momentSaid } from "../coolerMoment.ts";
import { layerItems } from "../packWords.ts";
import { localTime } from "../words.ts";
import { packBox, packKey, packTextures, wordIn } from "./packMarks.ts";
import {
  box,
  checkOptions,
  fitted,
  line,
  type PictureOptions,
  picture,
  tag,
  textWidth_px,
  words,
  wrapped,
} from "./svg.ts";
import { waterFill, waterTexture } from "./texture.ts";

const EDGE = 14;
const WALL = 7;
const LABEL = 34;

interface Frame {
  moment: CoolerMoment;
  options: PictureOptions;
  x: number;
  floor: number;
  scale: number;
  labels: number;
}

/**
 * A cut through one cooler at an hour of the trip, seen from the front: the body never changes, what is inside sinks, melts
 * and is eaten; meltwater stands over it up to its line. Food is tinted by how soon it is eaten and carries its day.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function section(moment: CoolerMoment, options: PictureOptions): string {
  checkOptions(options);
  const { width, id, units } = options;
  const room = width - 2 * EDGE;
  const said = momentSaid(moment);
  const facts = momentLines(moment, units);
  const lines = wrapped(facts.join(" · "), room, 13, 3);
  const top = 34 + lines.length * 17 + 12;
  const frame = frameFor(moment, options, top);
  const foot = Math.max(frame.floor + 10, ...labelTops(frame).map((label_y) => label_y + LABEL)) + 12;
  const key = packKey(EDGE, foot, room, id);
  const tints = tintKey(EDGE, foot + key.height + 6, room);
  const layers = moment.layers.map((layer) => `${layer.layer + 1}: ${itemsOf(layer)}`);
  const title = `${moment.cooler}, ${said}`;
  return picture(
    options,
    foot + key.height + tints.height + 12,
    {
      title: `Cut through ${title}.`,
      desc: `${facts.join(". ")}. From the base. ${layers.length === 0 ? "Nothing is left in it" : layers.join(". ")}.`,
    },
    packTextures(id) + waterTexture(id),
    [
      words(fitted(title, room, 15, true), EDGE, 20, { size: 15, bold: true }),
      ...lines.map((text, i) => words(text, EDGE, 40 + i * 17, { size: 13 })),
      body(frame),
      inner(frame),
      key.svg,
      tints.svg,
    ].join(""),
  );
}

function frameFor(moment: CoolerMoment, options: PictureOptions, top: number): Frame {
  const wide = options.width >= 560;
  const across = options.width * (wide ? 0.5 : 0.42);
  const { length_m, height_m } = moment.inside;
  const scale = Math.min(across / length_m, (wide ? 280 : 200) / height_m);
  const x = EDGE + WALL;
  return { moment, options, x, scale, floor: top + height_m * scale, labels: x + length_m * scale + 34 };
}

/** Walls, base and a lid that lies apart; the same at every hour. */
function body({ moment, x, floor, scale }: Frame): string {
  const right = x + moment.inside.length_m * scale;
  const rim = floor - moment.inside.height_m * scale;
  return [
    box(x - WALL, rim - 9, right + WALL, rim - 3, "paper", "ink", 1.6),
    box(x - WALL, rim, x, floor + WALL, "paper", "ink", 1.6),
    box(right, rim, right + WALL, floor + WALL, "paper", "ink", 1.6),
    box(x - WALL, floor, right + WALL, floor + WALL, "paper", "ink", 1.6),
  ].join("");
}

function inner(frame: Frame): string {
  const { moment, x, floor, scale, options } = frame;
  const right = x + moment.inside.length_m * scale;
  const up = (height_m: number): number => floor - height_m * scale;
  const tops = labelTops(frame);
  const stack_m = Math.max(0, ...moment.layers.map(({ from_m, thick_m }) => from_m + thick_m));
  const added =
    moment.addedIce_m * scale < 1
      ? ""
      : packBox(
          { kind: "loose ice", item: "cube" },
          [x, up(Math.min(moment.inside.height_m, stack_m + moment.addedIce_m)), right, up(stack_m)],
          options.id,
        );
  const water = moment.waterline_m * scale;
  return [
    ...moment.layers.flatMap((layer) => contents(layer, frame)),
    added,
    water < 1 ? "" : waterOver(x, floor - water, right, floor, options.id),
    ...moment.layers.map((layer, i) => label(layer, tops[i]!, frame)),
  ].join("");
}

/** Waves over everything up to the waterline, and the line itself. */
function waterOver(x0: number, y0: number, x1: number, y1: number, id: string): string {
  const sheet = tag("rect", {
    x: x0,
    y: y0,
    width: x1 - x0,
    height: y1 - y0,
    fill: waterFill(id),
    opacity: "0.82",
  });
  return sheet + line(x0, y0, x1, y0, "water", 2);
}

const TINTS: Readonly<Record<Due, string>> = { next: "f1", day: "f2", days: "f3", later: "f4" };

function contents(layer: MomentLayer, frame: Frame): string[] {
  const { x, floor, scale, options, moment } = frame;
  const edges = (place: MomentPlace): readonly [number, number, number, number] => {
    const foot = floor - place.z_m * scale;
    return [
      x + place.x_m * scale,
      foot - place.height_m * scale,
      x + (place.x_m + place.length_m) * scale,
      foot,
    ];
  };
  const behindFirst = [...layer.places].sort(
    (a, b) =>
      Number(b.kind === "loose ice") - Number(a.kind === "loose ice") || b.y_m - a.y_m || a.x_m - b.x_m,
  );
  return behindFirst.map((place) => {
    const at = edges(place);
    if (place.due === null) return packBox(place, at, options.id) + melted(place, at);
    const day = place.eaten_h === null ? "" : localTime(place.eaten_h, moment.clock).weekday;
    const tab = place.kind === "raw" ? `RAW ${day}`.trim() : day;
    const word = wordIn(tab, at) || (place.kind === "raw" ? wordIn("RAW", at) : "");
    return packBox(place, at, options.id, TINTS[place.due]) + word;
  });
}

/** What of a jug or a pack is no longer ice, as open ground above the ice in it. */
function melted(
  { kind, item, frozen_frac }: MomentPlace,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
): string {
  if (kind !== "pack" && item !== "jug") return "";
  const level = y1 - (y1 - y0) * frozen_frac;
  return level - y0 < 2 ? "" : box(x0 + 1, y0 + 1, x1 - 1, level, "sheet", "edge", 0.6);
}

const itemsOf = (layer: MomentLayer): string =>
  layerItems({ cooler: "", items: [], notes: [], ...layer })
    .map(({ says }) => says)
    .join(", ");

/** Tops of the labels: beside their layers where there is room, at least a label apart, none above the lid. */
function labelTops(frame: Frame): number[] {
  const { moment, floor, scale } = frame;
  const tops = moment.layers.map(({ from_m, thick_m }) => floor - (from_m + thick_m / 2) * scale - LABEL / 2);
  // From the base up each pushes the next one higher; then from the rim down.
  let most = floor - LABEL + 12;
  for (let i = 0; i < tops.length; i++) {
    tops[i] = Math.min(tops[i]!, most);
    most = tops[i]! - LABEL;
  }
  let least = floor - moment.inside.height_m * scale - 12;
  for (let i = tops.length - 1; i >= 0; i--) {
    tops[i] = Math.max(tops[i]!, least);
    least = tops[i]! + LABEL;
  }
  return tops;
}

function label(layer: MomentLayer, top: number, frame: Frame): string {
  const { x, floor, scale, labels, moment, options } = frame;
  const middle = floor - (layer.from_m + layer.thick_m / 2) * scale;
  const right = x + moment.inside.length_m * scale;
  const [first = "", second] = wrapped(itemsOf(layer), options.width - EDGE - labels - 16, 12, 2);
  return [
    line(right - 4, middle, right + 10, middle, "ink", 1),
    line(right + 10, middle, labels - 4, top + 10, "ink", 1),
    words(String(layer.layer + 1), labels, top + 14, { size: 13, bold: true }),
    words(first, labels + 16, top + 14),
    second === undefined ? "" : words(second, labels + 16, top + 29),
  ].join("");
}

const SAYS: readonly (readonly [Due, string])[] = [
  ["next", "next meal"],
  ["day", "in a day"],
  ["days", "in three"],
  ["later", "later"],
];

function tintKey(x: number, y: number, room: number): { svg: string; height: number } {
  let [left, top] = [x, y];
  const svg = SAYS.map(([due, says]) => {
    const needs = 22 + textWidth_px(says, 12) + 12;
    if (left > x && left + needs > x + room) [left, top] = [x, top + 20];
    const here = left;
    left += needs;
    return box(here, top, here + 18, top + 13, TINTS[due], "ink", 1.2) + words(says, here + 23, top + 11);
  }).join("");
  return { svg, height: top - y + 16 };
}
