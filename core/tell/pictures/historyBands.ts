import { scaleLog } from "d3-scale";
import type { CloseOutCooler, CloseOutResult } from "../../camp/closeOutResult.ts";
import type { Spread } from "../../matter/spread.ts";
import type { CoolerHistory } from "../../trip/types.ts";
import { conductanceWords, narrowed_frac } from "../historyText.ts";
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

const EDGE = 14;
const ROW_PX = 34;
const WORDS_PX = 250;

interface Row {
  name: string;
  band: Spread;
  kind: "before" | "trip" | "odd" | "next";
}

/**
 * How what is known of a cooler's conductance grew narrower: what was believed at first, what each trip says by itself, and
 * what the next forecast begins with; to the right more heat comes in.
 *
 * @param cooler of a close-out from which something followed
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function historyBands(
  cooler: CloseOutCooler,
  earlier: CoolerHistory | null,
  trip: CloseOutResult["trip"],
  options: PictureOptions,
): string {
  checkOptions(options);
  const { width, id } = options;
  const rows = rowsOf(cooler, earlier, trip);
  const wide = width >= 640;
  const left = wide ? WORDS_PX : EDGE;
  const row_px = wide ? ROW_PX : ROW_PX + 18;
  const low = Math.min(...rows.map(({ band }) => band.p10)) / 1.08;
  const high = Math.max(...rows.map(({ band }) => band.p90)) * 1.08;
  const x = scaleLog([low, high], [left, width - EDGE]);
  const said = wrapped(answerOf(rows), width - 2 * EDGE, 12, 3);
  const top = 34 + said.length * 16;
  const bottom = top + rows.length * row_px + 4;
  const ticks = ticksOf(low, high, wide ? 6 : 4);
  const content = [
    words(
      fitted(`${printable(cooler.name)}: how well its walls are known`, width - 2 * EDGE, 15, true),
      EDGE,
      20,
      {
        size: 15,
        bold: true,
      },
    ),
    ...said.map((text, i) => words(text, EDGE, 38 + i * 16, { fill: "ink2" })),
    ...rows.map((row, i) => drawRow(row, top + i * row_px, x, wide, options)),
    line(left, bottom, width - EDGE, bottom, "ink", 1.5),
    ...ticks.map((value) => line(x(value), bottom, x(value), bottom + 6, "ink", 1.5)),
    ...ticks.map((value) => words(String(value), x(value), bottom + 20, { size: 13, anchor: "middle" })),
    words("W/K, less heat comes in", left, bottom + 38, { fill: "ink2" }),
    words("more", width - EDGE, bottom + 38, { fill: "ink2", anchor: "end" }),
  ];
  const desc = rows.map(({ name, band }) => `${name}: ${conductanceWords(band)}.`).join(" ");
  const alt = { title: `${cooler.name}: ${answerOf(rows)}`, desc };
  return picture(options, bottom + 48, alt, textures(id, "likely", "luck"), content.join(""));
}

function rowsOf(cooler: CloseOutCooler, earlier: CoolerHistory | null, trip: CloseOutResult["trip"]): Row[] {
  const isOwn = (one: { trip: string; ended: string | null }): boolean =>
    one.trip === trip.title && one.ended === trip.return;
  const kind = (name: string): Row["kind"] => (cooler.odd.includes(name) ? "odd" : "trip");
  const first = earlier?.before_W_per_K ?? cooler.before_W_per_K!;
  const records = (earlier?.records ?? []).filter((one) => !isOwn(one));
  const own = cooler.learned_W_per_K;
  return [
    { name: "believed at first", band: first, kind: "before" },
    ...records.map((one): Row => ({ name: one.trip, band: one.conductance_W_per_K, kind: kind(one.trip) })),
    ...(own === null ? [] : [{ name: trip.title, band: own, kind: kind(trip.title) }]),
    { name: "next forecast", band: cooler.next_W_per_K!, kind: "next" },
  ];
}

function answerOf(rows: readonly Row[]): string {
  const [first, last] = [rows[0]!.band, rows.at(-1)!.band];
  const narrower = Math.round(100 * narrowed_frac(first, last));
  const change = narrower < 1 ? "no narrower than at first" : `${narrower} % narrower than at first`;
  return `Next forecast ${conductanceWords(last)}, ${change}. Each band holds eight times in ten.`;
}

function drawRow(
  { name, band, kind }: Row,
  y: number,
  x: (value: number) => number,
  wide: boolean,
  { width, id }: PictureOptions,
): string {
  const middle = wide ? y + ROW_PX / 2 : y + 34;
  const [x0, x1] = [x(band.p10), x(band.p90)];
  const fill = kind === "next" ? "sure" : textureFill(kind === "before" ? "luck" : "likely", id);
  const label = kind === "odd" ? `${printable(name)} (does not agree)` : name;
  const room = (wide ? WORDS_PX - 16 : width - EDGE) - EDGE;
  const said = `${band.p50.toFixed(2)} (${band.p10.toFixed(2)} to ${band.p90.toFixed(2)})`;
  const bold = kind === "next";
  const at = x(band.p50);
  const d = `M${px(at)},${px(middle - 8)}l8,8l-8,8l-8,-8Z`;
  return [
    line(EDGE, y, width - EDGE, y, "rule", 1),
    words(fitted(label, wide ? room : room - 130, 13, bold), EDGE, y + (wide ? 15 : 17), {
      size: 13,
      bold,
      ...(kind === "odd" ? { fill: "heat" as const } : {}),
    }),
    wide
      ? words(said, EDGE, y + 29, { fill: "ink2" })
      : words(said, width - EDGE, y + 17, { fill: "ink2", anchor: "end" }),
    box(x0, middle - 6, x1, middle + 6, fill, "sure", 1.6),
    tag("path", {
      d,
      fill: "var(--sheet)",
      stroke: kind === "odd" ? "var(--heat)" : "var(--sure)",
      "stroke-width": 2.4,
    }),
  ].join("");
}

/** Round values with one figure, or with two where the span is short. */
function ticksOf(low: number, high: number, most: number): number[] {
  const steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];
  const step = steps.find((one) => (high - low) / one <= most) ?? 20;
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: count }, (_, i) => Number(((first + i) * step).toFixed(2)));
}
