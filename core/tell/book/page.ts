import { escaped, printable } from "../words.ts";
import { type Book, limitWords } from "./book.ts";
import { lineCount, type Piece, SHEET, sheetsOf } from "./flow.ts";
import { element } from "./html.ts";
import { bookStyle } from "./style.ts";

/** One sheet of paper: what it is about, and what stands on it. */
export interface Sheet {
  /** A word or two for the head. */
  about: string;
  html: string;
}

/** Sheets of one thing; those after the first say that they go on. */
export function pages(about: string, title: string, pieces: readonly Piece[], book: Book): Sheet[] {
  const { paper } = book.options;
  const lines = lineCount(title, SHEET[paper].wide_cm, 1.9);
  return sheetsOf(pieces, paper, lines * 0.8 + 0.4).map((html, i) => ({
    about: i === 0 ? about : `${about}, ${i + 1}`,
    html: (i === 0 ? element("h1", "", escaped(title)) : "") + html,
  }));
}

/** Of several ways to lay one thing out, the first that takes the fewest sheets. */
export function fewestSheets(ways: readonly (readonly Sheet[])[]): Sheet[] {
  const fewest = Math.min(...ways.map((sheets) => sheets.length));
  return [...ways.find((sheets) => sheets.length === fewest)!];
}

/** The whole document: every sheet with its head and foot, numbered. */
export function documentOf(sheets: readonly Sheet[], book: Book): string {
  const { forecast, options } = book;
  const title = printable(forecast.result.trip.title);
  const body = sheets.map((sheet, i) => {
    const head = `<header><b>${escaped(title)}</b><span>${escaped(sheet.about)} · ${escaped(limitWords(book))}</span></header>`;
    const foot = `<footer><span>Made ${escaped(options.made)} · reckoned, not measured</span><span>page ${i + 1} of ${sheets.length}</span></footer>`;
    return `<section class="sheet">${head}${sheet.html}${foot}</section>`;
  });
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>${escaped(title)}: trip book</title>
<style>${bookStyle(options.paper)}</style></head>
<body class="${options.paper.toLowerCase()}">
${body.join("\n")}
</body></html>
`;
}
