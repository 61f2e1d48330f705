// What the trade says, beside what the program says of one invented reference trip (see scenario.ts), through the reader that a
// person's file goes through. The claim is a sign or a size from the saying's own words; all are common practice without a
// source. Where our number contradicts the saying, both stand here, and the test fails when that is no longer so.
import { describe, expect, it } from "vitest";
import { printTable, spanText } from "./sample.ts";
import { bodySayings, sizeSayings } from "./sayings/boxes.ts";
import { clothSayings, habitSayings } from "./sayings/habits.ts";
import { drainSayings, iceSayings } from "./sayings/ice.ts";
import { openingSayings } from "./sayings/openings.ts";
import { packingSayings } from "./sayings/packing.ts";
import type { Saying } from "./sayings/saying.ts";
import { sharingSayings } from "./sayings/sharing.ts";

const sayings: readonly Saying[] = [
  ...sizeSayings(),
  ...bodySayings(),
  ...iceSayings(),
  ...drainSayings(),
  ...openingSayings(),
  ...sharingSayings(),
  ...habitSayings(),
  ...clothSayings(),
  ...packingSayings(),
];

const agrees = ({ claim, ours }: Saying): boolean => ours >= claim[0] && ours <= claim[1];

describe("what the trade says", () => {
  it.each(sayings.map((saying) => [`${saying.says} (${saying.asked})`, saying] as const))(
    "%s",
    (_name, saying) => {
      expect(Number.isNaN(saying.ours)).toBe(false);
      expect(agrees(saying)).toBe(saying.contradicts === undefined);
    },
  );

  it("prints them beside our numbers", () => {
    const rows = sayings.map((saying) => [
      saying.says,
      saying.asked,
      `${spanText(saying.claim)}`,
      `${spanText([saying.ours, saying.ours])} ${saying.unit}`,
      agrees(saying) ? "agrees" : `no: ${saying.contradicts ?? ""}`,
    ]);
    printTable(
      "What the trade says (common practice)",
      ["saying", "asked", "claim", "ours", "verdict"],
      rows,
    );
    expect(sayings.filter((saying) => !agrees(saying)).length).toBeLessThan(sayings.length / 4);
  });
});
