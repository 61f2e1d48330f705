import { max } from "d3-array";
import { scaleLinear } from "d3-scale";
import { area, line as linePath } from "d3-shape";
import type { BandSeries } from "../../forecast/result.ts";
import { massWords } from "../../quantity/show.ts";
import { ONE_RUN, printable, spanWords } from "../words.ts";
import { actStrip, place, sign } from "./acts.ts";
import type { CoolerStripData, StripRow } from "./coolerStripData.ts";
import { stripAlt } from "./coolerStripWords.ts";
import { thinned } from "./iceBand.ts";
import { nightColumns, RULER_PX, ruler, type TimeScale, timeScale } from "./marks.ts";
import {
  box,
  checkOptions,
  fitted,
  line,
  type PictureOptions,
  picture,
  px,
  tag,
  textWidth_px,
  words,
} from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

const LEFT = 48;
const RIGHT = 14;
const LANE_PX = 36;
const MANY_LANE_PX = 22;
const SIGN_PX = 12;
const WORDS_PX = 15;
const GAP_PX = 12;
const TITLE = "The trip at a glance: ice in each cooler, day by day";
/** From so many coolers on lanes are lower and dinners have a row less. */
const MANY = 5;

interface Frame {
  data: CoolerStripData;
  options: PictureOptions;
  x: TimeScale;
}

/** Something drawn, with what it takes from the top down. */
interface Drawn {
  svg: string;
  height: number;
}

/**
 * The whole trip at a glance, coolers by days: how much ice each holds, when it is sealed, gets ice, is emptied into
 * another one or had better be drained, and which dinner lies where. Solid ice is there nine times in ten, hatched is
 * likely, dotted is luck; each lane is full at the most its own cooler likely ever holds, so lanes are not to be compared by height.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function coolerStrip(data: CoolerStripData, options: PictureOptions): string {
  checkOptions(options);
  const { width, id } = options;
  const frame: Frame = { data, options, x: timeScale(data.clock, LEFT, width - RIGHT) };
  let y = 30;
  const rows = data.rows.map((row, i) => {
    const drawn = drawRow(frame, row, i, y);
    y += drawn.height;
    return drawn.svg;
  });
  const places = placesRow(frame, y + RULER_PX + 4);
  const key = keyRows(frame, y + RULER_PX + 4 + places.height);
  const content = [
    words(width < 500 ? "The trip at a glance" : TITLE, RIGHT, 18, { size: 15, bold: true }),
    ...rows,
    ruler(frame.x, data.clock, y),
    places.svg,
    key.svg,
  ];
  const used = ["likely", "luck", "night", ...(data.rows.some(isSealed) ? (["tape"] as const) : [])] as const;
  return picture(
    options,
    y + RULER_PX + 4 + places.height + key.height + 4,
    stripAlt(data),
    textures(id, ...used),
    content.join(""),
  );
}

const isSealed = ({ sealed_h }: StripRow): boolean => sealed_h !== null;

function drawRow(frame: Frame, row: StripRow, index: number, y: number): Drawn {
  const { x, data, options } = frame;
  const many = data.rows.length >= MANY;
  const head = headLines(frame, row, y);
  const acts = actStrip(row.marks, x, options.width < 500 || many ? 1 : 2);
  const top = y + head.height + (row.marks.length > 0 ? acts.height : 4) + (isSealed(row) ? 9 : 0);
  const bottom = top + (many ? MANY_LANE_PX : LANE_PX);
  const below = belowLane(frame, row, bottom);
  const end = row.emptied === null ? data.clock.length_h : row.emptied.t_h;
  const nights = data.nights_h
    .filter(([from_h]) => from_h < end)
    .map(([from_h, to_h]) => [from_h, Math.min(to_h, end)] as const);
  const svg = [
    nightColumns(x, nights, top, bottom, options.id),
    head.svg,
    lane(frame, row, top, bottom),
    sealBar(frame, row, top),
    acts.draw(top - (isSealed(row) ? 9 : 0), bottom),
    line(x(0), bottom, x(end), bottom, "ink", 1),
    row.emptied === null ? "" : emptiedEnd(frame, row, top, bottom),
    below.svg,
  ].join("");
  const isLast = index === data.rows.length - 1;
  return { svg, height: bottom - y + below.height + (isLast ? 4 : GAP_PX) };
}

/** Name in bold; how long its ice lasts beside it, or below it where there is no room. */
function headLines({ data, options }: Frame, row: StripRow, y: number): Drawn {
  const room = options.width - 2 * RIGHT;
  const name = fitted(`${row.number} ${printable(row.cooler)}, ${printable(row.size)}`, room * 0.6, 13, true);
  const said = row.hasIce ? `ice ${spanWords(row.iceOut_h, data.clock, data.middle)}` : "no ice put in";
  const used = textWidth_px(name, 13, true) + 14;
  const fits = used + textWidth_px(said, 12) <= room;
  const svg =
    words(name, RIGHT, y + 13, { size: 13, bold: true }) +
    (fits
      ? words(said, options.width - RIGHT, y + 13, { fill: "ink2", anchor: "end" })
      : words(fitted(said, room, 12), RIGHT, y + 28, { fill: "ink2" }));
  return { svg, height: fits ? 19 : 34 };
}

