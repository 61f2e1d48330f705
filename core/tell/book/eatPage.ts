import { formatIn } from "../../quantity/show.ts";
import { foodStory, itemOf } from "../foodStory.ts";
import { byUrgency, remarksOn } from "../foodText.ts";
import { foodClock, foodClockData } from "../pictures/foodClock.ts";
import { durationWords, printable } from "../words.ts";
import type { Book } from "./book.ts";
import { drawing, heading, list, type Piece, paragraph, type Table } from "./flow.ts";
import { sentence } from "./html.ts";
import { fewestSheets, pages, type Sheet } from "./page.ts";

/** Rows that a page of warm time is given for what nobody foresaw. */
const SPARE_ROWS = 3;

/** What to eat first, by verdict, food on the clock, and a table to keep the warm time of each food by pencil. */
export function eatPages(book: Book): Sheet[] {
  const { forecast, options } = book;
  const rows = byUrgency(forecast.result.food);
  if (rows.length === 0) return [];
  const order = [...rows].sort(
    (a, b) => rank(a.verdict) - rank(b.verdict) || (a.eaten_h ?? 1e6) - (b.eaten_h ?? 1e6),
  );
  const pieces: Piece[] = [
    paragraph(
      "Keep means that no rule speaks against it, and no more. A look, a smell or a thermometer may make a verdict stricter, never milder.",
      options.paper,
    ),
    eatTable(order, book),
    ...rulePieces(order, book),
  ];
  return [
    ...pages("Eat next", "What to eat first", pieces, book),
    ...pages("Food and clock", "Food against the clock", clockPieces(book), book),
    ...warmSheets(order, book),
  ];
}

/** So many foods on one drawing at most, that its words stay as large as they are drawn. */
const CLOCK_ROWS = 13;

function clockPieces({ forecast, options, voice }: Book): Piece[] {
  const { clock } = options.pictures;
  if (clock !== undefined) return [drawing(clock, options.paper)];
  const data = foodClockData(forecast);
  const count = Math.max(1, Math.ceil(data.rows.length / CLOCK_ROWS));
  const each = Math.ceil(data.rows.length / count);
  return Array.from({ length: count }, (_, i) => {
    const part = {
      ...data,
      rows: data.rows.slice(i * each, (i + 1) * each),
      noClock: i === count - 1 ? data.noClock : [],
    };
    return drawing(
      foodClock(part, { width: 640, units: voice.units, id: `clock${i}` }),
      options.paper,
      1,
      LEAST_CLOCK_frac,
    );
  });
}

/** Rather so small than alone on a sheet. */
const LEAST_CLOCK_frac = 0.85;

const rank = (verdict: string): number => ["discard", "eat next", "keep"].indexOf(verdict);

type Rows = Book["forecast"]["result"]["food"];

/** The rules that these foods fall under, each once, in the order of their letters. */
const rulesOf = (order: Rows): string[] => [
  ...new Set(order.map(({ rule }) => printable(rule)).filter((rule) => rule !== "")),
];

const letterOf = (index: number): string =>
  index < 26
    ? String.fromCharCode(65 + index)
    : `${letterOf(Math.floor(index / 26) - 1)}${letterOf(index % 26)}`;

function rulePieces(order: Rows, { options }: Book): Piece[] {
  const rules = rulesOf(order);
  if (rules.length === 0) return [];
  return [
    heading("The rules"),
    ...list(
      rules.map((rule, i) => `${letterOf(i)}: ${rule}`),
      options.paper,
    ),
  ];
}

function eatTable(order: Rows, { forecast, voice }: Book): Table {
  const rules = rulesOf(order);
  return {
    columns: [
      { head: "Verdict", wide_frac: 0.13, kind: "strong" },
      { head: "Food", wide_frac: 0.2, kind: "strong" },
      { head: "Cooler", wide_frac: 0.13 },
      { head: "Why", wide_frac: 0.46 },
      { head: "Rule", wide_frac: 0.08 },
    ],
    rows: order.map((food) => {
      const rule = rules.indexOf(printable(food.rule));
      return {
        cells: [
          food.verdict.toUpperCase(),
          printable(food.name),
          printable(food.cooler),
          [foodStory(food, forecast, voice), ...remarksOn(food, forecast, new Set())]
            .map((said) => `${sentence(said.replace(/\.$/, ""))}.`)
            .join(" "),
          rule < 0 ? "" : letterOf(rule),
        ],
      };
    }),
  };
}

/** As many rows to spare as do not begin a sheet of their own. */
function warmSheets(order: Rows, book: Book): Sheet[] {
  return fewestSheets(
    [SPARE_ROWS, 2, 1, 0].map((spare) =>
      pages("Warm time", "Warm time, kept by pencil", warmPieces(order, book, spare), book),
    ),
  );
}

function warmPieces(order: Rows, book: Book, spareCount: number): Piece[] {
  const { forecast, options, voice } = book;
  const limit =
    voice.units === "us"
      ? formatIn(forecast.result.limit.limit_C, "°F", 0)
      : formatIn(forecast.result.limit.limit_C, "°C", 1);
  const rows = order
    .filter((food) => food.perishable)
    .map((food) => ({
      cells: [
        `${itemOf(food, forecast)?.raw === true ? "RAW " : ""}${printable(food.name)}`,
        food.warmAllowed_h === null ? "no time set" : durationWords(food.warmAllowed_h),
        ...["", "", "", "", ""],
      ],
      least_cm: 0.85,
    }));
  const spare = Array.from({ length: spareCount }, () => ({
    cells: ["", "", "", "", "", "", ""],
    least_cm: 0.85,
    kind: "grid",
  }));
  return [
    paragraph(
      `Write down every stretch above ${limit}, from when to when. The times add up over the whole life of the food and never shrink. Not known counts as warm. Over what is allowed: in the bin.`,
      options.paper,
    ),
    heading("Each food has its own rule"),
    {
      columns: [
        { head: "Food", wide_frac: 0.24, kind: "strong" },
        { head: "Allowed in all", wide_frac: 0.13 },
        { head: "From–to", wide_frac: 0.15 },
        { head: "From–to", wide_frac: 0.15 },
        { head: "From–to", wide_frac: 0.15 },
        { head: "Sum", wide_frac: 0.08 },
        { head: "Verdict", wide_frac: 0.1 },
      ],
      rows: [...rows, ...spare].map((row) => ({ ...row, kind: "grid" })),
    },
  ];
}
