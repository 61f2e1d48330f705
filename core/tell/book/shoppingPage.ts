import type { TripFood } from "../../trip/types.ts";
import { reserveLines, totalWords } from "../shoppingText.ts";
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
  const { forecast, options } = book;
  const aboard = forecast.trip.food.filter(({ putIn_s }) => putIn_s === null);
  if (aboard.length === 0) return [];
  const pieces: Piece[] = SECTIONS.flatMap(([title, states]) => {
    const rows = aboard.filter((food) => states.includes(stateOf(food, book)));
    return rows.length === 0 ? [] : [heading(title), foodTable(rows, book)];
  });
  return pages(
    "Shopping",
    `Shopping: ${aboard.length} ${aboard.length === 1 ? "food" : "foods"}`,
    [
      ...countedOnce(book).map((text) => paragraph(text, options.paper)),
      ...pieces,
      heading("Ice"),
      ...list(iceWords(book), options.paper, "box"),
      ...budgetPieces(book),
    ],
    book,
  );
}

/** What every counted amount rests on alike, so that no row repeats it. */
function countedOnce({ plan, forecast }: Book): string[] {
  if (plan.amounts.length === 0) return [];
  const { children, appetite_frac } = forecast.trip.party;
  const appetite =
    appetite_frac === 1 ? "" : ` Appetite ${Math.round(appetite_frac * 100)} % is in all amounts.`;
  return [
    `Amounts are counted from heads and meals.${children > 0 ? " A child counts in part." : ""}${appetite}`,
  ];
}

const rowWords = (says: string): string =>
  printable(says)
    .replace(" (a child counts in part)", "")
    .replace(/, appetite [\d.]+ %$/, "");

/** The ice in one line; its pieces stand on the page Ice. */
function iceWords(book: Book): string[] {
  const { plan, forecast, voice } = book;
  const later = forecast.trip.ice.filter(({ putIn_s }) => putIn_s !== null);
  return plan.ice.length + later.length === 0
    ? ["None to get.", ...reserveLines(plan, voice)]
    : [
        `${totalWords(plan, later, voice)} The pieces, and where each goes, stand on the page Ice.`,
        ...reserveLines(plan, voice),
      ];
}

/** As the plan decided; what it left alone is as the file has it. */
function stateOf(food: TripFood, { plan }: Book): State {
  return plan.states.find(({ item }) => item === food.name)?.state ?? food.state;
}

function foodTable(foods: readonly TripFood[], book: Book): Table {
  const { plan, options, forecast } = book;
  const isPriced = forecast.trip.food.some(({ price }) => price !== null);
  const what_frac = isPriced ? 0.53 : 0.61;
  const wide_cm = what_frac * SHEET[options.paper].wide_cm - 0.3;
  return {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "What", wide_frac: what_frac },
      { head: "How much", wide_frac: 0.17, kind: "strong" },
      { head: "Goes into", wide_frac: 0.17 },
      ...(isPriced ? [{ head: "Price", wide_frac: 0.08, kind: "num" }] : []),
    ],
    rows: foods.map((food) => {
      const counted = plan.amounts.find(({ item }) => item === food.name);
      const why = plan.states.find(({ item, pinned }) => item === food.name && !pinned)?.why ?? "";
      const notes = [
        ...(food.raw ? ["RAW"] : []),
        ...(counted === undefined ? [] : [rowWords(counted.says)]),
        why,
      ]
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
          ...(isPriced ? [money(food.price)] : []),
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
    ...allergenPieces(book),
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

/** Foods that say what they contain, or meet an allergy; where nobody has one, the rest are told in a line. */
function allergenPieces(book: Book): Piece[] {
  const { plan, options } = book;
  const told = plan.allergens.filter(({ contains, meets }) => contains !== null || meets.length > 0);
  const open = plan.allergens.filter((row) => !told.includes(row)).map(({ item }) => item);
  return [
    ...(told.length === 0 ? [] : [allergenTable(told)]),
    ...(open.length === 0
      ? []
      : [
          paragraph(
            `Not said, so each may contain any of the nine: ${nameWords(open, open.length)}.`,
            options.paper,
          ),
        ]),
  ];
}

function allergenTable(rows: Book["plan"]["allergens"]): Table {
  const ordered = [...rows].sort((a, b) => b.meets.length - a.meets.length);
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
