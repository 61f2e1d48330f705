import {
  forecastProblems,
  type Problem,
  readTrip,
  type Trip,
  type UnitSystem,
  unitsOf,
} from "../core/index.ts";
import { InputError } from "./failure.ts";
import type { Flags } from "./flags.ts";
import { readBeside, readNamed, type TextFile } from "./readFiles.ts";

/** A trip file that was read without a mistake. */
export interface OpenTrip {
  trip: Trip;
  file: TextFile;
  units: UnitSystem;
  /** Files that it names, by the name it uses. */
  beside: ReadonlyMap<string, { text: string; path: string }>;
}

/**
 * Reads the trip that a person named.
 *
 * @param toForecast also refuse what only a forecast cannot do without, such as food in no cooler
 * @throws InputError with every problem
 */
export function openTrip(name: string, flags: Flags, toForecast: boolean): OpenTrip {
  const file = readNamed(name);
  const beside = new Map<string, { text: string; path: string }>();
  const refused = new Map<string, { must: string; got: string }>();
  const reading = readTrip(file.text, {
    file: file.name,
    readBeside: (other: string) => {
      const found = readBeside(file, other);
      if (!("text" in found)) {
        refused.set(other, found);
        return null;
      }
      beside.set(other, found);
      return found.text;
    },
  });
  const problems: readonly Problem[] = !reading.ok
    ? reading.problems
    : toForecast
      ? forecastProblems(reading.trip)
      : [];
  // The reader knows only that it got no text; why not is known here.
  const told = problems.map((problem) => ({ ...problem, ...refused.get(problem.got) }));
  if (!reading.ok || told.length > 0) throw new InputError(file.name, told);
  return { trip: reading.trip, file, units: flags.units ?? unitsOf(file.text), beside };
}
