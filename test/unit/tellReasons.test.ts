import { describe, expect, it } from "vitest";
import { forecast } from "../../core/forecast/forecast.ts";
import type { Band, FoodResult } from "../../core/forecast/result.ts";
import { forecastText } from "../../core/tell/forecastText.ts";
import { readTrip } from "../../core/trip/readTrip.ts";

const reading = readTrip(
  `coldstow: 1
depart: 2027-07-02T08:00
return: 2027-07-04T08:00
coolers:
  - { name: galley, size: 50 L, build: thick, holds: food }
food:
  - { name: sausage, amount: 1 kg, like: hot dog, state: chilled, eat: day 2 dinner, in: galley }
ice:
  - { form: block, pieces: 2, each: 5 kg, at: -16 C }
`,
  { file: "trip.yaml" },
);
if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
const made = forecast(reading.trip, { effects: false });
const at = (value: number | null): Band => ({ p10: value, p50: value, p90: value });

function textOf(row: Partial<FoodResult>): string {
  const food = made.result.food.map((one) => ({ ...one, ...row }));
  return forecastText({ ...made, result: { ...made.result, food } }, { units: "metric" }).replace(
    /\s+/g,
    " ",
  );
}

// Invented rows: what happened to one food, as a run would have it.
describe("every reason against a food", () => {
  const warmAndWet: Partial<FoodResult> = {
    overLimit_h: at(20),
    warm_h: at(6),
    warmAllowed_h: 2,
    wet_h: at(26),
    verdict: "discard",
    rule: "2 h in all",
    why: "6 h above 40 °F of 2 h allowed",
  };

  it("is told: that it lay in water beside that it was warm, earliest first", () => {
    const text = textOf(warmAndWet);
    expect(text).toMatch(/sausage over 4\.4 °C from day 2, 04:00.*lay in meltwater from day 2, 10:00/);
    expect(text).toContain("Its package lets water in");
    // Nobody said that raw food lay beside it.
    expect(text).not.toContain("with raw food");
  });

  it("asks about the package too where the file is silent", () => {
    expect(textOf(warmAndWet)).toContain("You did not say whether the packages of sausage are watertight");
    expect(textOf({ ...warmAndWet, wet_h: null })).not.toContain("You did not say whether the packages");
  });

  it("is told the other way round: warm for long on its way down, beside raw juice in the water", () => {
    const text = textOf({
      belowLimit_h: at(3),
      overLimit_h: at(null),
      warm_h: at(1.5),
      warmAllowed_h: 2,
      wet_h: at(26),
      verdict: "discard",
      rule: "Discard what raw meat juice may have touched",
      why: "its package lets water in and lay in meltwater for 8 h, with raw food in the same cooler",
    });
    expect(text).toContain("lay in meltwater with raw food from day 2, 10:00");
    expect(text).toContain("warm 1 h 30 min of 2 h allowed");
  });

  it("is none where no rule speaks against it", () => {
    expect(textOf({ verdict: "keep", wet_h: at(47), overLimit_h: at(null), warm_h: at(0) })).not.toContain(
      "meltwater from",
    );
  });
});
