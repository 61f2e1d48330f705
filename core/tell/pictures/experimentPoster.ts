import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, line as path } from "d3-shape";
import type { Contrast, ExperimentResult } from "../../camp/experimentResult.ts";
import {
  differenceWords,
  kitchenBand,
  kitchenWords,
  lastPairs,
  pairsOf,
  repeatWords,
} from "../experimentText.ts";
import { printable } from "../words.ts";
import {
  box,
  checkOptions,
  fitted,
  line,
  type PictureOptions,
  picture,
  px,
  tag,
  words,
  wrapped,
} from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

type ArmResult = ExperimentResult["arms"][number];
type Scale = ScaleLinear<number, number>;

const EDGE = 14;
const PLOT_PX = 210;
const LEFT_PX = 52;
const ROW_PX = 74;

/**
 * Guess, measurement and model of an experiment in one picture: ice left in each arm through the hours as a hatched band
 * with its likely line, weighed values as open diamonds, guesses as rings at the last weighing; below, what the arms differ
 * by, on a scale with an upright zero.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function experimentPoster(result: ExperimentResult, options: PictureOptions): string {
  checkOptions(options);
  const { width, id, units } = options;
  const room = width - 2 * EDGE;
  const head = wrapped(result.question ?? "", room, 13, 2);
  const top = 34 + head.length * 17;
  const across = width >= 640 ? result.arms.length : 1;
  const wide = (width - 2 * EDGE) / across;
  const tall = PLOT_PX + 74;
  const most_kg = Math.max(
    ...result.arms.map(({ ice_kg, guesses }) => Math.max(ice_kg, ...guesses.map((one) => one.ice_kg))),
  );
  const panels = result.arms.map((arm, i) =>
    drawArm(arm, EDGE + (i % across) * wide, top + Math.floor(i / across) * tall, wide, most_kg, options),
  );
  const pairs = lastPairs(result);
  const below = top + Math.ceil(result.arms.length / across) * tall;
  const rows = pairs.map((pair, i) => drawPair(pair, pairs, result, below + i * ROW_PX, options));
  const keyTop = below + pairs.length * ROW_PX + 26;
  const foot = pairsOf(result).flatMap((pair) => wrapped(repeatWords(pair, result.oneBox), room, 12, 4));
  const content = [
    words(fitted(printable(result.title), room, 15, true), EDGE, 22, { size: 15, bold: true }),
    ...head.map((text, i) => words(text, EDGE, 42 + i * 17, { size: 13, fill: "ink2" })),
    ...panels,
    ...rows,
    drawKey(keyTop, options),
    ...foot.map((text, i) => words(text, EDGE, keyTop + 26 + i * 16, { fill: "ink2" })),
  ];
  const said = pairs.map((pair) => differenceWords(pair, units));
  const arms = result.arms.map((arm) => armWords(arm, units));
  const alt = {
    title: `${result.title}: guess, measurement and model. ${said.join(" ")}`,
    desc: arms.join(" "),
  };
  return picture(options, keyTop + 34 + foot.length * 16, alt, textures(id, "likely"), content.join(""));
}

function armWords({ name, weighings, guesses }: ArmResult, units: PictureOptions["units"]): string {
  const seen = weighings.map(({ after_h, thought_kg, measured_kg }) => {
    const weighed = measured_kg.map((kg) => kitchenWords(kg, units)).join(", ");
    return `after ${after_h} h thought ${kitchenBand(thought_kg, units)}${weighed === "" ? "" : `, weighed ${weighed}`}`;
  });
  const guessed = guesses.map(({ who, ice_kg }) => `${who} guessed ${kitchenWords(ice_kg, units)}`);
  return `${name}: ${[...seen, ...guessed].join("; ")}.`;
}

function drawArm(
  arm: ArmResult,
  x0: number,
  y0: number,
  wide: number,
  most_kg: number,
  options: PictureOptions,
): string {
  const { units, id } = options;
  const last_h = arm.weighings.at(-1)!.after_h;
  const x = scaleLinear([0, last_h], [x0 + LEFT_PX, x0 + wide - 22]);
  const y = scaleLinear([0, most_kg * 1.05], [y0 + 30 + PLOT_PX, y0 + 30]);
  const kg = arm.ice_kg;
  const start = { after_h: 0, thought_kg: { p10: kg, p50: kg, p90: kg }, measured_kg: [] };
  const points = [start, ...arm.weighings];
  const at = (end: "p10" | "p50" | "p90") => (one: (typeof points)[number]) => y(one.thought_kg[end] ?? 0);
  const band = area<(typeof points)[number]>((one) => x(one.after_h), at("p10"), at("p90")).digits(1)(points);
  const likely = path<(typeof points)[number]>((one) => x(one.after_h), at("p50")).digits(1)(points);
  const stroke = (colour: string, size: number): string =>
    tag("path", { d: likely!, fill: "none", stroke: `var(--${colour})`, "stroke-width": size });
  return [
    words(fitted(printable(arm.name), wide - LEFT_PX, 13, true), x0 + LEFT_PX, y0 + 20, {
      size: 13,
      bold: true,
    }),
    drawAxes(x, y, units),
    tag("path", { d: band!, fill: textureFill("likely", id), stroke: "var(--sure)", "stroke-width": 1 }),
    stroke("sheet", 5.5),
    stroke("ink", 2.6),
    ...arm.guesses.map(({ ice_kg }) => ring(x(last_h), y(ice_kg))),
    ...arm.weighings.flatMap(({ after_h, measured_kg }) =>
      measured_kg.map((one) => diamond(x(after_h), y(one))),
    ),
  ].join("");
}

function drawAxes(x: Scale, y: Scale, units: PictureOptions["units"]): string {
  const [x0, x1] = x.range() as [number, number];
  const [y0] = y.range() as [number, number];
  const inUnit = units === "us" ? 0.45359237 : 1;
  const [, most] = y.domain() as [number, number];
  const ticks = scaleLinear([0, most / inUnit], [0, 1]).ticks(4);
  const hours = x.ticks(4).filter((h) => Number.isInteger(h));
  return [
    ...ticks.map((one) => line(x0, y(one * inUnit), x1, y(one * inUnit), "rule", 1)),
    ...ticks.map((one) =>
      words(one === 0 ? "0" : `${one} ${units === "us" ? "lb" : "kg"}`, x0 - 6, y(one * inUnit) + 4, {
        anchor: "end",
      }),
    ),
    line(x0, y0, x1, y0, "ink", 1.5),
    ...hours.map((h) => line(x(h), y0, x(h), y0 + 6, "ink", 1.5)),
    ...hours.map((h) => words(`${h} h`, x(h), y0 + 20, { size: 13, anchor: "middle" })),
  ].join("");
}

/** One pair: the words, and below them band, measurement and guesses on a scale that all pairs share. */
function drawPair(
  pair: Contrast,
  pairs: readonly Contrast[],
  result: ExperimentResult,
  top: number,
  { width, id, units }: PictureOptions,
): string {
  const guessed = guessedOf(pair, result);
  const values = pairs.flatMap((one) => [
    one.thought_kg.p10 ?? 0,
    one.thought_kg.p90 ?? 0,
    one.measured_kg ?? 0,
    ...guessedOf(one, result),
  ]);
  const reach = 1.1 * Math.max(...values.map(Math.abs), 1e-3);
  const x = scaleLinear([-reach, reach], [EDGE + 8, width - EDGE - 8]);
  const y = top + 46;
  const { p10, p50, p90 } = pair.thought_kg;
  const said = wrapped(differenceWords(pair, units), width - 2 * EDGE, 12, 2);
  return [
    line(EDGE, top, width - EDGE, top, "rule", 1),
    ...said.map((text, i) => words(text, EDGE, top + 16 + i * 15)),
    line(x(-reach), y, x(reach), y, "rule", 1),
    box(x(p10 ?? 0), y - 5, x(p90 ?? 0), y + 5, textureFill("likely", id), "sure"),
    line(x(p50 ?? 0), y - 7, x(p50 ?? 0), y + 7, "ink", 2.6),
    line(x(0), y - 13, x(0), y + 13, "ink", 1.5),
    ...guessed.map((one) => ring(x(one), y)),
    pair.measured_kg === null ? "" : diamond(x(pair.measured_kg), y),
    words(`more left: ${printable(pair.b)}`, EDGE, y + 24, { fill: "ink2" }),
    words("0", x(0), y + 25, { anchor: "middle" }),
    words(`more left: ${printable(pair.a)}`, width - EDGE, y + 24, { fill: "ink2", anchor: "end" }),
  ].join("");
}

