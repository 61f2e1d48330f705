import type { PackLayer } from "../../forecast/planResult.ts";
import { lengthWords, massWords } from "../../quantity/show.ts";
import { hasIce } from "../coolerSentence.ts";
import { iceBand, iceBandData } from "../pictures/iceBand.ts";
import { reserveLines } from "../shoppingText.ts";
import { escaped, printable } from "../words.ts";
import { type Book, isUnused, numberOf, packedIn } from "./book.ts";
import { jobWords, takesOver, wantedWords } from "./coolerJob.ts";
import { waterPieces, whyOf } from "./coolerWhy.ts";
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
import { blank, element, sentence, TICK } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

/** Rather so small than alone on a sheet. */
const LEAST_PACK_frac = 0.78;
const LEAST_BAND_frac = 0.72;

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
  const hasBand = hasIce(forecast, i);
  const band =
    pictures.band?.[cooler.name] ?? iceBand(iceBandData(forecast, i), { width: 600, units, id: `band${i}` });
  const pieces: Piece[] = [
    { ...paragraph(jobWords(book, i), paper, "lead"), tall_cm: 1.5 },
    paragraph(weightWords(book, i), paper),
    ...reserveLines(plan, book.voice, cooler.name).map((text) => paragraph(text, paper, "need")),
    handsLine(),
    ...(pack === undefined ? [] : [drawing(pack, paper, 1, LEAST_PACK_frac)]),
    ...(layers.length > 0
      ? [heading("Pack from the base up: row 1 goes in first"), mapTable(layers, book)]
      : contentPieces(book, i)),
    ...waterPieces(book, i),
    heading("Why so"),
    ...list(whyOf(book, i, hasBand), paper),
    ...(hasBand ? [drawing(band, paper, 0.9, LEAST_BAND_frac)] : []),
  ];
  const title = `${numberOf(book, i)} · ${printable(cooler.name)} (${forecast.trip.coolers[i]!.size})`;
  return pages(`Cooler ${numberOf(book, i)}`, title, pieces, book);
}

/** Who is answerable for it, to be written in. */
const handsLine = (): Piece => ({
  html: `<p>Packed by ${blank(4.2)} Carried by ${blank(4.2)} and ${blank(4.2)}</p>`,
  tall_cm: 0.8,
});

function weightWords({ forecast, plan, voice }: Book, i: number): string {
  const cooler = forecast.result.coolers[i]!;
  const lift = plan.lifts.find((one) => one.cooler === cooler.name);
  const full = `${Math.round(cooler.filled_frac * 100)} % full when packed.`;
  if (lift === undefined) return `${massWords(cooler.packedWeight_kg, voice.units)} packed; ${full}`;
  const says = printable(lift.says);
  // Its own words begin with the weight; those of somebody else's plan need not.
  const told = says.startsWith(printable(cooler.name))
    ? ""
    : `${massWords(lift.weight_kg, voice.units)} packed. `;
  return `${told}${sentence(says)} It is ${full}`;
}

function contentPieces(book: Book, i: number): Piece[] {
  if (packedIn(book, i).length > 0) return [heading("What goes in"), contentTable(book, i)];
  const later = takesOver(book, i);
  return [
    paragraph(
      later === "" ? "It goes along empty." : `It goes along empty. ${sentence(later)}.`,
      book.options.paper,
    ),
  ];
}

/** Share of the map that the column of what lies there takes. */
const LIES_frac = 0.41;

/** Top row first, as it lies; numbers count from the base, as it is packed. */
function mapTable(layers: readonly PackLayer[], book: Book): Table {
  const fromTop = [...layers].sort((a, b) => b.layer - a.layer);
  return {
    columns: [
      { head: "Row", wide_frac: 0.08, kind: "strong" },
      { head: "", wide_frac: 0.05 },
      { head: "What lies there", wide_frac: LIES_frac },
      { head: "Thick", wide_frac: 0.1 },
      { head: "Mind", wide_frac: 0.36 },
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
  const wide_cm = LIES_frac * SHEET[book.options.paper].wide_cm - 0.3;
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
