import { expect, it } from "vitest";
import { files, read } from "./tree.ts";

const most = 400;

it(`no source file is longer than ${most} lines`, () => {
  const sizes = files
    .filter((path) => /\.(ts|mjs)$/.test(path))
    .map((path) => ({ path, lines: read(path).trimEnd().split("\n").length }))
    .sort((a, b) => a.lines - b.lines);
  const median = sizes[Math.floor(sizes.length / 2)]!.lines;
  console.log(`${sizes.length} source files, median ${median} lines, longest ${sizes.at(-1)!.lines}`);
  expect(sizes.filter(({ lines }) => lines > most)).toEqual([]);
});
