import { describe, expect, it } from "vitest";
import { forecast } from "../../core/forecast/forecast.ts";
import type { Warning } from "../../core/forecast/result.ts";
import { coolerLift } from "../../core/safety/lifting.ts";
import { checkText } from "../../core/tell/checkText.ts";
import { coldSpent } from "../../core/tell/cold.ts";
import { forecastText } from "../../core/tell/forecastText.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Problem, Trip } from "../../core/trip/types.ts";

const head = `coldstow: 1
depart: 2027-07-02T08:00
return: 2027-07-04T08:00
weather: { days: [{ high: 31 C, low: 17 C }] }
coolers:
  - { name: galley, size: 50 L, build: thin, holds: food }
`;

function read(rest: string): Trip {
  const reading = readTrip(head + rest, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}
const told = (rest: string): readonly Warning[] => forecast(read(rest), { effects: false }).result.warnings;
const withCode = (rest: string, code: string): Warning[] => told(rest).filter((one) => one.code === code);

describe("weight", () => {
  const ice = "ice:\n  - { form: block, each: 5 kg, at: -10 C }\n";
  const added = `${ice}events:\n  - { at: day 2 12:00, do: add ice, form: block, pieces: 4, each: 5 kg, from: -10 C, to: galley }\n`;

  it("is judged at the heaviest moment: after ice is added on the way", () => {
    expect(withCode(ice, "heavy-later")).toEqual([]);
    expect(withCode(added, "heavy")).toEqual([]);
    const [later] = withCode(added, "heavy-later");
    // The box and 25 kg, less what drained (nothing), to the gram of dew: 28 h after departure.
    const trip = read(added);
    const { packedWeight_kg } = forecast(trip, { effects: false }).result.coolers[0]!;
    const { body } = trip.coolers[0]!;
    expect(coolerLift(packedWeight_kg, 2, body).index).toBeLessThan(1);
    expect(coolerLift(packedWeight_kg + 20, 2, body).index).toBeGreaterThan(1);
    expect(later!.says).toContain(`${Math.round(packedWeight_kg + 20)} kg`);
    expect(later!.says).toContain("from hour 28 on");
  });

  it("is told in local time", () => {
    expect(forecastText(forecast(read(added)), { units: "metric" }).replace(/\s+/g, " ")).toContain(
      "galley is heaviest from day 2, 12:00 on",
    );
  });
});

describe("food that is frozen at its meal", () => {
  const roast = (eat: string, state = "state: frozen, at: -18 C"): string =>
    `food:\n  - { name: roast, amount: 4 kg, like: beef roast, ${state}, thick: 12 cm, eat: ${eat}, layer: base, in: galley }\nice:\n  - { form: block, pieces: 2, each: 5 kg, at: -16 C, layer: base }\n`;

  it("is told, with what its middle is then", () => {
    const [warning] = withCode(roast("day 1 12:00"), "frozen-at-meal");
    expect(warning!.path).toBe("food[0]");
    const core_C = Number(/\((−?\d+(?:\.\d)?) °C/.exec(warning!.says)![1]!.replace("−", "-"));
    expect(core_C).toBeLessThan(-1.5);
    expect(core_C).toBeGreaterThanOrEqual(-18);
    expect(warning!.says).toContain("earlier to thaw");
  });

  it("is not told of chilled food, of ice cream, or of what is aboard at the return", () => {
    expect(withCode(roast("day 1 12:00", "state: chilled, at: 2 C"), "frozen-at-meal")).toEqual([]);
    expect(withCode(roast("day 3 08:00"), "frozen-at-meal")).toEqual([]);
    expect(withCode(roast("day 1 12:00").replace("beef roast", "ice cream"), "frozen-at-meal")).toEqual([]);
  });
});

describe("dry ice", () => {
  it("is told at the head with its cooler, not with its place in the file", () => {
    const trip = read("ice:\n  - { form: dry ice, each: 3 kg }\n");
    const text = forecastText(forecast(trip), { units: "metric" });
    expect(text).toMatch(/Dry ice (aboard|in a closed place) \(galley\)/);
    expect(text).not.toContain("ice[0]");
  });
});

describe("what is assumed is not told as a fact", () => {
  it("nor is somebody easily harmed", () => {
    const assumed = checkText(read(""), "metric").replace(/\s+/g, " ");
    expect(assumed).toContain("reckoned as if somebody easily harmed were among them");
    const said = checkText(read("party: { adults: 2, vulnerable: true }\n"), "metric").replace(/\s+/g, " ");
    expect(said).toContain("0 children, among them somebody easily harmed");
    expect(said).not.toContain("as if somebody");
  });

  it("nor is frozen food where only chilled food is aboard", () => {
    const fact = (food: string): string | undefined => {
      const made = forecast(
        read(`food:\n  - { name: stew, amount: 5 kg, like: chili, ${food}, in: galley }\n`),
        {
          effects: false,
        },
      );
      expect(made.result.coolers[0]!.heat_kJ.warmItems).toBeLessThan(0);
      return coldSpent(made, 0, "metric").parts.find(({ name }) => name === "food and drink")?.fact;
    };
    expect(fact("state: chilled, at: 1 C")).not.toContain("frozen");
    expect(fact("state: frozen, at: -16 C")).toBe("frozen food");
  });
});

describe("something put in at the return", () => {
  it("is a mistake in its own moment, and no other", () => {
    const problemsOf = (at: string): readonly Problem[] => {
      const item = "{ name: trout, amount: 1 kg, like: trout, state: chilled }";
      const text = `${head}events:\n  - { at: ${at}, do: put in, to: galley, item: ${item} }\n`;
      const reading = readTrip(text, { file: "trip.yaml" });
      return reading.ok ? [] : reading.problems;
    };
    expect(problemsOf("day 3 08:00").map(({ path, got }) => [path, got])).toEqual([
      ["events[0].at", "day 3 08:00"],
    ]);
    expect(problemsOf("day 3 07:00")).toEqual([]);
  });
});
