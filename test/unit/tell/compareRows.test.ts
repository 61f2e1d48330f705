/** Which of compared trips takes least of a thing, as it is shown. */
import { describe, expect, it } from "vitest";
import { compareRows } from "../../../core/tell/compareRows.ts";
import type { ComparedTrip } from "../../../core/whatif/types.ts";

const trip = (ice_kg: number, cost: number | null, openings: number): ComparedTrip => ({
  letter: "A",
  title: "",
  file: "",
  ice_kg,
  dryIce_kg: 0,
  cost,
  packedWeight_kg: 30,
  coolers: [],
  atRisk: [],
  fails_frac: 0.04,
  fuss: { openings, acts: 1 },
});

describe("rows of a comparison", () => {
  const rows = compareRows([trip(20, 5, 30), trip(10.01, null, 30), trip(10.04, 4, 20)], "metric");
  const row = (what: string): readonly boolean[] => rows.find((one) => one.what === what)!.isLeast;

  it("mark the least, and both where they read the same", () => {
    expect(row("ice in all")).toEqual([false, true, true]);
    expect(row("lids opened")).toEqual([false, false, true]);
  });

  it("mark nothing where all are the same or one is not known", () => {
    expect(row("packed, all coolers")).toEqual([false, false, false]);
    expect(row("price of the ice")).toEqual([false, false, false]);
  });

  it("leave dry ice out where nobody has any", () => {
    expect(rows.map(({ what }) => what)).not.toContain("dry ice");
  });
});
