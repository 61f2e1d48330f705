import { isMap, isSeq, type Node, parse, parseDocument } from "yaml";
import type { IceForm, LayerWish } from "../cooler/types.ts";
import { DomainError } from "../quantity/errors.ts";

/** Ice that a plan adds to what the person wrote; quantities as one would type them. */
export interface AddedIce {
  form: IceForm;
  pieces: number;
  each: string;
  at: string;
  /** Share that is already water, as typed in a file: `3 %`. */
  liquid: string;
  in: string;
  layer: LayerWish;
  price: number | null;
}

/**
 * The person's own trip file with ice added at the end of its `ice` list. Only new text is put in, so that every
 * comment, key and spelling of theirs stays; JSON stays JSON.
 *
 * @param text a file that `readTrip` accepts
 * @param comment stands above the added ice; left out where the list is written in brackets, as in JSON
 * @throws DomainError when the text is no trip file
 */
export function plannedYaml(text: string, addedIce: readonly AddedIce[], comment: string): string {
  if (addedIce.length === 0) return text;
  const root = parseDocument(text, { uniqueKeys: false }).contents;
  if (!isMap(root) || root.items.length === 0)
    throw new DomainError("text must be a trip file, got no mapping");
  const list = root.get("ice");
  const flowEntries = addedIce.map((ice) => JSON.stringify(entryOf(ice))).join(", ");
  if (isSeq(list) && list.flow) {
    const last = list.items.at(-1) as Node | undefined;
    return last === undefined
      ? insert(text, startOf(list) + 1, flowEntries)
      : insert(text, endOf(last), `, ${flowEntries}`);
  }
  if (!isSeq(list) && root.flow) {
    const last = root.items.at(-1);
    return insert(text, endOf((last?.value ?? last?.key) as Node), `, "ice": [${flowEntries}]`);
  }
  const indent = isSeq(list) ? indentAt(text, startOf(list)) : `${indentAt(text, startOf(root))}  `;
  const lines = [
    ...(isSeq(list) ? [] : [`${indent.slice(2)}ice:`]),
    ...comment.split(/\s*\n\s*/).map((line) => `${indent}# ${line}`),
    ...addedIce.map((ice) => `${indent}- { ${entryWords(ice)} }`),
  ];
  return insertLines(text, endOf(isSeq(list) ? list : root), lines);
}

const startOf = (node: Node): number => node.range?.[0] ?? 0;
const endOf = (node: Node): number => node.range?.[1] ?? 0;

function insert(text: string, at: number, added: string): string {
  return text.slice(0, at) + added + text.slice(at);
}

/** Spaces from the start of the line to this place. */
function indentAt(text: string, at: number): string {
  return " ".repeat(at - (text.lastIndexOf("\n", at - 1) + 1));
}

/** Puts lines below the line on which the text before `at` ends. */
function insertLines(text: string, at: number, lines: readonly string[]): string {
  const written = text.slice(0, at).trimEnd().length;
  const lineEnd = text.indexOf("\n", written);
  const below = lineEnd < 0 ? text.length : lineEnd + 1;
  const eol = text.includes("\r\n") ? "\r\n" : "\n";
  const lead = lineEnd < 0 ? eol : "";
  return insert(text, below, lead + lines.map((line) => line + eol).join(""));
}

function entryOf({ form, pieces, each, at, liquid, in: cooler, layer, price }: AddedIce): object {
  return {
    form,
    pieces,
    each,
    at,
    ...(form === "jug" || form.endsWith("pack") || form === "dry ice" ? {} : { liquid }),
    in: cooler,
    ...(layer === null ? {} : { layer }),
    ...(price === null ? {} : { price }),
  };
}

function entryWords(ice: AddedIce): string {
  return Object.entries(entryOf(ice))
    .map(([key, value]) => `${key}: ${typeof value === "string" ? plainOrQuoted(value) : String(value)}`)
    .join(", ");
}

/** A word that YAML reads back as the same text, in quotes where it needs them. */
function plainOrQuoted(value: string): string {
  return /^-?[\p{L}\d]([\p{L}\d .%°/_-]*[\p{L}\d%])?$/u.test(value) && parse(value) === value
    ? value
    : JSON.stringify(value);
}
