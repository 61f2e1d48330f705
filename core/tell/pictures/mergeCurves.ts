import { max } from "d3-array";
import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, line as linePath } from "d3-shape";
import type { Merge } from "../../forecast/planResult.ts";
import type { BandSeries } from "../../forecast/result.ts";
import type { Forecast } from "../../forecast/types.ts";
import { DomainError } from "../../quantity/errors.ts";
import { massWords } from "../../quantity/show.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import { localInstant_ms } from "../../sky/localTime.ts";
import { gainHours } from "../gainWords.ts";
import { iceAmount, iceUnit } from "../voice.ts";
import { clockOf, momentWords, ONE_RUN, printable, type TripClock } from "../words.ts";
import { nightColumns, RULER_PX, ruler, shortMoment, type TimeScale, timeScale } from "./marks.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, tag, words, wrapped } from "./svg.ts";
import { overlayFill, overlayTextures, textures } from "./texture.ts";

/** One merge through the trip, before and after, as its picture needs it. */
export interface MergeCurvesData {
  from: string;
  into: string;
  at_h: number;
  clock: TripClock;
  nights_h: readonly (readonly [number, number])[];
  gain_h: Merge["gain_h"];
  course: Merge["course"];
}

/**
 * What `mergeCurves` draws of a merge of the plan, counted from 0 in the plan's order.
 *
 * @throws DomainError where the plan has no such merge
 */
export function mergeCurvesData(forecast: Forecast, index: number): MergeCurvesData {
  const merge = forecast.result.plan?.merges[index];
  if (merge === undefined) throw new DomainError(`index must be a merge of the plan, got ${index}`);
  const { from, into, at, gain_h, course } = merge;
  const clock = clockOf(forecast.trip);
  const at_h = (localInstant_ms(at, clock.timezone) - clock.depart_ms) / 3_600_000;
  return { from, into, at_h, clock, nights_h: forecast.nights_h, gain_h, course };
}

const LEFT = 52;
const RIGHT = 14;
const LANE_PX = 190;
const NARROW_LANE_PX = 150;
const KEY_PX = 20;
const JOINED = { fill: "none", stroke: "var(--ink)", "stroke-width": 2.8 };
const APART = { fill: "none", stroke: "var(--ink)", "stroke-width": 2.4, "stroke-dasharray": "9 5" };
const FROM = { fill: "none", stroke: "var(--ink)", "stroke-width": 1.6, "stroke-dasharray": "1.5 4" };
const INTO = { fill: "none", stroke: "var(--ink)", "stroke-width": 1.6, "stroke-dasharray": "6 3 1.5 3" };

interface Frame {
  data: MergeCurvesData;
  options: PictureOptions;
  x: TimeScale;
  y: ScaleLinear<number, number>;
  middle: boolean;
}

/**
 * What a merge is worth: ice left in the two coolers together, left apart (dashes) and joined (solid), each with the
 * range that eight of ten members lie in, and thin the two that are left apart. Beyond the return nothing is drawn; the
 * gain told in the head may lie there.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function mergeCurves(data: MergeCurvesData, options: PictureOptions): string {
  checkOptions(options);
  const { width, id, units } = options;
  const { course } = data;
  const said = headWords(data);
  const head = wrapped(said, width - 2 * RIGHT, 13, 4);
  const top = 50 + head.length * 17;
  const bottom = top + (width < 500 ? NARROW_LANE_PX : LANE_PX);
  const most_kg = Math.max(0.1, max(course.apart_kg.p90) ?? 0, max(course.joined_kg.p90) ?? 0);
  const frame: Frame = {
    data,
    options,
    x: timeScale(data.clock, LEFT, width - RIGHT),
    y: scaleLinear([0, most_kg], [bottom, top]),
    middle: isLine(course.apart_kg) && isLine(course.joined_kg),
  };
  const key = keyRows(frame, bottom + RULER_PX + 6);
  return picture(
    options,
    bottom + RULER_PX + 6 + key.height,
    altOf(data, said, units),
    overlayTextures(id, 2) + textures(id, "night"),
    [headLines(frame, head), lane(frame, top, bottom), key.svg].join(""),
  );
}

function headLines({ data, options }: Frame, head: readonly string[]): string {
  const title = fitted(
    `${printable(data.from)} into ${printable(data.into)}`,
    options.width - 2 * RIGHT,
    15,
    true,
  );
  return [
    words(title, RIGHT, 20, { size: 15, bold: true }),
    ...head.map((text, i) => words(text, RIGHT, 39 + i * 17, { size: 13, fill: "ink2" })),
  ].join("");
}

/** Nights, ranges, lines, the merge and the ruler; likely lines have a rim, so that they stand out where they cross. */
function lane(frame: Frame, top: number, bottom: number): string {
  const { course, nights_h, clock } = frame.data;
  const rim = { fill: "none", stroke: "var(--sheet)", "stroke-width": 5 };
  return [
    nightColumns(frame.x, nights_h, top, bottom, frame.options.id),
    massAxis(frame),
    frame.middle ? "" : bandArea(frame, course.apart_kg, 1),
    frame.middle ? "" : bandArea(frame, course.joined_kg, 0),
    series(frame, course.from_kg, FROM),
    series(frame, course.into_kg, INTO),
    series(frame, course.apart_kg.p50, rim),
    series(frame, course.apart_kg.p50, APART),
    series(frame, course.joined_kg.p50, rim),
    series(frame, course.joined_kg.p50, JOINED),
    mergeLine(frame, top, bottom),
    ruler(frame.x, clock, bottom),
  ].join("");
}

