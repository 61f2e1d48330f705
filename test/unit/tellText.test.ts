import { describe, expect, it } from "vitest";
import type { Forecast } from "../../core/forecast/types.ts";
import { booksText } from "../../core/tell/booksText.ts";
import { checkText, problemsText } from "../../core/tell/checkText.ts";
import { forecastText } from "../../core/tell/forecastText.ts";
import { nColumns, type Paint } from "../../core/tell/lines.ts";
import { planText } from "../../core/tell/planText.ts";
import { inventedForecast } from "./fixtures/forecast.ts";

const middle = forecastText(inventedForecast(), { units: "us" });
const banded = forecastText(inventedForecast({ banded: true }), { units: "metric" });
const hostile = ` <b>&"\u001b[31m\n${"W".repeat(190)}`;

function planned(forecast: Forecast): Forecast {
  const plan = {
    file: "out/trip.planned.yaml",
    ice: [
      {
        form: "cube",
        pieces: 4,
        each_kg: 4.5359237,
        cooler: "galley",
        where: "town",
        by: "2027-06-18T06:00",
        price: 18,
        weight_kg: 18.14,
      },
      {
        form: "block",
        pieces: 1,
        each_kg: 5,
        cooler: "late",
        where: "home",
        by: "",
        price: null,
        weight_kg: 5,
      },
    ],
    assign: [],
    states: [],
    layers: [],
    prep: [],
    iceRuns: [],
    merges: [],
    pull: [],
    cost: 18,
    weight_kg: 23.14,
  };
  return { ...forecast, result: { ...forecast.result, plan } };
}

function allTexts(namesEnd: string): string[] {
  const forecasts = [false, true].map((isBanded) => inventedForecast({ banded: isBanded, namesEnd }));
  const problem = {
    line: 12,
    path: `coolers[0]${namesEnd}`,
    must: "a volume with its unit",
    got: `45${namesEnd}`,
    near: namesEnd,
  };
  return forecasts.flatMap((forecast) =>
    (["us", "metric"] as const).flatMap((units) => [
      forecastText(forecast, { units }),
      planText(planned(forecast), { units }),
      booksText(forecast),
      checkText(forecast.trip, units),
      problemsText([problem, { ...problem, line: null, near: null }], "trip.yaml"),
    ]),
  );
}

describe("a forecast in words", () => {
  it("leads with the cold food, the worst first", () => {
    const at = (word: string): number => middle.indexOf(word);
    expect(at("1 to throw away: cut melon")).toBeGreaterThan(0);
    expect(at("1 to throw away: cut melon")).toBeLessThan(at("DISCARD "));
    expect(at("DISCARD ")).toBeLessThan(at("EAT NEXT "));
    expect(at("EAT NEXT ")).toBeLessThan(at("KEEP "));
    expect(at("KEEP ")).toBeLessThan(at("galley: ice until"));
  });

  it("gives each food its time within the limit, its verdict and the reason", () => {
    // The invented melon passes its limit 78.2 h after 06:30 of day 1.
    expect(middle).toMatch(
      /DISCARD +cut melon +under 40 °F until day 4 noon; warm 9 h 24 min,\n +2 h allowed/,
    );
    expect(middle).toContain("above the limit for longer than the chart allows. Rule: 2 h above");
    expect(middle).toMatch(/KEEP +milk +under 40 °F until eaten, day 4 early morning/);
    expect(middle).toContain("No clock needed: cheddar · cans.");
  });

  it("tells a food that came aboard warm when it is cold, and one that came cold nothing of the kind", () => {
    expect(middle).toMatch(/trout +comes under 40 °F day 4 afternoon/);
    expect(middle.match(/comes under/g)).toHaveLength(1);
  });

  it("names the limit and says that a single run has no band", () => {
    expect(middle).toContain("Limit 40 °F (consumer profile). Middle case alone: no band yet.");
    expect(middle).toMatch(/galley: ice until day 4 afternoon; .*\n?.*\(middle case,? ?\n?no band yet\)/);
  });

  it("does not pass over hours without ice before more was put in", () => {
    const forecast = inventedForecast();
    const bar = { ...forecast.result.coolers[2]!, iceGaps_h: [[28, 33.5]] as [number, number][] };
    const text = forecastText(
      { ...forecast, result: { ...forecast.result, coolers: [bar] } },
      { units: "us" },
    );
    expect(text).toContain("bar: ice until day 3 afternoon, but none from day 2 morning to day 2 afternoon;");
  });

  it("gives ranges where there are members", () => {
    expect(banded).toContain("Limit 4.4 °C (consumer profile). A range holds 8 times in 10.");
    expect(banded).toMatch(
      /galley: ice likely until day 4 afternoon \(day 4 early\s+morning to day 5 early\s+morning\)/,
    );
    expect(banded).not.toContain("no band yet");
  });

  it("shows ice by day as the series has it", () => {
    const ice_kg = inventedForecast().result.coolers[0]!.series.ice_kg.p50[1]!;
    const day1 = middle.split("\n").find((line) => line.startsWith("day 1 Fri"))!;
    expect(day1.split(/ +/)[3]).toBe((ice_kg / 0.45359237).toFixed(1));
  });

  it("lets the cold that went add up to the total that is shown", () => {
    for (const text of [middle, banded]) {
      const blocks = text.split("where the cold went").slice(1);
      expect(blocks).toHaveLength(3);
      for (const block of blocks) {
        const rows = block.split("\n").slice(1);
        const end = rows.findIndex((row) => row.startsWith("adds up to"));
        const value = (row: string): number => Math.round(Number(row.slice(18, 26).replace("−", "-")) * 10);
        const sum = rows.slice(0, end).reduce((total, row) => total + value(row), 0);
        expect(sum).toBe(value(rows[end]!));
      }
    }
  });

  it("puts the assumption that moves the ice most first, and counts the rest", () => {
    expect(middle).toMatch(/We assumed 7 things[^\n]*\n {2}legs\[1\]\.shade: 80 %, moves it 6 h/);
    expect(middle).toContain("and 2 more: `coldstow check` lists them all");
  });

  it("warns of a heavy cooler once, and defers to local rules", () => {
    expect(middle.match(/late weighs/g)).toHaveLength(1);
    expect(middle).toContain("More than one person should lift galley: packed over 51 lb");
    expect(middle).toMatch(/Local rules and the orders of the agency in\n? *charge come first/);
  });

  it("says the same without paint as with it", () => {
    const mark = (text: string): string => `⟦${text}⟧`;
    const colour: Paint = { strong: mark, faint: mark, bad: mark, warn: mark };
    const painted = forecastText(inventedForecast(), { units: "us", colour });
    expect(painted).not.toBe(middle);
    expect(painted.replace(/[⟦⟧]/g, "").replace(/ +$/gm, "")).toBe(middle);
  });

  it("refuses a width that nobody reads", () => {
    expect(() => forecastText(inventedForecast(), { units: "us", width: 20 })).toThrow(
      "width must be 60…200",
    );
  });
});

