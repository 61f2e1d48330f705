import { max } from "d3-array";
import type { ScaleLinear } from "d3-scale";
import { scaleLinear } from "d3-scale";
import { area, line as linePath } from "d3-shape";
import type { Band, BandSeries, CoolerResult, FoodResult } from "../../forecast/result.ts";
import type { Forecast, Mark } from "../../forecast/types.ts";
import { massWords, temperatureWords } from "../../quantity/show.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import { coolerSentence, dryIceOut_h, hasIce } from "../coolerSentence.ts";
import { bitesOf, endOf_h } from "../foodStory.ts";
import { voiceFor } from "../voice.ts";
import { clockOf, dayPart, fromWords, ONE_RUN, PAST_RETURN, printable, type TripClock } from "../words.ts";
import { actKey } from "./actKey.ts";
import { type ActStrip, actStrip } from "./acts.ts";
import { flags, flagsHeight_px, nightColumns, RULER_PX, ruler, type TimeScale, timeScale } from "./marks.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, tag, words, wrapped } from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

/** From the first moment that something tells against a food until it is eaten. */
export interface OverSpan {
  name: string;
  /** What tells against it: "past its limit", "soft", "in meltwater". */
  what: string;
  /** With bad luck, likely, nine times in ten; null: not before it is eaten. */
  from_h: Band;
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
  series: Pick<CoolerResult["series"], "t_h" | "ice_kg" | "dryIce_kg" | "warmestPerishable_C">;
  /** Water ice or packs were ever put in; without, what freezes beside dry ice is not drawn. */
  hasIce: boolean;
  /** End of the dry ice; undefined: there is none. */
  dryIceOut_h: Band | undefined;
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
    hasIce: hasIce(forecast, index),
    dryIceOut_h: dryIceOut_h(cooler),
    over: result.food.flatMap((food) => overSpan(food, forecast, cooler.name)),
    says: { us: says("us"), metric: says("metric") },
  };
}

/** Perishables past their limit, and whatever else is lost, for the reason that comes first. */
function overSpan(food: FoodResult, forecast: Forecast, cooler: string): OverSpan[] {
  if (food.cooler !== cooler || (!food.perishable && food.verdict !== "discard")) return [];
  const to_h = food.eaten_h ?? forecast.result.trip.hours;
  const bite = bitesOf(food, forecast)[0];
  if (bite !== undefined && bite.kind !== "warm") {
    const what = bite.kind === "soft" ? "soft" : "in meltwater";
    return [{ name: food.name, what, from_h: bite.band, to_h }];
  }
  const from_h = endOf_h(food, forecast);
  return from_h.p10 === null ? [] : [{ name: food.name, what: "past its limit", from_h, to_h }];
}

const LEFT = 56;
const RIGHT = 14;
const WARM_PX = 58;
const DRY_PX = 64;
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
  const hasDry = data.dryIceOut_h !== undefined;
  const isNarrow = width < 500;
  const strip = actStrip(data.marks, frame.x, isNarrow ? 2 : 3);
  // Dry ice beside ice has a small lane of its own above it; alone it takes the place of the ice.
  const dryTop = warmBottom + 38;
  const laneHead = data.hasIce && hasDry ? dryTop + DRY_PX : warmBottom;
  const top = laneHead + 24 + strip.height;
  const bottom = top + (isNarrow ? 150 : 200);
  const lane: Lane = { strip, headY: laneHead + 18, top, bottom };
  const small: Lane = { strip: null, headY: dryTop - 15, top: dryTop, bottom: dryTop + DRY_PX };
  const overTop = bottom + RULER_PX + 6;
  const flagsTop = overTop + Math.min(data.over.length, OVER_ROWS + 1) * OVER_ROW_PX + 12;
  const main = data.hasIce ? iceLane(frame, lane) : hasDry ? dryLane(frame, lane) : emptyLane(frame, lane);
  const ends = endFlags(frame, flagsTop);
  const signed = data.marks.filter(({ what }) => strip.drawn.has(what));
  const key = actKey(signed, ends.key, frame.x.range() as [number, number], flagsTop + ends.height);
  const content = [
    nightColumns(frame.x, data.nights_h, hasWarm ? warmTop : top, bottom, id),
    head.svg,
    hasWarm ? warmLane(frame, warmTop, warmBottom) : "",
    data.hasIce && hasDry ? dryLane(frame, small) : "",
    main,
    ruler(frame.x, data.clock, bottom),
    overRows(frame, overTop),
    ends.svg,
    key.svg,
  ];
  return picture(
    options,
    flagsTop + ends.height + key.height + 4,
    altOf(data, options.units),
    textures(id, "likely", "luck", "night", ...(hasDry ? (["dry"] as const) : [])),
    content.join(""),
  );
}

