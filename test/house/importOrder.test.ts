import { posix } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { at, folders, parse, read, roomOf, rooms, typescriptIn, visit } from "./tree.ts";

interface Import {
  from: string;
  to: string;
  where: string;
}

/** Static, dynamic and type imports, and re-exports. A relative target is given from the root. */
function importsOf(path: string): Import[] {
  const found: Import[] = [];
  visit(parse(path), (node) => {
    const isDynamic = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword;
    const named =
      ts.isImportDeclaration(node) || ts.isExportDeclaration(node) ? node.moduleSpecifier : undefined;
    const typed =
      ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined;
    const target = isDynamic ? node.arguments[0] : (named ?? typed);
    if (target === undefined) return;
    const text = ts.isStringLiteral(target) ? target.text : target.getText();
    const to = text.startsWith(".") ? posix.join(posix.dirname(path), text) : text;
    found.push({ from: path, to, where: at(node) });
  });
  return found;
}

function packageOf(specifier: string): string {
  return specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");
}

const coreImports = typescriptIn("core").flatMap(importsOf);
const allowed = JSON.parse(read("core/packages.json")) as Record<string, string>;

describe("who may import whom", () => {
  it("a room imports itself and rooms named before it", () => {
    const order = (path: string): number => rooms.indexOf(roomOf(path) as (typeof rooms)[number]);
    const wrong = coreImports
      .filter(({ from, to }) => roomOf(from) !== null && to.startsWith("core/"))
      .filter(({ from, to }) => !to.endsWith(".json") && (order(to) === -1 || order(to) > order(from)))
      .map(({ from, to, where }) => `${where} ${roomOf(from)} imports ${to}`);
    expect(wrong).toEqual([]);
  });

  it("core imports nothing outside core but the packages of core/packages.json, each with a reason", () => {
    const wrong = coreImports
      .filter(({ to }) => !to.startsWith("core/") && allowed[packageOf(to)] === undefined)
      .map(({ to, where }) => `${where} imports ${to}`);
    expect(wrong).toEqual([]);
    const used = new Set(coreImports.map(({ to }) => packageOf(to)));
    expect(Object.keys(allowed).filter((name) => !used.has(name))).toEqual([]);
    expect(Object.entries(allowed).filter(([, reason]) => reason.length < 20)).toEqual([]);
  });

  it.each(["cli", "app"])("%s enters core through its door only", (world) => {
    const wrong = typescriptIn(world)
      .flatMap(importsOf)
      .filter(
        ({ to }) =>
          !to.startsWith(`${world}/`) &&
          to !== "core/index.ts" &&
          folders.includes(to.split("/")[0]!) &&
          /\.\w+$/.test(to),
      )
      .map(({ to, where }) => `${where} imports ${to}`);
    expect(wrong).toEqual([]);
  });
});

/** What would make the same trip give another answer tomorrow, or tie core to one place to run. */
const outsideCalls = new Set([
  "Date.now",
  "Math.random",
  "performance.now",
  "Temporal.Now",
  "crypto.getRandomValues",
]);
const outsideNames = new Set([
  "process",
  "window",
  "document",
  "globalThis",
  "performance",
  "localStorage",
  "navigator",
]);
const outsideFunctions = new Set(["fetch", "require", "setTimeout", "setInterval", "Date"]);

/** True for a name that the same file gives to something of its own, such as a parsed document. */
function isOwn(name: ts.Node): boolean {
  let own = false;
  visit(name.getSourceFile(), (node) => {
    if (!ts.isVariableDeclaration(node) && !ts.isParameter(node) && !ts.isImportSpecifier(node)) return;
    if (node.name.getText() === name.getText()) own = true;
  });
  return own;
}

function reachesOutside(node: ts.Node): string | null {
  if (
    ts.isNewExpression(node) &&
    node.expression.getText() === "Date" &&
    (node.arguments?.length ?? 0) === 0
  ) {
    return "new Date()";
  }
  if (ts.isPropertyAccessExpression(node)) {
    const text = node.getText();
    if (outsideCalls.has(text) || text === "console" || node.expression.getText() === "console") return text;
    if (
      ts.isIdentifier(node.expression) &&
      outsideNames.has(node.expression.text) &&
      !isOwn(node.expression)
    ) {
      return text;
    }
  }
  if (
    ts.isCallExpression(node) &&
    ts.isIdentifier(node.expression) &&
    outsideFunctions.has(node.expression.text)
  ) {
    return `${node.expression.text}()`;
  }
  return null;
}

describe("core is a function of its arguments", () => {
  it("has no clock, no chance, no page, no machine", () => {
    const found: string[] = [];
    for (const path of typescriptIn("core")) {
      visit(parse(path), (node) => {
        const what = reachesOutside(node);
        if (what !== null) found.push(`${at(node)} ${what}`);
      });
    }
    expect(found).toEqual([]);
  });

  it("the check itself sees each of these", () => {
    const code =
      "Date.now(); new Date(); Math.random(); process.exit(); window.open(); document.title; performance.now();";
    const file = ts.createSourceFile("core/x.ts", code, ts.ScriptTarget.ES2022, true);
    const found: string[] = [];
    visit(file, (node) => {
      const what = reachesOutside(node);
      if (what !== null) found.push(what);
    });
    expect(found).toHaveLength(7);
  });
});
