import { describe, expect, it } from "vitest";
import type { Band } from "../../core/forecast/result.ts";
import {
  clockOf,
  dayPart,
  durationWords,
  fromWords,
  mealWords,
  momentWords,
  nameWords,
  printable,
  spanWords,
} from "../../core/tell/words.ts";

/** Friday 18 June 2027, 06:30, until Tuesday 15:00. */
const place = { timezone: "UTC" };
const meals = { breakfast_s: 25_200, lunch_s: 45_000, dinner_s: 66_600 };
const clock = clockOf({
  depart: "2027-06-18T06:30",
  duration_s: 104.5 * 3600,
  place,
  meals,
});
const band = (p10: number | null, p50: number | null, p90: number | null): Band => ({ p10, p50, p90 });
/** Hours from departure of a local time. */
const at = (day: number, clock_h: number): number => (day - 1) * 24 + clock_h - 6.5;

describe("moments in words", () => {
  it("names weekday, day of the trip and time of the local clock", () => {
    expect(momentWords(0, clock)).toBe("Fri day 1, 06:30");
    expect(momentWords(at(3, 14.5), clock)).toBe("Sun day 3, 14:30");
    expect(momentWords(104.5, clock)).toBe("Tue day 5, 15:00");
  });

  it("counts midnight to the day that begins, and goes on over the end of a month and a year", () => {
    expect(momentWords(at(2, 0), clock)).toBe("Sat day 2, 00:00");
    const newYear = clockOf({
      depart: "2027-12-31T20:00",
      duration_s: 36000,
      meals,
      place: { timezone: "America/Denver" },
    });
    expect(momentWords(5, newYear)).toBe("Sat day 2, 01:00");
  });

  it("rounds to the minute, never to 23:60", () => {
    expect(momentWords(at(2, 0) - 1e-9, clock)).toBe("Sat day 2, 00:00");
  });

  it.each([
    [0, "night before day 4"],
    [4.99, "night before day 4"],
    [5, "day 4 early morning"],
    [8, "day 4 morning"],
    [11, "day 4 noon"],
    [13, "day 4 afternoon"],
    [17, "day 4 evening"],
    [20.98, "day 4 evening"],
    [21, "day 4 night"],
  ])("at %d o'clock it is %s", (clock_h, words) => {
    expect(dayPart(at(4, clock_h), clock)).toBe(words);
  });

  it("refuses what is no time", () => {
    expect(() => dayPart(Number.NaN, clock)).toThrow("t_h must be");
  });
});

describe("meals in words", () => {
  it("names a moment that is a meal, and no other", () => {
    expect(mealWords(at(3, 7), clock)).toBe("day 3 breakfast, 07:00");
    expect(mealWords(at(2, 18.5), clock)).toBe("day 2 dinner, 18:30");
    expect(mealWords(at(2, 15 + 1 / 6), clock)).toBe("day 2, 15:10");
  });
});

describe("names in words", () => {
  it("joins a few, counts the rest", () => {
    expect(nameWords(["milk"])).toBe("milk");
    expect(nameWords(["milk", "ham", "eggs"])).toBe("milk, ham and eggs");
    expect(nameWords(["milk", "ham", "eggs", "feta"], 2)).toBe("milk, ham and 2 more");
  });
});

describe("lengths of time in words", () => {
  it.each([
    [0, "0 min"],
    [0.75, "45 min"],
    [0.9999, "1 h"],
    [7 / 3, "2 h 20 min"],
    [47.5, "47 h 30 min"],
    [53, "2 days 5 h"],
    [72, "3 days"],
  ])("%d h is %s", (hours, words) => {
    expect(durationWords(hours)).toBe(words);
  });
});

describe("bands in words", () => {
  it("tells the middle case as one value", () => {
    const one = at(4, 19);
    expect(spanWords(band(one, one, one), clock, true)).toBe("until day 4 evening");
    expect(spanWords(band(null, null, null), clock, true)).toBe("to the return");
  });

  it("gives a likely time with both ends, an open end as past the return", () => {
    expect(spanWords(band(at(3, 12), at(4, 19), null), clock, false)).toBe(
      "likely until day 4 evening (day 3 noon to past the return)",
    );
    expect(spanWords(band(at(4, 9), null, null), clock, false)).toBe(
      "likely to the return (day 4 morning to past the return)",
    );
    expect(spanWords(band(null, null, null), clock, false)).toBe("to the return, nine times in ten");
  });

  it("goes to the full hour before where the band is under twelve hours", () => {
    expect(spanWords(band(at(4, 9.2), at(4, 13.1), at(4, 15.9)), clock, false)).toBe(
      "likely until day 4, 13:00 (day 4, 09:00 to 15:00)",
    );
  });

  it("tells a beginning that may never come", () => {
    expect(fromWords(band(at(4, 9), at(4, 19), null), clock, false)).toBe(
      "day 4 evening, could be from day 4 morning or not at all",
    );
  });
});

describe("names that a stranger typed", () => {
  it("lose what could move the cursor, colour the terminal or turn the text around", () => {
    expect(printable("ham\u001b[31m\n\u202eevil\u0000  x")).toBe("ham [31m evil x");
  });
});
