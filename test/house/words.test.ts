import ts from "typescript";
import { describe, expect, it } from "vitest";
import { at, files, parse, read, typescriptIn, visit } from "./tree.ts";

const isText = (path: string): boolean =>
  /\.(ts|mjs|json|md|ya?ml|csv|svg|html|css|txt)$|^\.ci\/|^\.npmrc$|^LICENSE$/.test(path) &&
  path !== "package-lock.json";

/** Written so that this file does not match itself. */
const banned: readonly { what: string; pattern: RegExp }[] = [
  { what: "an unfinished note", pattern: /\b(?:TO[D]O|FIX[M]E|X{3}|HA[C]K)\b/ },
  { what: "a registry host", pattern: /\bregistry\.(?:np[m]js|yar[n]pkg)/i },
  { what: "a path of one machine", pattern: /(?:^|[^\w.*)\]])\/(?:wor[k]|roo[t]|hom[e]|User[s])\// },
  { what: "a skipped or lonely test", pattern: /\b(?:it|test|describe)\.(?:ski[p]|onl[y]|tod[o]|fail[s])\b/ },
  { what: "a type check switched off", pattern: /@ts-(?:ignor[e]|nochec[k])/ },
  {
    what: "a person or tool behind the curtain",
    pattern: /\b(?:sub-?agen[t]s?|chatbo[t]|language mode[l]|promp[t] engineer)/i,
  },
];

describe("words that have no place here", () => {
  for (const { what, pattern } of banned) {
    it(`no file holds ${what}`, () => {
      const found = files.filter(isText).flatMap((path) =>
        read(path)
          .split("\n")
          .map((line, i) => ({ line, where: `${path}:${i + 1}` }))
          .filter(({ line }) => pattern.test(line))
          .map(({ line, where }) => `${where} ${line.trim().slice(0, 90)}`),
      );
      expect(found).toEqual([]);
    });
  }

  it("no file or folder is named after nothing in particular", () => {
    const vague = /(?:^|\/)(?:utils?|helpers?|common|misc|shared|lib|stuff)(?:\/|\.|$)/i;
    expect(files.filter((path) => vague.test(path))).toEqual([]);
  });
});

describe("promises about words", () => {
  it("no text that a person reads calls food or a cooler safe", () => {
    const found: string[] = [];
    for (const path of [...typescriptIn("core"), ...typescriptIn("cli"), ...typescriptIn("app")]) {
      visit(parse(path), (node) => {
        const isWords = ts.isStringLiteral(node) || ts.isTemplateLiteralToken(node);
        if (isWords && /\b(?:un)?safe(?:ly)?\b/i.test(node.text))
          found.push(`${at(node)} ${node.text.slice(0, 90)}`);
      });
    }
    expect(found).toEqual([]);
  });
});
