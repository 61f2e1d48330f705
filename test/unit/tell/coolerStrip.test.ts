import { describe, expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import { coolerStrip } from "../../../core/tell/pictures/coolerStrip.ts";
import { type CoolerStripData, coolerStripData } from "../../../core/tell/pictures/coolerStripData.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const options = { width: 680, units: "metric", id: "one" } as const;
const rich = plannedForecast();
const data = coolerStripData(rich);
const svg = coolerStrip(data, options);
const row = (name: string): CoolerStripData["rows"][number] =>
  data.rows.find(({ cooler }) => cooler === name)!;
/** Hours from departure, Saturday 07:30, to an hour of a day of the trip. */
const at_h = (day: number, clock_h: number): number => (day - 1) * 24 + clock_h - 7.5;

describe("the trip at a glance", () => {
  it("has a row for each cooler, in the trip's order, with its number and size", () => {
    expect(data.rows.map(({ cooler }) => cooler)).toEqual(["early", "late", "frozen", "drinks"]);
    for (const told of ["1 early, 70 L", "2 late, 100 L", "3 frozen, 60 L", "4 drinks, 50 L"])
      expect(svg).toContain(`>${told}<`);
  });

  it("shows a dinner under the cooler that its food lies in by then", () => {
    // The file empties frozen into late on day 5 at 09:00; curry and peas are for the dinner of day 6.
    expect(row("late").dinners).toContainEqual({ t_h: at_h(6, 18.5), words: "curry +1" });
    expect(row("frozen").dinners).toEqual([]);
    expect(row("early").dinners).toEqual([
      { t_h: at_h(1, 18.5), words: "chicken thighs" },
      { t_h: at_h(2, 18.5), words: "green salad" },
    ]);
    // A lunch is no dinner.
    expect(svg).not.toContain(">cooked ham<");
  });

  it("says of ice that is fetched when to leave for it", () => {
    // By the plan somebody leaves at 13:30 to be at the shop at 15:00; by the file it goes in at 16:00.
    expect(row("early").marks).toEqual([
      { t_h: at_h(3, 16), cooler: "early", what: "add ice", words: "2 × 5 kg, leave 13:30" },
    ]);
    const bare = coolerStripData(plannedForecast({ plan: { iceRuns: [] } }));
    expect(bare.rows[0]!.marks[0]!.words).toBe("2 × 5 kg");
  });

  it("draws the ice of an emptied cooler no further than its end, and says so there", () => {
    expect(row("frozen").emptied).toEqual({ t_h: at_h(5, 9), into: "late" });
    expect(svg.includes(">empty: all of it in late<")).toBe(true);
    const end = 48 + (at_h(5, 9) / data.clock.length_h) * (680 - 48 - 14);
    const lanes = [...svg.matchAll(/<path d="(M[^"]*)" fill="none" stroke="var\(--ink\)" stroke-width="2"/g)];
    const ends = lanes.map(([, d]) => Number(/([\d.]+),[\d.]+$/.exec(d!)![1]));
    expect(ends).toHaveLength(4);
    expect(Math.abs(ends[2]! - end)).toBeLessThan(1);
    for (const i of [0, 1, 3]) expect(ends[i]!).toBeGreaterThan(660);
  });

  it("tapes the lid that stays shut, until it is opened", () => {
    expect(row("late").sealed_h).toBe(at_h(4, 18.5));
    const width = (at_h(4, 18.5) / data.clock.length_h) * (680 - 48 - 14);
    const bar = /<rect x="48" y="[\d.]+" width="([\d.]+)" height="7" fill="url\(#tape-one\)"/.exec(svg);
    expect(Number(bar![1])).toBeCloseTo(width, 0);
    const open = coolerStripData({
      ...rich,
      trip: { ...rich.trip, coolers: rich.trip.coolers.map((one) => ({ ...one, sealedUntil_s: null })) },
    });
    expect(coolerStrip(open, options)).not.toContain("tape-one");
  });

  it("tells everything in words: a sentence a cooler, and in the description what is done when", () => {
    const title = /<title[^>]*>([^<]*)/.exec(svg)![1]!;
    for (const name of ["early", "late", "frozen", "drinks"]) expect(title).toContain(`${name}: ice `);
    expect(title).toContain("emptied into late Wed day 5, 09:00");
    const desc = /<desc[^>]*>([^<]*)/.exec(svg)![1]!;
    for (const told of [
      "add ice 2 × 5 kg, leave 13:30, Mon day 3, 16:00",
      "stays shut until Tue day 4, 18:30",
      "dinner minced beef, Tue day 4, 18:30",
      "camp from Sat day 1, 10:30",
    ])
      expect(desc).toContain(told);
  });

  it("draws no range for a single run, and says that it is one", () => {
    const single = coolerStrip(coolerStripData(forecast(rich.trip)), options);
    expect(single).toContain("One typical run, no range yet.");
    expect(single).not.toContain('fill="url(#luck-one)"');
    expect(svg).toContain('fill="url(#luck-one)"');
    expect(svg).not.toContain("One typical run");
  });

  it("keeps eight coolers on a sheet of paper", () => {
    const eight = { ...data, rows: [...data.rows, ...data.rows] };
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(coolerStrip(eight, options))!;
    // A4 within its margins: 186 by 273 mm.
    expect(Number(height) / Number(width)).toBeLessThan(273 / 186);
  });
});
