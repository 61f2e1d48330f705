import { describe, expect, it } from "vitest";
import { DomainError } from "../../../core/quantity/errors.ts";
import { parseQuantity, type Quantity } from "../../../core/quantity/parse.ts";
import {
  convert,
  formatIn,
  lengthWords,
  massWords,
  quantityWords,
  speedWords,
  temperatureWords,
  volumeWords,
} from "../../../core/quantity/show.ts";
import type { Dimension } from "../../../core/quantity/units.ts";

function read(text: string, dimension: Dimension): Quantity {
  const reading = parseQuantity(text, dimension);
  if (!reading.ok) throw new Error(reading.must);
  return reading.quantity;
}

describe("conversion", () => {
  it("gives back the typed number in the typed unit, without rounding", () => {
    expect(convert(read("98.6 F", "temperature"), "°F")).toBe(98.6);
    expect(convert(read("0.1 qt", "volume"), "qt")).toBe(0.1);
  });

  it("converts to another unit of the same kind and refuses another kind", () => {
    expect(convert(read("20 lb", "mass"), "kg")).toBeCloseTo(9.0718474, 10);
    expect(convert(read("212 F", "temperature"), "°C")).toBeCloseTo(100, 10);
    expect(() => convert(read("20 lb", "mass"), "L")).toThrow(DomainError);
  });
});

describe("the reader's units", () => {
  it("leaves a quantity as typed when its unit is the reader's, so that toggling twice changes nothing", () => {
    const bag = read("20 lb", "mass");
    expect(quantityWords(bag, "metric")).toBe("9.1 kg");
    expect(quantityWords(bag, "us")).toBe("20 lb");
    expect(quantityWords(read("40 %", "share"), "us")).toBe("40 %");
    expect(quantityWords(read("12 h", "duration"), "us")).toBe("12 h");
  });

  it("shows temperatures, weights, volumes, lengths and speeds", () => {
    expect([temperatureWords(4.44, "us"), temperatureWords(3.26, "metric")]).toEqual(["40 °F", "3.3 °C"]);
    expect([massWords(0.2, "us"), massWords(2.45, "us"), massWords(73.5, "us")]).toEqual([
      "7 oz",
      "5.4 lb",
      "162 lb",
    ]);
    expect([massWords(0.35, "metric"), massWords(0.9999, "metric"), massWords(0, "metric")]).toEqual([
      "350 g",
      "1 kg",
      "0 kg",
    ]);
    expect([volumeWords(355e-6, "us"), volumeWords(0.0615, "us")]).toEqual(["12 fl oz", "65 qt"]);
    expect([volumeWords(355e-6, "metric"), volumeWords(0.0615, "metric")]).toEqual(["355 mL", "62 L"]);
    expect([lengthWords(0.038, "us"), lengthWords(1250, "us")]).toEqual(["1.5 in", "4101 ft"]);
    expect([lengthWords(0.038, "metric"), lengthWords(0.62, "metric"), lengthWords(1250, "metric")]).toEqual([
      "38 mm",
      "62 cm",
      "1250 m",
    ]);
    expect([speedWords(1.8, "us"), speedWords(1.8, "metric")]).toEqual(["4 mph", "1.8 m/s"]);
  });

  it("prints a true minus, no negative zero, and refuses what is not a number or not a unit", () => {
    expect(formatIn(-18, "°C", 1)).toBe("−18 °C");
    expect(formatIn(-0.04, "°C", 1)).toBe("0 °C");
    expect(() => formatIn(Number.NaN, "kg", 1)).toThrow(DomainError);
    expect(() => formatIn(1, "stone", 1)).toThrow(DomainError);
  });
});
