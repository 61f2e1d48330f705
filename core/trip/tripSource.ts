import { DomainError } from "../quantity/errors.ts";
import { readTrip } from "./readTrip.ts";
import type { Trip } from "./types.ts";

/**
 * A trip file with the texts of the files it names: plain data that can be sent to a worker, which reads it again. A
 * `Trip` itself holds functions and cannot be sent.
 */
export interface TripSource {
  text: string;
  /** Name of the file, as `readTrip` takes it. */
  file: string;
  beside: readonly (readonly [name: string, text: string])[];
}

/**
 * Reads sources that were read without a mistake before.
 *
 * @throws DomainError when one has a mistake after all
 */
export function tripsOf(sources: readonly TripSource[]): Trip[] {
  return sources.map(({ text, file, beside }) => {
    const texts = new Map(beside);
    const reading = readTrip(text, { file, readBeside: (name) => texts.get(name) ?? null });
    if (reading.ok) return reading.trip;
    const { path, must, got } = reading.problems[0]!;
    throw new DomainError(
      `sources must be trip files without a mistake, got ${file}: ${path} must be ${must}, is ${got}`,
    );
  });
}