function lane({ data, options, x }: Frame, row: StripRow, top: number, bottom: number): string {
  const full_kg = max(row.ice_kg.p50) ?? 0;
  if (!row.hasIce || full_kg <= 0)
    return words("no ice", x(0) + 4, (top + bottom) / 2 + 4, { fill: "ink2", halo: true });
  const most_kg = Math.max(full_kg, max(row.ice_kg.p90) ?? 0);
  const y = scaleLinear([0, most_kg], [bottom, top]);
  const until_h = row.emptied === null ? Number.POSITIVE_INFINITY : row.emptied.t_h;
  const thin = thinned(row.t_h, x).filter((i) => row.t_h[i]! <= until_h + 1e-6);
  const at = (i: number): number => x(row.t_h[i]!);
  const between = (low: keyof BandSeries | null, high: keyof BandSeries): string =>
    area<number>(
      at,
      (i) => (low === null ? bottom : y(row.ice_kg[low][i]!)),
      (i) => y(row.ice_kg[high][i]!),
    ).digits(1)(thin)!;
  const likely = linePath<number>(at, (i) => y(row.ice_kg.p50[i]!)).digits(1)(thin)!;
  return [
    tag("path", { d: between(null, "p10"), fill: "var(--sure)" }),
    data.middle ? "" : tag("path", { d: between("p10", "p50"), fill: textureFill("likely", options.id) }),
    data.middle ? "" : tag("path", { d: between("p50", "p90"), fill: textureFill("luck", options.id) }),
    tag("path", { d: likely, fill: "none", stroke: "var(--sheet)", "stroke-width": 4 }),
    tag("path", { d: likely, fill: "none", stroke: "var(--ink)", "stroke-width": 2 }),
    words(massWords(full_kg, options.units), x(0) - 5, y(full_kg) + 5, { fill: "ink2", anchor: "end" }),
    line(x(0), y(full_kg), x(0), bottom, "edge", 1),
  ].join("");
}

function sealBar({ x, options }: Frame, { sealed_h }: StripRow, top: number): string {
  if (sealed_h === null) return "";
  return box(x(0), top - 8, x(sealed_h), top - 1, textureFill("tape", options.id), "ink");
}

/** An upright where a cooler ends, and where its things are from then on. */
function emptiedEnd({ x, options }: Frame, { emptied }: StripRow, top: number, bottom: number): string {
  const at = x(emptied!.t_h);
  const room = options.width - RIGHT - at - 8;
  const upright = line(at, top - 4, at, bottom + 4, "ink", 2.4);
  const said = [`empty: all of it in ${printable(emptied!.into)}`, "empty"].find(
    (text) => textWidth_px(text, 12) <= room,
  );
  if (said === undefined) return upright;
  return upright + words(said, at + 8, (top + bottom) / 2 + 4, { fill: "ink2" });
}

/** Signs of draining and of dinners, and the words of as many dinners as have room. */
function belowLane({ data, options, x }: Frame, row: StripRow, bottom: number): Drawn {
  const { drains_h, dinners } = row;
  if (drains_h.length + dinners.length === 0) return { svg: "", height: 2 };
  const middle = bottom + 8;
  const rows = options.width < 500 || data.rows.length >= MANY ? 1 : 2;
  const acts = dinners.map(({ t_h, words: said }) => ({
    what: "take out" as const,
    x: x(t_h),
    words: fitted(said, 170, 12, true),
  }));
  const placed = place(acts, x.range()[0]!, x.range()[1]!, rows);
  const used = placed.reduce((most, one) => Math.max(most, one.row + 1), 0);
  const isFree = (at: number): boolean => acts.every((act) => Math.abs(act.x - at) >= SIGN_PX);
  const svg = [
    ...drains_h.filter((t_h) => isFree(x(t_h))).map((t_h) => sign("drain", x(t_h), middle)),
    ...placed
      .filter((one) => one.row > 0)
      .map((one) => line(one.x, middle + 5, one.x, middle + 8 + one.row * WORDS_PX, "edge", 1)),
    ...acts.map((act) => sign("take out", act.x, middle)),
    ...placed.map((one) =>
      words(one.words, one.at, middle + SIGN_PX + 6 + one.row * WORDS_PX, { anchor: "middle", halo: true }),
    ),
  ].join("");
  return { svg, height: 8 + SIGN_PX + used * WORDS_PX };
}

