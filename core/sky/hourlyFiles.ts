import { readEpw } from "./epw.ts";
import { readHourlyCsv } from "./hourlyCsv.ts";
import type { HourReading, HourWindow } from "./hourRecord.ts";

/**
 * Hourly weather for a trip from the text of a file: EnergyPlus weather when its name ends in .epw, else CSV.
 * It reads no disk: the caller has the text.
 *
 * @returns rows for `weatherFromHours`, or every mistake with its line, what it must be and what it is
 * @source energyplus-epw
 */
export function readHourlyFile(fileName: string, text: string, window: HourWindow): HourReading {
  return /\.epw$/i.test(fileName.trim()) ? readEpw(text, window) : readHourlyCsv(text, window);
}
