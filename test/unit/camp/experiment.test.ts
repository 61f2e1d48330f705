import { readFileSync } from "node:fs";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { closeOutFileSchemaJson } from "../../../core/camp/closeOutFile.ts";
import { closeOutSchemaJson } from "../../../core/camp/closeOutResult.ts";
import { experiment, repeatsFor } from "../../../core/camp/experiment.ts";
import { experimentFileSchemaJson } from "../../../core/camp/experimentFile.ts";
import {
  type ExperimentResult,
  experimentResultSchema,
  experimentSchemaJson,
} from "../../../core/camp/experimentResult.ts";
import { readExperiment } from "../../../core/camp/readExperiment.ts";
import { experimentText } from "../../../core/tell/experimentText.ts";
import { experimentPoster } from "../../../core/tell/pictures/experimentPoster.ts";
import { worksheet } from "../../../core/tell/worksheet.ts";
import { historySchemaJson } from "../../../core/trip/schema/history.ts";
import { files } from "../../house/tree.ts";

const base = `coldstow-experiment: 1
title: Two boxes
room: 24 C
humidity: 40 %
scale: 5 g
weigh: [6 h, 12 h]
one box: true
cooler: { size: 9 L, build: foam, start: { at: 24 C } }
arms:
  - { name: one, ice: [{ form: block, amount: 2 kg, at: -5 C }] }
  - { name: two, ice: [{ form: block, amount: 2 kg, at: -5 C }] }
`;

