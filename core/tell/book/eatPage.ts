import { formatIn, massWords } from "../../quantity/show.ts";
import { foodStory, itemOf } from "../foodStory.ts";
import { byUrgency } from "../foodText.ts";
import { foodClock, foodClockData } from "../pictures/foodClock.ts";
import { durationWords, escaped, printable } from "../words.ts";
import type { Book } from "./book.ts";
import { drawing, heading, lineCount, list, type Piece, paragraph, SHEET, type Table } from "./flow.ts";
import { element, sentence } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

/** Rows that a page of warm time is given for what nobody foresaw. */
const SPARE_ROWS = 3;

/** Drinks: how many are cold at once, how long they take, and what a warm one costs. */
export function drinksPage(book: Book): Sheet[] {
  const { plan, options, voice } = book;
  if (plan.drinks.length === 0) return [];
  const table: Table = {
    columns: [
      { head: "Drink", wide_frac: 0.3, kind: "strong" },
      { head: "Cooler", wide_frac: 0.16 },
      { head: "Count", wide_frac: 0.12, kind: "num" },
      { head: "A warm one costs", wide_frac: 0.22, kind: "num" },
      { head: "Cold after", wide_frac: 0.2, kind: "num" },
    ],
    rows: plan.drinks.map(({ drink, cooler, count, eachIce_kg, cold_h }) => ({
      cells: [
        drink,
        cooler,
        String(count),
        `${massWords(eachIce_kg, voice.units)} of ice`,
        durationWords(cold_h),
      ],
    })),
  };
  const says = [...new Set(plan.drinks.map(({ says }) => printable(says)))];
  const pieces: Piece[] = [
    table,
    ...list(
      [
        ...says,
        "Rotation: a drink goes in when one comes out, at the far end; the next is taken from the near end. Chill them at home first, where there is a refrigerator.",
      ],
      options.paper,
    ),
  ];
  const all_kg = plan.drinks.reduce((sum, { count, eachIce_kg }) => sum + count * eachIce_kg, 0);
  return pages(
    "Drinks",
    `Drinks: all of them put in warm cost about ${massWords(all_kg, voice.units)} of ice`,
    pieces,
    book,
  );
}

/** What to eat first, by verdict, and a table to keep the warm time of each food by pencil. */
export function eatPages(book: Book): Sheet[] {
  const { forecast, options, voice } = book;
  const rows = byUrgency(forecast.result.food);
  if (rows.length === 0) return [];
  const clock =
    options.pictures.clock ??
    foodClock(foodClockData(forecast), { width: 640, units: voice.units, id: "clock" });
  const order = [...rows].sort(
    (a, b) => rank(a.verdict) - rank(b.verdict) || (a.eaten_h ?? 1e6) - (b.eaten_h ?? 1e6),
  );
  const pieces: Piece[] = [
    paragraph(
      "Keep means that no rule speaks against it, and no more. A look, a smell or a thermometer may make a verdict stricter, never milder.",
      options.paper,
    ),
    eatTable(order, book),
  ];
  return [
    ...pages("Eat next", "What to eat first", pieces, book),
    ...pages("Food and clock", "Food against the clock", [drawing(clock, options.paper)], book),
    ...pages("Warm time", "Warm time, kept by pencil", warmPieces(order, book), book),
  ];
}

const rank = (verdict: string): number => ["discard", "eat next", "keep"].indexOf(verdict);

type Rows = Book["forecast"]["result"]["food"];

function eatTable(order: Rows, { forecast, voice, options }: Book): Table {
  const wide_cm = 0.56 * SHEET[options.paper].wide_cm - 0.3;
  return {
    columns: [
      { head: "Verdict", wide_frac: 0.13, kind: "strong" },
      { head: "Food", wide_frac: 0.19, kind: "strong" },
      { head: "Cooler", wide_frac: 0.12 },
      { head: "Why", wide_frac: 0.56 },
    ],
    rows: order.map((food) => {
      const story = sentence(foodStory(food, forecast, voice));
      const rule = printable(food.rule);
      const html =
        element("span", "why", escaped(story)) +
        (rule === "" ? "" : element("span", "why", escaped(`Rule: ${rule}`)));
      const lines = lineCount(story, wide_cm) + (rule === "" ? 0 : lineCount(`Rule: ${rule}`, wide_cm));
      return {
        cells: [food.verdict.toUpperCase(), printable(food.name), printable(food.cooler), { html, lines }],
      };
    }),
  };
}

function warmPieces(order: Rows, book: Book): Piece[] {
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
  const spare = Array.from({ length: SPARE_ROWS }, () => ({
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
