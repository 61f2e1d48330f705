import { expect, it } from "vitest";
import { files, folders, read, roomOf, rooms } from "./tree.ts";

it("the rooms on disk are the rooms of the check", () => {
  const onDisk = new Set(files.map(roomOf).filter((room) => room !== null));
  expect([...onDisk].sort()).toEqual([...rooms].sort());
});

it("the rooms of the README's table are the rooms of the check, in order", () => {
  const named = [...read("README.md").matchAll(/^\| `core\/(\w+)` +\|/gm)].map((row) => row[1]);
  expect(named).toEqual([...rooms]);
});

it("the top level holds only the folders that the README tells of", () => {
  const tracked = new Set(files.filter((path) => path.includes("/")).map((path) => path.split("/")[0]));
  expect([...tracked].sort()).toEqual([...folders]);
  const untold = folders.filter((folder) => !read("README.md").includes(`\`${folder}/`));
  expect(untold).toEqual([]);
});
