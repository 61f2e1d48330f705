import { group } from "d3-array";
import type { PullCard } from "../../forecast/planResult.ts";
import { escaped, printable } from "../words.ts";
import { type Book, momentIn, timeIn } from "./book.ts";
import { lineCount, type Paper, SHEET, type Table } from "./flow.ts";
import { element, TICK } from "./html.ts";
import { lastingWords } from "./lasting.ts";
import { pages, type Sheet } from "./page.ts";

/** What a card holds at most below its head. */
const LINES_A_CARD = 26;
/** What the head and the frame of a card take, and the least that a card takes, in lines. */
const FRAME_LINES = 3.6;
const LEAST_LINES = 7;
/** Lines of a sheet of cards. */
const LINES_A_SHEET: Readonly<Record<Paper, number>> = { A4: 49, Letter: 43 };

interface Line {
  html: string;
  lines: number;
  isTitle: boolean;
}

/** Cards of what to take for each meal: from where in one opening, what to thaw, what goes back. */
export function pullPages(book: Book): Sheet[] {
  const cards = book.plan.pull.flatMap((card) => cardsOf(card, book));
  const sheets = sheetsOfCards(cards, LINES_A_SHEET[book.options.paper]).map((html) => ({
    about: "Daily cards",
    html: element("div", "cards", html),
  }));
  return [...menuPage(book), ...sheets];
}

interface Card {
  html: string;
  lines: number;
}

/** Two cards a row, each row as tall as the taller of the two, as many rows as a sheet has room for. */
function sheetsOfCards(cards: readonly Card[], room: number): string[] {
  const sheets: string[] = [];
  let html = "";
  let used = 0;
  for (let i = 0; i < cards.length; i += 2) {
    const row = cards.slice(i, i + 2);
    const tall = Math.max(LEAST_LINES, ...row.map(({ lines }) => lines)) + FRAME_LINES;
    if (html !== "" && used + tall > room) {
      sheets.push(html);
      [html, used] = ["", 0];
    }
    html += row.map((card) => card.html).join("");
    used += tall;
  }
  return html === "" ? sheets : [...sheets, html];
}

/** What is eaten when, a line a meal. */
function menuPage(book: Book): Sheet[] {
  const { pull } = book.plan;
  if (pull.length === 0) return [];
  const table: Table = {
    columns: [
      { head: "Day", wide_frac: 0.1, kind: "strong" },
      { head: "Meal", wide_frac: 0.2, kind: "strong" },
      { head: "What is taken out for it", wide_frac: 0.7 },
    ],
    rows: pull.map(({ day, meal, take }, i) => ({
      cells: [
        pull[i - 1]?.day === day ? "" : String(day),
        printable(meal),
        [...new Set(take.map(({ item }) => printable(item)))].join(", "),
      ],
    })),
  };
  return pages("Menu", "Menu by day", [table], book);
}

/** One meal on as many cards as it needs, as HTML. */
export function pullCards(card: PullCard, book: Book): string[] {
  return cardsOf(card, book).map(({ html }) => html);
}

function cardsOf(card: PullCard, book: Book): Card[] {
  const cards: Card[] = [];
  let inner = "";
  let used = 0;
  const head = `Day ${card.day} ${printable(card.meal)}, ${timeIn(card.at, book.voice.clock)}`;
  const close = (): void => {
    const title = cards.length === 0 ? head : `${head}, ${cards.length + 1}`;
    cards.push({ html: element("div", "card", element("h2", "", escaped(title)) + inner), lines: used });
    inner = "";
    used = 0;
  };
  const all = linesOn(card, book);
  all.forEach(({ html, lines, isTitle }, i) => {
    // A title goes over with the first line that it heads.
    const needs = lines + (isTitle ? (all[i + 1]?.lines ?? 0) : 0);
    if (inner !== "" && used + needs > LINES_A_CARD) close();
    inner += html;
    used += lines;
  });
  close();
  return cards;
}

function linesOn({ take, thaw, back }: PullCard, book: Book): Line[] {
  const lines: Line[] = [];
  for (const [cooler, items] of group(take, (one) => one.cooler)) {
    lines.push(titled(cooler === "dry box" ? "Dry box" : `${printable(cooler)}, one opening`));
    for (const { item, amount, from } of items)
      lines.push(ticked(`${printable(item)} ${printable(amount)}`.trim(), printable(from), book));
  }
  if (thaw.length > 0) lines.push(titled("Move to thaw"));
  for (const one of thaw) {
    const takes = one.takes_h === null ? "" : `; takes ${lastingWords(one.takes_h)}`;
    const wanted = momentIn(one.for, book.voice.clock) || printable(one.for);
    lines.push(
      ticked(
        printable(one.item),
        `${printable(one.from)} to ${printable(one.to)}, for ${wanted}${takes}`,
        book,
      ),
    );
  }
  if (back.length > 0) lines.push(titled("Goes back, at once"));
  for (const text of back) lines.push(ticked(printable(text), "", book));
  return lines;
}

const titled = (text: string): Line => ({
  html: element("h3", "", escaped(text)),
  lines: 1.5,
  isTitle: true,
});

function ticked(what: string, more: string, { options }: Book): Line {
  const wide_cm = SHEET[options.paper].wide_cm / 2 - 1.7;
  const text = `<b>${escaped(what)}</b>${more === "" ? "" : ` ${escaped(more)}`}`;
  return {
    html: element("p", "item", `${TICK}<span>${text}</span>`),
    lines: lineCount(`${what} ${more}`, wide_cm, 1.06) + 0.2,
    isTitle: false,
  };
}
