import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { ExperimentResult } from "../../core/index.ts";
import { build, folderWith, run } from "./build.ts";

beforeAll(build);

const example = (name: string): string =>
  readFileSync(join(import.meta.dirname, "../../examples/experiments", name), "utf8");

describe("experiment", () => {
  it("gives a worksheet first, and the poster only to who guessed", () => {
    const folder = folderWith({ "cloth.yaml": example("wet-cloth.yaml") });
    const first = run(["experiment", "cloth.yaml", "--members", "8", "--out", "out"], { cwd: folder });
    expect(first.status).toBe(0);
    expect(first.out).toContain("Guess first");
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["experiment.txt", "worksheet.html"]);
    const shown = run(["experiment", "cloth.yaml", "--members", "8", "--out", "out", "--reveal"], {
      cwd: folder,
    });
    expect(shown.out).toContain("thought");
    expect(readdirSync(join(folder, "out"))).toContain("poster.svg");
  }, 120_000);

  it("prints its result as JSON, and 2 with the line for a mistake", () => {
    const done = run(["experiment", "-", "--members", "8", "--json"], {
      input: example("block-against-cubes.yaml"),
    });
    expect(done.status).toBe(0);
    const result = JSON.parse(done.out) as ExperimentResult;
    expect(result.arms.map(({ name }) => name)).toEqual(["block", "cubes"]);
    const wrong = run(["experiment", "-"], {
      input: example("wet-cloth.yaml").replace("scale: 5 g", "scale: 5"),
    });
    expect(wrong.status).toBe(2);
    expect(wrong.err).toContain("scale");
  }, 120_000);
});
