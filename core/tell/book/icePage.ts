import { group, sum } from "d3-array";
import type { IcePiece } from "../../forecast/planResult.ts";
import { pieceWords } from "../../plan/pieceWords.ts";
import { massWords } from "../../quantity/show.ts";
import { assumedLines } from "../assumedText.ts";
import { coldStair, coldStairData } from "../pictures/coldStair.ts";
import { eachWords, reserveLines, totalWords, whereOf } from "../shoppingText.ts";
import { momentWords, printable } from "../words.ts";
import { type Book, momentIn, money } from "./book.ts";
import { drawing, heading, list, type Piece, paragraph, type Table } from "./flow.ts";
import { sentence, TICK } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

/** Assumptions told in full; the rest are counted. */
const ASSUMED_SHOWN = 14;

/** Ice in pieces, with place, time, price and weight; where the cold goes; what was assumed. */
export function icePage(book: Book): Sheet[] {
  const { forecast, plan, voice } = book;
  const later = forecast.trip.ice.filter(({ putIn_s }) => putIn_s !== null);
  const [assumed = "", ...values] = assumedLines(forecast, ASSUMED_SHOWN, voice);
  const pieces: Piece[] = [
    ...(plan.ice.length === 0 ? [] : [iceTable(book)]),
    ...reserveLines(plan, voice).map((text) => paragraph(text, book.options.paper, "need")),
    ...(later.length === 0 ? [] : [heading("On the way"), laterTable(book)]),
    ...assumedPieces(assumed, values, book),
    ...stairPieces(book),
  ];
  if (pieces.length === 0) return [];
  const title = plan.ice.length + later.length === 0 ? "No ice to get" : totalWords(plan, later, voice);
  return pages("Ice", title, pieces, book);
}

function iceTable({ plan, forecast, voice }: Book): Table {
  const { trip } = forecast;
  const bought = plan.ice.map((piece) => ({ ...piece, where: whereOf(piece, trip) }));
  const key = (piece: IcePiece): string =>
    [piece.form, piece.each_kg.toFixed(3), piece.where, piece.by].join(" | ");
  const rows = [...group(bought, key).values()].map((same) => {
    const first = same[0]!;
    const pieces = sum(same, (piece) => piece.pieces);
    const into = [...group(same, (piece) => piece.cooler)].map(
      ([cooler, some]) => `${sum(some, (piece) => piece.pieces)} ${printable(cooler)}`,
    );
    const isPriced = same.some(({ price }) => price !== null);
    return {
      cells: [
        { html: TICK, lines: 1 },
        pieceWords(pieces, printable(eachWords(first, trip, voice)), first.form),
        printable(first.where),
        momentIn(first.by, voice.clock),
        into.join(", "),
        isPriced ? money(sum(same, ({ price }) => price ?? 0)) : "",
        massWords(
          sum(same, ({ weight_kg }) => weight_kg),
          voice.units,
        ),
      ],
    };
  });
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "What", wide_frac: 0.26, kind: "strong" },
      { head: "Where", wide_frac: 0.14 },
      { head: "By", wide_frac: 0.15 },
      { head: "Goes into", wide_frac: 0.2 },
      { head: "Price", wide_frac: 0.09, kind: "num" },
      { head: "Weight", wide_frac: 0.11, kind: "num" },
    ],
    rows,
  };
}

/** Ice that events bring aboard on the way. */
function laterTable({ forecast, voice }: Book): Table {
  const later = forecast.trip.ice
    .filter(({ putIn_s }) => putIn_s !== null)
    .sort((a, b) => a.putIn_s! - b.putIn_s!);
  const key = (lot: (typeof later)[number]): string => `${lot.form} ${lot.each} ${lot.cooler} ${lot.putIn_s}`;
  const rows = [...group(later, key).values()].map((same) => {
    const first = same[0]!;
    const pieces = sum(same, (lot) => lot.pieces);
    return {
      cells: [
        { html: TICK, lines: 1 },
        pieceWords(pieces, printable(first.each), first.form),
        momentWords(first.putIn_s! / 3600, voice.clock),
        forecast.trip.coolers[first.cooler]!.name,
        first.price === null ? "" : money(first.price * pieces),
        massWords(
          sum(same, ({ mass_kg }) => mass_kg),
          voice.units,
        ),
      ],
    };
  });
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "What", wide_frac: 0.35, kind: "strong" },
      { head: "Goes in", wide_frac: 0.2 },
      { head: "Goes into", wide_frac: 0.2 },
      { head: "Price", wide_frac: 0.09, kind: "num" },
      { head: "Weight", wide_frac: 0.11, kind: "num" },
    ],
    rows,
  };
}

function assumedPieces(head: string, values: readonly string[], { options }: Book): Piece[] {
  if (head === "") return [];
  // On paper nobody looks a path up in the file, nor asks the program.
  const said = values
    .filter((text) => !text.includes("`coldstow check`"))
    .map((text) => sentence(text.trim().replace(/ \([\w.[\]…]+\)$/, "")));
  return [heading("Assumed"), paragraph(head, options.paper), ...list(said, options.paper)];
}

function stairPieces({ forecast, options }: Book): Piece[] {
  const { paper, pictures, units } = options;
  const stairs = forecast.result.coolers.flatMap((cooler, i) => {
    if (cooler.heatUntil_h <= 0) return [];
    const drawn = coldStair(coldStairData(forecast, i), { width: 640, units, id: `stair${i}` });
    return [drawing(pictures.stair?.[cooler.name] ?? drawn, paper)];
  });
  return stairs;
}
