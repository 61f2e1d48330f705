import { describe, expect, it } from "vitest";
import type { FoodResult } from "../../core/forecast/result.ts";
import type { Forecast } from "../../core/forecast/types.ts";
import type { Food } from "../../core/matter/food.ts";
import { findFood } from "../../core/matter/foods.ts";
import { booksText } from "../../core/tell/booksText.ts";
import { checkText, problemsText } from "../../core/tell/checkText.ts";
import { forecastText } from "../../core/tell/forecastText.ts";
import { nColumns, type Paint } from "../../core/tell/lines.ts";
import { foodClockData } from "../../core/tell/pictures/foodClock.ts";
import { planText } from "../../core/tell/planText.ts";
import type { TripFood } from "../../core/trip/types.ts";
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
    book: null,
    calendar: null,
    otherwise: [],
    drinks: [],
    lifts: [],
    warmLoad: null,
    amounts: [],
    allergens: [],
    waysOut: [],
    budget: { ice: null, food: null, unpriced: [] },
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
    expect(at("1 would be lost: cut melon")).toBeGreaterThan(0);
    expect(at("1 would be lost: cut melon")).toBeLessThan(at("galley: ice until"));
    expect(at("galley: ice until")).toBeLessThan(at("DISCARD "));
    expect(at("DISCARD ")).toBeLessThan(at("EAT NEXT "));
    expect(at("EAT NEXT ")).toBeLessThan(at("KEEP "));
  });

  it("answers in a head of at most twelve lines, details below a rule", () => {
    const [head, rest] = middle.split(`${"─".repeat(80)}\n`) as [string, string];
    expect(head.trimEnd().split("\n").length).toBeLessThanOrEqual(12);
    expect(head).toContain("One typical run, no range yet: your cooler may do a quarter better or worse.");
    expect(rest).not.toContain("typical run");
  });

  it("leads each food with what tells against it, then the rule", () => {
    // The invented melon passes its limit 78.2 h after 06:30 of day 1: day 4, 12:42.
    expect(middle).toMatch(
      /DISCARD +cut melon +over 40 °F from day 4, 12:00, warm 9 h 24 min\n +of 2 h allowed/,
    );
    expect(middle).toContain("Above the limit for longer than the chart allows. Rule: 2 h above");
    expect(middle).toMatch(/KEEP +milk +under 40 °F until eaten, day 4, 06:30/);
    expect(middle).toMatch(/KEEP +chili +under 40 °F until eaten, day 3 dinner, 18:30/);
    expect(middle).toContain("Keeps without cold: cheddar and cans.");
  });

  it("tells a food that came aboard warm when it is cold, and one that came cold nothing of the kind", () => {
    expect(middle).toMatch(/trout +comes under 40 °F by day 4, 14:00/);
    expect(middle.match(/comes under/g)).toHaveLength(1);
  });

  it("does not pass over hours without ice before more was put in", () => {
    const forecast = inventedForecast();
    const bar = { ...forecast.result.coolers[2]!, iceGaps_h: [[28, 33.5]] as [number, number][] };
    const text = forecastText(
      { ...forecast, result: { ...forecast.result, coolers: [bar] } },
      { units: "us" },
    );
    expect(text).toContain(
      "bar: no ice from day 2 morning to day 2 afternoon; then ice until day 3\nafternoon;",
    );
  });

  it("gives ranges where there are members", () => {
    expect(banded).toContain("limit 4.4 °C (consumer)\nA range holds 8 times in 10.");
    expect(banded).toMatch(
      /galley: ice likely until day 4 afternoon \(day 4 early\s+morning to day 5 early\s+morning\)/,
    );
    expect(banded).not.toContain("typical run");
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
        const value = (row: string): number => Math.round(Number(row.slice(25, 32).replace("−", "-")) * 10);
        const sum = rows.slice(0, end).reduce((total, row) => total + value(row), 0);
        expect(sum).toBe(value(rows[end]!));
      }
    }
  });

  it("puts the assumption that moves the ice most first, and counts the rest", () => {
    expect(middle).toMatch(/We assumed 7 things[^\n]*\n {2}shade of leg 2 \(camp\): 80 %, moves it 6 h/);
    expect(middle).toContain("temperature when packed of galley: 64 °F, moves it 3 h");
    expect(middle).not.toContain("openings a day of galley");
    expect(middle).toContain("`coldstow check` lists the others.");
  });

  it("says so where no assumption moves the ice by an hour", () => {
    const forecast = inventedForecast();
    const assumed = forecast.result.assumed.map((one) => ({ ...one, effect_h: 0.4 }));
    const text = forecastText({ ...forecast, result: { ...forecast.result, assumed } }, { units: "us" });
    expect(text).toContain("none moves the ice by an hour or\nmore.");
  });

  it("warns of a heavy cooler once, and defers to local rules", () => {
    expect(middle.match(/Heavy to lift[^!]*late\s+118\s+lb\s+of\s+\d+\s+lb/g)).toHaveLength(1);
    expect(middle).not.toContain("late weighs");
    expect(middle.indexOf("cheddar lies")).toBeLessThan(middle.indexOf("Heavy to lift"));
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

/** The invented forecast with one food and its item changed. */
function withFood(name: string, result: Partial<FoodResult>, item: Partial<TripFood>): Forecast {
  const forecast = inventedForecast();
  const food = forecast.result.food.map((one) => (one.name === name ? { ...one, ...result } : one));
  const items = forecast.trip.food.map((one) => (one.name === name ? { ...one, ...item } : one));
  return { ...forecast, trip: { ...forecast.trip, food: items }, result: { ...forecast.result, food } };
}

describe("reasons", () => {
  const at = (t_h: number): FoodResult["thawed_h"] => ({ p10: t_h, p50: t_h, p90: t_h });

  it("judge what is kept solid by its softening, which comes before the limit", () => {
    const iceCream = (findFood("ice cream") as { food: Food }).food;
    const soft = withFood(
      "chili",
      { thawed_h: at(20), overLimit_h: at(31), warm_h: at(29), verdict: "discard", why: "29 h above" },
      { like: iceCream, state: "frozen" },
    );
    const text = forecastText(soft, { units: "us" });
    expect(text).toMatch(/DISCARD +chili +soft from day 2, 02:00;/);
    expect(text).toMatch(/late: [^.]*; chili soft from night\s+before day 2\./);
    expect(foodClockData(soft).rows.find(({ name }) => name === "chili")!.ends_h.p50).toBe(20);
  });

  it("tell what lay in meltwater, and ask once for what was not said", () => {
    const wet = withFood(
      "milk",
      { wet_h: at(30), verdict: "discard", why: "its package lets water in and lay in meltwater for 42 h" },
      { path: "food[9]", eat_s: 72 * 3600 },
    );
    const silent = { path: "food[9].watertight", value: "false", why: "", range: null, source: "" };
    const open = { ...wet, trip: { ...wet.trip, food: [...wet.trip.food, milk(wet)], assumed: [silent] } };
    const text = forecastText(open, { units: "us" });
    expect(text).toMatch(/DISCARD +milk +lay in meltwater with raw food from day 2,\s+12:00;/);
    expect(text).toContain("Its package lets water in\n");
    expect(text).toMatch(/You did not say whether the packages of milk are watertight\. If they are,/);
    expect(forecastText({ ...open, trip: { ...open.trip, assumed: [] } }, { units: "us" })).not.toContain(
      "You did not say",
    );
  });
});

function milk({ trip }: Forecast): TripFood {
  return { ...trip.food[0]!, name: "milk", path: "food[9]", eat_s: 72 * 3600 };
}

describe("a cooler with dry ice alone", () => {
  const forecast = inventedForecast();
  const ice = forecast.trip.ice.filter(({ cooler, form }) => cooler !== 1 || form === "dry ice");
  const dry = { ...forecast, trip: { ...forecast.trip, ice } };

  it("has no ice packed, and an end of its dry ice", () => {
    expect(forecastText(dry, { units: "us" })).toMatch(/late: no ice packed; dry ice until day 2 morning;/);
  });
});

describe("other texts", () => {
  it("answers, then lists ice in pieces as they are sold, then tells the details", () => {
    const text = planText(planned(inventedForecast()), { units: "us" });
    expect(text).toMatch(
      /\nIce to get before you go: 5 pieces, 51 lb, 18\.00; on the way 9\.9 lb, 4\.50; 22\.50\s+in all/,
    );
    expect(text).toContain("\n  Buy 4 × 10-lb bags of cubes (18.00) from town before Fri 06:00: 4 galley.");
    expect(text).toContain("\n  Freeze 1 × 11-lb block at home beforehand (deep-freeze two days): 1 late.");
    expect(text).toContain("\n  On the way: 1 × 10-lb bag of cubes, day 2 (4.50): bar.");
    expect(text).not.toMatch(/\d{4}-\d{2}-\d{2}T|\b0\.00\b/);
    expect(text.indexOf("Invented fork")).toBe(0);
    expect(text.indexOf("4 × 10-lb")).toBeGreaterThan(text.indexOf("\nbar: "));
    expect(text.indexOf("4 × 10-lb")).toBeLessThan(text.indexOf("────"));
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