/** What each person thought the two arms differ by. */
function guessedOf({ a, b }: Contrast, { arms }: ExperimentResult): number[] {
  const [one, other] = [a, b].map((name) => arms.find((arm) => arm.name === name)!);
  return one!.guesses.flatMap(({ who, ice_kg }) => {
    const same = other!.guesses.find((guess) => guess.who === who);
    return same === undefined ? [] : [ice_kg - same.ice_kg];
  });
}

function drawKey(y: number, { id }: PictureOptions): string {
  return [
    box(EDGE, y - 9, EDGE + 18, y + 1, textureFill("likely", id), "sure"),
    words("thought, 8 in 10", EDGE + 25, y, { fill: "ink2" }),
    diamond(EDGE + 140, y - 4),
    words("weighed", EDGE + 153, y, { fill: "ink2" }),
    ring(EDGE + 220, y - 4),
    words("guess", EDGE + 233, y, { fill: "ink2" }),
  ].join("");
}

function diamond(x: number, y: number): string {
  const d = `M${px(x)},${px(y - 7)}l7,7l-7,7l-7,-7Z`;
  return tag("path", { d, fill: "var(--sheet)", stroke: "var(--ink)", "stroke-width": 2.4 });
}

function ring(x: number, y: number): string {
  return tag("circle", {
    cx: x,
    cy: y,
    r: 7,
    fill: "none",
    stroke: "var(--heat)",
    "stroke-width": 2.4,
    "stroke-dasharray": "4 2.5",
  });
}