/** When the ice ends, or the dry ice where there is nothing else. */
function endFlags(
  { data, options, x }: Frame,
  y: number,
): { svg: string; height: number; key: { name: string; id: string } | null } {
  const dry_h = data.dryIceOut_h;
  if (!data.hasIce && dry_h === undefined) return { svg: "", height: 0, key: null };
  const { middle } = data;
  const band = data.hasIce ? data.iceOut_h : dry_h!;
  const what = data.hasIce ? "ice" : "dry ice";
  return {
    svg: flags(x, what, band, data.clock, middle, y, options.id),
    height: flagsHeight_px(middle),
    key: band.p50 === null ? null : { name: `likely end of the ${what}`, id: options.id },
  };
}

function headLines({ data, options }: Frame): { svg: string; height: number } {
  const room = options.width - 2 * RIGHT;
  const said = data.says[options.units];
  const sentence = said.slice(said.indexOf(": ") + 2);
  const lines = wrapped(sentence, room, 13, 7);
  const name = words(fitted(data.cooler, room, 15, true), RIGHT, 20, { size: 15, bold: true });
  return {
    svg: [
      name,
      ...lines.map((text, i) => words(text, RIGHT, 39 + i * 17, { size: 13, fill: "ink2" })),
      data.middle ? words(`${ONE_RUN}.`, RIGHT, 38 + lines.length * 17, { fill: "ink2" }) : "",
    ].join(""),
    height: 34 + lines.length * 17 + (data.middle ? 17 : 0),
  };
}

