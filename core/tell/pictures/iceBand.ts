import { max } from "d3-array";
import type { ScaleLinear } from "d3-scale";
import { scaleLinear } from "d3-scale";
import { area, line as linePath } from "d3-shape";
import type { Band, BandSeries, CoolerResult } from "../../forecast/result.ts";
import type { Forecast, Mark } from "../../forecast/types.ts";
import { massWords, temperatureWords } from "../../quantity/show.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import { coolerSentence } from "../coolerText.ts";
import { voiceFor } from "../voice.ts";
import { clockOf, dayPart, NO_BAND, PAST_RETURN, printable, type TripClock } from "../words.ts";
import { type ActStrip, actStrip } from "./acts.ts";
import { FLAGS_PX, flags, nightColumns, RULER_PX, ruler, type TimeScale, timeScale } from "./marks.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, tag, words, wrapped } from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

/** From the first moment that a food is over its limit until it is eaten; before `from_h` it only may be. */
export interface OverSpan {
  name: string;
  maybeFrom_h: number;
  from_h: number | null;
  to_h: number;
}

/** One cooler through the trip, as its picture needs it. */
export interface IceBandData {
  cooler: string;
  clock: TripClock;
  middle: boolean;
  limit_C: number;
  nights_h: readonly (readonly [number, number])[];
  marks: readonly Mark[];
  series: Pick<CoolerResult["series"], "t_h" | "ice_kg" | "warmestPerishable_C">;
  iceOut_h: Band;
  over: readonly OverSpan[];
  /** The answer in a sentence. */
  says: Readonly<Record<UnitSystem, string>>;
}

/** What `iceBand` draws of a cooler. */
export function iceBandData(forecast: Forecast, index: number): IceBandData {
  const { result, trip } = forecast;
  const cooler = result.coolers[index]!;
  const says = (units: UnitSystem): string => coolerSentence(forecast, index, voiceFor(forecast, { units }));
  return {
    cooler: cooler.name,
    clock: clockOf(trip),
    middle: voiceFor(forecast, { units: "us" }).middle,
    limit_C: result.limit.limit_C,
    nights_h: forecast.nights_h,
    marks: forecast.marks.filter((mark) => mark.cooler === cooler.name),
    series: cooler.series,
    iceOut_h: cooler.iceOut_h,
    over: result.food.flatMap((food) => {
      if (!food.perishable || food.cooler !== cooler.name || food.overLimit_h.p10 === null) return [];
      const to_h = food.eaten_h ?? result.trip.hours;
      return [{ name: food.name, maybeFrom_h: food.overLimit_h.p10, from_h: food.overLimit_h.p50, to_h }];
    }),
    says: { us: says("us"), metric: says("metric") },
  };
}

const LEFT = 56;
const RIGHT = 14;
const WARM_PX = 58;
const OVER_ROW_PX = 18;
const OVER_ROWS = 5;

/** Everything that lies at the same x and y in all lanes. */
interface Frame {
  data: IceBandData;
  options: PictureOptions;
  x: TimeScale;
}

