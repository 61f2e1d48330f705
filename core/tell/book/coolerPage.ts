import { group } from "d3-array";
import type { PackLayer } from "../../forecast/planResult.ts";
import { drainAdvice, ratioWords } from "../../plan/drainLine.ts";
import { lengthWords, massWords } from "../../quantity/show.ts";
import { coolerSentence } from "../coolerSentence.ts";
import { drainLines, loadLines } from "../coolerText.ts";
import { iceBand, iceBandData } from "../pictures/iceBand.ts";
import { escaped, momentWords, printable } from "../words.ts";
import { type Book, isUnused, numberOf, packedIn } from "./book.ts";
import { jobWords, wantedWords } from "./coolerJob.ts";
import {
  type Cell,
  drawing,
  heading,
  lineCount,
  list,
  type Piece,
  paragraph,
  SHEET,
  type Table,
} from "./flow.ts";
import { element, sentence, TICK } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

/** One cooler: its job and weight, what lies where from the top down, why so, drain and seal. */
export function coolerPages(book: Book): Sheet[] {
  return book.forecast.result.coolers.flatMap((_, i) => (isUnused(book, i) ? [] : coolerPage(book, i)));
}

function coolerPage(book: Book, i: number): Sheet[] {
  const { forecast, options, plan } = book;
  const { paper, pictures, units } = options;
  const cooler = forecast.result.coolers[i]!;
  const layers = plan.layers.filter((layer) => layer.cooler === cooler.name);
  const pack = pictures.pack?.[cooler.name];
  const band =
    pictures.band?.[cooler.name] ?? iceBand(iceBandData(forecast, i), { width: 600, units, id: `band${i}` });
  const pieces: Piece[] = [
    { ...paragraph(jobWords(book, i), paper, "lead"), tall_cm: 1.5 },
    paragraph(weightWords(book, i), paper),
    ...(pack === undefined ? [] : [drawing(pack, paper)]),
    ...(layers.length > 0
      ? [heading("Pack from the base up: row 1 goes in first"), mapTable(layers, book)]
      : [heading("What goes in"), contentTable(book, i)]),
    heading("Why so"),
    ...list(whyOf(book, i), paper),
    ...(forecast.trip.ice.some((lot) => lot.cooler === i) ? [drawing(band, paper, 0.9)] : []),
  ];
  const title = `${numberOf(book, i)} · ${printable(cooler.name)} (${forecast.trip.coolers[i]!.size})`;
  return pages(`Cooler ${numberOf(book, i)}`, title, pieces, book).map((sheet) => ({ ...sheet }));
}

function weightWords({ forecast, plan, voice }: Book, i: number): string {
  const cooler = forecast.result.coolers[i]!;
  const lift = plan.lifts.find((one) => one.cooler === cooler.name);
  const full = `${Math.round(cooler.filled_frac * 100)} % full`;
  if (lift === undefined) return `${massWords(cooler.packedWeight_kg, voice.units)} packed, ${full}.`;
  return `${massWords(lift.weight_kg, voice.units)} packed, ${full}. ${printable(lift.says)}`;
}

/** Top row first, as it lies; numbers count from the base, as it is packed. */
function mapTable(layers: readonly PackLayer[], book: Book): Table {
  const fromTop = [...layers].sort((a, b) => b.layer - a.layer);
  return {
    columns: [
      { head: "Row", wide_frac: 0.08, kind: "strong" },
      { head: "", wide_frac: 0.05 },
      { head: "What lies there", wide_frac: 0.47 },
      { head: "Thick", wide_frac: 0.12 },
      { head: "Mind", wide_frac: 0.28 },
    ],
    rows: fromTop.map((layer) => {
      const isRaw = layer.places.some(({ kind }) => kind === "raw");
      return {
        cells: [
          rowWords(layer, fromTop),
          { html: TICK, lines: 1 },
          layerCell(layer, book),
          lengthWords(layer.thick_m, book.voice.units),
          layer.notes.map((note) => `${sentence(printable(note))}.`).join(" "),
        ],
        ...(isRaw ? { kind: "raw" } : {}),
      };
    }),
  };
}

function rowWords({ layer }: PackLayer, layers: readonly PackLayer[]): string {
  const row = String(layer + 1);
  if (layer === 0) return `${row} base`;
  return layer === Math.max(...layers.map((one) => one.layer)) ? `${row} top` : row;
}

