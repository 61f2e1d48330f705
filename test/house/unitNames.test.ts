import ts from "typescript";
import { describe, expect, it } from "vitest";
import { root, typescriptIn } from "./tree.ts";
import {
  bareDeclarations,
  bareOwners,
  barePlaces,
  bareWords,
  countEnding,
  unitEndings,
  unitWords,
} from "./units.ts";

interface Named {
  name: string;
  id: string;
  where: string;
}

const program = ts.createProgram(
  typescriptIn("core").map((path) => `${root}/${path}`),
  {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    strict: true,
    allowImportingTsExtensions: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
  },
);
const checker = program.getTypeChecker();

/** A number, a list or table of numbers, or a function that gives one of these. */
function isNumeric(type: ts.Type): boolean {
  if (type.isUnion()) {
    const real = type.types.filter((t) => (t.flags & (ts.TypeFlags.Null | ts.TypeFlags.Undefined)) === 0);
    // A choice between written-out numbers is a label.
    return real.some((t) => (t.flags & ts.TypeFlags.NumberLiteral) === 0) && real.every(isNumeric);
  }
  if (type.flags & ts.TypeFlags.NumberLiteral) return false;
  if (type.flags & ts.TypeFlags.NumberLike) return true;
  if (/^Float(32|64)Array$/.test(type.getSymbol()?.name ?? "")) return true;
  if (checker.isTupleType(type) || checker.isArrayType(type)) {
    const items = checker.getTypeArguments(type as ts.TypeReference);
    return items.length > 0 && items.every(isNumeric);
  }
  const calls = type.getCallSignatures();
  if (calls.length > 0) return calls.every((call) => isNumeric(call.getReturnType()));
  const entry = type.getStringIndexType();
  return entry !== undefined && isNumeric(entry);
}

/** Declarations that a reader of an exported thing sees: its own name, its properties, parameters and results. */
function seenFrom(statement: ts.Node, see: (node: ts.NamedDeclaration) => void): void {
  const go = (node: ts.Node): void => {
    if (ts.isBlock(node) || ts.isObjectLiteralExpression(node) || ts.isArrayLiteralExpression(node)) return;
    const isNamed =
      ts.isPropertySignature(node) ||
      ts.isMethodSignature(node) ||
      ts.isParameter(node) ||
      ts.isFunctionDeclaration(node) ||
      ts.isVariableDeclaration(node) ||
      ts.isPropertyDeclaration(node) ||
      ts.isMethodDeclaration(node);
    const isPrivate = isNamed && node.name !== undefined && ts.isPrivateIdentifier(node.name);
    if (isNamed && !isPrivate) see(node);
    ts.forEachChild(node, go);
  };
  go(statement);
}

/** Name of the nearest declaration above a node that a reader would name it by. */
function ownerOf(node: ts.Node): string {
  const up = node.parent;
  if (up === undefined) return "";
  const isOwner =
    ts.isInterfaceDeclaration(up) ||
    ts.isTypeAliasDeclaration(up) ||
    ts.isClassDeclaration(up) ||
    ts.isFunctionDeclaration(up) ||
    ts.isVariableDeclaration(up);
  return isOwner ? (up.name?.getText() ?? "default") : ownerOf(up);
}

function isExported(node: ts.Statement): boolean {
  return (
    ts.canHaveModifiers(node) &&
    (ts.getModifiers(node) ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword)
  );
}

function numbersOf(path: string): Named[] {
  const file = program.getSourceFile(`${root}/${path}`)!;
  const found: Named[] = [];
  for (const statement of file.statements.filter(isExported)) {
    seenFrom(statement, (node) => {
      if (node.name === undefined || !ts.isIdentifier(node.name)) return;
      if (!isNumeric(checker.getTypeAtLocation(node.name))) return;
      const name = node.name.text.replace(/^_/, "");
      const owner = ownerOf(node);
      const line = file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1;
      const inOwner = owner === "" ? name : `${owner}.${name}`;
      found.push({ name, id: `${path}#${inOwner}`, where: `${path}:${line} ${inOwner}` });
    });
  }
  return found;
}

const numbers = typescriptIn("core").flatMap(numbersOf);
const ending = new RegExp(`_(?:${unitEndings.join("|")})$`);
const isBare = (name: string): boolean =>
  /^n[A-Z]\w*$/.test(name) ||
  countEnding.test(name) ||
  unitWords.includes(name) ||
  bareWords[name] !== undefined;
const isElsewhere = (id: string): boolean => Object.keys(barePlaces).some((place) => id.startsWith(place));
const ownerFromId = (id: string): string => id.split("#")[1]!.split(".")[0]!;

describe("numbers say their unit", () => {
  it("the check finds the numbers", () => {
    expect(numbers.length).toBeGreaterThan(100);
  });

  it("every exported number in core ends in a unit, or is a count or a word of the contract", () => {
    const wrong = numbers.filter(
      ({ name, id }) =>
        !ending.test(name) &&
        !isBare(name) &&
        !isElsewhere(id) &&
        bareDeclarations[id] === undefined &&
        bareOwners[ownerFromId(id)] === undefined,
    );
    expect(wrong.map(({ where }) => where)).toEqual([]);
  });

  it("every exception is still needed", () => {
    const ids = new Set(numbers.map(({ id }) => id));
    const names = new Set(numbers.map(({ name }) => name));
    const owners = new Set(numbers.map(({ id }) => ownerFromId(id)));
    const places = Object.keys(barePlaces).filter((place) => !numbers.some(({ id }) => id.startsWith(place)));
    expect({
      declarations: Object.keys(bareDeclarations).filter((id) => !ids.has(id)),
      words: Object.keys(bareWords).filter((word) => !names.has(word)),
      owners: Object.keys(bareOwners).filter((owner) => !owners.has(owner)),
      places,
    }).toEqual({ declarations: [], words: [], owners: [], places: [] });
  });
});
