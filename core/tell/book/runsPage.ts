import { pieceWords } from "../../plan/pieceWords.ts";
import { massWords, volumeWords } from "../../quantity/show.ts";
import { gainHours } from "../gainWords.ts";
import { mergeCurves, mergeCurvesData } from "../pictures/mergeCurves.ts";
import { FILE_RUN } from "../planLines.ts";
import { eachWords, reserveLines } from "../shoppingText.ts";
import { printable } from "../words.ts";
import { type Book, momentIn, money, timeIn } from "./book.ts";
import { drawing, heading, list, type Piece, paragraph, type Table } from "./flow.ts";
import { sentence, TICK } from "./html.ts";
import { lastingWords } from "./lasting.ts";
import { pages, type Sheet } from "./page.ts";

/** Ice fetched on the way and coolers made one, with what to do where it does not come about. */
export function runsPage(book: Book): Sheet[] {
  const { plan, options } = book;
  if (plan.iceRuns.length === 0 && plan.merges.length === 0) return [];
  const title = [
    plan.iceRuns.length === 0
      ? ""
      : `${plan.iceRuns.length} ice ${plan.iceRuns.length === 1 ? "run" : "runs"}`,
    plan.merges.length === 0 ? "" : `${plan.merges.length} ${plan.merges.length === 1 ? "merge" : "merges"}`,
  ].filter((words) => words !== "");
  const pieces: Piece[] = [
    ...(plan.iceRuns.length === 0 ? [] : [heading("Ice runs"), runTable(book)]),
    ...(plan.merges.length === 0 ? [] : [heading("Two coolers become one"), mergeTable(book)]),
    ...(plan.merges.length === 0
      ? []
      : list(
          [
            "Raw food stays lowest and watertight in the cooler that takes over. Wipe out what is emptied, and leave its lid open.",
          ],
          options.paper,
        )),
    ...plan.merges.map((_, i) => drawing(curveOf(book, i), options.paper, 1, LEAST_CURVE_frac)),
  ];
  return pages("Ice runs and merges", title.join(" and "), pieces, book);
}

/** Rather so small than alone on a sheet. */
const LEAST_CURVE_frac = 0.72;

const curveOf = ({ forecast, options }: Book, i: number): string =>
  options.pictures.merges?.[i] ??
  mergeCurves(mergeCurvesData(forecast, i), { width: 640, units: options.units, id: `merge${i}` });

function runTable({ plan, forecast, voice }: Book): Table {
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "Leave by", wide_frac: 0.17, kind: "strong" },
      { head: "Fetch", wide_frac: 0.25, kind: "strong" },
      { head: "Why", wide_frac: 0.27 },
      { head: "If there is none", wide_frac: 0.26 },
    ],
    rows: plan.iceRuns.map((run) => {
      const asPiece = { ...run, cooler: run.into, by: run.at, weight_kg: run.pieces * run.each_kg };
      const what = pieceWords(run.pieces, printable(eachWords(asPiece, forecast.trip, voice)), run.form);
      const price = run.price === null ? "" : `, ${money(run.price)}`;
      return {
        cells: [
          { html: TICK, lines: 1 },
          run.leaveBy < run.at
            ? `${momentIn(run.leaveBy, voice.clock)}; there by ${timeIn(run.at, voice.clock)}`
            : momentIn(run.at, voice.clock),
          `${what}${run.where === UNSAID ? "" : ` at ${printable(run.where)}`}${price}, into ${printable(run.into)}`,
          run.why === FILE_RUN ? "written in the trip file" : sentence(whyWords(run.why, what)),
          sentence(printable(run.fallback).replace(/^Without it: costs /, "It costs ")),
        ],
      };
    }),
  };
}

/** Of ice that the file brings aboard without a word where it is had. */
const UNSAID = "where you wrote";

/** The pieces stand beside it already. */
const whyWords = (why: string, what: string): string => {
  const said = printable(why);
  return said.endsWith(`; ${what}`) ? said.slice(0, -what.length - 2) : said;
};

function mergeTable({ plan, voice }: Book): Table {
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "When", wide_frac: 0.17, kind: "strong" },
      { head: "What", wide_frac: 0.25, kind: "strong" },
      { head: "Worth", wide_frac: 0.23 },
      { head: "Why", wide_frac: 0.3 },
    ],
    rows: plan.merges.map((merge) => ({
      cells: [
        { html: TICK, lines: 1 },
        momentIn(merge.at, voice.clock),
        `${printable(merge.from)} into ${printable(merge.into)}; then ${Math.round(merge.fits_frac * 100)} % full`,
        `ice ${gainHours(merge.gain_h)}${merge.foodGain_h === null ? "" : `; food ${gainHours(merge.foodGain_h)}`}`,
        printable(merge.why),
      ],
    })),
  };
}

/** A big load that may come warm: what to keep ready, how to lay it, how long it takes, when to go home. */
export function warmLoadPage(book: Book): Sheet[] {
  const { plan, voice, options } = book;
  const load = plan.warmLoad;
  if (load === null) return [];
  const home =
    load.goHomeBy === null
      ? []
      : [`Go home by ${momentIn(load.goHomeBy, voice.clock)}, if it comes at the latest hour.`];
  const says = [
    `Latest hour it is planned for: ${momentIn(load.at, voice.clock)}.`,
    `Room to keep for it in ${printable(load.cooler)}: ${volumeWords(load.space_L / 1000, voice.units)}.`,
    ...(load.reserve.holds && load.reserve.pieces === 0
      ? ["The ice that is planned is reserve enough."]
      : reserveLines(plan, voice)),
    `Its centre is under the limit after ${lastingWords(load.centreCold_h)}; it stays so for ${lastingWords(load.keepsFor_h)} from when it is put in.`,
    ...home,
  ];
  const pieces: Piece[] = [
    paragraph(printable(load.says), options.paper, "lead"),
    ...list(says, options.paper),
    heading("How to lay it"),
    ...list(load.layout.map(printable), options.paper, "box"),
  ];
  return pages(
    "Big warm load",
    `${printable(load.name)}, ${massWords(load.amount_kg, voice.units)}, may come warm`,
    pieces,
    book,
  );
}