/**
 * How much ice is left, until when, and how warm the warmest perishable is: two lanes on one ruler, food above ice. Solid
 * ice is there nine times in ten, hatched is likely, dotted is luck; a middle case has no band and says so.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function iceBand(data: IceBandData, options: PictureOptions): string {
  checkOptions(options);
  const frame: Frame = { data, options, x: timeScale(data.clock, LEFT, options.width - RIGHT) };
  const { id, width } = options;
  const head = headLines(frame);
  const warmTop = head.height + 20;
  const hasWarm = data.series.warmestPerishable_C.p50.some((t_C) => t_C !== null);
  const warmBottom = hasWarm ? warmTop + WARM_PX : head.height;
  const strip = actStrip(data.marks, frame.x, width < 500 ? 2 : 3);
  const iceTop = warmBottom + 24 + strip.height;
  const iceBottom = iceTop + (width < 500 ? 150 : 200);
  const overTop = iceBottom + RULER_PX + 6;
  const flagsTop = overTop + Math.min(data.over.length, OVER_ROWS + 1) * OVER_ROW_PX + 12;
  const hasIce = max(data.series.ice_kg.p90)! > 0;
  const content = [
    nightColumns(frame.x, data.nights_h, hasWarm ? warmTop : iceTop, iceBottom, id),
    head.svg,
    hasWarm ? warmLane(frame, warmTop, warmBottom) : "",
    iceLane(frame, strip, warmBottom + 18, iceTop, iceBottom),
    ruler(frame.x, data.clock, iceBottom),
    overRows(frame, overTop),
    hasIce ? flags(frame.x, data.iceOut_h, data.clock, data.middle, flagsTop, id) : "",
  ];
  const height = hasIce ? flagsTop + FLAGS_PX : flagsTop;
  return picture(
    options,
    height,
    altOf(data, options.units),
    textures(id, "likely", "luck", "night"),
    content.join(""),
  );
}

function headLines({ data, options }: Frame): { svg: string; height: number } {
  const room = options.width - 2 * RIGHT;
  const said = data.says[options.units];
  const sentence = said.slice(said.indexOf(": ") + 2);
  const lines = wrapped(sentence, room, 13, 4);
  const name = words(fitted(data.cooler, room, 15, true), RIGHT, 20, { size: 15, bold: true });
  return {
    svg: name + lines.map((text, i) => words(text, RIGHT, 39 + i * 17, { size: 13, fill: "ink2" })).join(""),
    height: 34 + lines.length * 17,
  };
}

function warmLane({ data, options, x }: Frame, top: number, bottom: number): string {
  const { t_h, warmestPerishable_C } = data.series;
  const known = t_h.map((_, i) => i).filter((i) => warmestPerishable_C.p50[i] !== null);
  const thin = thinned(
    known.map((i) => t_h[i]!),
    x,
  ).map((i) => known[i]!);
  const highest = max(known, (i) => warmestPerishable_C.p90[i] ?? warmestPerishable_C.p50[i])!;
  const lowest = Math.min(
    data.limit_C - 5,
    ...known.map((i) => warmestPerishable_C.p10[i] ?? warmestPerishable_C.p50[i]!),
  );
  const y = scaleLinear([lowest, Math.max(highest, data.limit_C + 2.5)], [bottom, top]);
  const at =
    (p: keyof BandSeries) =>
    (i: number): number =>
      y(warmestPerishable_C[p][i] ?? warmestPerishable_C.p50[i]!);
  const xs = (i: number): number => x(t_h[i]!);
  const atLimit = y(data.limit_C);
  const over = area<number>(
    xs,
    () => atLimit,
    (i) => Math.min(atLimit, at("p50")(i)),
  ).digits(1);
  const spread = area<number>(xs, at("p10"), at("p90")).digits(1);
  const likely = linePath<number>(xs, at("p50")).digits(1);
  return [
    words(`warmest perishable, limit ${temperatureWords(data.limit_C, options.units)}`, RIGHT, top - 6, {
      fill: "ink2",
    }),
    data.middle
      ? tag("path", { d: over(thin)!, fill: "var(--heatFill)" })
      : tag("path", { d: spread(thin)!, fill: textureFill("likely", options.id) }),
    line(x.range()[0]!, atLimit, x.range()[1]!, atLimit, "heat", 1.6, "7 4"),
    tag("path", { d: likely(thin)!, fill: "none", stroke: "var(--ink)", "stroke-width": 2 }),
    temperatureLabels(data, options, y, highest),
    line(x.range()[0]!, bottom, x.range()[1]!, bottom, "edge", 1),
  ].join("");
}

function temperatureLabels(
  data: IceBandData,
  { units }: PictureOptions,
  y: ScaleLinear<number, number>,
  highest: number,
): string {
  const label = (t_C: number, bold: boolean): string =>
    words(temperatureWords(t_C, units), LEFT - 6, Math.max(y(t_C) + 4, y.range()[1]! + 10), {
      bold,
      anchor: "end",
    });
  const apart = y(data.limit_C) - y(highest) > 15;
  return label(data.limit_C, true) + (apart ? label(highest, false) : "");
}

function iceLane(
  { data, options, x }: Frame,
  strip: ActStrip,
  headY: number,
  top: number,
  bottom: number,
): string {
  const { t_h, ice_kg } = data.series;
  const [x0, x1] = x.range() as [number, number];
  const full_kg = max(ice_kg.p50)!;
  if (max(ice_kg.p90) === 0)
    return words("no ice in this cooler", x0 + 4, (top + bottom) / 2, { fill: "ink2", halo: true });
  const y = scaleLinear([0, Math.max(full_kg, max(ice_kg.p90)!)], [bottom, top]);
  const thin = thinned(t_h, x);
  const xs = (i: number): number => x(t_h[i]!);
  const between = (low: keyof BandSeries | null, high: keyof BandSeries): string =>
    area<number>(
      xs,
      (i) => (low === null ? bottom : y(ice_kg[low][i]!)),
      (i) => y(ice_kg[high][i]!),
    ).digits(1)(thin)!;
  const likely = linePath<number>(xs, (i) => y(ice_kg.p50[i]!)).digits(1)(thin)!;
  const level = (share: number, name: string): string =>
    words(name, x0 - 6, y(full_kg * share) + 4, { anchor: "end" }) +
    line(x0, y(full_kg * share), x1, y(full_kg * share), "rule", 0.6);
  return [
    words(`ice left, full is ${massWords(full_kg, options.units)}`, RIGHT, headY, { fill: "ink2" }),
    level(1, "full"),
    level(0.75, "¾"),
    level(0.5, "½"),
    level(0.25, "¼"),
    tag("path", { d: between(null, "p10"), fill: "var(--sure)" }),
    data.middle ? "" : tag("path", { d: between("p10", "p50"), fill: textureFill("likely", options.id) }),
    data.middle ? "" : tag("path", { d: between("p50", "p90"), fill: textureFill("luck", options.id) }),
    tag("path", { d: likely, fill: "none", stroke: "var(--sheet)", "stroke-width": 5.5 }),
    tag("path", { d: likely, fill: "none", stroke: "var(--ink)", "stroke-width": 2.6 }),
    strip.draw(top, bottom),
  ].join("");
}

/** A bar for each food past its limit, under the ruler, its name beside it where there is room. */
function overRows({ data, options, x }: Frame, top: number): string {
  const [x0, x1] = x.range() as [number, number];
  const rows = data.over.slice(0, OVER_ROWS).map((span, i) => {
    const middle = top + i * OVER_ROW_PX + 6;
    const sureFrom = Math.min(span.from_h ?? span.to_h, span.to_h);
    const [from, to] = [x(Math.min(span.maybeFrom_h, span.to_h)), x(span.to_h)];
    const before = from - x0 > x1 - to;
    const text = fitted(`${span.name}, past its limit`, (before ? from - x0 : x1 - to) - 8, 12);
    return [
      box(from, middle - 3, x(sureFrom), middle + 3, textureFill("likely", options.id), "edge"),
      box(x(sureFrom), middle - 3, to, middle + 3, "ink"),
      words(text, before ? from - 6 : to + 6, middle + 4, { anchor: before ? "end" : "start" }),
    ].join("");
  });
  const more = data.over.length - OVER_ROWS;
  if (more > 0)
    rows.push(words(`and ${more} more foods`, x0, top + OVER_ROWS * OVER_ROW_PX + 10, { fill: "ink2" }));
  return rows.join("");
}

