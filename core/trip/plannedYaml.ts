import { isMap, isPair, isScalar, isSeq, type Node, parseDocument, type YAMLMap } from "yaml";
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

/** An entry of the `events` list as one would type it, such as `{ at, do: "merge", from, into }`. */
export interface EventEntry {
  at: string;
  do: string;
  [key: string]: string | number;
}

/** Values that a plan sets in one entry of a list, by its place in it. */
type Entry<Key extends string> = { index: number } & { [key in Key]?: string };

/** What a plan writes into a trip file. */
export interface PlannedChanges {
  ice: readonly AddedIce[];
  food: readonly Entry<"in" | "state" | "at">[];
  coolers: readonly Entry<"sealed until">[];
  events: readonly EventEntry[];
}

/** Cuts nothing where `to` is `from`. */
interface Edit {
  from: number;
  to: number;
  put: string;
}

/**
 * The person's own trip file with what a plan decided: where food goes and in what state, ice at the end of the `ice`
 * list, seals, events at the end of `events`. New text is put in, and only a value that is decided anew is replaced, so that
 * every comment, key and spelling of theirs stays; JSON stays JSON.
 *
 * @param text a file that `readTrip` accepts
 * @param comment stands above what is added to a list; left out where the list is written in brackets, as in JSON
 * @throws DomainError when the text is no trip file, or has no food at an index
 */
export function plannedYaml(text: string, changes: PlannedChanges, comment: string): string {
  const shut = withValues(text, "coolers", changes.coolers);
  const decided = withValues(shut, "food", changes.food);
  const iced = withEntries(decided, "ice", changes.ice.map(iceEntry), comment);
  return withEntries(iced, "events", changes.events, comment);
}

function rootOf(text: string): YAMLMap {
  const root = parseDocument(text, { uniqueKeys: false }).contents;
  if (isMap(root) && root.items.length > 0) return root;
  throw new DomainError("text must be a trip file, got no mapping");
}

const startOf = (node: Node): number => node.range?.[0] ?? 0;
const endOf = (node: Node): number => node.range?.[1] ?? 0;

function withValues(text: string, key: "food" | "coolers", entries: readonly { index: number }[]): string {
  if (entries.length === 0) return text;
  const list = rootOf(text).get(key);
  const edits = entries.flatMap(({ index, ...values }) => {
    const entry = isSeq(list) ? list.items[index] : undefined;
    if (!isMap(entry)) throw new DomainError(`index must be a place in the ${key} list, got ${index}`);
    return entryEdits(text, entry, values);
  });
  // From the back, so that places in what comes before stay right.
  return edits
    .sort((a, b) => b.from - a.from)
    .reduce((done, { from, to, put }) => done.slice(0, from) + put + done.slice(to), text);
}

/** What sets some keys of one mapping. */
function entryEdits(text: string, entry: YAMLMap, values: object): Edit[] {
  const edits: Edit[] = [];
  const missing: [string, string][] = [];
  for (const [key, value] of Object.entries(values as Readonly<Record<string, string | undefined>>)) {
    if (value === undefined) continue;
    const pair = entry.items.find((item) => isScalar(item.key) && item.key.value === key);
    const old = pair?.value as Node | null | undefined;
    if (old === null || old === undefined) missing.push([key, value]);
    else if (!isScalar(old) || old.value !== value)
      edits.push({ from: startOf(old), to: endOf(old), put: valueWords(value, isQuoted(old)) });
  }
  if (missing.length > 0) edits.push(insertion(text, entry, missing));
  return edits;
}

const isQuoted = (node: unknown): boolean => isScalar(node) && node.type === "QUOTE_DOUBLE";

function insertion(text: string, entry: YAMLMap, pairs: readonly (readonly [string, string])[]): Edit {
  const end = endOfMap(entry);
  const asJson = isQuoted(entry.items[0]?.key);
  const words = pairs.map(([key, value]) => `${valueWords(key, asJson)}: ${valueWords(value, asJson)}`);
  if (entry.flow) return { from: end, to: end, put: words.map((word) => `, ${word}`).join("") };
  const indent = " ".repeat(column(text, startOf(entry)));
  return linesEdit(
    text,
    end,
    words.map((word) => indent + word),
  );
}

/** End of the last value: brackets, commas and comments come after it. */
function endOfMap(map: YAMLMap): number {
  const last = map.items.at(-1);
  return endOf((last?.value ?? last?.key) as Node);
}

function withEntries(text: string, key: string, entries: readonly object[], comment: string): string {
  if (entries.length === 0) return text;
  const root = rootOf(text);
  const list = root.get(key);
  const flowEntries = entries.map((entry) => JSON.stringify(entry)).join(", ");
  if (isSeq(list) && list.flow) {
    const last = list.items.at(-1) as Node | undefined;
    return last === undefined
      ? insert(text, startOf(list) + 1, flowEntries)
      : insert(text, endOf(last), `, ${flowEntries}`);
  }
  if (!isSeq(list) && root.flow) return insert(text, endOfMap(root), `, "${key}": [${flowEntries}]`);
  const indent = " ".repeat(column(text, startOf(isSeq(list) ? list : root)) + (isSeq(list) ? 0 : 2));
  const lines = [
    ...(isSeq(list) ? [] : [`${indent.slice(2)}${key}:`]),
    ...comment.split(/\s*\n\s*/).map((line) => `${indent}# ${line}`),
    ...entries.map((entry) => `${indent}- { ${entryWords(entry)} }`),
  ];
  const { from, put } = linesEdit(text, endOf(isSeq(list) ? list : root), lines);
  return insert(text, from, put);
}

function insert(text: string, at: number, added: string): string {
  return text.slice(0, at) + added + text.slice(at);
}

/** Characters from the start of the line to this place. */
const column = (text: string, at: number): number => at - (text.lastIndexOf("\n", at - 1) + 1);

/** Puts lines below the line on which the text before `at` ends. */
function linesEdit(text: string, at: number, lines: readonly string[]): Edit {
  const written = text.slice(0, at).trimEnd().length;
  const lineEnd = text.indexOf("\n", written);
  const below = lineEnd < 0 ? text.length : lineEnd + 1;
  const eol = text.includes("\r\n") ? "\r\n" : "\n";
  const lead = lineEnd < 0 ? eol : "";
  return { from: below, to: below, put: lead + lines.map((line) => line + eol).join("") };
}

function iceEntry({ form, pieces, each, at, liquid, in: cooler, layer, price }: AddedIce): object {
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

function entryWords(entry: object): string {
  return Object.entries(entry)
    .map(([key, value]) => `${key}: ${typeof value === "string" ? valueWords(value) : JSON.stringify(value)}`)
    .join(", ");
}

/** A word that YAML reads back as the same text inside braces too, in quotes where it needs them. */
function valueWords(value: string, quoted = false): string {
  const isPlain = !quoted && /^-?[\p{L}\d]([\p{L}\d .:%°/_-]*[\p{L}\d%])?$/u.test(value);
  return isPlain && isSame(value) ? value : JSON.stringify(value);
}

function isSame(value: string): boolean {
  const pair = parseDocument(`{ k: ${value} }`);
  const key = isMap(pair.contents) ? pair.contents.items[0] : undefined;
  return pair.errors.length === 0 && isPair(key) && isScalar(key.value) && key.value.value === value;
}
