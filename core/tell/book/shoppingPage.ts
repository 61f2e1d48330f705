import type { TripFood } from "../../trip/types.ts";
import { escaped, nameWords, printable } from "../words.ts";
import { type Book, money } from "./book.ts";
import { heading, lineCount, list, type Piece, paragraph, SHEET, type Table } from "./flow.ts";
import { element, TICK } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

type State = TripFood["state"];

const SECTIONS: readonly (readonly [title: string, states: readonly State[]])[] = [
  ["Frozen: buy frozen, or freeze at home", ["frozen"]],
  ["Chilled", ["chilled"]],
  ["Dry box and unchilled", ["ambient", "dry"]],
];

/** Food to buy by the part of the shop, diets and allergens, and what it costs. */
export function shoppingPages(book: Book): Sheet[] {
  return [...shoppingSheets(book), ...allergenSheets(book)];
}

function shoppingSheets(book: Book): Sheet[] {
  const { forecast } = book;
  const aboard = forecast.trip.food.filter(({ putIn_s }) => putIn_s === null);
  if (aboard.length === 0) return [];
  const pieces: Piece[] = SECTIONS.flatMap(([title, states]) => {
    const rows = aboard.filter((food) => states.includes(stateOf(food, book)));
    return rows.length === 0 ? [] : [heading(title), foodTable(rows, book)];
  });
  return pages(
    "Shopping",
    `Shopping: ${aboard.length} ${aboard.length === 1 ? "food" : "foods"}`,
    [...pieces, ...budgetPieces(book)],
    book,
  );
}

/** As the plan decided; what it left alone is as the file has it. */
function stateOf(food: TripFood, { plan }: Book): State {
  return plan.states.find(({ item }) => item === food.name)?.state ?? food.state;
}

function foodTable(foods: readonly TripFood[], book: Book): Table {
  const { plan, options, forecast } = book;
  const wide_cm = 0.5 * SHEET[options.paper].wide_cm - 0.3;
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "What", wide_frac: 0.5 },
      { head: "How much", wide_frac: 0.18, kind: "strong" },
      { head: "Goes into", wide_frac: 0.17 },
      { head: "Price", wide_frac: 0.1, kind: "num" },
    ],
    rows: foods.map((food) => {
      const counted = plan.amounts.find(({ item }) => item === food.name);
      const why = plan.states.find(({ item, pinned }) => item === food.name && !pinned)?.why ?? "";
      const notes = [...(food.raw ? ["RAW"] : []), ...(counted === undefined ? [] : [counted.says]), why]
        .map(printable)
        .filter((note) => note !== "")
        .join(" · ");
      const html =
        element("b", "", escaped(food.name)) + (notes === "" ? "" : element("span", "why", escaped(notes)));
      const lines = lineCount(food.name, wide_cm, 1.12) + (notes === "" ? 0 : lineCount(notes, wide_cm));
      const cooler = food.cooler === null ? "dry box" : forecast.trip.coolers[food.cooler]!.name;
      return {
        cells: [
          { html: TICK, lines: 1 },
          { html, lines },
          counted?.amount ?? food.amount,
          cooler,
          money(food.price),
        ],
      };
    }),
  };
}

function budgetPieces({ plan, options }: Book): Piece[] {
  const { ice, food, unpriced } = plan.budget;
  const rows = [
    ...(food === null ? [] : [["Food", food] as const]),
    ...(ice === null ? [] : [["Ice", ice] as const]),
  ];
  if (rows.length === 0) return [];
  const open = unpriced.length === 0 ? "" : `Without a price, and not counted: ${nameWords(unpriced, 12)}.`;
  const total = (food ?? 0) + (ice ?? 0);
  return [
    heading("Budget"),
    {
      columns: [
        { head: "", wide_frac: 0.8 },
        { head: "", wide_frac: 0.2, kind: "num" },
      ],
      rows: [
        ...rows.map(([name, cost]) => ({ cells: [name, money(cost)] })),
        {
          cells: [unpriced.length === 0 ? "In all" : "In all, as far as prices are known", money(total)],
          kind: "total",
        },
      ],
    },
    ...(open === "" ? [] : [paragraph(open, options.paper)]),
  ];
}

function allergenSheets(book: Book): Sheet[] {
  const { plan, options, forecast } = book;
  const { diets, allergies, adults, children } = forecast.trip.party;
  const diet = Object.entries(diets);
  if (plan.allergens.length === 0 && diet.length === 0 && allergies.length === 0) return [];
  const meeting = plan.allergens.filter(({ meets }) => meets.length > 0);
  const special = diet.reduce((sum, [, count]) => sum + count, 0);
  const heads = [
    ...diet.map(([name, count]) => `${count} ${printable(name)}`),
    ...(special === 0 ? [] : [`${Math.max(0, adults + children - special)} eat everything`]),
  ];
  const title =
    allergies.length === 0
      ? "Diets and allergens"
      : meeting.length === 0
        ? `Allergies in the party: ${allergies.join(", ")}; no food names them`
        : `Allergies in the party: ${allergies.join(", ")}; ${meeting.length} ${meeting.length === 1 ? "food" : "foods"} to mind`;
  const pieces: Piece[] = [
    ...(heads.length === 0 ? [] : [paragraph(`At the table: ${heads.join(", ")}.`, options.paper)]),
    ...(plan.allergens.length === 0 ? [] : [allergenTable(book)]),
    ...list(
      [
        "A label read on the day comes before this sheet. Recipes change, and what touched the same board or spoon counts too.",
        "Where a food is marked as not said, ask or read its label before somebody with an allergy eats of it.",
      ],
      options.paper,
    ),
  ];
  return pages("Diets and allergens", title, pieces, book);
}

function allergenTable({ plan }: Book): Table {
  const ordered = [...plan.allergens].sort((a, b) => b.meets.length - a.meets.length);
  return {
    columns: [
      { head: "Food", wide_frac: 0.34, kind: "strong" },
      { head: "Contains", wide_frac: 0.36 },
      { head: "Meets, or may meet", wide_frac: 0.3 },
    ],
    rows: ordered.map(({ item, contains, meets }) => ({
      cells: [
        item,
        contains === null
          ? "not said: may contain any"
          : contains.length === 0
            ? "none of the nine"
            : contains.join(", "),
        meets.length === 0 ? "" : `${contains === null ? "may meet " : "MEETS "}${meets.join(", ")}`,
      ],
      ...(meets.length > 0 ? { kind: "raw" } : {}),
    })),
  };
}
