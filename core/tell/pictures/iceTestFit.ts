import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, line as path } from "d3-shape";
import type { IceTestResult } from "../../camp/iceTestResult.ts";
import { massWords } from "../../quantity/show.ts";
import { iceTestAnswer } from "../iceTestText.ts";
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

type Scale = ScaleLinear<number, number>;
const EDGE = 14;
const LEFT_PX = 56;
const PLOT_PX = 240;

/**
 * Ice of a home test through the hours: what coolers of its kind would keep as a dotted band, the fitted cooler as a hatched
 * one with its likely line, weighed ice as open diamonds; what was left out has a cross.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function iceTestFit(result: IceTestResult, options: PictureOptions): string {
  checkOptions(options);
  const { width, id, units } = options;
  const { course, weighings, test } = result;
  const room = width - 2 * EDGE;
  const said = wrapped(iceTestAnswer(result, units), room, 12, 3);
  const top = 34 + said.length * 16;
  const bottom = top + PLOT_PX;
  const x = scaleLinear([0, course.t_h.at(-1)!], [LEFT_PX, width - EDGE - 8]);
  const y = scaleLinear([0, test.ice_kg * 1.05], [bottom, top]);
  const hasFit = weighings.some(({ isCounted }) => isCounted);
  const content = [
    words(fitted(printable(test.title), room, 15, true), EDGE, 20, { size: 15, bold: true }),
    ...said.map((text, i) => words(text, EDGE, 38 + i * 16, { fill: "ink2" })),
    drawAxes(x, y, units),
    ...drawBands(course, x, y, hasFit, id),
    ...weighings
      .filter(({ of }) => of === "ice")
      .map(({ after_h, measured_kg, isCounted }) => diamond(x(after_h), y(measured_kg), isCounted)),
    drawKey(bottom + 46, hasFit, options),
  ];
  const desc = weighings.map((one) => weighingWords(one, units)).join(" ");
  const title = `${test.title}: ${iceTestAnswer(result, units)}`;
  const alt = { title, desc: desc === "" ? "Nothing is weighed yet." : desc };
  return picture(
    options,
    bottom + (options.width < NARROW_PX ? 80 : 60),
    alt,
    textures(id, "likely", "luck"),
    content.join(""),
  );
}

function weighingWords(
  { after_h, of, measured_kg, fitted_kg, isCounted }: IceTestResult["weighings"][number],
  units: PictureOptions["units"],
): string {
  const what = of === "ice" ? "ice" : "water let out";
  return `After ${after_h} h ${what} ${massWords(measured_kg, units)}, by the fit ${massWords(fitted_kg, units)}${isCounted ? "" : ", left out"}.`;
}

/** Its kind behind, this cooler before it, its likely line on top. */
function drawBands(
  { t_h, ice_kg, class_kg }: IceTestResult["course"],
  x: Scale,
  y: Scale,
  hasFit: boolean,
  id: string,
): string[] {
  const at = t_h.map((_, i) => i);
  const band = ({ p10, p90 }: { p10: readonly number[]; p90: readonly number[] }): string =>
    area<number>(
      (i) => x(t_h[i]!),
      (i) => y(p10[i]!),
      (i) => y(p90[i]!),
    ).digits(1)(at)!;
  const likely = path<number>(
    (i) => x(t_h[i]!),
    (i) => y(ice_kg.p50[i]!),
  ).digits(1)(at)!;
  const filled = (d: string, texture: "likely" | "luck", stroke: string): string =>
    tag("path", { d, fill: textureFill(texture, id), stroke: `var(--${stroke})`, "stroke-width": 1 });
  const drawn = (stroke: string, width: number): string =>
    tag("path", { d: likely, fill: "none", stroke: `var(--${stroke})`, "stroke-width": width });
  const kind = filled(band(class_kg), "luck", "edge");
  return hasFit
    ? [kind, filled(band(ice_kg), "likely", "sure"), drawn("sheet", 5.5), drawn("ink", 2.6)]
    : [kind];
}

function drawAxes(x: Scale, y: Scale, units: PictureOptions["units"]): string {
  const [x0, x1] = x.range() as [number, number];
  const [y0] = y.range() as [number, number];
  const inUnit = units === "us" ? 0.45359237 : 1;
  const [, most] = y.domain() as [number, number];
  const ticks = scaleLinear([0, most / inUnit], [0, 1]).ticks(4);
  const hours = x.ticks(6).filter((h) => Number.isInteger(h));
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

/** Below this width the key takes two lines. */
const NARROW_PX = 420;

function drawKey(y: number, hasFit: boolean, { id, width }: PictureOptions): string {
  const [x, at] = width < NARROW_PX ? [EDGE, y + 20] : [EDGE + 254, y];
  const fit = [
    box(EDGE + 118, y - 9, EDGE + 136, y + 1, textureFill("likely", id), "sure"),
    words("this one, 8 in 10", EDGE + 143, y, { fill: "ink2" }),
    diamond(x + 9, at - 4, true),
    words("weighed", x + 25, at, { fill: "ink2" }),
  ];
  return [
    box(EDGE, y - 9, EDGE + 18, y + 1, textureFill("luck", id), "edge"),
    words("its kind, 8 in 10", EDGE + 25, y, { fill: "ink2" }),
    ...(hasFit ? fit : []),
  ].join("");
}

function diamond(x: number, y: number, isCounted: boolean): string {
  const d = `M${px(x)},${px(y - 7)}l7,7l-7,7l-7,-7Z`;
  const mark = tag("path", {
    d,
    fill: "var(--sheet)",
    stroke: `var(--${isCounted ? "ink" : "heat"})`,
    "stroke-width": 2.4,
  });
  return isCounted ? mark : mark + line(x - 9, y - 9, x + 9, y + 9, "heat", 2.4);
}