/** Indices of points at least a pixel apart, with the first and the last. */
function thinned(t_h: readonly number[], x: TimeScale): number[] {
  const kept: number[] = [];
  t_h.forEach((t, i) => {
    const last = kept.at(-1);
    if (last === undefined || i === t_h.length - 1 || x(t) - x(t_h[last]!) >= 1) kept.push(i);
  });
  return kept;
}

function altOf(data: IceBandData, units: UnitSystem): { title: string; desc: string } {
  const at = (t_h: number | null): string => (t_h === null ? PAST_RETURN : dayPart(t_h, data.clock));
  const { p10, p50, p90 } = data.iceOut_h;
  const ice = data.middle
    ? `ice until ${at(p50)} (${NO_BAND})`
    : `ice nine in ten until ${at(p10)}, likely until ${at(p50)}, one in ten past ${at(p90)}`;
  const none = max(data.series.ice_kg.p90) === 0;
  const acts = data.marks
    .filter((mark) => mark.what !== "open")
    .map((mark) => `${mark.what} ${mark.words}, ${at(mark.t_h)}`);
  const over = data.over.map(
    (span) => `${span.name} past its limit from ${at(span.from_h ?? span.maybeFrom_h)}`,
  );
  const told = [data.says[units], ...over.map((text) => `${text}.`), ...acts.map((text) => `${text}.`)];
  return { title: `${data.cooler}: ${none ? "no ice" : ice}.`, desc: printable(told.join(" ")) };
}
