import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import * as v from "valibot";
import { beforeAll, describe, expect, it } from "vitest";
import { closeOutResultSchema } from "../../core/camp/closeOutResult.ts";
import type { CloseOutResult } from "../../core/index.ts";
import { build, folderWith, run } from "./build.ts";

beforeAll(build);

const examples = join(import.meta.dirname, "../../examples");
const trip = readFileSync(join(examples, "family-three-days.yaml"), "utf8");
const seen = readFileSync(join(examples, "closeouts/family-three-days.yaml"), "utf8");
const files = { "trip.yaml": trip, "seen.yaml": seen };

describe("closeout", () => {
  it("tells what a trip taught, by its schema and in words, and writes histories and pictures", () => {
    const folder = folderWith(files);
    const done = run(["closeout", "trip.yaml", "seen.yaml", "--members", "32", "--json", "--out", "out"], {
      cwd: folder,
    });
    expect(done.status).toBe(0);
    const result = JSON.parse(done.out) as CloseOutResult;
    expect(v.safeParse(closeOutResultSchema, result).issues).toBeUndefined();
    expect(result.coolers.map(({ name }) => name)).toEqual(["chest", "drinks bag"]);
    expect(readdirSync(join(folder, "out")).sort()).toEqual([
      "chest-history.svg",
      "chest.history.yaml",
      "closeout.txt",
      "drinks-bag-history.svg",
      "drinks-bag.history.yaml",
      "result.json",
    ]);
    const text = readFileSync(join(folder, "out/closeout.txt"), "utf8").replace(/\s+/g, " ");
    expect(text).toContain("strawberries: 1.2 lb instead of 2 lb (40 % less)");
    expect(text).not.toMatch(/undefined|NaN/);
  }, 120_000);

  it("keeps a history beside the trip, from which the next forecast begins, and counts a trip once", () => {
    const folder = folderWith(files);
    const args = ["closeout", "trip.yaml", "seen.yaml", "--members", "32", "--json", "--keep"];
    const first = run(args, { cwd: folder });
    expect(first.status).toBe(0);
    expect(first.err).toContain('write "history: chest.history.yaml" at that cooler');
    const again = run(args, { cwd: folder });
    expect(again).toMatchObject({ status: 2 });
    const kept = readFileSync(join(folder, "chest.history.yaml"), "utf8");
    const named = trip.replace("  - name: chest\n", "  - name: chest\n    history: chest.history.yaml\n");
    const next = folderWith({ ...files, "trip.yaml": named, "chest.history.yaml": kept });
    const told = run(["forecast", "trip.yaml"], { cwd: next }).out.replace(/\s+/g, " ");
    expect(told).toContain("known: 1 earlier trip put its conductance at");
    const once = run(args, { cwd: next });
    const [before, after] = [first, once].map(({ out }) => (JSON.parse(out) as CloseOutResult).coolers[0]!);
    expect(after!.records).toBe(1);
    // Its own record was set aside first, so it is told the same again, to the three figures of the file.
    const [a, b] = [before!.learned_W_per_K!, after!.learned_W_per_K!];
    expect(Math.abs(Math.log(b.p50 / a.p50))).toBeLessThan(0.2);
    expect(readFileSync(join(next, "chest.history.yaml"), "utf8").match(/trip:/g)).toHaveLength(1);
  }, 180_000);

  it("2 for a close-out with mistakes, all of them by line, and for one file twice", () => {
    const folder = folderWith({
      ...files,
      "seen.yaml": seen.replace("chest", "chst").replace("lettuce", "letuce"),
    });
    const done = run(["closeout", "trip.yaml", "seen.yaml"], { cwd: folder });
    expect(done.status).toBe(2);
    expect(done.err).toContain("coolers[0].name");
    expect(done.err).toContain("binned[0].item");
    expect(run(["closeout", "-", "-"], { input: trip }).status).toBe(2);
  });
});
