import { textWidth_px } from "../pictures/svg.ts";
import { escaped, printable } from "../words.ts";
import { element, TICK } from "./html.ts";

/** Paper that the book is cut for. */
export type Paper = "A4" | "Letter";

/** What lies inside the margins of 12 mm, less the head and foot of a sheet. */
export const SHEET: Readonly<Record<Paper, { wide_cm: number; tall_cm: number }>> = {
  A4: { wide_cm: 18.6, tall_cm: 25.2 },
  Letter: { wide_cm: 19.1, tall_cm: 23.4 },
};

/** Ten and a half points (0.37 cm), less what the guess of widths is too wide for running text, and the line. */
const LETTER_cm = 0.345;
const LINE_cm = 0.51;
const CELL_cm = 0.2;

/** Something with a height; what is kept with the next does not end a sheet. */
export interface Block {
  html: string;
  tall_cm: number;
  keepsWithNext?: boolean;
  /** The same lower, no lower than `least_cm`, where that keeps it on the sheet. */
  lower?: { least_cm: number; to: (tall_cm: number) => Block };
}

/** A cell is text, or HTML with as many lines as it takes. */
export type Cell = string | { html: string; lines: number };

export interface Column {
  head: string;
  /** Share of the width. */
  wide_frac: number;
  /** Class of the cells: "num", "strong". */
  kind?: string;
}

export interface Table {
  columns: readonly Column[];
  rows: readonly { cells: readonly Cell[]; kind?: string; least_cm?: number }[];
}

export type Piece = Block | Table;

const isTable = (piece: Piece): piece is Table => "rows" in piece;

/** How many lines a text takes in a width; a generous guess, since no font is measured. */
export function lineCount(text: string, wide_cm: number, size_frac = 1): number {
  return Math.max(1, Math.ceil(textWidth_px(printable(text), LETTER_cm * size_frac) / (wide_cm * 0.96)));
}

/** A paragraph of plain text. */
export function paragraph(text: string, paper: Paper, kind = ""): Block {
  const lines = lineCount(text, SHEET[paper].wide_cm - 0.4);
  return { html: element("p", kind, escaped(text)), tall_cm: lines * LINE_cm + 0.22 };
}

export function heading(text: string): Block {
  return { html: element("h2", "", escaped(text)), tall_cm: 1.05, keepsWithNext: true };
}

/** A list of plain texts, each with a dot or a box to tick. */
export function list(texts: readonly string[], paper: Paper, mark: "dot" | "box" = "dot"): Block[] {
  return texts.map((text) => ({
    html: element("p", `item ${mark}`, `${mark === "box" ? TICK : ""}<span>${escaped(text)}</span>`),
    tall_cm: lineCount(text, SHEET[paper].wide_cm - 1) * LINE_cm + 0.18,
  }));
}

/** Space that a picture leaves below itself. */
const FIGURE_cm = 0.35;

/**
 * A picture across the sheet. `svg` is one element with a view box.
 *
 * @param least_frac how far it may be made smaller to fit what is left of a sheet
 */
export function drawing(svg: string, paper: Paper, share_frac = 1, least_frac = 1): Block {
  const box = /viewBox="[\d.]+ [\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg);
  const slope = box === null ? 0.6 : Number(box[2]) / Number(box[1]);
  const wide_cm = Math.min(SHEET[paper].wide_cm * share_frac, (SHEET[paper].tall_cm - 1.5) / slope);
  const sized = (wide: number): Block => ({
    html: `<figure style="max-width:${wide.toFixed(2)}cm">${svg}</figure>`,
    tall_cm: slope * wide + FIGURE_cm,
  });
  const whole = sized(wide_cm);
  if (least_frac >= 1) return whole;
  const least_cm = slope * wide_cm * least_frac + FIGURE_cm;
  return { ...whole, lower: { least_cm, to: (tall_cm) => sized((tall_cm - FIGURE_cm) / slope) } };
}

/**
 * Lays pieces onto sheets in order, so that each sheet fits its paper. Tables are cut between rows and get their heads
 * again; a heading goes over with what it heads.
 */
