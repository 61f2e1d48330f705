import type { Fleet } from "../cooler/fleetState.ts";
import type { Trip } from "../trip/types.ts";
import type { Result } from "./result.ts";

/** Something that happens to a cooler, for pictures and day sheets. */
export interface Mark {
  t_h: number;
  cooler: string;
  what: "open" | "take out" | "put in" | "add ice" | "drain" | "merge" | "move" | "cover";
  words: string;
}

/** A result with what a picture or a text needs beside it. */
export interface Forecast {
  trip: Trip;
  result: Result;
  /** Sunset to sunrise, hours from departure, cut to the trip. */
  nights_h: readonly (readonly [number, number])[];
  marks: readonly Mark[];
  /** The run of the middle case that the result was read from. */
  fleet?: Fleet;
}
