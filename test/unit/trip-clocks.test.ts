import { describe, expect, it } from "vitest";
import { clockOf, dayPart, localTime, momentWords } from "../../core/tell/words.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Trip } from "../../core/trip/types.ts";

function trip(depart: string, back: string, timezone: string): Trip {
  const place = `place: { latitude: 41, longitude: -88, timezone: ${timezone} }`;
  const coolers = "coolers: [{ name: a, size: 45 qt }]";
  const text = `depart: ${depart}\nreturn: ${back}\n${place}\n${coolers}\n`;
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

describe("a trip across a change of the clocks", () => {
  const spring = trip("2027-03-12T09:00", "2027-03-15T09:00", "America/Chicago");
  const clock = clockOf(spring);

  it("is an hour shorter in spring and ends at the hour that the clocks show", () => {
    expect(clock.length_h).toBe(71);
    expect(momentWords(0, clock)).toBe("Fri day 1, 09:00");
    expect(momentWords(clock.length_h, clock)).toBe("Mon day 4, 09:00");
  });

  it("skips from two to three on the day of the change", () => {
    // Sunday's midnight comes 39 hours after Friday 09:00.
    expect(momentWords(39, clock)).toBe("Sun day 3, 00:00");
    expect(momentWords(39 + 119 / 60, clock)).toBe("Sun day 3, 01:59");
    expect(momentWords(41, clock)).toBe("Sun day 3, 03:00");
    expect(dayPart(43, clock)).toBe("day 3 early morning");
    expect(localTime(62, clock)).toMatchObject({
      day: 4,
      weekday: "Mon",
      dayOfMonth: "15",
      sinceMidnight_min: 0,
    });
  });

  it("is an hour longer in autumn, where one hour comes twice", () => {
    const autumn = clockOf(trip("2027-11-06T09:00", "2027-11-08T09:00", "America/Chicago"));
    expect(autumn.length_h).toBe(49);
    expect(momentWords(16.5, autumn)).toBe("Sun day 2, 01:30");
    expect(momentWords(17.5, autumn)).toBe("Sun day 2, 01:30");
    expect(momentWords(49, autumn)).toBe("Mon day 3, 09:00");
  });

  it("goes by the place's clocks, whatever the machine's", () => {
    const kathmandu = clockOf(trip("2027-06-18T09:00", "2027-06-19T09:00", "Asia/Kathmandu"));
    expect(momentWords(0, kathmandu)).toBe("Fri day 1, 09:00");
    expect(momentWords(-10, kathmandu)).toBe("Thu day 0, 23:00");
  });
});
