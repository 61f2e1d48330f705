/** Where a result has a band, a person reads it. The forecast is invented. */
import { describe, expect, it } from "vitest";
import { largestSaving } from "../../../core/tell/cold.ts";
import { forecastText } from "../../../core/tell/forecastText.ts";
import { nColumns } from "../../../core/tell/lines.ts";
import { foodClock, foodClockData } from "../../../core/tell/pictures/foodClock.ts";
import { iceBandData } from "../../../core/tell/pictures/iceBand.ts";
import { inventedForecast } from "../fixtures/forecast.ts";
import { band, inventedEnsemble } from "../fixtures/whatif.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const text = forecastText(inventedEnsemble(), { units: "us" });

describe("a forecast with members", () => {
  it("says how many members and what a range is worth, and nothing of a single run", () => {
    expect(text).toContain("A range holds 8 times in 10; 256 members.");
    expect(text).not.toContain("a quarter better or worse");
  });

  it("gives food over its limit a likely moment and its range, and how often", () => {
    expect(flat(text)).toMatch(
      /over 40 °F from day 4 noon, could be night before day 4 to night before day 5 \(93 in 100 members\)/,
    );
  });

  it("gives warm time its range, against what is allowed", () => {
    // 9.4 h with 16 % either way: 7.896 h to 10.904 h.
    expect(flat(text)).toContain("warm 9 h 24 min, could be 7 h 53 min to 11 h, of 2 h allowed");
  });

  it("gives dry ice the range of its series", () => {
    // Gone at 28 h, or 16 % sooner or later; half-hour steps, told to the hour.
    const out_h = iceBandData(inventedEnsemble(), 1).dryIceOut_h!;
    expect([out_h.p10, out_h.p50, out_h.p90]).toEqual([23.5, 28, 32.5]);
    expect(flat(text)).toContain("dry ice likely until day 2, 10:00 (day 2, 06:00 to 15:00)");
  });

  it("gives ice and the warmest food of a day a likely value and both ends", () => {
    const galley = text.slice(text.indexOf("\ngalley\n"));
    const day4 = galley.split("\n").find((line) => line.startsWith("day 4"))!;
    expect(day4).toMatch(/^day 4 Mon +6 \(0–11\) +0 \(0–5\) +43 \(38–48\)/);
  });

  it("does not call a food never cold that one member in ten cools", () => {
    const forecast = inventedEnsemble();
    const food = forecast.result.food.map((one) =>
      one.name === "trout" ? { ...one, belowLimit_h: band(82, null, null) } : one,
    );
    const said = flat(forecastText({ ...forecast, result: { ...forecast.result, food } }, { units: "us" }));
    expect(said).toContain("likely never comes under 40 °F");
    expect(said).not.toMatch(/trout never comes/);
  });

  it("does not call a likely loss what is lost in few members only", () => {
    const forecast = inventedEnsemble();
    const food = forecast.result.food.map((one) =>
      one.name === "cut melon" ? { ...one, overLimit_frac: 0.2 } : one,
    );
    const said = flat(forecastText({ ...forecast, result: { ...forecast.result, food } }, { units: "us" }));
    expect(said).toContain("1 could be lost, though likely not: cut melon");
  });

  it("names its largest doubts with what would narrow them, and no advice that is none", () => {
    expect(flat(text)).toContain(
      "doubt: Its range is mostly: this cooler's walls and joint 38 %, weight of the ice 20 %, the weather 11 %, what the food holds 6 %.",
    );
    expect(flat(text)).toContain("weigh the ice (by 11 %); look at a fresh forecast");
    expect(text).not.toContain("nothing: it is small");
    expect(text.indexOf("where the cold went")).toBeLessThan(text.indexOf("doubt: "));
    expect(forecastText(inventedForecast(), { units: "us" })).not.toContain("doubt: ");
  });

  it.each([60, 72, 80, 120, 200])("stays within %d columns", (width) => {
    for (const units of ["us", "metric"] as const)
      for (const forecast of [inventedForecast(), inventedEnsemble(), inventedEnsemble("W".repeat(90))]) {
        const lines = forecastText(forecast, { units, width }).split("\n");
        expect(lines.filter((line) => nColumns(line) > width)).toEqual([]);
      }
  });

  it("draws a food that came aboard warm as likely under its limit before it surely is", () => {
    const forecast = inventedEnsemble();
    const food = forecast.result.food.map((one) =>
      one.name === "trout" ? { ...one, belowLimit_h: band(79, 80, 82) } : one,
    );
    const data = foodClockData({ ...forecast, result: { ...forecast.result, food } });
    const svg = foodClock(
      { ...data, rows: data.rows.filter(({ name }) => name === "trout") },
      {
        width: 900,
        units: "us",
        id: "one",
      },
    );
    // 78 h is day 4, 12:30; 79 h to 82 h after departure is 13:30 to 16:30, told to the full hour after.
    expect(svg.replace(/<\/text><text[^>]*>/g, " ")).toContain(
      "over 40 °F to Mon 15:00 (Mon 14:00 to Mon 17:00)",
    );
    const fills = [...svg.matchAll(/<rect [^>]*height="12"[^>]*fill="([^"]+)"/g)].map(([, fill]) => fill);
    expect(fills).toEqual(["var(--heatFill)", "url(#luck-one)", "url(#likely-one)", "var(--sure)"]);
  });
});

describe("the bar of a food", () => {
  it("that may be over its limit before it surely was under it shows the worse", () => {
    const data = foodClockData(inventedEnsemble());
    const row = data.rows.find(({ name }) => name === "ham, opened")!;
    const warm = { ...row, aboard_h: 0, coldBy_h: band(4, 9, null), ends_h: band(0, 1, 25), end_h: 40 };
    const svg = foodClock({ ...data, rows: [warm] }, { width: 900, units: "us", id: "one" });
    const fills = [...svg.matchAll(/<rect [^>]*height="12"[^>]*fill="([^"]+)"/g)].map(([, fill]) => fill);
    // To 4 h it is over; with luck it is under to 25 h; likely or surely it never is.
    expect(fills).toEqual(["var(--heatFill)", "url(#luck-one)", "var(--heatFill)"]);
  });
});

describe("the largest way that cold goes", () => {
  it("is named with what would cut it, for the largest account alone", () => {
    const forecast = inventedForecast();
    expect(largestSaving(forecast, 0)).toMatch(/^walls\. What would cut it: .*cover over it/);
    const cooler = forecast.result.coolers[0]!;
    const coolers = [{ ...cooler, heat_kJ: { ...cooler.heat_kJ, warmItems: 9000 } }];
    const warm = { ...forecast, result: { ...forecast.result, coolers } };
    expect(largestSaving(warm, 0)).toBe(
      "warm food and drink. What would cut it: chilling them before they are packed.",
    );
    expect(largestSaving(warm, 0)).not.toMatch(/\d/);
  });

  it("is nothing where no heat came in", () => {
    const forecast = inventedForecast();
    const cooler = forecast.result.coolers[0]!;
    const heat_kJ = { ...cooler.heat_kJ };
    for (const key of Object.keys(heat_kJ) as (keyof typeof heat_kJ)[]) heat_kJ[key] = -1;
    const cold = { ...forecast, result: { ...forecast.result, coolers: [{ ...cooler, heat_kJ }] } };
    expect(largestSaving(cold, 0)).toBeNull();
  });
});