describe("other texts", () => {
  it("lists ice in pieces as they are sold, then the forecast", () => {
    const text = planText(planned(inventedForecast()), { units: "us" });
    expect(text).toMatch(
      /^Ice to get: 5 pieces, 51 lb, costs 18\.00\n {2}4 × 10-lb bags of cubes: into galley, from town/,
    );
    expect(text.indexOf("4 × 10-lb")).toBeLessThan(text.indexOf("Invented fork"));
  });

  it("keeps the name of a bag for a reader of kilograms", () => {
    expect(planText(planned(inventedForecast()), { units: "metric" })).toContain("4 × 10-lb bags of cubes");
  });

  it("prints the books so that the lines sum to the sum", () => {
    const lines = booksText(inventedForecast()).split("\n");
    const end = lines.findIndex((line) => line.startsWith("  sum of"));
    const value = (line: string): number => Number(line.slice(42).replace("−", "-"));
    const sum = lines.slice(1, end).reduce((total, line) => total + value(line), 0);
    expect(sum).toBeCloseTo(value(lines[end]!), 6);
    expect(value(lines[end + 1]!)).toBe(7173);
    expect(lines.join("\n")).toContain("missing from the energy books: 3.0e-9 of all flows");
  });

  it("puts a mistake in one line with its place", () => {
    const text = problemsText(
      [{ line: 12, path: "coolers[0].size", must: "a volume", got: "45", near: "45 qt" }],
      "trip.yaml",
    );
    expect(text).toBe(
      "1 problem in trip.yaml\ntrip.yaml:12  coolers[0].size: must be a volume, got 45; did you mean 45 qt?\n",
    );
  });

  it("lists every assumption of a trip that was read", () => {
    const { trip } = inventedForecast();
    const text = checkText(trip, "us");
    expect(text).toContain("We assumed 7 things:");
    for (const { path } of trip.assumed) expect(text).toContain(`  ${path}: `);
  });
});

describe("any text", () => {
  it("stays within 80 columns, keeps control characters out, and promises nothing", () => {
    for (const text of [...allTexts(""), ...allTexts(hostile)]) {
      expect(text.split("\n").filter((line) => nColumns(line) > 80)).toEqual([]);
      expect(text).not.toMatch(/(?!\n)\p{Cc}/u);
      expect(text).not.toMatch(/\bsafe/i);
    }
  });
});
