import { describe, expect, it } from "vitest";
import { planCalendar } from "../../../core/tell/calendar.ts";
import { inventedForecast } from "../fixtures/forecast.ts";
import { plannedForecast } from "../fixtures/plannedForecast.ts";

const MADE_s = Date.UTC(2027, 5, 1, 12) / 1000;
const forecast = plannedForecast();
const file = planCalendar(forecast, MADE_s);
const unfolded = (text: string): string => text.replace(/\r\n[ \t]/g, "");
const valuesOf = (text: string, key: string): string[] =>
  [...unfolded(text).matchAll(new RegExp(`^${key}:(.*)$`, "gm"))].map((found) => found[1]!.trim());

describe("the calendar of a plan (RFC 5545)", () => {
  it("has lines of at most 75 octets, ended by CR and LF (3.1)", () => {
    const bytes = new TextEncoder();
    for (const line of file.split("\r\n")) {
      expect(line).not.toMatch(/[\r\n]/);
      expect(bytes.encode(line).length).toBeLessThanOrEqual(75);
    }
  });

  it("puts an act at the instant that the clocks of the place mean: 20:00 in Zurich in August is 18:00 UTC", () => {
    expect(valuesOf(file, "DTSTART")[0]).toBe("20270803T180000Z");
    expect(valuesOf(file, "DTSTART")).toHaveLength(9);
    expect(new Set(valuesOf(file, "DTSTAMP"))).toEqual(new Set(["20270601T120000Z"]));
  });

  it("puts an act across a change of clocks right: Denver, 13 and 14 March 2027, 12:00", () => {
    const act = forecast.result.plan!.prep[0]!;
    const prep = ["2027-03-13T12:00", "2027-03-14T12:00"].map((at, i) => ({ ...act, at, id: `act-${i}` }));
    const there = { ...forecast.trip, place: { ...forecast.trip.place, timezone: "America/Denver" } };
    const plan = { ...forecast.result.plan!, prep, iceRuns: [] };
    const told = planCalendar({ ...forecast, trip: there, result: { ...forecast.result, plan } }, MADE_s);
    expect(valuesOf(told, "DTSTART")).toEqual(["20270313T190000Z", "20270314T180000Z"]);
  });

  it("keeps the UID of an act that moves, gives each its own, and comes out the same twice", () => {
    const plan = forecast.result.plan!;
    const moved = { ...plan, prep: plan.prep.map((act) => ({ ...act, at: "2027-08-05T09:00" })) };
    const later = planCalendar({ ...forecast, result: { ...forecast.result, plan: moved } }, MADE_s + 3600);
    const uids = valuesOf(file, "UID");
    expect(valuesOf(later, "UID")).toEqual(uids);
    expect(new Set(uids).size).toBe(uids.length);
    expect(planCalendar(forecast, MADE_s)).toBe(file);
  });

  it("lets no name begin a line of its own", () => {
    const plan = forecast.result.plan!;
    const prep = [{ ...plan.prep[0]!, does: "pack\r\nEND:VCALENDAR; a, b" }];
    const told = planCalendar(
      { ...forecast, result: { ...forecast.result, plan: { ...plan, prep } } },
      MADE_s,
    );
    expect(told.match(/^END:VCALENDAR/gm)).toHaveLength(1);
    expect(unfolded(told)).toContain("SUMMARY:pack END:VCALENDAR\\; a\\, b");
  });

  it("refuses a forecast without a plan", () => {
    expect(() => planCalendar(inventedForecast(), MADE_s)).toThrow("must hold a plan");
  });
});
