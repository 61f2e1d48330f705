import { describe, expect, it } from "vitest";
import { parseQuantity } from "../../../core/quantity/parse.ts";
import type { Dimension } from "../../../core/quantity/units.ts";

function siOf(text: string, dimension: Dimension): number {
  const reading = parseQuantity(text, dimension);
  if (!reading.ok) throw new Error(`${text}: must be ${reading.must}`);
  return reading.quantity.value;
}

function refusalOf(text: string, dimension: Dimension): string {
  const reading = parseQuantity(text, dimension);
  if (reading.ok) throw new Error(`${text} was read as ${reading.quantity.value}`);
  return reading.must;
}

describe("a quantity is read as typed", () => {
  it.each<[string, Dimension, number]>([
    ["1 gal", "volume", 3.785411784e-3],
    ["4 qt", "volume", 3.785411784e-3],
    ["128 fl oz", "volume", 3.785411784e-3],
    ["16 cups", "volume", 3.785411784e-3],
    ["8 pints", "volume", 3.785411784e-3],
    ["45 L", "volume", 0.045],
    ["45l", "volume", 0.045],
    ["355 mL", "volume", 355e-6],
    ["33 cL", "volume", 330e-6],
    ["1 cu ft", "volume", 0.028316846592],
    ["2 ft³", "volume", 0.056633693184],
    ["1/2 gal", "volume", 1.892705892e-3],
    ["½ gal", "volume", 1.892705892e-3],
    ["1½ gal", "volume", 5.678117676e-3],
    ["1 lb", "mass", 0.45359237],
    ["10lbs", "mass", 4.5359237],
    ["1 1/2 lb", "mass", 0.680388555],
    ["16 OZ", "mass", 0.45359237],
    ["2.4 kg", "mass", 2.4],
    [".5 kg", "mass", 0.5],
    ["25 mm", "length", 0.025],
    ["12 in", "length", 0.3048],
    ["4101 ft", "length", 4101 * 0.3048],
    ["-400 m", "length", -400],
    ["4 C", "temperature", 4],
    ["-18°C", "temperature", -18],
    ["−18 ℃", "temperature", -18],
    ["4 c", "temperature", 4],
    ["40 deg F", "temperature", 40 / 9],
    ["32F", "temperature", 0],
    ["90 s", "duration", 90],
    ["1 1/2 hours", "duration", 5400],
    ["2 days", "duration", 172800],
    ["2 m/s", "speed", 2],
    ["36 km/h", "speed", 10],
    ["1 mph", "speed", 0.44704],
    ["1 kn", "speed", 1852 / 3600],
    ["40 %", "share", 0.4],
    ["100%", "share", 1],
    ["0.62 W/K", "conductance", 0.62],
    ["1e1 kg", "mass", 10],
  ])("%s", (text, dimension, value) => {
    expect(siOf(text, dimension)).toBeCloseTo(value, 12);
  });

  it("keeps the typed words and the typed number", () => {
    const reading = parseQuantity("  98.6 F ", "temperature");
    expect(reading).toMatchObject({ ok: true, quantity: { typed: "98.6 F", typedValue: 98.6 } });
  });
});

describe("what has no clear meaning is refused with what it must be", () => {
  it("names the units for a bare number", () => {
    expect(refusalOf("40", "temperature")).toBe("a temperature with its unit, such as 4 C or 40 F");
    expect(refusalOf("45", "volume")).toContain("45 qt");
  });

  it("refuses a comma and says what to write", () => {
    expect(refusalOf("1,5 kg", "mass")).toMatch(/; write 1\.5 kg$/);
    expect(refusalOf("0 , 65 kg", "mass")).toMatch(/; write 0\.65 kg$/);
    expect(refusalOf("1,250 m", "length")).toMatch(/; write 1250 m or 1\.250 m$/);
    expect(refusalOf("1,250,000 g", "mass")).toMatch(/; write 1250000 g without commas$/);
  });

  it.each<[string, Dimension]>([
    ["", "mass"],
    ["kg", "mass"],
    ["NaN kg", "mass"],
    ["Infinity kg", "mass"],
    ["1e999 kg", "mass"],
    ["1e300 kg", "mass"],
    ["1/0 gal", "volume"],
    ["0/0 gal", "volume"],
    ["-3 lb", "mass"],
    ["-1 h", "duration"],
    ["104 %", "share"],
    ["-5 %", "share"],
    ["-300 C", "temperature"],
    ["300 K", "temperature"],
    ["10 lb", "volume"],
    ["12 oz", "volume"],
    ["10 qt", "mass"],
    ["5 ML", "volume"],
    ["5 Mm", "length"],
    ["20 m", "duration"],
    ["1 2 kg", "mass"],
    ["1.2.3 kg", "mass"],
    ["5 ft 3 in", "length"],
    ["0x10 kg", "mass"],
    [`1${"0".repeat(200)} kg`, "mass"],
  ])("%s as %s", (text, dimension) => {
    expect(refusalOf(text, dimension)).not.toBe("");
  });

  it("says what probably was meant", () => {
    expect(refusalOf("12 oz", "volume")).toContain("fl oz");
    expect(refusalOf("20 m", "duration")).toContain("min");
    expect(refusalOf("280 K", "temperature")).toContain("kelvin");
    expect(refusalOf("10 lb", "volume")).toContain("weight");
  });
});
