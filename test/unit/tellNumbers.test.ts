import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bar, nColumns, wrap } from "../../core/tell/lines.ts";
import { bare, roundToSum } from "../../core/tell/numbers.ts";

describe("parts that add up", () => {
  it("gives the missing step to the largest remainder", () => {
    // Thirds of one: plain rounding would show 0.3 three times and a total of 1.0.
    expect(roundToSum([1 / 3, 1 / 3, 1 / 3], 1)).toEqual({ parts: [0.4, 0.3, 0.3], total: 1 });
  });

  it("keeps the sum and stays within one step of every part, also with parts below nothing", () => {
    const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 12 }), (values) => {
        const { parts, total } = roundToSum(values, 1);
        const steps = (shown: number): number => Math.round(shown * 10);
        expect(parts.reduce((sum, part) => sum + steps(part), 0)).toBe(steps(total));
        const exact = values.reduce((sum, one) => sum + one, 0);
        expect(Math.abs(total - exact)).toBeLessThanOrEqual(0.05 + 1e-6);
        parts.forEach((part, i) => {
          expect(Math.abs(part - values[i]!)).toBeLessThan(0.1 + 1e-6);
        });
      }),
    );
  });

  it("refuses what is not a number", () => {
    expect(() => roundToSum([Number.NaN], 1)).toThrow("value must be");
  });

  it("keeps the decimals that a column lines up on", () => {
    expect(bare(1, "kg", 1)).toBe("1.0");
    expect(bare(-0.45359237, "lb", 1)).toBe("−1.0");
  });
});

describe("lines of a text", () => {
  it("never grow over their width and lose no letter", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", maxLength: 200 }),
        fc.integer({ min: 1, max: 40 }),
        (text, width) => {
          const lines = wrap(text, width);
          for (const line of lines) expect(nColumns(line)).toBeLessThanOrEqual(width);
          expect(lines.join("").replace(/ /g, "")).toBe(text.replace(/ /g, ""));
        },
      ),
    );
  });

  it("draw a bar in proportion and never past its room", () => {
    expect(bar(0, 8)).toBe("");
    expect(bar(0.5, 8)).toBe("████");
    expect(bar(2, 8)).toBe("████████");
  });
});
