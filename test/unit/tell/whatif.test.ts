/** Texts of what-if runs. Every result is invented; what is expected follows from its numbers by hand. */
import { describe, expect, it } from "vitest";
import { compareText } from "../../../core/tell/compareText.ts";
import { gainHours, gainIce, gainWords, inHundred, NOTHING } from "../../../core/tell/gainWords.ts";
import { habitsText } from "../../../core/tell/habitsText.ts";
import { nColumns } from "../../../core/tell/lines.ts";
import { stressText } from "../../../core/tell/stressText.ts";
import { band, inventedCompare, inventedHabits, inventedStress } from "../fixtures/whatif.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const hostile = ` <b>&"\u001b[31m\n${"W".repeat(190)}`;

describe("a gain in words", () => {
  it("carries a likely value and its range, with a sign at each end where they differ", () => {
    expect(gainHours(band(6.2, 14.1, 25.4))).toBe("+14 h, 6 to 25");
    expect(gainHours(band(-2, 3.4, 9))).toBe("+3 h, −2 to +9");
    expect(gainHours(band(-8, -4, -1))).toBe("−4 h, −8 to −1");
  });

  it("says that nobody would notice only where neither end would be noticed", () => {
    expect(gainHours(band(-0.6, 0.2, 0.9))).toBe(NOTHING);
    expect(gainHours(band(-0.6, 0.2, 5))).toBe("likely nothing, could be −1 to +5 h");
    expect(gainHours(band(-6, 0.4, 0.9))).not.toBe(NOTHING);
  });

  it("keeps an end that the trip does not reach", () => {
    expect(gainHours(band(2, 9, null))).toBe("+9 h, 2 to more than this trip shows");
    expect(gainHours(band(null, null, null))).toBe("cannot be told on this trip");
    expect(gainHours(band(0.1, 0.2, null))).not.toBe(NOTHING);
  });

  it("tells ice in the reader's unit", () => {
    expect(gainIce(band(-0.9, 2.1, 3.4), "us")).toBe("+4.6 lb, −2 lb to +7.5 lb");
    expect(gainIce(band(-0.9, 2.1, 3.4), "metric")).toBe("+2.1 kg, −900 g to +3.4 kg");
  });

  it("turns hours saved over the limit round, the better end last", () => {
    const none = band(0, 0, 0);
    const words = gainWords(
      { food_h: band(2, 3, 4), warm_h: band(1, 4, 9), ice_h: none, ice_kg: none },
      "us",
    );
    expect(words).toBe(`food +3 h, 2 to 4; hours over the limit −4 h, −9 to −1; ice ${NOTHING}`);
  });

  it("never rounds some failures to none, nor some successes to none", () => {
    expect([0, 0.001, 0.31, 0.999, 1].map(inHundred)).toEqual([
      "none",
      "1 in 100",
      "31 in 100",
      "99 in 100",
      "all",
    ]);
  });
});

describe("habits in words", () => {
  const us = habitsText(inventedHabits(), { units: "us" });

  it("say how many members, and what a range is worth", () => {
    expect(flat(us)).toContain("A range holds 8 times in 10; 256 members (seed 7)");
  });

  it("tell all bad, as written and all good, food before ice", () => {
    expect(flat(us)).toContain("From all bad to all good: food +72 h, 60 to 80;");
    expect(flat(us)).toContain("Ice lasts this many times as long: 3.3, 2.6 to 4.1.");
    expect(flat(us)).toContain(
      "every habit good food in its limit to the return, nine times in ten; ice likely to the return",
    );
    for (const line of ["every habit bad", "as written", "every habit good"])
      expect(us.indexOf(line)).toBeGreaterThan(0);
  });

  it("keep the order of the result and tell food before ice in each", () => {
    const at = (words: string): number => us.indexOf(words);
    expect(at(" 1. chill the drinks")).toBeLessThan(at(" 2. keep it in the shade"));
    for (const block of us.split(/\n(?= \d\. )/).slice(1))
      expect(block.indexOf("food ")).toBeLessThan(block.indexOf("ice "));
  });

  it("name what makes no difference, and give it no rank", () => {
    expect(flat(us)).toContain("On this trip nothing you would notice: hang a wet cloth over it.");
    expect(us).not.toMatch(/\d\. hang a wet cloth/);
  });

  it("tell a good way that the file already has as given up", () => {
    expect(flat(us)).toContain("now: chilled 12 h; without it: not chilled food −5 h, −9 to −2");
  });

  it("put what people say beside what came out, on the same lines", () => {
    const row = us.split("\n").find((line) => line.startsWith("“Chilling"))!;
    expect(row).toMatch(/^“Chilling the cooler first.* │ 1\.1 times as long, 1\.0 to 1\.2\.$/);
    expect(us).toContain("(common");
    expect(flat(us)).toContain("Do the two agree? In part.");
    expect(flat(us)).not.toMatch(/myth|wrong|should|must /i);
  });

  it("follow the reader's units", () => {
    expect(us).toContain("40 °F");
    expect(habitsText(inventedHabits(), { units: "metric" })).toContain("4.4 °C");
  });
});

describe("stress in words", () => {
  const us = stressText(inventedStress(), { units: "us" });

  it("says robust only where every case holds", () => {
    expect(us).not.toMatch(/robust/i);
    expect(us).toContain("Breaks in 3 of 6 cases: hotter, no shade and half the ice. 3 hold.");
    expect(stressText(inventedStress("", true), { units: "us" })).toContain("Robust: all 6 cases hold.");
    const claimed = { ...inventedStress(), robust: true };
    expect(stressText(claimed, { units: "us" })).not.toMatch(/robust/i);
  });

  it("says in words whether a case holds, and of a hundred how many fail", () => {
    expect(us).toMatch(/^HOLDS {3}as written {5}1 in 100 fail/m);
    expect(us).toMatch(/^BREAKS {2}no shade {7}74 in 100 fail/m);
    expect(us).toMatch(/^BREAKS {2}half the ice {3}all fail/m);
    expect(flat(us)).toContain("a case holds when no more than 10 in 100 members fail");
  });

  it("gives the first food with its range, before the ice", () => {
    // After 06:30 of day 1: 31 h is day 2, 13:30; 38 h day 2, 20:30; 46 h day 3, 04:30; 71 h day 4, 05:30.
    const half = flat(us).split("BREAKS half the ice")[1]!;
    expect(half).toContain(
      "cut melon (galley) first over 40 °F: day 2 evening, could be day 2 afternoon to night before day 3",
    );
    expect(half.indexOf("food:")).toBeLessThan(half.indexOf("ice:"));
    expect(flat(us)).toContain(
      "first over 40 °F: likely not on this trip, could be from day 4 early morning",
    );
    expect(flat(us)).toContain("could be from day 3 afternoon or not at all");
    expect(flat(us)).toContain("under 40 °F, nine times in ten; cut melon (galley) would go first");
  });
});

describe("trips side by side in words", () => {
  const us = compareText(inventedCompare(), { units: "us" });

  it("tell what is at risk, then cold food, then ice, each with its range", () => {
    expect(flat(us)).toContain("food at risk: cut melon and ham, opened (62 in 100 members fail)");
    expect(flat(us)).toContain("no food at risk (no member fails)");
    expect(flat(us)).toMatch(
      /galley: cold food likely 2 days 10 h, could be 2 days 2 h to 2 days 22 h; ice likely/,
    );
    expect(flat(us)).toContain("to past the return");
  });

  it("give differences over the same members, and say where there is none", () => {
    expect(us).toContain("From A to B, galley: ice +26 h, 17 to 34.");
    expect(us).toContain("From A to B, bar: nothing you would notice of the ice.");
  });

  it("line up what each takes, a price that nobody gave as missing", () => {
    const row = (name: string): string[] =>
      us
        .split("\n")
        .find((line) => line.startsWith(name))!
        .slice(24)
        .trim()
        .split(/ {2,}/);
    expect(row("price of the ice")).toEqual(["18.00", "24.50", "–"]);
    expect(row("ice in all")).toEqual(["44 lb", "57 lb", "49 lb"]);
    expect(row("things to do")).toEqual(["1", "2", "3"]);
    expect(compareText(inventedCompare(), { units: "metric" })).toMatch(/^ice in all +20 kg +26 kg +22 kg$/m);
  });
});

describe.each([60, 80, 133, 200])("any what-if text %d columns wide", (width) => {
  it("stays within them, keeps control characters out, promises nothing, and says so", () => {
    for (const namesEnd of ["", hostile])
      for (const units of ["us", "metric"] as const) {
        const options = { units, width };
        const texts = [
          habitsText(inventedHabits(namesEnd), options),
          stressText(inventedStress(namesEnd), options),
          compareText(inventedCompare(namesEnd, 4), options),
        ];
        for (const text of texts) {
          expect(text.split("\n").filter((line) => nColumns(line) > width)).toEqual([]);
          expect(text).not.toMatch(/(?!\n)\p{Cc}/u);
          expect(text).not.toMatch(/\bsafe/i);
          expect(text).toContain("! This is reckoned, not measured.");
        }
      }
  });
});

it("refuses a width that nobody reads", () => {
  expect(() => habitsText(inventedHabits(), { units: "us", width: 20 })).toThrow("width must be 60…200");
});