function warmLane({ data, options, x }: Frame, top: number, bottom: number): string {
  const { t_h, warmestPerishable_C } = data.series;
  const known = t_h.map((_, i) => i).filter((i) => warmestPerishable_C.p50[i] !== null);
  const thin = thinned(t_h, x);
  const isKnown = (i: number): boolean => warmestPerishable_C.p50[i] !== null;
  const highest = max(known, (i) => warmestPerishable_C.p90[i] ?? warmestPerishable_C.p50[i])!;
  const lowest = Math.min(
    data.limit_C - 5,
    ...known.map((i) => warmestPerishable_C.p10[i] ?? warmestPerishable_C.p50[i]!),
  );
  const y = scaleLinear([lowest, Math.max(highest, data.limit_C + 2.5)], [bottom, top]);
  const at =
    (p: keyof BandSeries) =>
    (i: number): number =>
      y(warmestPerishable_C[p][i] ?? warmestPerishable_C.p50[i] ?? lowest);
  const xs = (i: number): number => x(t_h[i]!);
  const atLimit = y(data.limit_C);
  const over = area<number>(
    xs,
    () => atLimit,
    (i) => Math.min(atLimit, at("p50")(i)),
  )
    .defined(isKnown)
    .digits(1);
  const spread = area<number>(xs, at("p10"), at("p90")).defined(isKnown).digits(1);
  const likely = linePath<number>(xs, at("p50")).defined(isKnown).digits(1);
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

/** Where a lane of ice stands. */
interface Lane {
  strip: ActStrip | null;
  headY: number;
  top: number;
  bottom: number;
}

function emptyLane({ x }: Frame, { strip, top, bottom }: Lane): string {
  const note = words("no ice packed", x.range()[0]! + 4, (top + bottom) / 2, { fill: "ink2", halo: true });
  return note + (strip?.draw(top, bottom) ?? "");
}

function iceLane({ data, options, x }: Frame, lane: Lane): string {
  const { t_h, ice_kg } = data.series;
  const { top, bottom } = lane;
  const full_kg = max(ice_kg.p50)!;
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
  return [
    words(`ice left, full is ${massWords(full_kg, options.units)}`, RIGHT, lane.headY, { fill: "ink2" }),
    levels([1, 0.75, 0.5, 0.25], x, (share) => y(full_kg * share)),
    tag("path", { d: between(null, "p10"), fill: "var(--sure)" }),
    data.middle ? "" : tag("path", { d: between("p10", "p50"), fill: textureFill("likely", options.id) }),
    data.middle ? "" : tag("path", { d: between("p50", "p90"), fill: textureFill("luck", options.id) }),
    tag("path", { d: likely, fill: "none", stroke: "var(--sheet)", "stroke-width": 5.5 }),
    tag("path", { d: likely, fill: "none", stroke: "var(--ink)", "stroke-width": 2.6 }),
    lane.strip?.draw(top, bottom) ?? "",
  ].join("");
}

function dryLane({ data, options, x }: Frame, lane: Lane): string {
  const { t_h, dryIce_kg } = data.series;
  const { top, bottom } = lane;
  const full_kg = max(dryIce_kg.p50)!;
  const y = scaleLinear([0, Math.max(full_kg, max(dryIce_kg.p90)!)], [bottom, top]);
  const thin = thinned(t_h, x);
  const xs = (i: number): number => x(t_h[i]!);
  const at =
    (p: keyof BandSeries) =>
    (i: number): number =>
      y(dryIce_kg[p][i]!);
  const between = (low: (i: number) => number, high: (i: number) => number): string =>
    area<number>(xs, low, high).digits(1)(thin)!;
  return [
    words(`dry ice left, full is ${massWords(full_kg, options.units)}`, RIGHT, lane.headY, { fill: "ink2" }),
    levels(lane.strip === null ? [1, 0.5] : [1, 0.75, 0.5, 0.25], x, (share) => y(full_kg * share)),
    tag("path", { d: between(() => bottom, at("p10")), fill: textureFill("dry", options.id) }),
    data.middle
      ? ""
      : tag("path", { d: between(at("p10"), at("p50")), fill: textureFill("likely", options.id) }),
    data.middle
      ? ""
      : tag("path", { d: between(at("p50"), at("p90")), fill: textureFill("luck", options.id) }),
    tag("path", {
      d: linePath<number>(xs, at("p50")).digits(1)(thin)!,
      fill: "none",
      stroke: "var(--ink)",
      "stroke-width": 2.2,
    }),
    lane.strip === null
      ? line(x.range()[0]!, bottom, x.range()[1]!, bottom, "edge", 1)
      : lane.strip.draw(top, bottom),
  ].join("");
}

const LEVELS: Readonly<Record<number, string>> = { 1: "full", 0.75: "¾", 0.5: "½", 0.25: "¼" };

function levels(shares: readonly number[], x: TimeScale, y: (share: number) => number): string {
  const [x0, x1] = x.range() as [number, number];
  return shares
    .map(
      (share) =>
        words(LEVELS[share]!, x0 - 6, y(share) + 4, { anchor: "end" }) +
        line(x0, y(share), x1, y(share), "rule", 0.6),
    )
    .join("");
}

/** A bar for each food past its limit, under the ruler, its name beside it where there is room. */
function overRows({ data, options, x }: Frame, top: number): string {
  const [x0, x1] = x.range() as [number, number];
  const rows = data.over.slice(0, OVER_ROWS).map((span, i) => {
    const middle = top + i * OVER_ROW_PX + 6;
    const { p10, p50, p90 } = span.from_h;
    const end = (t_h: number | null): number => x(Math.min(t_h ?? span.to_h, span.to_h));
    const [from, likely, sure, to] = [end(p10), end(p50), end(p90), x(span.to_h)];
    const before = from - x0 > x1 - to;
    const text = fitted(`${span.name}, ${span.what}`, (before ? from - x0 : x1 - to) - 8, 12);
    return [
      likely > from ? box(from, middle - 3, likely, middle + 3, textureFill("luck", options.id), "edge") : "",
      sure > likely
        ? box(likely, middle - 3, sure, middle + 3, textureFill("likely", options.id), "ink")
        : "",
      box(sure, middle - 3, to, middle + 3, "ink"),
      words(text, before ? from - 6 : to + 6, middle + 4, { anchor: before ? "end" : "start" }),
    ].join("");
  });
  const more = data.over.length - OVER_ROWS;
  if (more > 0)
    rows.push(words(`and ${more} more foods`, x0, top + OVER_ROWS * OVER_ROW_PX + 10, { fill: "ink2" }));
  return rows.join("");
}

/** Indices of points at least a pixel apart, with the first and the last, and both points of a moment that has two. */
export function thinned(t_h: readonly number[], x: TimeScale): number[] {
  const kept: number[] = [];
  t_h.forEach((t, i) => {
    const last = kept.at(-1);
    const isAct = t === t_h[i - 1] || t === t_h[i + 1];
    if (last === undefined || i === t_h.length - 1 || isAct || x(t) - x(t_h[last]!) >= 1) kept.push(i);
  });
  return kept;
}

function altOf(data: IceBandData, units: UnitSystem): { title: string; desc: string } {
  const at = (t_h: number | null): string => (t_h === null ? PAST_RETURN : dayPart(t_h, data.clock));
  const { p10, p50, p90 } = data.iceOut_h;
  const ice = data.middle
    ? `ice until ${at(p50)}`
    : `ice nine in ten until ${at(p10)}, likely until ${at(p50)}, one in ten past ${at(p90)}`;
  const acts = data.marks
    .filter((mark) => mark.what !== "open")
    .map((mark) => `${mark.what} ${mark.words}, ${at(mark.t_h)}`);
  const over = data.over.map(
    ({ name, what, from_h }) => `${name} ${what} from ${fromWords(from_h, data.clock, data.middle)}`,
  );
  const told = [data.says[units], ...over.map((text) => `${text}.`), ...acts.map((text) => `${text}.`)];
  return {
    title: `${data.cooler}: ${data.hasIce ? ice : "no ice packed"}.`,
    desc: printable(told.join(" ")),
  };
}