const isLine = ({ p10, p90 }: BandSeries): boolean => p10.every((low, i) => low === p90[i]);

function headWords({ clock, at_h, gain_h, course }: MergeCurvesData): string {
  const run = isLine(course.joined_kg) ? ` ${ONE_RUN}.` : "";
  return `Emptied ${momentWords(at_h, clock)}: against the one of the two that lasts longer, ice ${gainHours(gain_h)}.${run}`;
}

function massAxis({ x, y, options: { units } }: Frame): string {
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

function bandArea({ x, y, data, options }: Frame, { p10, p90 }: BandSeries, texture: number): string {
  const d = area<number>(
    (k) => x(data.course.t_h[k]!),
    (k) => y(p10[k]!),
    (k) => y(p90[k]!),
  )
    .defined((k) => p90[k]! > 0 || (p90[k - 1] ?? 1) > 0)
    .digits(1)(data.course.t_h.map((_, k) => k))!;
  return tag("path", {
    d,
    fill: overlayFill(texture, options.id),
    stroke: "var(--sure)",
    "stroke-width": 0.8,
  });
}

function series(
  { x, y, data }: Frame,
  values_kg: readonly number[],
  style: Readonly<Record<string, string | number>>,
): string {
  const d = linePath<number>(
    (k) => x(data.course.t_h[k]!),
    (k) => y(values_kg[k]!),
  )
    .defined((k) => values_kg[k]! > 0 || (values_kg[k - 1] ?? 1) > 0)
    .digits(1)(values_kg.map((_, k) => k));
  return d === null ? "" : tag("path", { d, ...style });
}

/** When it is done: an upright through the lane, its moment above. */
function mergeLine({ x, data }: Frame, top: number, bottom: number): string {
  const at = x(data.at_h);
  const late = at > (x.range()[0]! + x.range()[1]!) / 2;
  const said = `merged ${shortMoment(data.at_h, data.clock)}`;
  return (
    line(at, top - 12, at, bottom, "ink", 1.5, "4 3") +
    words(said, late ? at - 5 : at + 5, top - 4, { bold: true, anchor: late ? "end" : "start", halo: true })
  );
}

function keyRows({ data, options, middle }: Frame, y: number): { svg: string; height: number } {
  const { from, into } = data;
  const range = middle ? "" : ", and where 8 of 10 members lie";
  const items = [
    [JOINED, 0, `joined${range}`],
    [APART, 1, `left apart, both together${range}`],
    [FROM, null, `${printable(from)} by itself, left apart`],
    [INTO, null, `${printable(into)} by itself, left apart`],
  ] as const;
  const drawn = items.map(([style, texture, name], i) => {
    const at = y + 10 + i * KEY_PX;
    const [said = ""] = wrapped(name, options.width - 2 * RIGHT - 58, 12, 1);
    return [
      texture === null || middle
        ? ""
        : box(RIGHT, at - 7, RIGHT + 44, at + 7, overlayFill(texture, options.id), "sure", 0.8),
      tag("path", { d: `M${RIGHT},${at}h44`, ...style }),
      words(said, RIGHT + 54, at + 4, { fill: "ink2" }),
    ].join("");
  });
  return { svg: drawn.join(""), height: items.length * KEY_PX + 8 };
}

function altOf(data: MergeCurvesData, said: string, units: UnitSystem): { title: string; desc: string } {
  const { from, into, course, clock } = data;
  const [f, i] = [printable(from), printable(into)];
  const at = (values_kg: readonly number[]): string => massWords(values_kg.at(-1) ?? 0, units);
  const range = ({ p10, p50, p90 }: BandSeries): string =>
    isLine({ p10, p50, p90 }) ? at(p50) : `likely ${at(p50)}, ${at(p10)} to ${at(p90)}`;
  const gone = (name: string, values_kg: readonly number[]): string => {
    const last = values_kg.findLastIndex((mass_kg) => mass_kg > 0.01 * Math.max(...values_kg, 0.1));
    if (last < 0) return `${name} has no ice`;
    const next_h = course.t_h[last + 1];
    return next_h === undefined ? `${name} has ice to the return` : `${name} ${momentWords(next_h, clock)}`;
  };
  return {
    title: `${f} into ${i}. ${said}`,
    desc: `Left at the return in both together: joined ${range(course.joined_kg)}; apart ${range(course.apart_kg)}. Ice likely gone, left apart: ${gone(f, course.from_kg)}; ${gone(i, course.into_kg)}.`,
  };
}
