import { describe, expect, it } from "vitest";
import { closurePriors } from "../../core/cooler/closures.ts";
import { ownClosures } from "../../core/ensemble/inputs.ts";
import { forecastError, scaleOf, tripPriors } from "../../core/ensemble/priors.ts";
import type { Spread } from "../../core/matter/spread.ts";
import { skyPriors } from "../../core/sky/closures.ts";
import { read } from "./tree.ts";

interface Row {
  name: string;
  p50: number;
  p10: number;
  p90: number;
  scale: string;
  owner: string;
  source: string;
}

const section = read("docs/model.md").split(/^## \d+\. Priors of the ensemble.*$/m)[1] ?? "";
const numberOf = (text: string): number => Number(text.replace("−", "-"));

const told: Row[] = section
  .split("\n")
  .filter((line) => line.startsWith("| `"))
  .map((line) => {
    const [, name, median, range, , scale, , owner, source] = line.split("|").map((cell) => cell.trim());
    const [p10, p90] = range!.split(" … ").map(numberOf);
    return {
      name: name!.replaceAll("`", ""),
      p50: numberOf(median!),
      p10: p10!,
      p90: p90!,
      scale: scale!,
      owner: owner!,
      source: source!,
    };
  });

const words: Readonly<Record<string, string>> = {
  "engineering-judgement": "judgement",
  "common-practice": "common practice",
};
type Prior = Spread & { source: string };
const rowOf = (name: string, { p50, p10, p90, source }: Prior, scale: string): Omit<Row, "owner"> => ({
  name,
  p50,
  p10,
  p90,
  scale,
  source: words[source] ?? `\`${source}\``,
});

const inCode = [
  ...Object.entries<Prior>({ ...closurePriors, ...skyPriors }).map(([key, prior]) =>
    rowOf(key, prior, scaleOf(key, prior)),
  ),
  ...Object.entries(tripPriors).map(([key, prior]) => rowOf(key, prior, prior.scale)),
];

describe("the table of priors in docs/model.md", () => {
  it("has every prior of the code in its order, with the same three numbers, scale and source", () => {
    expect(inCode.length).toBeGreaterThan(50);
    expect(told.map(({ owner: _, ...row }) => row)).toEqual(inCode);
  });

  it("says of closures which are each cooler's own", () => {
    const own = told.filter(({ name, owner }) => name in closurePriors && owner === "each cooler");
    expect(own.map(({ name }) => name)).toEqual(ownClosures);
    expect(told.filter(({ owner }) => !["all", "each cooler", "each lot"].includes(owner))).toEqual([]);
  });

  it("is followed by the errors of the weather forecast", () => {
    for (const [key, value] of Object.entries(forecastError))
      expect(section).toContain(key.endsWith("_frac") ? `keeps ${value}` : `${value} K`);
  });

  it("keeps the order 10 % < median < 90 % in every row", () => {
    expect(told.filter(({ p10, p50, p90 }) => !(p10 < p50 && p50 < p90))).toEqual([]);
  });
});
