import { escaped } from "../words.ts";

/** A name that somebody typed, kept apart so that its own writing direction does not turn the words around it. */
export function named(text: string): string {
  return `<bdi>${escaped(text)}</bdi>`;
}

/** One element; `inner` is HTML already. */
export function element(name: string, className: string, inner: string): string {
  return `<${name}${className === "" ? "" : ` class="${escaped(className)}"`}>${inner}</${name}>`;
}

/** A box to tick by pencil. */
export const TICK: string = '<span class="tick"></span>';

/** A line to write on by pencil. */
export function blank(wide_cm: number): string {
  return `<span class="blank" style="width:${wide_cm.toFixed(1)}cm"></span>`;
}

/** With a capital letter at the beginning. */
export function sentence(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
