import type { DrinkAdvice } from "../../forecast/planResult.ts";
import type { Band } from "../../forecast/result.ts";
import { massWords } from "../../quantity/show.ts";
import { durationWords, isPoint, printable } from "../words.ts";
import type { Book } from "./book.ts";
import { list, type Piece, type Table } from "./flow.ts";
import { sentence } from "./html.ts";
import { lastingWords } from "./lasting.ts";
import { pages, type Sheet } from "./page.ts";

/** Drinks: how many are cold at once, how long they take, and what a warm one costs. */
export function drinksPage(book: Book): Sheet[] {
  const { plan, options, voice } = book;
  if (plan.drinks.length === 0) return [];
  const table: Table = {
    columns: [
      { head: "Drink", wide_frac: 0.24, kind: "strong" },
      { head: "Cooler", wide_frac: 0.15 },
      { head: "Count", wide_frac: 0.09, kind: "num" },
      { head: "A warm one costs, of ice", wide_frac: 0.26, kind: "num" },
      { head: "Cold after", wide_frac: 0.26, kind: "num" },
    ],
    rows: plan.drinks.map((advice) => ({
      cells: [advice.drink, advice.cooler, String(advice.count), priceWords(advice, book), coldWords(advice)],
    })),
  };
  const says = [...new Set(plan.drinks.map(({ says }) => sentence(printable(says))))];
  const isBanded = plan.drinks.some(({ bands }) => bands !== undefined);
  const pieces: Piece[] = [
    table,
    ...list(
      [
        ...says,
        "Rotation: a drink goes in when one comes out, at the far end; the next is taken from the near end. Chill them at home first, where there is a refrigerator.",
        isBanded ? "Two ends: eight times in ten it lies between them." : "Likely values, without a range.",
      ],
      options.paper,
    ),
  ];
  const total = massWords(sumOf(plan.drinks, "p50"), voice.units);
  const range = isBanded
    ? ` (${massWords(sumOf(plan.drinks, "p10"), voice.units)} to ${massWords(sumOf(plan.drinks, "p90"), voice.units)})`
    : "";
  return pages("Drinks", `Drinks: all of them put in warm cost about ${total}${range} of ice`, pieces, book);
}

/** Ice that all of them take; the ends of what is warm and what is not go together, since one weather warms them all. */
function sumOf(drinks: readonly DrinkAdvice[], p: keyof Band): number {
  return drinks.reduce(
    (sum, { count, eachIce_kg, bands }) => sum + count * (bands?.eachIce_kg[p] ?? eachIce_kg),
    0,
  );
}

function priceWords({ eachIce_kg, bands }: DrinkAdvice, { voice }: Book): string {
  const mass = (mass_kg: number | null): string => massWords(mass_kg ?? 0, voice.units);
  const range = bands?.eachIce_kg;
  return range === undefined || isPoint(range)
    ? mass(eachIce_kg)
    : `${mass(range.p50)} (${mass(range.p10)} to ${mass(range.p90)})`;
}

const coldWords = ({ cold_h, bands }: DrinkAdvice): string =>
  bands === undefined ? durationWords(cold_h) : lastingWords(bands.cold_h);