/** What lies in a layer; places of one kind are counted, and what is wanted when stands beside food. */
function layerCell({ places, items }: PackLayer, book: Book): Cell {
  const counted = new Map<string, { count: number; raw: boolean; item: string }>();
  for (const { what, item, kind } of places) {
    // What is poured into the gaps has many places and no count; the layer's note tells its share.
    if (kind === "loose ice") continue;
    const name = printable(what).replace(/,? \d+ of \d+$/, "");
    const before = counted.get(name);
    counted.set(name, { count: (before?.count ?? 0) + 1, raw: kind === "raw", item });
  }
  const wanted = (item: string): string => {
    const food = book.forecast.trip.food.find(({ name }) => name === item);
    return food === undefined ? "" : ` – ${wantedWords(food, book)}`;
  };
  const texts =
    places.length === 0
      ? items.map((item) => printable(item))
      : [...counted].map(
          ([name, { count, raw, item }]) =>
            `${count > 1 ? `${count} × ` : ""}${raw ? "RAW " : ""}${name}${wanted(item)}`,
        );
  const wide_cm = 0.47 * SHEET[book.options.paper].wide_cm - 0.3;
  return {
    html: texts.map((text) => element("span", "why", escaped(text))).join(""),
    lines: texts.reduce((sum, text) => sum + lineCount(text, wide_cm), 0),
  };
}

/** Where no map could be made: what goes in, last eaten first. */
function contentTable(book: Book, i: number): Table {
  const food = [...packedIn(book, i)].sort((a, b) => (b.eat_s ?? 0) - (a.eat_s ?? 0));
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "What", wide_frac: 0.45, kind: "strong" },
      { head: "How much", wide_frac: 0.2 },
      { head: "Wanted", wide_frac: 0.3 },
    ],
    rows: food.map((one) => ({
      cells: [
        { html: TICK, lines: 1 },
        `${one.raw ? "RAW " : ""}${printable(one.name)}`,
        one.amount,
        wantedWords(one, book),
      ],
      ...(one.raw ? { kind: "raw" } : {}),
    })),
  };
}

/** What decides about the meltwater, and on which days: the same reason is told once. */
function drainReasons({ forecast }: Book, i: number): string[] {
  const { name } = forecast.trip.coolers[i]!;
  const advice = drainAdvice(forecast.trip, forecast).filter(({ cooler }) => cooler === name);
  return [...group(advice, ({ does, reasons }) => `${does}: ${reasons[0]}`)].map(([says, days]) => {
    const when = days.map(({ day }) => day).join(", ");
    return printable(`Meltwater, day ${when}: ${says}.`);
  });
}

function whyOf(book: Book, i: number): string[] {
  const { forecast, plan, voice } = book;
  const cooler = forecast.result.coolers[i]!;
  const { sealedUntil_s, drain } = forecast.trip.coolers[i]!;
  const reasons = new Map<string, string[]>();
  for (const { item, cooler: into, why } of plan.assign)
    if (into === cooler.name) reasons.set(why, [...(reasons.get(why) ?? []), printable(item)]);
  const because = [...reasons].map(
    ([why, items]) =>
      `${items.length > 4 ? `${items.slice(0, 3).join(", ")} and ${items.length - 3} more` : items.join(", ")}: ${printable(why)}`,
  );
  const habit = { keep: "Keep the meltwater.", daily: "Drain once a day.", open: "Leave the drain open." }[
    drain
  ];
  const switched = drainLines(forecast, i, voice).map((line) => line.replace(/^drain: /, ""));
  const sealed =
    sealedUntil_s === null
      ? []
      : [
          `Seal: tape the lid. It opens first on ${momentWords(sealedUntil_s / 3600, voice.clock)}; every opening before costs ice.`,
        ];
  return [
    sentence(coolerSentence(forecast, i, voice).replace(/^[^:]*: /, "")),
    ...loadLines(forecast, i, voice).map((line) => sentence(line.replace(/^ice: /, ""))),
    ...because,
    `${habit}${switched.length === 0 ? "" : ` ${sentence(switched.join(" "))}`}`,
    ...drainReasons(book, i),
    sentence(ratioWords(cooler)),
    ...sealed,
  ];
}
