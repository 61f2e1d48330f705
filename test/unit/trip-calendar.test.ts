import { describe, expect, it } from "vitest";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Trip } from "../../core/trip/types.ts";

function drains(depart: string, end: string, timezone: string, moments: string[]): Trip {
  const events = moments.map((at) => `{ at: ${at}, do: drain, cooler: a }`).join(", ");
  const text = `coldstow: 1\ndepart: ${depart}\nreturn: ${end}\nplace: { latitude: 40, longitude: 0, timezone: ${timezone} }\ncoolers: [{ name: a, size: 45 qt }]\nevents: [${events}]\n`;
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

const hours = (trip: Trip): number[] => trip.events.map(({ t_s }) => t_s / 3600);

describe("the time line", () => {
  it("counts day 1 from the day of departure, and meals by their hours", () => {
    const trip = drains("2027-06-18T06:30", "2027-06-22T15:00", "America/Denver", [
      "day 1 06:30",
      "day 1 breakfast",
      "2027-06-19T06:30",
      "day 3 dinner",
      "day 4 24:00",
    ]);
    expect(hours(trip)).toEqual([0, 1, 24, 60, 89.5]);
  });

  it("counts elapsed seconds across a clock that loses an hour", () => {
    // United States, 2027-03-14: 02:00 becomes 03:00.
    const trip = drains("2027-03-13T12:00", "2027-03-15T12:00", "America/Denver", [
      "day 2 01:00",
      "day 2 03:00",
      "day 2 12:00",
    ]);
    expect(hours(trip)).toEqual([13, 14, 23]);
    expect(trip.duration_s).toBe(47 * 3600);
  });

  it("counts elapsed seconds across a clock that gains an hour", () => {
    // Central Europe, 2027-10-31: 03:00 becomes 02:00.
    const trip = drains("2027-10-30T12:00", "2027-11-01T12:00", "Europe/Berlin", [
      "day 2 01:00",
      "day 2 12:00",
    ]);
    expect(hours(trip)).toEqual([13, 25]);
  });

  it("puts events in order of time, whatever their order in the file", () => {
    const trip = drains("2027-06-18T06:30", "2027-06-22T15:00", "UTC", ["day 3 12:00", "day 2 12:00"]);
    expect(trip.events.map(({ path }) => path)).toEqual(["events[1]", "events[0]"]);
  });

  it("accepts the very moments of departure and return", () => {
    const trip = drains("2027-06-18T06:30", "2027-06-22T15:00", "UTC", [
      "2027-06-18T06:30",
      "2027-06-22T15:00",
    ]);
    expect(hours(trip)).toEqual([0, 104.5]);
  });

  it("finds the time zone from the place", () => {
    const text =
      "coldstow: 1\ndepart: 2027-06-18T06:30\nreturn: 2027-06-19T15:00\nplace: { latitude: 38.6, longitude: -109.6 }\ncoolers: [{ name: a, size: 45 qt }]\n";
    const reading = readTrip(text, { file: "trip.yaml" });
    expect(reading.ok && reading.trip.place.timezone).toBe("America/Denver");
    expect(reading.ok && reading.trip.assumed.map(({ path }) => path)).toContain("place.timezone");
  });
});
