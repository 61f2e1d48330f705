// FoodSafety.gov, power-outage charts of chilled and frozen food (editions 2010, 2016, 2022, the stricter where they
// differ), and the cold food storage chart. Rows read in copies, except those marked M, from memory: those are held
// to be no milder than our table of foods, and no number of theirs is tested. Words and whole days: no tolerance.
import { describe, expect, it } from "vitest";
import { foods } from "../../core/matter/foods.ts";
import { chartRowsOf } from "../../core/safety/chartRows.ts";
import { chilledChart, daysChart, frozenChart } from "../../core/safety/charts.ts";
import { verdictOf } from "../../core/safety/verdict.ts";
import { quietFood } from "../unit/safety/quietFood.ts";

const HOUR_s = 3600;
const DAY_s = 86_400;
const all = Object.values(foods);

describe("chilled food above 40 °F, food by food", () => {
  for (const food of all) {
    const row = chartRowsOf(food.key).chilled;
    if (row === null) continue;
    const verdictAt = (warm_s: number): string =>
      verdictOf({ ...quietFood, food, warm_s, over10C_s: warm_s }).verdict;
    it(`${food.key}, row "${row.row}": ${row.word}`, () => {
      if (row.word === "discard") {
        expect(verdictAt(2 * HOUR_s)).not.toBe("discard");
        expect(verdictAt(2 * HOUR_s + 1)).toBe("discard");
      } else if (row.word === "keep") expect(verdictAt(24 * HOUR_s)).not.toBe("discard");
      else {
        expect(verdictAt(8 * HOUR_s)).not.toBe("discard");
        expect(verdictAt(8 * HOUR_s + 1)).toBe("discard");
      }
    });
  }

  it("every perishable of the table but what is eaten frozen has a row", () => {
    const bare = all.filter(({ key, perishable }) => perishable && chartRowsOf(key).chilled === null);
    expect(bare.map(({ key }) => key)).toEqual(["ice cream"]);
  });

  it("a row from memory is told as such where it discards", () => {
    const rice = verdictOf({ ...quietFood, food: foods.rice!, warm_s: 3 * HOUR_s });
    expect(chartRowsOf("rice").chilled?.mark).toBe("M");
    expect(rice.rule).toContain("(from memory)");
    expect(verdictOf({ ...quietFood, warm_s: 3 * HOUR_s }).rule).not.toContain("memory");
  });

  it("a verdict quotes the row and the edition", () => {
    const { rule } = verdictOf({ ...quietFood, food: foods.milk!, warm_s: 3 * HOUR_s });
    expect(rule).toContain('row "milk, cream, yogurt"');
    expect(rule).toContain("editions 2010 to 2022");
  });
});

describe("frozen food that thaws, food by food", () => {
  for (const food of all) {
    const row = chartRowsOf(food.key).frozen;
    if (row === null) continue;
    const verdictAt = (warm_s: number): string =>
      verdictOf({ ...quietFood, food, warm_s, cameFrozen: true, thawing: true }).verdict;
    it(`${food.key}, row "${row.row}": ${row.crystals}, then ${row.thawed}`, () => {
      expect(verdictAt(0)).toBe(row.crystals === "discard" ? "discard" : "keep");
      const most_s = row.thawed === "discard after 6 h" ? 6 * HOUR_s : 2 * HOUR_s;
      if (row.crystals === "discard") return;
      if (row.thawed === "refreeze" && food.warm.startsWith("keep"))
        expect(verdictAt(24 * HOUR_s)).not.toBe("discard");
      else {
        expect(verdictAt(most_s)).not.toBe("discard");
        expect(verdictAt(most_s + 1)).toBe("discard");
      }
    });
  }
});

describe("days at or below 40 °F, food by food", () => {
  for (const food of all) {
    const row = chartRowsOf(food.key).days;
    if (row === null || food.warm.startsWith("keep")) continue;
    const verdictAt = (days: number): string =>
      verdictOf({ ...quietFood, food, cold_s: days * DAY_s }).verdict;
    it(`${food.key}, row "${row.row}": ${row.strict_days} to ${row.lenient_days} days`, () => {
      expect(verdictAt(row.strict_days)).toBe("keep");
      expect(verdictAt(row.strict_days + 0.1)).toBe(
        row.strict_days === row.lenient_days ? "discard" : "eat next",
      );
      expect(verdictAt(row.lenient_days + 0.1)).toBe("discard");
    });
  }

  it("never lets a food longer than its own words of days do", () => {
    for (const food of all) {
      const row = chartRowsOf(food.key).days;
      const first = Number(/^\d+/.exec(food.days)?.[0] ?? Number.NaN);
      if (row !== null && !Number.isNaN(first)) expect(row.strict_days, food.key).toBe(first);
    }
  });

  it("common practice alone discards nothing", () => {
    const old = verdictOf({ ...quietFood, food: foods.hummus!, cold_s: 40 * DAY_s });
    expect(old.verdict).toBe("eat next");
    expect(old.rule).toContain("common practice");
  });

  it("the strict end is the end for ready-to-eat food where somebody easily harmed eats, not for raw", () => {
    const four = { ...quietFood, vulnerable: true, cold_s: 3.5 * DAY_s };
    expect(verdictOf(four).verdict).toBe("discard");
    expect(verdictOf({ ...four, food: foods["beef steak"]! }).verdict).toBe("eat next");
  });
});

describe("the charts", () => {
  it("have plausible numbers and are wholly marked", () => {
    for (const { strict_days, lenient_days } of Object.values(daysChart)) {
      expect(strict_days).toBeGreaterThanOrEqual(1);
      expect(lenient_days).toBeGreaterThanOrEqual(strict_days);
      expect(lenient_days).toBeLessThanOrEqual(90);
    }
    for (const chart of [chilledChart, frozenChart, daysChart])
      for (const { mark } of Object.values(chart)) expect(["R", "M"]).toContain(mark);
    expect(Object.keys(chilledChart).length).toBe(51);
    expect(Object.keys(frozenChart).length).toBe(21);
  });
});

describe("frozen a second time (the project's own rule)", () => {
  it("goes next, is discarded with any warm time, and never for what the chart keeps", () => {
    expect(verdictOf({ ...quietFood, refrozen: true }).verdict).toBe("eat next");
    expect(verdictOf({ ...quietFood, refrozen: true, warm_s: 60 }).verdict).toBe("discard");
    expect(verdictOf({ ...quietFood, food: foods["ice cream"]!, refrozen: true }).verdict).toBe("discard");
    expect(verdictOf({ ...quietFood, food: foods.bread!, refrozen: true, warm_s: 60 }).verdict).toBe("keep");
  });
});