export function sheetsOf(pieces: readonly Piece[], paper: Paper, first_cm = 0): string[] {
  const { tall_cm } = SHEET[paper];
  const sheets: string[] = [];
  let html = "";
  let used_cm = first_cm;
  const turn = (): void => {
    sheets.push(html);
    html = "";
    used_cm = 0;
  };
  pieces.forEach((piece, i) => {
    const needs_cm = leastOf_cm(pieces, i, paper);
    if (html !== "" && used_cm + needs_cm > tall_cm) turn();
    if (!isTable(piece)) {
      const left_cm = tall_cm - used_cm;
      const block = piece.tall_cm > left_cm && piece.lower !== undefined ? piece.lower.to(left_cm) : piece;
      html += block.html;
      used_cm += block.tall_cm;
      return;
    }
    for (let row = 0; row < piece.rows.length; ) {
      const count = rowsThatFit(piece, row, tall_cm - used_cm, paper);
      if (count === 0 && html !== "") {
        turn();
        continue;
      }
      const taken = Math.max(1, count);
      html += tableHtml(piece, row, row + taken);
      used_cm += headOf_cm(piece) + heightOf_cm(piece, row, row + taken, paper) + 0.3;
      row += taken;
    }
  });
  if (html !== "") sheets.push(html);
  return sheets;
}

/** What a piece needs at least to begin on this sheet: headings want what they head, tables a head and a row. */
function leastOf_cm(pieces: readonly Piece[], i: number, paper: Paper): number {
  const piece = pieces[i];
  if (piece === undefined) return 0;
  if (isTable(piece)) return headOf_cm(piece) + heightOf_cm(piece, 0, Math.min(2, piece.rows.length), paper);
  const own_cm = piece.lower?.least_cm ?? piece.tall_cm;
  return own_cm + (piece.keepsWithNext === true ? leastOf_cm(pieces, i + 1, paper) : 0);
}

const headOf_cm = ({ columns }: Table): number => (columns.some(({ head }) => head !== "") ? 0.75 : 0.1);

function rowsThatFit(table: Table, from: number, left_cm: number, paper: Paper): number {
  let count = 0;
  let used_cm = headOf_cm(table) + 0.3;
  while (from + count < table.rows.length) {
    used_cm += heightOf_cm(table, from + count, from + count + 1, paper);
    if (used_cm > left_cm) return count;
    count += 1;
  }
  return count;
}

function heightOf_cm({ columns, rows }: Table, from: number, to: number, paper: Paper): number {
  let all_cm = 0;
  for (const { cells, least_cm = 0 } of rows.slice(from, to)) {
    const lines = cells.map((cell, i) => {
      if (typeof cell !== "string") return cell.lines;
      const { wide_frac, kind = "" } = columns[i]!;
      return lineCount(cell, wide_frac * SHEET[paper].wide_cm - 0.3, kind.includes("strong") ? 1.12 : 1);
    });
    all_cm += Math.max(least_cm, Math.max(...lines) * LINE_cm + CELL_cm);
  }
  return all_cm;
}

function tableHtml({ columns, rows }: Table, from: number, to: number): string {
  const cols = columns
    .map(({ wide_frac }) => `<col style="width:${(wide_frac * 100).toFixed(1)}%">`)
    .join("");
  const named = columns.some(({ head }) => head !== "");
  const head = named
    ? `<thead><tr>${columns.map(({ head, kind = "" }) => element("th", kind, escaped(head))).join("")}</tr></thead>`
    : "";
  const body = rows.slice(from, to).map(({ cells, kind = "", least_cm }) => {
    const inner = cells.map((cell, i) => cellHtml(cell, columns[i]!)).join("");
    const tall = least_cm === undefined ? "" : ` style="height:${least_cm.toFixed(2)}cm"`;
    return `<tr${kind === "" ? "" : ` class="${escaped(kind)}"`}${tall}>${inner}</tr>`;
  });
  return `<table><colgroup>${cols}</colgroup>${head}<tbody>${body.join("")}</tbody></table>`;
}

function cellHtml(cell: Cell, { head, kind = "" }: Column): string {
  const inner = typeof cell === "string" ? escaped(cell) : cell.html;
  const label = head === "" ? "" : ` data-head="${escaped(head)}"`;
  return `<td class="${escaped(kind)}"${label}>${inner}</td>`;
}
