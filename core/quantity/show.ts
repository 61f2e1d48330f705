import { DomainError } from "./errors.ts";
import type { Quantity } from "./parse.ts";
import { type Dimension, type Unit, type UnitSystem, units } from "./units.ts";

/**
 * The quantity's number in another unit. In its own unit it is the very number typed, with no rounding on the way.
 *
 * @param unit a symbol of the table of units, such as `qt` or `°F`
 * @throws DomainError when the unit measures something else
 */
export function convert(quantity: Quantity, unit: string): number {
  if (quantity.unit.symbol === unit) return quantity.typedValue;
  return fromSi(quantity.value, unitOf(unit, quantity.dimension));
}

/**
 * Prints an SI value in `unit` with so many decimals at most; trailing zeros go, the minus is a true minus.
 * `parseQuantity` reads it back.
 *
 * @param valueSI m, m³, kg, °C, s, m/s, a fraction of one, or W/K
 * @param unit a symbol of the table of units
 * @param digits decimals, 0…12
 * @throws DomainError for an unknown unit or a value that is not finite
 */
export function formatIn(valueSI: number, unit: string, digits: number): string {
  if (!Number.isFinite(valueSI)) throw new DomainError(`a value in ${unit} must be finite, got ${valueSI}`);
  const found = unitOf(unit);
  const number = Number(fromSi(valueSI, found).toFixed(digits));
  return `${String(number === 0 ? 0 : number).replace(/^-/, "−")} ${found.symbol}`;
}

/**
 * The quantity as this reader sees it: what was typed when its unit belongs to the reader's family, else converted.
 * Switching families twice therefore returns what was typed.
 */
export function quantityWords(quantity: Quantity, system: UnitSystem): string {
  if (quantity.unit.system === null || quantity.unit.system === system) return quantity.typed;
  return words[quantity.dimension](quantity.value, system);
}

/** "38 °F" or "3.3 °C": whole degrees Fahrenheit, tenths of a degree Celsius. */
export function temperatureWords(temperature_C: number, system: UnitSystem): string {
  return system === "us" ? formatIn(temperature_C, "°F", 0) : formatIn(temperature_C, "°C", 1);
}

/** "12 oz", "5.4 lb", "162 lb" or "350 g", "2.5 kg", "73 kg". */
export function massWords(mass_kg: number, system: UnitSystem): string {
  return system === "us" ? ladder(mass_kg, "oz", "lb") : ladder(mass_kg, "g", "kg");
}

/** "12 fl oz", "2.5 qt", "65 qt" or "350 mL", "2.4 L", "62 L". */
export function volumeWords(volume_m3: number, system: UnitSystem): string {
  return system === "us" ? ladder(volume_m3, "fl oz", "qt") : ladder(volume_m3, "mL", "L");
}

/** "1.5 in", "4100 ft" or "38 mm", "62 cm", "1250 m". */
export function lengthWords(length_m: number, system: UnitSystem): string {
  const size = Math.abs(length_m);
  if (system === "us")
    return size < 3 ? formatIn(length_m, "in", size < 0.254 ? 1 : 0) : formatIn(length_m, "ft", 0);
  if (size < 0.1) return formatIn(length_m, "mm", 0);
  return size < 3 ? formatIn(length_m, "cm", 0) : formatIn(length_m, "m", 0);
}

/** "4 mph" or "1.8 m/s". */
export function speedWords(speed_m_per_s: number, system: UnitSystem): string {
  return system === "us" ? formatIn(speed_m_per_s, "mph", 0) : formatIn(speed_m_per_s, "m/s", 1);
}

const asIs =
  (unit: string, digits: number) =>
  (value: number): string =>
    formatIn(value, unit, digits);

const words: Readonly<Record<Dimension, (value: number, system: UnitSystem) => string>> = {
  length: lengthWords,
  volume: volumeWords,
  mass: massWords,
  temperature: temperatureWords,
  speed: speedWords,
  duration: asIs("h", 2),
  share: asIs("%", 1),
  conductance: asIs("W/K", 2),
};

/** The small unit below one of the large, one decimal below ten, whole numbers above. */
function ladder(value: number, small: string, large: string): string {
  const count = Math.abs(fromSi(value, unitOf(large)));
  if (count > 0 && count < 0.995) return formatIn(value, small, 0);
  return formatIn(value, large, count < 9.95 ? 1 : 0);
}

function fromSi(value: number, unit: Unit): number {
  return (value - unit.offset) / unit.factor;
}

function unitOf(symbol: string, dimension?: Dimension): Unit {
  const found = units.find(
    (unit) => unit.symbol === symbol && (dimension === undefined || unit.dimension === dimension),
  );
  if (found !== undefined) return found;
  throw new DomainError(`unit must be one of ${dimension ?? "the table of units"}, got ${symbol}`);
}
