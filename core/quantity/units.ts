/** What a quantity measures. Volumes of water are volumes, not masses. */
export type Dimension =
  | "length"
  | "volume"
  | "mass"
  | "temperature"
  | "duration"
  | "speed"
  | "share"
  | "conductance";

/** Which family of units a person reads. */
export type UnitSystem = "us" | "metric";

/** One unit: SI value = number × `factor` + `offset`. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset: number;
  /** null: read by both families. */
  readonly system: UnitSystem | null;
  /** Other spellings, lower case, no degree sign, no space. */
  readonly spellings: readonly string[];
}

const GALLON_M3 = 3.785411784e-3;
const POUND_KG = 0.45359237;
const FOOT_M = 0.3048;

type Row = readonly [symbol: string, factor: number, system: UnitSystem | null, spellings: string];

function rows(dimension: Dimension, list: readonly Row[]): Unit[] {
  return list.map(([symbol, factor, system, spellings]) => ({
    symbol,
    dimension,
    factor,
    offset: 0,
    system,
    spellings: [symbol.toLowerCase().replace(/ /g, ""), ...spellings.split(" ").filter((s) => s !== "")],
  }));
}

/**
 * Every unit that may be typed. The US gallon (231 cubic inches), the avoirdupois pound, the foot and the knot are
 * exact by definition; a US quart is a quarter gallon, a cup a sixteenth, a fluid ounce 1/128.
 * SI values: m, m³, kg, °C, s, m/s, a fraction of one, W/K.
 *
 * @source derivation
 */
export const units: readonly Unit[] = [
  ...rows("length", [
    ["mm", 1e-3, "metric", "millimeter millimeters millimetre millimetres"],
    ["cm", 1e-2, "metric", "centimeter centimeters centimetre centimetres"],
    ["m", 1, "metric", "meter meters metre metres"],
    ["in", FOOT_M / 12, "us", "inch inches"],
    ["ft", FOOT_M, "us", "foot feet"],
  ]),
  ...rows("volume", [
    ["mL", 1e-6, "metric", "milliliter milliliters millilitre millilitres"],
    ["cL", 1e-5, "metric", "centiliter centiliters centilitre centilitres"],
    ["L", 1e-3, "metric", "liter liters litre litres"],
    ["m3", 1, "metric", "cubicmeter cubicmeters cubicmetre cubicmetres"],
    ["fl oz", GALLON_M3 / 128, "us", "fluidounce fluidounces"],
    ["cup", GALLON_M3 / 16, "us", "cups"],
    ["pt", GALLON_M3 / 8, "us", "pint pints"],
    ["qt", GALLON_M3 / 4, "us", "qts quart quarts"],
    ["gal", GALLON_M3, "us", "gals gallon gallons"],
    ["cu ft", FOOT_M * FOOT_M ** 2, "us", "ft3 cubicfoot cubicfeet"],
  ]),
  ...rows("mass", [
    ["g", 1e-3, "metric", "gram grams"],
    ["kg", 1, "metric", "kgs kilo kilos kilogram kilograms"],
    ["oz", POUND_KG / 16, "us", "ounce ounces"],
    ["lb", POUND_KG, "us", "lbs pound pounds"],
  ]),
  ...temperatures(),
  ...rows("duration", [
    ["s", 1, null, "sec secs second seconds"],
    ["min", 60, null, "mins minute minutes"],
    ["h", 3600, null, "hr hrs hour hours"],
    ["d", 86400, null, "day days"],
  ]),
  ...rows("speed", [
    ["m/s", 1, "metric", "mps"],
    ["km/h", 1 / 3.6, "metric", "kph kmh"],
    ["mph", (FOOT_M * 5280) / 3600, "us", "mi/h"],
    ["kn", 1852 / 3600, null, "kt kts knot knots"],
  ]),
  ...rows("share", [["%", 0.01, null, "percent pct"]]),
  ...rows("conductance", [["W/K", 1, null, "w/c"]]),
];

function temperatures(): Unit[] {
  const celsius = ["c", "degc", "celsius", "degreesc", "degreescelsius"];
  const fahrenheit = ["f", "degf", "fahrenheit", "degreesf", "degreesfahrenheit"];
  const one = { dimension: "temperature", factor: 1, offset: 0 } as const;
  return [
    { ...one, symbol: "°C", system: "metric", spellings: celsius },
    { ...one, symbol: "°F", factor: 5 / 9, offset: -160 / 9, system: "us", spellings: fahrenheit },
  ];
}

/** Mega- and milli- differ only by case; such spellings could mean either, so they name no unit. */
const AMBIGUOUS: ReadonlySet<string> = new Set(["ML", "Ml", "Mm", "Mg"]);

/**
 * The unit of `dimension` that `spelling` names, whatever its case, spaces or degree sign; undefined for none.
 *
 * @param spelling as typed, without the number
 */
export function unitNamed(spelling: string, dimension: Dimension): Unit | undefined {
  const bare = spelling.replace(/[°º\s.]/g, "");
  if (AMBIGUOUS.has(bare)) return undefined;
  const key = bare.toLowerCase();
  return units.find((unit) => unit.dimension === dimension && unit.spellings.includes(key));
}
