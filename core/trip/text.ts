import {
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  Lexer,
  LineCounter,
  type Node,
  parseDocument,
} from "yaml";
import { pathOf, type Step, setOwn } from "./paths.ts";
import type { Problem } from "./types.ts";

/** The most that a file may hold; more is refused before anything is reckoned. */
export const bounds: { readonly characters: number; readonly depth: number; readonly problems: number } = {
  characters: 2_000_000,
  depth: 20,
  problems: 200,
};

/** A parsed file that still knows on which line each path stands. */
export interface ParsedText {
  typed: unknown;
  document: Document;
  lineOf(path: string): number | null;
}

export type TextReading = { ok: true; parsed: ParsedText } | { ok: false; problems: Problem[] };

const deep = `nested at most ${bounds.depth} deep`;

/**
 * Parses YAML 1.2 (and so JSON) into plain values, within bounds: size, depth, no aliases, no tags, no key twice.
 * A prototype key stays an ordinary own key. It says nothing about whether the content is a trip.
 */
export function parseText(text: string): TextReading {
  if (text.length > bounds.characters) {
    const got = `${(text.length / 1e6).toFixed(1)} million characters`;
    return refuse([{ line: null, path: "", must: "a file of at most 2 MB", got, near: null }]);
  }
  const deepLine = tooDeepLine(text);
  if (deepLine !== null) {
    return refuse([{ line: deepLine, path: "", must: deep, got: "deeper nesting", near: null }]);
  }
  const lines = new LineCounter();
  // Keys are compared in `Gather`: the parser's own check takes quadratic time.
  const document = parseDocument(text, { lineCounter: lines, uniqueKeys: false, prettyErrors: false });
  const all = [...document.errors, ...document.warnings];
  // Whatever else is wrong with a text that is indented with tabs follows from them.
  const tab = all.find(({ code }) => code === "TAB_AS_INDENT");
  const faults = (tab === undefined ? all : [tab]).map((fault) => ({
    line: lines.linePos(fault.pos[0]).line,
    path: "",
    ...faultWords(fault.code, fault.message),
    near: null,
  }));
  if (faults.length > 0) return refuse(faults);
  const gather = new Gather(lines);
  const typed = gather.value(document.contents, []);
  if (gather.problems.length > 0) return refuse(gather.problems);
  return { ok: true, parsed: { typed, document, lineOf: (path) => lineOf(gather.lines, path) } };
}

function refuse(problems: Problem[]): TextReading {
  return { ok: false, problems: problems.slice(0, bounds.problems) };
}

/**
 * The line where brackets or marks open more than the depth allowed, told from the tokens alone: the parser itself
 * recurses, and a hostile file would exhaust its stack.
 */
function tooDeepLine(text: string): number | null {
  let line = 1;
  let open = 0;
  let marks = 0;
  for (const token of new Lexer().lex(text)) {
    if (token === "[" || token === "{") open++;
    else if (token === "]" || token === "}") open--;
    else if (open <= 0 && (token === "-" || token === "?" || token === ":")) marks++;
    if (open > bounds.depth || marks > bounds.depth) return line;
    const breaks = token.split("\n").length - 1;
    if (breaks > 0) {
      line += breaks;
      marks = 0;
    }
  }
  return null;
}

function faultWords(code: string, message: string): { must: string; got: string } {
  if (code === "RESOURCE_EXHAUSTION") return { must: deep, got: "deeper nesting" };
  if (code === "TAB_AS_INDENT") return { must: "indented with spaces", got: "a tab character" };
  if (code === "MULTIPLE_DOCS") return { must: "one document", got: "a second one after ---" };
  if (code === "TAG_RESOLVE_FAILED") return { must: "plain values without ! tags", got: "a tag" };
  return { must: "valid YAML or JSON", got: message.split("\n")[0] as string };
}

function lineOf(lines: ReadonlyMap<string, number>, path: string): number | null {
  let here = path;
  for (;;) {
    const line = lines.get(here);
    if (line !== undefined) return line;
    if (here === "") return null;
    const cut = Math.max(here.lastIndexOf("."), here.lastIndexOf("["));
    here = cut < 0 ? "" : here.slice(0, cut);
  }
}

/** Turns nodes into plain values, noting the line of every path and what may not stand in a trip file. */
class Gather {
  readonly lines: Map<string, number> = new Map();
  readonly problems: Problem[] = [];
  readonly #counter: LineCounter;

  constructor(counter: LineCounter) {
    this.#counter = counter;
  }

  value(node: unknown, steps: readonly Step[]): unknown {
    const path = pathOf(steps);
    if (!this.lines.has(path)) this.lines.set(path, this.#line(node));
    if (steps.length > bounds.depth) return this.#refuse(node, path, deep, "deeper nesting");
    if (isAlias(node)) return this.#refuse(node, path, "written out in full", `the alias *${node.source}`);
    if (isSeq(node)) return node.items.map((item, place) => this.value(item, [...steps, place]));
    if (isMap(node)) return this.#mapping(node.items, steps);
    if (!isScalar(node)) return null;
    const tag = node.tag;
    if (tag !== undefined && !tag.startsWith("tag:yaml.org,2002:")) {
      return this.#refuse(node, path, "plain values without ! tags", tag);
    }
    return typeof node.value === "object" && node.value !== null
      ? this.#refuse(node, path, "plain values without ! tags", String(tag))
      : node.value;
  }

  #mapping(pairs: readonly unknown[], steps: readonly Step[]): object {
    const made = {};
    for (const pair of pairs) {
      if (!isPair(pair)) continue;
      const key = isScalar(pair.key) ? String(pair.key.value) : null;
      if (key === null) {
        this.#refuse(pair.key, pathOf(steps), "a plain word for each key", "a list or mapping as a key");
        continue;
      }
      const below = [...steps, key];
      const path = pathOf(below);
      if (Object.hasOwn(made, key)) {
        this.#refuse(pair.key, path, "given once", "the key a second time");
        continue;
      }
      this.lines.set(path, this.#line(pair.key));
      setOwn(made, key, this.value(pair.value, below));
    }
    return made;
  }

  #line(node: unknown): number {
    const range = (node as Node | null)?.range;
    return range ? this.#counter.linePos(range[0]).line : 1;
  }

  #refuse(node: unknown, path: string, must: string, got: string): null {
    this.problems.push({ line: this.#line(node), path, must, got, near: null });
    return null;
  }
}
