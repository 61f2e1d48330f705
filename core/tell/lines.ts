/** Ways to make a word stand out on a terminal. Meaning never rests on them: every word is there without. */
export interface Paint {
  strong: (text: string) => string;
  faint: (text: string) => string;
  /** Food to throw away, ice that is gone. */
  bad: (text: string) => string;
  /** Food to eat next, cautions. */
  warn: (text: string) => string;
}

const asIs = (text: string): string => text;

/** Paints nothing: for files and pipes. */
export const noPaint: Paint = { strong: asIs, faint: asIs, bad: asIs, warn: asIs };

/** Columns that a text takes, counting a character outside the basic plane once. Wide scripts are not told apart. */
export function nColumns(text: string): number {
  return [...text].length;
}

/** Cuts to `width` nColumns, the last of them an ellipsis where something went. */
export function cut(text: string, width: number): string {
  const letters = [...text];
  return letters.length <= width
    ? text
    : `${letters
        .slice(0, width - 1)
        .join("")
        .trimEnd()}…`;
}

/** `text` cut or filled with spaces on the right to exactly `width` columns. */
export function padded(text: string, width: number): string {
  const short = cut(text, width);
  return short + " ".repeat(width - nColumns(short));
}

/** As `padded`, with the spaces on the left. */
export function paddedLeft(text: string, width: number): string {
  const short = cut(text, width);
  return " ".repeat(width - nColumns(short)) + short;
}

/** Breaks a text at spaces, but not before a degree or percent sign, into lines of at most `width` columns; a longer word is broken inside. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/ +(?![°%])/).flatMap((long) => pieces(long, width))) {
    if (line !== "" && nColumns(line) + 1 + nColumns(word) > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  return line === "" ? lines : [...lines, line];
}

function pieces(word: string, width: number): string[] {
  const letters = [...word];
  const parts: string[] = [];
  const step = Math.max(1, width);
  for (let i = 0; i < letters.length; i += step) parts.push(letters.slice(i, i + step).join(""));
  return parts;
}

/** A paragraph whose first line begins with `head`, the others below it. `paint` colours the words, not the head. */
export function hanging(
  head: string,
  text: string,
  width: number,
  paint: (text: string) => string = asIs,
): string[] {
  const indent = nColumns(head);
  return wrap(text, width - indent).map((line, i) => (i === 0 ? head : " ".repeat(indent)) + paint(line));
}

/** A bar of `share_frac` of `width` nColumns, in eighths of a column. */
export function bar(share_frac: number, width: number): string {
  const eighths = Math.round(Math.min(1, Math.max(0, share_frac)) * width * 8);
  return "█".repeat(Math.floor(eighths / 8)) + ["", "▏", "▎", "▍", "▌", "▋", "▊", "▉"][eighths % 8];
}