/** Where everything stands, under the ruler: an upright where it moves, the place where it fits. */
function placesRow({ data, options, x }: Frame, y: number): Drawn {
  const { places, clock } = data;
  if (places.length === 0) return { svg: "", height: 0 };
  const parts = places.map(({ from_h, place: name }, i) => {
    const [x0, x1] = [x(from_h), x(places[i + 1]?.from_h ?? clock.length_h)];
    const fits = textWidth_px(name, 12) + 6 <= x1 - x0;
    const upright = line(x0, y, x0, y + 14, "edge", 1.5);
    return upright + (fits ? words(name, x0 + 4, y + 11, { fill: "ink2" }) : "");
  });
  const end = line(options.width - RIGHT, y, options.width - RIGHT, y + 14, "edge", 1.5);
  return { svg: parts.join("") + end, height: 24 };
}

interface KeyItem {
  name: string;
  wide: number;
  draw: (x: number, y: number) => string;
}

/** What the grounds and signs mean: each that occurs, once. */
function keyRows({ data, options }: Frame, y: number): Drawn {
  const { id } = options;
  const swatch = (fill: string) => (at: number, middle: number) =>
    box(at, middle - 5, at + 18, middle + 5, fill, "ink");
  const signed = (what: Parameters<typeof sign>[0]) => (at: number, middle: number) =>
    sign(what, at + 9, middle);
  const has = (what: string): boolean =>
    data.rows.some(({ marks }) => marks.some((one) => one.what === what));
  const items: KeyItem[] = [
    { name: data.middle ? "ice" : "ice there 9 times in 10", wide: 18, draw: swatch("sure") },
    ...(data.middle
      ? []
      : [
          { name: "likely", wide: 18, draw: swatch(textureFill("likely", id)) },
          { name: "with luck", wide: 18, draw: swatch(textureFill("luck", id)) },
        ]),
    { name: "night", wide: 18, draw: swatch(textureFill("night", id)) },
    ...(data.rows.some(isSealed)
      ? [{ name: "lid stays taped", wide: 18, draw: swatch(textureFill("tape", id)) }]
      : []),
    ...(has("add ice") ? [{ name: "ice comes", wide: 18, draw: signed("add ice") }] : []),
    ...(has("merge") ? [{ name: "two become one", wide: 18, draw: signed("merge") }] : []),
    ...(has("put in") ? [{ name: "put in", wide: 18, draw: signed("put in") }] : []),
    ...(has("cover") ? [{ name: "cover changed", wide: 18, draw: signed("cover") }] : []),
    ...(has("move") ? [{ name: "moved by itself", wide: 18, draw: signed("move") }] : []),
    ...(data.rows.some(({ drains_h }) => drains_h.length > 0) || has("drain")
      ? [{ name: "let the water out", wide: 18, draw: signed("drain") }]
      : []),
    ...(data.rows.some(({ dinners }) => dinners.length > 0)
      ? [{ name: "dinner lies here", wide: 18, draw: signed("take out") }]
      : []),
  ];
  const x1 = options.width - RIGHT;
  let [at, row] = [RIGHT, 0];
  const drawn = items.map(({ name, wide, draw }) => {
    const width = wide + 8 + textWidth_px(name, 12) + 14;
    if (at > RIGHT && at + width > x1) [at, row] = [RIGHT, row + 1];
    const middle = y + 8 + row * 18;
    const svg = draw(at, middle) + words(name, at + wide + 6, middle + 4, { fill: "ink2" });
    at = px(at + width);
    return svg;
  });
  const run = data.middle ? words(`${ONE_RUN}.`, RIGHT, y + 30 + row * 18, { fill: "ink2" }) : "";
  return { svg: drawn.join("") + run, height: (row + 1) * 18 + (data.middle ? 20 : 0) };
}
