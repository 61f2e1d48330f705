import { DomainError, requireFinite } from "../../quantity/errors.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import { escaped, printable } from "../words.ts";

/** What every picture takes beside its data. */
export interface PictureOptions {
  /** Pixels, 320…1600. */
  width: number;
  units: UnitSystem;
  /** Letters, digits, `-` and `_`: keeps the ids of several pictures on one page apart. */
  id: string;
}

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** To a tenth of a pixel, so that pictures are the same to the letter everywhere. */
export function px(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}

/** One element. Numbers become tenths of a pixel; attribute texts are escaped, children are not. */
export function tag(name: string, attributes: Attributes, children = ""): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? px(value) : escaped(value!)}"`)
    .join("");
  return children === "" ? `<${name}${written}/>` : `<${name}${written}>${children}</${name}>`;
}

export interface TextStyle {
  size?: 12 | 13 | 15;
  bold?: boolean;
  fill?: "ink" | "ink2" | "heat";
  anchor?: "start" | "middle" | "end";
  /** A rim in the colour of the sheet, for words over marks. */
  halo?: boolean;
}

/** Words at a baseline. */
export function words(text: string, x: number, y: number, style: TextStyle = {}): string {
  const { size = 12, bold = false, fill = "ink", anchor = "start", halo = false } = style;
  const rim = halo
    ? { stroke: "var(--sheet)", "stroke-width": 4, "stroke-linejoin": "round", "paint-order": "stroke" }
    : {};
  return tag(
    "text",
    {
      x,
      y,
      "font-size": size,
      "font-weight": bold ? 700 : undefined,
      fill: `var(--${fill})`,
      "text-anchor": anchor === "start" ? undefined : anchor,
      ...rim,
    },
    escaped(text),
  );
}

export function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  stroke: string,
  width: number,
  dash?: string,
): string {
  return tag("line", {
    x1,
    y1,
    x2,
    y2,
    stroke: `var(--${stroke})`,
    "stroke-width": width,
    "stroke-dasharray": dash,
  });
}

/** A rectangle given by its edges. `fill` is a token or a texture's address. */
export function box(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  fill: string,
  stroke?: string,
  width = 1,
): string {
  return tag("rect", {
    x: x0,
    y: y0,
    width: Math.max(0, px(x1) - px(x0)),
    height: Math.max(0, px(y1) - px(y0)),
    fill: fill.startsWith("url") ? fill : `var(--${fill})`,
    stroke: stroke === undefined ? undefined : `var(--${stroke})`,
    "stroke-width": stroke === undefined ? undefined : width,
  });
}

/** Widths in em, those of the widest of the usual plain faces. */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ijl|']/, 0.28],
  [/[ .,]/, 0.32],
  [/[:;!()[\]{}\-ft·]/, 0.39],
  [/[rsI°"]/, 0.5],
  [/[mMW@%—…]/, 0.96],
  [/[A-Z&×+=<>~w]/, 0.8],
  [/[\u1100-\uffff]|[^\0-\uffff]/u, 1.05],
];

/** A generous guess of how wide text sets in any plain sans face; no font is measured. */
export function textWidth_px(text: string, size: number, bold = false): number {
  let em = 0;
  for (const letter of printable(text)) em += WIDTHS.find(([letters]) => letters.test(letter))?.[1] ?? 0.62;
  return em * size * (bold ? 1.12 : 1);
}

/** Cuts text with an ellipsis until it fits `width_px`. */
export function fitted(text: string, width_px: number, size: number, bold = false): string {
  let letters = [...printable(text)];
  if (textWidth_px(letters.join(""), size, bold) <= width_px) return letters.join("");
  while (letters.length > 1 && textWidth_px(`${letters.join("")}…`, size, bold) > width_px)
    letters = letters.slice(0, -1);
  return `${letters.join("").trimEnd()}…`;
}

/** Breaks words into lines that fit `width_px`, at most `most` of them; the last is cut. */
export function wrapped(text: string, width_px: number, size: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of printable(text).split(/ (?![°%])/)) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth_px(`${last} ${word}`, size) <= width_px)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  const kept = lines.slice(0, most);
  if (lines.length > most) kept[most - 1] = `${kept[most - 1]} ${lines.slice(most).join(" ")}`;
  return kept.map((one) => fitted(one, width_px, size));
}

/** The frame of a picture: size, role, the sentence that stands for it, and the textures it uses. */
export function picture(
  options: PictureOptions,
  height: number,
  alt: { title: string; desc: string },
  defs: string,
  content: string,
): string {
  const { width, id } = options;
  const titles = [`title-${id}`, `desc-${id}`];
  return tag(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${px(width)} ${px(height)}`,
      role: "img",
      "aria-labelledby": titles.join(" "),
      "font-family": "system-ui, 'Open Sans', 'Segoe UI', sans-serif",
      style: "font-variant-numeric:tabular-nums slashed-zero",
    },
    tag("title", { id: titles[0] }, escaped(alt.title)) +
      tag("desc", { id: titles[1] }, escaped(alt.desc)) +
      (defs === "" ? "" : tag("defs", {}, defs)) +
      content,
  );
}

/** @throws DomainError for an id that would not stand in an address, or a width outside 320…1600 */
export function checkOptions({ width, id }: PictureOptions): void {
  requireFinite("width", width, 320, 1600);
  if (!/^[A-Za-z0-9_-]+$/.test(id))
    throw new DomainError(`id must be letters, digits, - and _, got ${printable(id)}`);
}
