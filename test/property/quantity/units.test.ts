import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseQuantity } from "../../../core/quantity/parse.ts";
import { convert, formatIn, quantityWords } from "../../../core/quantity/show.ts";
import { type Dimension, units } from "../../../core/quantity/units.ts";

const dimensions: Dimension[] = [...new Set(units.map((unit) => unit.dimension))];
const anyUnit = fc.constantFrom(...units);
const number = fc.double({ min: 0, max: 1, noNaN: true }).map((x) => Number((x * 100).toPrecision(6)));

describe("units", () => {
  it("a typed quantity comes back as typed after toggling the families twice", () => {
    fc.assert(
      fc.property(anyUnit, number, (unit, value) => {
        const typed = `${value} ${unit.symbol}`;
        const reading = parseQuantity(typed, unit.dimension);
        expect(reading.ok).toBe(true);
        if (!reading.ok) return;
        const home = unit.system ?? "us";
        quantityWords(reading.quantity, home === "us" ? "metric" : "us");
        expect(quantityWords(reading.quantity, home)).toBe(typed);
        expect(convert(reading.quantity, unit.symbol)).toBe(value);
      }),
    );
  });

  it("what is printed is read back as the same value", () => {
    fc.assert(
      fc.property(anyUnit, number, (unit, value) => {
        const si = value * unit.factor + unit.offset;
        const reading = parseQuantity(formatIn(si, unit.symbol, 12), unit.dimension);
        expect(reading.ok).toBe(true);
        if (!reading.ok) return;
        // Half of the twelfth decimal in the unit is rounded away, and the last digits of a sum.
        const lost = 0.5e-12 * unit.factor + 1e-12 * (Math.abs(si) + Math.abs(unit.offset));
        expect(Math.abs(reading.quantity.value - si)).toBeLessThanOrEqual(lost);
      }),
    );
  });

  it("any text is read or refused with words, and never throws", () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 150, unit: "grapheme" }),
        fc.constantFrom(...dimensions),
        (text, dimension) => {
          const reading = parseQuantity(text, dimension);
          if (reading.ok) expect(Number.isFinite(reading.quantity.value)).toBe(true);
          else expect(reading.must.length).toBeGreaterThan(10);
        },
      ),
    );
  });

  it("no spelling names two units of one kind", () => {
    for (const dimension of dimensions) {
      const spellings = units
        .filter((unit) => unit.dimension === dimension)
        .flatMap((unit) => unit.spellings);
      expect(new Set(spellings).size).toBe(spellings.length);
    }
  });
});
