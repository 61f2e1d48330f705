import { dayStart_ms, localClock_s, localInstant_ms, localIso } from "../sky/localTime.ts";
import type { Trip } from "../trip/types.ts";

const hour_ms = 3_600_000;
const quarter_ms = 900_000;
/** Nobody is asked to do anything between these hours. */
const NIGHT_FROM_H = 22;
const NIGHT_TO_H = 6;
/** The last act of an evening. */
const EVENING_H = 21;

/** Clock times before departure; moments are milliseconds since 1970 UTC. */
export class PrepClock {
  readonly depart_ms: number;
  /** When packing begins: everything must be frozen, chilled and bought by then. */
  readonly pack_ms: number;
  readonly #timezone: string;

  /** @param pack_h how long packing and loading take */
  constructor(trip: Trip, pack_h: number) {
    this.#timezone = trip.place.timezone;
    this.depart_ms = localInstant_ms(trip.depart, this.#timezone);
    this.pack_ms = this.depart_ms - pack_h * hour_ms;
  }

  iso(at_ms: number): string {
    return localIso(at_ms, this.#timezone);
  }

  clock_h(at_ms: number): number {
    return localClock_s(at_ms, this.#timezone) / 3600;
  }

  /** A clock time so many days before (negative) or after the day of a moment. */
  onDay_ms(at_ms: number, after_days: number, clock_h: number): number {
    return dayStart_ms(at_ms, this.#timezone, after_days) + clock_h * hour_ms;
  }

  /** The full quarter of an hour before, and not at night: the evening before instead. */
  awake_ms(at_ms: number): number {
    const quarter = Math.floor(at_ms / quarter_ms) * quarter_ms;
    const clock_h = this.clock_h(quarter);
    if (clock_h >= NIGHT_FROM_H) return this.onDay_ms(quarter, 0, EVENING_H);
    return clock_h < NIGHT_TO_H ? this.onDay_ms(quarter, -1, EVENING_H) : quarter;
  }

  /** So many hours before packing begins, by day. */
  beforePacking_ms(before_h: number): number {
    return this.awake_ms(this.pack_ms - before_h * hour_ms);
  }
}

/** A stable id from what an act is and what it is done to. */
export function actId(act: string, ...about: readonly (string | number)[]): string {
  return [act, ...about]
    .map((word) =>
      String(word)
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, "-")
        .replace(/^-|-$/g, ""),
    )
    .join(":");
}
