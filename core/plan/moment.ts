import { dayStart_ms, localInstant_ms, localIso } from "../sky/localTime.ts";
import type { Trip } from "../trip/types.ts";

const instant_ms = (trip: Trip, t_s: number): number =>
  localInstant_ms(trip.depart, trip.place.timezone) + t_s * 1000;

/** Local ISO without offset, to the minute, of a moment of the trip. */
export function isoAt(trip: Trip, t_s: number): string {
  return localIso(Math.round(instant_ms(trip, t_s)), trip.place.timezone);
}

/** Midnight of the local day that a moment lies in, s from departure: negative on the first day. */
export function dayStart_s(trip: Trip, t_s: number): number {
  const { timezone } = trip.place;
  const start_ms = dayStart_ms(Math.round(instant_ms(trip, t_s)), timezone, 0);
  return (start_ms - localInstant_ms(trip.depart, timezone)) / 1000;
}

/** Days since 1970 of a date in ISO. */
const dayCount = (iso: string): number =>
  Date.UTC(Number(iso.slice(0, 4)), Number(iso.slice(5, 7)) - 1, Number(iso.slice(8, 10))) / 86_400_000;

/** Day of the trip that a moment falls on; 1 is the local day of departure. */
export function dayAt(trip: Trip, t_s: number): number {
  return dayCount(isoAt(trip, t_s)) - dayCount(trip.depart) + 1;
}

const weekdays = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"] as const;

/** "Sunday", by the local date. */
export function weekdayAt(trip: Trip, t_s: number): string {
  // The first day of 1970 was a Thursday.
  return weekdays[(((dayCount(isoAt(trip, t_s)) + 4) % 7) + 7) % 7]!;
}

/**
 * What is reckoned, as the full hour before it: "day 4 14:00". Minutes would claim too much, and a deadline is not told
 * later than it is.
 */
export function hourWords(trip: Trip, t_s: number): string {
  const sinceHour_s = (((t_s + trip.departClock_s) % 3600) + 3600) % 3600;
  return momentWords(trip, t_s > trip.duration_s ? t_s : Math.max(0, t_s - sinceHour_s));
}

/** "day 4 14:30"; what is past the return is told as such. */
export function momentWords(trip: Trip, t_s: number): string {
  if (t_s > trip.duration_s + 60)
    return `about ${Math.round((t_s - trip.duration_s) / 3600)} h past the return`;
  return `day ${dayAt(trip, t_s)} ${isoAt(trip, t_s).slice(11)}`;
}
