import type { PackLayer } from "../../forecast/planResult.ts";
import { DomainError } from "../../quantity/errors.ts";
import type { Trip, TripCooler } from "../../trip/types.ts";
import { layerItems, layersOf } from "../packWords.ts";
import { printable } from "../words.ts";
import { packBox, packKey, packTextures, wordIn } from "./packMarks.ts";
import { packPlan } from "./packPlan.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, words, wrapped } from "./svg.ts";

const EDGE = 14;
const LABEL_PX = 38;
const GAP = 18;

interface Frame {
  layers: readonly PackLayer[];
  inside: TripCooler["body"]["inside"];
  options: PictureOptions;
  /** Of the inside: left, its floor, and pixels per metre. */
  x: number;
  floor: number;
  scale: number;
  /** Where labels begin. */
  labels: number;
}

/**
 * How one cooler is packed: a cut seen from the front with its layers to scale, numbered from the base, and below it every
 * layer from above. Ice is hatched, loose ice dotted, frozen food has small plus signs, raw food a double frame and the
 * word RAW. What stands over the rim is drawn over it.
 *
 * @param cooler its name
 * @throws DomainError for a width outside 320…1600, an id that is no plain word, or a cooler that the trip has not
 */
export function packSection(
  trip: Trip,
  layers: readonly PackLayer[],
  cooler: string,
  options: PictureOptions,
): string {
  checkOptions(options);
  const { width, id } = options;
  const found = trip.coolers.find(({ name }) => name === cooler);
  if (found === undefined)
    throw new DomainError(`cooler must be one of the trip's, got ${printable(cooler)}`);
  const mine = layersOf(layers, cooler);
  const { inside } = found.body;
  const room = width - 2 * EDGE;
  const title = `${printable(cooler)}: pack from 1 at the base up`;
  const frame = frameFor(mine, inside, options);
  const cut = section(frame);
  const key = packKey(EDGE, cut.bottom + 8, room, id);
  const plans = planRows(mine, inside, cut.bottom + key.height + 24, options);
  const desc = mine.map((layer) => `${layer.layer + 1}: ${itemWords(layer)}.`).join(" ");
  return picture(
    options,
    plans.bottom,
    { title, desc: desc === "" ? "Nothing goes in before departure." : `From the base. ${desc}` },
    packTextures(id),
    words(fitted(title, room, 15, true), EDGE, 20, { size: 15, bold: true }) +
      words(fitted("Cut seen from the front; below, front is down", room, 12), EDGE, 38, {
        fill: "ink2",
      }) +
      cut.svg +
      key.svg +
      plans.svg,
  );
}

const itemWords = (layer: PackLayer): string =>
  layerItems(layer)
    .map(({ says }) => says)
    .join(", ");

function frameFor(layers: readonly PackLayer[], inside: Frame["inside"], options: PictureOptions): Frame {
  const wide = options.width >= 600;
  const across = wide ? options.width * 0.46 : options.width * 0.4;
  const scale = Math.min(across / inside.length_m, (wide ? 300 : 220) / inside.height_m);
  const top = layers.at(-1);
  const high_m = Math.max(inside.height_m, top === undefined ? 0 : top.from_m + top.thick_m);
  const x = EDGE + 7;
  return {
    layers,
    inside,
    options,
    x,
    floor: 60 + high_m * scale,
    scale,
    labels: x + inside.length_m * scale + 36,
  };
}

