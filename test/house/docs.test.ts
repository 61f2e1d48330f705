import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { files, read, root } from "./tree.ts";

describe("the written pages", () => {
  it("link to files that are there", () => {
    const dead = files
      .filter((path) => path.endsWith(".md"))
      .flatMap((path) =>
        [...read(path).matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)[^)]*\)/g)]
          .filter((link) => !existsSync(join(root, dirname(path), link[1]!)))
          .map((link) => `${path}: ${link[1]}`),
      );
    expect(dead).toEqual([]);
  });

  it("give every requirement R01 to R40 one row with a state", () => {
    const rows = [
      ...read("docs/requirements.md").matchAll(/^\| (R\d\d) +\| (done|partly|not yet) +\| .+ \| .*\|$/gm),
    ];
    const wanted = Array.from({ length: 40 }, (_, i) => `R${String(i + 1).padStart(2, "0")}`);
    expect(rows.map((row) => row[1])).toEqual(wanted);
  });

  it("explain each word once, in alphabetical order", () => {
    const words = [...read("docs/words.md").matchAll(/^\| \*\*(.+?)\*\* +\|/gm)].map((row) => row[1]!);
    expect(words.length).toBeGreaterThan(20);
    expect(words).toEqual([...new Set(words)].sort((a, b) => a.localeCompare(b, "en")));
  });

  it("the change log keeps the heading under which moved numbers are told", () => {
    expect(read("CHANGELOG.md")).toMatch(/^### Numbers that moved$/m);
  });
});
