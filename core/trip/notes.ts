import { parseClock } from "../quantity/clock.ts";
import { parseQuantity, type Quantity } from "../quantity/parse.ts";
import type { Dimension } from "../quantity/units.ts";
import type { Assumed } from "./types.ts";
import { type Finding, shown } from "./validate.ts";

/** A quantity's kind and the range that makes sense for it, in SI and in words. Generous: it refuses nonsense only. */
export interface Measure {
  readonly dimension: Dimension;
  readonly low: number;
  readonly high: number;
  readonly says: string;
}

const measure = (dimension: Dimension, low: number, high: number, says: string): Measure => ({
  dimension,
  low,
  high,
  says,
});

/** Ranges for everything that a trip file measures. */
export const measures: Readonly<Record<MeasureName, Measure>> = {
  elevation: measure("length", -430, 6000, "a height from -430 m to 6000 m"),
  outdoors: measure("temperature", -40, 60, "a temperature from -40 C to 60 C"),
  anyTemperature: measure("temperature", -80, 80, "a temperature from -80 C to 80 C"),
  water: measure("temperature", -2, 45, "a water temperature from -2 C to 45 C"),
  share: measure("share", 0, 1, "a share from 0 % to 100 %"),
  confidence: measure("share", 0.5, 0.995, "a share from 50 % to 99.5 %"),
  humidity: measure("share", 0.01, 1, "a share from 1 % to 100 %"),
  wind: measure("speed", 0, 60, "a speed from 0 m/s to 60 m/s"),
  coolerSize: measure("volume", 0.001, 1, "a volume from 1 L to 1000 L"),
  inside: measure("length", 0.05, 3, "a length from 5 cm to 3 m"),
  wall: measure("length", 0.001, 0.3, "a thickness from 1 mm to 300 mm"),
  conductance: measure("conductance", 0.02, 50, "a conductance from 0.02 W/K to 50 W/K"),
  emptyWeight: measure("mass", 0.05, 300, "a weight from 50 g to 300 kg"),
  prechill: measure("duration", 60, 14 * 86_400, "a length of time from 1 min to 14 d"),
  opening: measure("duration", 1, 3600, "a length of time from 1 s to 60 min"),
  thickness: measure("length", 0.001, 0.6, "a thickness from 1 mm to 60 cm"),
  mass: measure("mass", 0.001, 2000, "a weight from 1 g to 2000 kg"),
  volume: measure("volume", 1e-6, 2, "a volume from 1 mL to 2000 L"),
  freezer: measure("volume", 0.001, 5, "a volume from 1 L to 5000 L"),
  freezerTemperature: measure("temperature", -80, -1, "a temperature from -80 C to -1 C"),
  warmBefore: measure("duration", 0, 7 * 86_400, "a length of time from 0 h to 7 d"),
  boughtBefore: measure("duration", 0, 7 * 86_400, "a length of time from 0 h to 7 d"),
  warmLoad: measure("temperature", -2, 45, "a temperature from -2 C to 45 C"),
  childPortion: measure("share", 0.1, 1, "a share from 10 % to 100 %"),
  away: measure("duration", 0, 3 * 86_400, "a length of time from 0 min to 3 d"),
};

type MeasureName =
  | "elevation"
  | "outdoors"
  | "anyTemperature"
  | "water"
  | "share"
  | "confidence"
  | "humidity"
  | "wind"
  | "coolerSize"
  | "inside"
  | "wall"
  | "conductance"
  | "emptyWeight"
  | "prechill"
  | "opening"
  | "thickness"
  | "mass"
  | "volume"
  | "freezer"
  | "freezerTemperature"
  | "warmBefore"
  | "boughtBefore"
  | "warmLoad"
  | "childPortion"
  | "away";

/** A temperature typed in Celsius as the Fahrenheit figure it may have been meant as; null unless that lies in the range. */
export function inFahrenheit(typed: string, low_C: number, high_C: number): string | null {
  const reading = parseQuantity(typed, "temperature");
  if (!reading.ok || reading.quantity.unit.symbol !== "°C") return null;
  const figure = reading.quantity.typedValue;
  const meant_C = ((figure - 32) * 5) / 9;
  return meant_C >= low_C && meant_C <= high_C ? `${figure} F` : null;
}

/**
 * What is noted while a file is worked out: problems, and defaults used. Readers return NaN where a value has a
 * problem; a trip with problems is never handed out, so such a NaN reaches no reckoning.
 */
export class Notes {
  readonly findings: Finding[] = [];
  readonly assumed: Assumed[] = [];

  /** Notes a mistake, once; `got` is what was typed. Returns NaN to stand for the missing number. */
  refuse(path: string, must: string, got: unknown, near: string | null = null): number {
    const told = this.findings.some((finding) => finding.path === path && finding.must === must);
    if (!told) this.findings.push({ path, must, got: shown(got), near });
    return Number.NaN;
  }

  /** Notes a default and hands it on as if it had been typed. */
  assume<T extends string>(
    path: string,
    value: T,
    why: string,
    range: readonly [string, string] | null = null,
    source: string = "engineering-judgement",
  ): T {
    this.assumed.push({ path, value, why, range, source });
    return value;
  }

  /** A quantity in its range, or null with the problem noted. */
  quantity(path: string, typed: string, { dimension, low, high, says }: Measure): Quantity | null {
    const reading = parseQuantity(typed, dimension);
    const slack = 1e-9 * Math.max(1, Math.abs(high));
    if (!reading.ok) this.refuse(path, reading.must, typed);
    else if (reading.quantity.value < low - slack || reading.quantity.value > high + slack)
      this.refuse(path, says, typed, inFahrenheit(typed, low, high));
    else return reading.quantity;
    return null;
  }

  /** The SI value of a quantity, or NaN with the problem noted. */
  si(path: string, typed: string, kind: Measure): number {
    return this.quantity(path, typed, kind)?.value ?? Number.NaN;
  }

  /** As `si`, with null for what the file leaves out. */
  siOrNull(path: string, typed: string | undefined, kind: Measure): number | null {
    return typed === undefined ? null : this.si(path, typed, kind);
  }

  /** Seconds since midnight, or NaN with the problem noted. */
  clock(path: string, typed: string): number {
    const reading = parseClock(typed);
    return reading.ok ? reading.clock_s : this.refuse(path, reading.must, typed);
  }
}
