import ts from "typescript";
import { describe, expect, it } from "vitest";
import { at, files, parse, read, roomOf, sourcedRooms, typescriptIn, visit } from "./tree.ts";

interface Work {
  cite: string;
  where?: string;
  read: string;
}

const works = JSON.parse(read("core/sources.json")) as Record<string, Work>;
const waysOfReading = [
  "read in a copy",
  "abstract only",
  "as quoted elsewhere",
  "from memory",
  "not applicable",
];

/** Exported values of the sourced rooms that state no law and no figure of the world, each with its reason. */
const withoutSource: Readonly<Record<string, string>> = {};

/** The keys of a docstring's `@source` lines; null when there is none. */
function sourceKeys(node: ts.Node): string[] | null {
  const tags = ts.getJSDocTags(node).filter((tag) => tag.tagName.text === "source");
  if (tags.length === 0) return null;
  const text = tags.map((tag) => ts.getTextOfJSDocComment(tag.comment) ?? "").join(", ");
  return text.split(/[\s,;]+/).filter((key) => key !== "");
}

interface Value {
  id: string;
  node: ts.Node;
}

function exportedValues(path: string): Value[] {
  return parse(path).statements.flatMap((statement): Value[] => {
    const exported =
      ts.canHaveModifiers(statement) &&
      (ts.getModifiers(statement) ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword);
    if (!exported) return [];
    if (ts.isFunctionDeclaration(statement))
      return [{ id: `${path}#${statement.name?.text}`, node: statement }];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.map((d) => ({
      id: `${path}#${d.name.getText()}`,
      node: d,
    }));
  });
}

const values = typescriptIn("core")
  .filter((path) => sourcedRooms.includes(roomOf(path) ?? ""))
  .flatMap(exportedValues);

describe("every law and figure names its source", () => {
  it("in the docstring of each exported value of the sourced rooms", () => {
    const silent = values.filter(
      ({ id, node }) => withoutSource[id] === undefined && sourceKeys(node) === null,
    );
    expect(silent.map(({ id, node }) => `${at(node)} ${id.split("#")[1]}`)).toEqual([]);
  });

  it("by keys that are in core/sources.json, anywhere in core", () => {
    const unknown: string[] = [];
    for (const path of typescriptIn("core")) {
      visit(parse(path), (node) => {
        if (
          !ts.isFunctionDeclaration(node) &&
          !ts.isVariableStatement(node) &&
          !ts.isInterfaceDeclaration(node)
        )
          return;
        for (const key of sourceKeys(node) ?? [])
          if (works[key] === undefined) unknown.push(`${at(node)} ${key}`);
      });
    }
    expect(unknown).toEqual([]);
  });

  it("in each data row, by a key that is in core/sources.json", () => {
    const unknown: string[] = [];
    let rows = 0;
    for (const path of typescriptIn("core")) {
      visit(parse(path), (node) => {
        if (!ts.isPropertyAssignment(node) || node.name.getText() !== "source") return;
        if (!ts.isStringLiteral(node.initializer)) return;
        rows += 1;
        for (const key of node.initializer.text.split(/,\s*/)) {
          if (works[key] === undefined) unknown.push(`${at(node)} ${key}`);
        }
      });
    }
    expect(rows).toBeGreaterThan(5);
    expect(unknown).toEqual([]);
  });

  it("exceptions are still needed", () => {
    const ids = new Set(values.filter(({ node }) => sourceKeys(node) === null).map(({ id }) => id));
    expect(Object.keys(withoutSource).filter((id) => !ids.has(id))).toEqual([]);
  });
});

describe("core/sources.json", () => {
  it("says of each work what it is and how we read it", () => {
    const poor = Object.entries(works).filter(
      ([, { cite, read: how }]) => cite.length < 15 || !waysOfReading.some((way) => how.startsWith(way)),
    );
    expect(poor).toEqual([]);
  });

  it("lists no work that neither core nor a test uses", () => {
    const text = files
      .filter(
        (path) =>
          /^(core|test)\//.test(path) && /\.(ts|json|ya?ml|csv)$/.test(path) && path !== "core/sources.json",
      )
      .map(read)
      .join("\n");
    const used = (key: string): boolean => new RegExp(`(?<![\\w-])${key}(?![\\w-])`).test(text);
    expect(Object.keys(works).filter((key) => !used(key))).toEqual([]);
  });
});