function tried(text: string, members = 16): ExperimentResult {
  const reading = readExperiment(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return experiment(reading.experiment, { members, seed: 1 });
}

const likely = (result: ExperimentResult, arm: number): number[] =>
  result.arms[arm]!.weighings.map(({ thought_kg }) => thought_kg.p50!);

describe("a kitchen experiment, reckoned", () => {
  it("two arms that are the same cannot be told apart", () => {
    const { contrasts } = tried(base, 32);
    for (const { thought_kg, noise_kg, repeats } of contrasts) {
      expect(Math.abs(thought_kg.p50!)).toBeLessThan(noise_kg);
      expect(thought_kg.p10!).toBeLessThan(0);
      expect(thought_kg.p90!).toBeGreaterThan(0);
      if (repeats !== null) expect(repeats).toBeGreaterThan(8);
    }
  });

  it("more ice leaves more, a warmer room less, and ice only ever grows less", () => {
    const more = tried(
      base.replace(
        "name: two, ice: [{ form: block, amount: 2 kg",
        "name: two, ice: [{ form: block, amount: 3 kg",
      ),
    );
    const warm = tried(base.replace("name: two,", "name: two, room: 34 C,"));
    for (const k of [0, 1]) {
      expect(likely(more, 1)[k]!).toBeGreaterThan(likely(more, 0)[k]!);
      expect(likely(warm, 1)[k]!).toBeLessThan(likely(warm, 0)[k]!);
    }
    expect(likely(more, 0)[0]!).toBeGreaterThan(likely(more, 0)[1]!);
    expect(more.contrasts.at(-1)!.repeats).toBe(1);
  });

  it("a wet cloth is worth more in a dry room than in a damp one", () => {
    const cloth = base.replace("name: two,", "name: two, cooler: { cover: wet cloth },");
    const gain = (humidity: string): number =>
      -tried(cloth.replace("humidity: 40 %", `humidity: ${humidity}`)).contrasts[0]!.thought_kg.p50!;
    expect(gain("15 %")).toBeGreaterThan(gain("95 %"));
  });

  it("is the same for the same seed, and takes measurements without moving for them", () => {
    const seen = `${base}measured:\n  - { arm: one, after: 6 h, ice: 1.5 kg }\n  - { arm: two, after: 6 h, ice: 1.4 kg, run: 1 }\n`;
    const [plain, weighed] = [tried(base), tried(seen)];
    expect(likely(weighed, 0)).toEqual(likely(plain, 0));
    expect(weighed.contrasts[0]!.measured_kg).toBeCloseTo(0.1, 9);
    expect(weighed.contrasts[1]!.measured_kg).toBeNull();
  });
});

describe("repeats", () => {
  it("are those of the usual sum: (1.645 + 1.282)² noise² over difference²", () => {
    // By hand: noise 30 g, difference 60 g: 2.927² · 0.25 = 2.14, so three.
    expect(repeatsFor(0.06, 0.03)).toBe(3);
    expect(repeatsFor(-0.06, 0.03)).toBe(3);
    expect(repeatsFor(0.2, 0.03)).toBe(1);
    expect(repeatsFor(0.02, 0.03)).toBe(20);
    expect(repeatsFor(0.015, 0.03)).toBeNull();
    expect(repeatsFor(0, 0.03)).toBeNull();
  });
});

describe("what is told of an experiment", () => {
  const guessed = `${base}guesses:
  - { who: first, arm: one, ice: 1 kg }
  - { who: first, arm: two, ice: 0.8 kg }
measured:
  - { arm: one, after: 12 h, ice: 1.1 kg }
  - { arm: two, after: 12 h, ice: 0.6 kg }
`;
  const result = tried(guessed);

  it("keeps to itself what the model thinks until somebody guessed", () => {
    const text = experimentText(result, { units: "metric", reveal: false });
    const sheet = worksheet(result, { units: "metric", paper: "A4" });
    expect(text).not.toContain("thought");
    for (const { weighings } of result.arms)
      for (const { thought_kg } of weighings)
        for (const told of [text, sheet])
          expect(told).not.toContain(String(Math.round(1000 * thought_kg.p50!)));
    expect(sheet).toContain("After 12 h");
  });

  it("shows guess, measurement and model beside each other, in words and as a picture at any width", () => {
    const text = experimentText(result, { units: "metric", reveal: true }).replace(/\s+/g, " ");
    expect(text).toContain("After 12 h one less two: thought");
    expect(text).toContain("weighed 500 g");
    for (const width of [340, 900]) {
      const svg = experimentPoster(result, { width, units: "us", id: "e" });
      expect(svg).toMatch(/^<svg[\s\S]*<\/svg>$/);
      expect(svg).not.toMatch(/NaN|undefined/);
    }
  });

  it("follows its schema, and every schema is the one that is shipped", () => {
    expect(v.safeParse(experimentResultSchema, JSON.parse(JSON.stringify(result))).issues).toBeUndefined();
    const made = {
      experiment: experimentSchemaJson(),
      "experiment-file": experimentFileSchemaJson(),
      closeout: closeOutSchemaJson(),
      "closeout-file": closeOutFileSchemaJson(),
      history: historySchemaJson(),
    };
    for (const [name, schema] of Object.entries(made)) {
      const shipped = readFileSync(new URL(`../../../schema/${name}.schema.json`, import.meta.url), "utf8");
      expect(JSON.parse(shipped)).toEqual(JSON.parse(JSON.stringify(schema)));
    }
  });
});

describe("an experiment file", () => {
  it.each<[string, string, number, string]>([
    ["a lone arm", base.replace(/ {2}- \{ name: two.*\n/, ""), 9, "arms"],
    ["times out of order", base.replace("6 h, 12 h", "12 h, 6 h"), 6, "weigh[1]"],
    ["two arms of one name", base.replace("name: two", "name: one"), 11, "arms[1].name"],
    ["a scale in metres", base.replace("5 g", "5 m"), 5, "scale"],
    ["no such build, for all", base.replace("build: foam", "build: foan"), 8, "cooler.build"],
    ["ice that is warm", base.replace("at: -5 C }] }\n", "at: 5 C }] }\n"), 10, "arms[0].ice[0].at"],
    ["a box too small to be one", base.replace("9 L", "9 mL"), 8, "cooler.size"],
    ["a guess at nothing", `${base}guesses: [{ who: a, arm: three, ice: 1 kg }]\n`, 12, "guesses[0].arm"],
    [
      "an hour at which nobody weighs",
      `${base}measured: [{ arm: one, after: 7 h, ice: 1 kg }]\n`,
      12,
      "measured[0].after",
    ],
  ])("%s is told with line and path", (_what, text, line, path) => {
    const reading = readExperiment(text);
    const told = reading.ok ? [] : reading.problems.map((one) => [one.line, one.path]);
    expect(told).toContainEqual([line, path]);
  });

  it.each(files.filter((path) => path.startsWith("examples/experiments/")))(
    "%s is read and says it is invented",
    (path) => {
      const text = readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
      expect(text).toMatch(/invented/);
      expect(readExperiment(text).ok).toBe(true);
    },
  );
});
