import { max } from "d3-array";
import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, line as linePath } from "d3-shape";
import type { UnitSystem } from "../../quantity/units.ts";
import type { CompareResult } from "../../whatif/types.ts";
import { iceAmount, iceUnit } from "../voice.ts";
import { fitted, line, type PictureOptions, px, tag, words } from "./svg.ts";
import { overlayFill } from "./texture.ts";

type Series = CompareResult["series"][number];

const EDGE = 14;
const LEFT = 50;
const DISC_PX = 10;
const HALO = { fill: "none", stroke: "var(--sheet)", "stroke-width": 5.5 };
const DASHES: readonly (string | undefined)[] = [undefined, "10 5", "1.5 6", "12 4 2 4"];

/** One panel: the ice of the coolers of one name against days since departure, its top at `top`. */
export function drawPanel(
  cooler: string,
  same: readonly Series[],
  letters: readonly string[],
  options: PictureOptions,
  top: number,
): { svg: string; height: number } {
  const { width, units, id } = options;
  const [y0, y1] = [top + 28, top + 28 + (width < 500 ? 150 : 210)];
  const x = scaleLinear([0, Math.max(1, ...same.map(({ t_h }) => max(t_h) ?? 0))], [LEFT, width - EDGE]);
  const most = Math.max(0.1, ...same.flatMap(({ p90, p50 }) => [max(p90) ?? 0, max(p50) ?? 0]));
  const y = scaleLinear([0, most], [y1, y0]);
  const ordered = [...same].sort((a, b) => letters.indexOf(a.letter) - letters.indexOf(b.letter));
  const at = (one: Series): number => letters.indexOf(one.letter);
  const taken: [number, number][] = [];
  const svg = [
    words(fitted(`${cooler}: ice left`, width - 2 * EDGE, 13, true), EDGE, top + 14, {
      size: 13,
      bold: true,
    }),
    massAxis(y, x, units),
    ...ordered.map((one) => drawBand(one, at(one), x, y, id)),
    ...ordered.map((one) => tag("path", { d: likelyPath(one, x, y), ...HALO })),
    ...ordered.map((one) => tag("path", { d: likelyPath(one, x, y), fill: "none", ...strokeOf(at(one)) })),
    daysAxis(x, y1),
    ...ordered.map((one, i) => {
      const spot = spotOn(one, i, ordered.length, x, y, taken);
      taken.push(spot);
      return disc(one.letter, ...spot);
    }),
  ];
  return { svg: svg.join(""), height: y1 - top + 52 };
}

function massAxis(y: ScaleLinear<number, number>, x: ScaleLinear<number, number>, units: UnitSystem): string {
  const [x0, x1] = x.range() as [number, number];
  const shown = scaleLinear([0, iceAmount(y.domain()[1]!, units)], y.range());
  return shown
    .ticks(4)
    .map((amount, i, all) => {
      const unit = i === all.length - 1 ? ` ${iceUnit(units)}` : "";
      return (
        line(x0, shown(amount), x1, shown(amount), "rule", 0.6) +
        words(`${amount}${unit}`, x0 - 6, shown(amount) + 4, { anchor: "end" })
      );
    })
    .join("");
}

/** Days since each trip's own departure. */
function daysAxis(x: ScaleLinear<number, number>, y: number): string {
  const [x0, x1] = x.range() as [number, number];
  const days = Math.floor(x.domain()[1]! / 24);
  const every = Math.max(1, Math.ceil((days * 30) / (x1 - x0)));
  const parts = [line(x0, y, x1, y, "ink", 1.5)];
  for (let day = every; day <= days; day += every) {
    parts.push(line(x(day * 24), y, x(day * 24), y + 6, "ink", 1.5));
    if (x1 - x(day * 24) > 8)
      parts.push(words(String(day), x(day * 24), y + 19, { size: 13, anchor: "middle" }));
  }
  return parts.join("") + words("days since departure", x0, y + 34, { fill: "ink2" });
}

function drawBand(
  { t_h, p10, p90 }: Series,
  i: number,
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
  id: string,
): string {
  const points = t_h.map((_, k) => k);
  const xs = (k: number): number => x(t_h[k]!);
  const d = area<number>(
    xs,
    (k) => y(p10[k]!),
    (k) => y(p90[k]!),
  )
    // Where nothing is left nothing is drawn.
    .defined((k) => p90[k]! > 0 || (p90[k - 1] ?? 1) > 0)
    .digits(1)(points)!;
  return tag("path", { d, fill: overlayFill(i, id), stroke: "var(--sure)", "stroke-width": 0.8 });
}

function likelyPath(
  { t_h, p50 }: Series,
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
): string {
  return linePath<number>(
    (k) => x(t_h[k]!),
    (k) => y(p50[k]!),
  )
    .defined((k) => p50[k]! > 0 || (p50[k - 1] ?? 1) > 0)
    .digits(1)(t_h.map((_, k) => k))!;
}

/** How the likely line of a letter is drawn: solid, dashes, dots, both. */
export function strokeOf(i: number): Record<string, string | number | undefined> {
  return {
    stroke: "var(--ink)",
    "stroke-width": 2.6,
    "stroke-dasharray": DASHES[i],
    "stroke-linecap": i === 2 ? "round" : undefined,
  };
}

/** A place on the line where its letter covers no other: each begins elsewhere along the ice it still has. */
function spotOn(
  { t_h, p50 }: Series,
  i: number,
  n: number,
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
  taken: readonly [number, number][],
): [number, number] {
  const gone = p50.findIndex((ice, k) => k > 0 && ice < 0.02 * (max(p50) ?? 1));
  const last = gone < 0 ? t_h.length - 1 : gone;
  const first = Math.round((last * (i + 1)) / (n + 1));
  const spots = Array.from({ length: last + 1 }, (_, k) => (first + k) % (last + 1)).map(
    (k): [number, number] => [px(Math.min(x(t_h[k]!), x.range()[1]! - DISC_PX)), px(y(p50[k]!))],
  );
  const isFree = ([cx, cy]: [number, number]): boolean =>
    cx > x.range()[0]! + DISC_PX && taken.every(([tx, ty]) => Math.hypot(cx - tx, cy - ty) > 2 * DISC_PX + 4);
  return spots.find(isFree) ?? spots[0]!;
}

/** A letter in a disc. */
export function disc(letter: string, x: number, y: number): string {
  const circle = tag("circle", {
    cx: x,
    cy: y,
    r: DISC_PX,
    fill: "var(--sheet)",
    stroke: "var(--ink)",
    "stroke-width": 1.6,
  });
  return circle + words(letter, x, y + 4.5, { size: 13, bold: true, anchor: "middle" });
}
