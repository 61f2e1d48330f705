import { parseQuantity } from "../quantity/parse.ts";
import type { IceLevel } from "./logFile.ts";
import type { Entry } from "./types.ts";

/** What was seen of a cooler, as a number that the reckoning has too. */
export type Look = { entry: Entry; t_s: number; cooler: number } & (
  | { of: "ice"; level: IceLevel }
  | { of: "air"; read_C: number }
  | { of: "water"; drained_L: number }
);

const withinHead = { air: "air", water: "water" } as const;

/** SI value of a quantity that was checked when the log was read; NaN where it is none after all. */
export function siValue(typed: string, dimension: "temperature" | "volume" | "duration" | "share"): number {
  const reading = parseQuantity(typed, dimension);
  return reading.ok ? reading.quantity.value : Number.NaN;
}

/**
 * What an entry tells of a cooler's ice and cold; null: nothing that the reckoning has a number for. A thermometer in an item
 * or in the meltwater says too little of the whole cooler: it counts for the food (`warmReadings`), not here.
 */
function lookOf(entry: Entry): Look | null {
  const { t_s, cooler, file } = entry;
  if (cooler === null || entry.withdrawnBy !== null) return null;
  const head = { entry, t_s, cooler };
  if ("ice" in file) return { ...head, of: "ice", level: file.ice };
  if ("read" in file && (file.of ?? withinHead.air) === withinHead.air)
    return { ...head, of: "air", read_C: siValue(file.read, "temperature") };
  if ("drained" in file && file.drained !== true)
    return { ...head, of: "water", drained_L: siValue(file.drained, "volume") * 1000 };
  return null;
}

/** The looks of a log that stand, in order of time. */
export function looksOf(entries: readonly Entry[]): Look[] {
  return entries.map(lookOf).filter((look): look is Look => look !== null);
}
