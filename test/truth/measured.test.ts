// Everything measured or ruled that we hold, in one table: name, published, ours, gap. Nothing is left out; what we miss stays
// with its gap. Conditions that a publication does not tell are taken as ranges and said where they are taken, so our
// number is a span too: a hit says that the published value is among what the model gives, not more.
import { describe, expect, it } from "vitest";
import { canSamples } from "./cans.ts";
import { carSamples, parkedAllDaySamples } from "./car.ts";
import { dryIceSamples } from "./dryIce.ts";
import { freezerSamples } from "./freezer.ts";
import { meltSamples } from "./melt.ts";
import { foamBoxSamples, vaccineSamples } from "./packs.ts";
import { pairedSamples } from "./pairedCoolers.ts";
import { gap_frac, printSamples, printTable, scoreOf } from "./sample.ts";
import { solidFoodSamples } from "./solidFood.ts";

const samples = [
  ...carSamples(),
  ...parkedAllDaySamples(),
  ...dryIceSamples(),
  ...foamBoxSamples(),
  ...vaccineSamples(),
  ...pairedSamples(),
  ...freezerSamples(),
  ...canSamples(),
  ...meltSamples(),
  ...solidFoodSamples(),
];

describe("measured and ruled", () => {
  it.each(samples.map((sample) => [sample.name, sample] as const))("%s", (_name, sample) => {
    const gap = Math.abs(gap_frac(sample));
    expect(sample.ours.every(Number.isFinite)).toBe(true);
    if (sample.miss === undefined) expect(gap).toBe(0);
    else {
      expect(gap).toBeGreaterThan(0);
      expect(gap).toBeLessThanOrEqual(sample.miss.gap_frac);
    }
  });

  it("mean and worst gap do not get worse", () => {
    const { mean_frac, worst_frac, missed } = scoreOf(samples);
    printSamples("Measured and ruled values", samples);
    printTable(
      "What is missed, and why",
      ["what", "why"],
      samples.filter((sample) => sample.miss).map((sample) => [sample.name, sample.miss!.why]),
    );
    printTable(
      "Score",
      ["samples", "missed", "mean gap", "worst gap"],
      [
        [
          samples.length,
          missed,
          `${(100 * mean_frac).toFixed(0)} %`,
          `${(100 * worst_frac).toFixed(0)} %`,
        ].map(String),
      ],
    );
    expect(mean_frac).toBeLessThan(0.04);
    expect(worst_frac).toBeLessThan(0.45);
  });
});
