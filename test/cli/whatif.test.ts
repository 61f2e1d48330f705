import { readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import * as v from "valibot";
import { beforeAll, describe, expect, it } from "vitest";
import type { CompareResult, HabitsResult, StressResult } from "../../core/index.ts";
import { compareSchema, habitsSchema, stressSchema } from "../../core/whatif/resultSchema.ts";
import { build, fine, folderWith, run, warm } from "./build.ts";

beforeAll(build);

const metric = fine.replace("45 qt", "42 L").replace("2 lb", "1 kg").replace("10 lb", "4.5 kg");

describe("habits", () => {
  it("print a result by its schema, or a text that says how many runs it is from, and end with 0", () => {
    const folder = folderWith({ "trip.yaml": fine });
    const done = run(["habits", "trip.yaml", "--members", "8", "--json", "--out", "out"], { cwd: folder });
    expect(done.status).toBe(0);
    const result = JSON.parse(done.out) as HabitsResult;
    expect(v.safeParse(habitsSchema, result).issues).toBeUndefined();
    expect(result).toMatchObject({ command: "habits", members: 8, seed: 1 });
    expect(result.habits.length).toBeGreaterThan(3);
    const made = join(folder, "out");
    expect(readdirSync(made).sort()).toEqual(["habits.svg", "habits.txt", "result.json"]);
    expect(JSON.parse(readFileSync(join(made, "result.json"), "utf8"))).toEqual(result);
    expect(readFileSync(join(made, "habits.svg"), "utf8")).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
    expect(readFileSync(join(made, "habits.txt"), "utf8")).toMatch(/\b8\b/);
  });

  it("end with 0 however bad the trip is", () => {
    expect(run(["habits", "-", "--members", "2"], { input: warm }).status).toBe(0);
  });
});

describe("stress", () => {
  it("ends with 1 when the trip fails as written, and with 0 when it does not", () => {
    const good = run(["stress", "-", "--members", "16", "--json"], { input: fine });
    const result = JSON.parse(good.out) as StressResult;
    expect(v.safeParse(stressSchema, result).issues).toBeUndefined();
    expect(result.cases[0]).toMatchObject({ key: "as written", holds: true });
    expect(good.status).toBe(0);
    const bad = run(["stress", "-", "--members", "16"], { input: warm });
    expect(bad).toMatchObject({ status: 1, err: "" });
    expect(bad.out).toContain("chili");
  });
});

describe("compare", () => {
  const folder = folderWith({
    "cubes.yaml": fine.replace("at: 3 C", "at: 38 F"),
    "block.yaml": fine.replace("form: cube", "form: block"),
    "none.yaml": warm,
    "metric.yaml": metric,
    "broken.yaml": fine.replace("45 qt", "45"),
  });
  symlinkSync(join(folder, "cubes.yaml"), join(folder, "link.yaml"));

  it("sets trips side by side by letter, over the same members, and ends with 0", () => {
    const args = ["compare", "cubes.yaml", "block.yaml", "none.yaml", "--members", "16", "--json"];
    const done = run([...args, "--out", "out"], { cwd: folder });
    expect(done.status).toBe(0);
    const result = JSON.parse(done.out) as CompareResult;
    expect(v.safeParse(compareSchema, result).issues).toBeUndefined();
    expect(result.trips.map(({ letter, file }) => [letter, file])).toEqual([
      ["A", "cubes.yaml"],
      ["B", "block.yaml"],
      ["C", "none.yaml"],
    ]);
    expect(result.members).toBe(16);
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["compare.svg", "compare.txt", "result.json"]);
  });

  it("takes one trip from standard input, and speaks in the units of the first file", () => {
    const args = ["--members", "4"];
    const us = run(["compare", "cubes.yaml", "-", ...args], { cwd: folder, input: metric });
    expect(us).toMatchObject({ status: 0, err: "" });
    expect(us.out).toMatch(/\blb\b/);
    const other = run(["compare", "metric.yaml", "cubes.yaml", ...args], { cwd: folder });
    expect(other.out).toMatch(/\bkg\b/);
    expect(other.out).not.toMatch(/\blb\b/);
  });

  it.each([
    [["cubes.yaml"], "two to 6 trip files"],
    [["cubes.yaml", "cubes.yaml"], "one file"],
    [["cubes.yaml", "link.yaml"], "one file"],
    [["-", "-"], "standard input once at most"],
    [["cubes.yaml", "broken.yaml"], "coolers[0].size"],
    [["cubes.yaml", "nope.yaml"], "nothing there"],
    [Array.from({ length: 7 }, (_, i) => `${i}.yaml`), "two to 6 trip files"],
  ])("refuses %j with 2 and says why", (names, says) => {
    const done = run(["compare", ...names], { cwd: folder, input: fine });
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(done.err).toContain(says);
    expect(done.err).not.toMatch(/\n\s+at /);
  });

  it("never writes over a trip that it read", () => {
    const place = folderWith({ "a.yaml": fine, "compare.txt": metric });
    const done = run(["compare", "a.yaml", "compare.txt", "--members", "2", "--out", "."], { cwd: place });
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(readFileSync(join(place, "compare.txt"), "utf8")).toBe(metric);
  });
});