function section(frame: Frame): { svg: string; bottom: number } {
  const { layers, inside, x, floor, scale, options } = frame;
  const right = x + inside.length_m * scale;
  const rim = floor - inside.height_m * scale;
  const labelTops = spread(frame);
  const parts = [
    // The body: two walls and a base; the lid is off.
    box(x - 7, rim, x, floor + 7, "paper", "ink", 1.6),
    box(right, rim, right + 7, floor + 7, "paper", "ink", 1.6),
    box(x - 7, floor, right + 7, floor + 7, "paper", "ink", 1.6),
    ...layers.flatMap((layer) => front(layer, frame)),
    ...layers.map((layer) => line(x, at(layer.from_m, frame), right, at(layer.from_m, frame), "ink", 0.6)),
    ...layers.map((layer, i) => label(layer, labelTops[i]!, frame)),
  ];
  if (overRim(frame))
    parts.push(
      line(x - 12, rim, right + 12, rim, "heat", 2.4, "6 4"),
      words("rim", right - 4, rim - 4, { fill: "heat", bold: true, halo: true, anchor: "end" }),
    );
  const lowest = Math.max(floor + 7, (labelTops[0] ?? 0) + LABEL_PX - 8);
  return { svg: parts.join(""), bottom: lowest + (options.width >= 600 ? 12 : 8) };
}

const at = (up_m: number, { floor, scale }: Frame): number => floor - up_m * scale;

function overRim({ layers, inside }: Frame): boolean {
  const top = layers.at(-1);
  return top !== undefined && top.from_m + top.thick_m > inside.height_m + 1e-6;
}

/** The boxes as seen from the front: what lies at the back first, so that the front hides it. */
function front({ places }: PackLayer, frame: Frame): string[] {
  const { x, scale, options } = frame;
  const frameOf = (p: (typeof places)[number]): readonly [number, number, number, number] => [
    x + p.x_m * scale,
    at(p.z_m + p.height_m, frame),
    x + (p.x_m + p.length_m) * scale,
    at(p.z_m, frame),
  ];
  const loose = places.filter(({ kind }) => kind === "loose ice");
  const firm = places
    .filter(({ kind }) => kind !== "loose ice")
    .sort((a, b) => b.y_m - a.y_m || a.z_m - b.z_m || a.x_m - b.x_m);
  return [...loose, ...firm].flatMap((place) => [
    packBox(place, frameOf(place), options.id),
    place.kind === "raw" ? wordIn("RAW", frameOf(place)) : "",
  ]);
}

/** Tops of the labels, from the base up: beside their layers where there is room, never on each other, in their order. */
function spread(frame: Frame): number[] {
  const { layers } = frame;
  const middles = layers.map(({ from_m, thick_m }) => at(from_m + thick_m / 2, frame) - LABEL_PX / 2 + 4);
  const tops = [...middles];
  // From the top layer down, each at least a label below the one before; the title is above.
  let least = 48;
  for (let i = layers.length - 1; i >= 0; i--) {
    tops[i] = Math.max(middles[i]!, least);
    least = tops[i]! + LABEL_PX;
  }
  return tops;
}

function label(layer: PackLayer, top: number, frame: Frame): string {
  const { x, inside, scale, labels, options } = frame;
  const middle = at(layer.from_m + layer.thick_m / 2, frame);
  const right = x + inside.length_m * scale;
  const room = options.width - EDGE - labels - 14;
  const [first, second] = wrapped(itemWords(layer), room, 12, 2);
  return [
    line(right - 5, middle, right + 10, middle, "ink", 1),
    line(right + 10, middle, labels - 4, top + 10, "ink", 1),
    words(String(layer.layer + 1), labels, top + 14, { size: 13, bold: true }),
    words(first ?? "", labels + 14, top + 14),
    second === undefined ? "" : words(second, labels + 14, top + 29),
  ].join("");
}

function planRows(
  layers: readonly PackLayer[],
  inside: Frame["inside"],
  y: number,
  { width, id }: PictureOptions,
): { svg: string; bottom: number } {
  const across = width >= 600 ? 3 : 2;
  const each = (width - 2 * EDGE - (across - 1) * GAP) / across;
  const parts: string[] = [];
  let top = y;
  for (let i = 0; i < layers.length; i += across) {
    const row = layers
      .slice(i, i + across)
      .map((layer, k) => packPlan(layer, inside, [EDGE + k * (each + GAP), top, each], id));
    parts.push(...row.map(({ svg }) => svg));
    top += Math.max(...row.map(({ height }) => height)) + 12;
  }
  return { svg: parts.join(""), bottom: top };
}
