import { describe, expect, it } from "vitest";
import { dayStart_ms, localClock_s, localInstant_ms, localIso } from "../../../core/sky/localTime.ts";

const denver = "America/Denver";

describe("local time and instants", () => {
  it("a summer morning in Denver is six hours behind UTC", () => {
    expect(localInstant_ms("2027-06-18T06:30", denver)).toBe(Date.UTC(2027, 5, 18, 12, 30));
  });

  it("clock and ISO come back", () => {
    const instant_ms = localInstant_ms("2027-06-18T06:30", denver);
    expect(localClock_s(instant_ms, denver)).toBe(6.5 * 3600);
    expect(localIso(instant_ms, denver)).toBe("2027-06-18T06:30");
  });

  it("a trip over the autumn change counts real hours: noon to noon is 25 h", () => {
    const elapsed_ms =
      localInstant_ms("2027-11-07T12:00", denver) - localInstant_ms("2027-11-06T12:00", denver);
    expect(elapsed_ms / 3.6e6).toBe(25);
    expect(dayStart_ms(localInstant_ms("2027-11-06T12:00", denver), denver, 2)).toBe(
      Date.UTC(2027, 10, 8, 7),
    );
  });

  it("an hour that comes twice is the first, an hour that never comes is moved on", () => {
    expect(localInstant_ms("2027-11-07T01:30", denver)).toBe(Date.UTC(2027, 10, 7, 7, 30));
    expect(localIso(localInstant_ms("2027-03-14T02:30", denver), denver)).toBe("2027-03-14T03:30");
  });

  it.each([
    ["2027-06-18T06:30Z", denver],
    ["2027-02-30T06:30", denver],
    ["yesterday", denver],
    ["2027-06-18T06:30", "Mars/Olympus"],
  ])("refuses %s in %s", (iso, zone) => {
    expect(() => localInstant_ms(iso, zone)).toThrow(/must/);
  });

  it("refuses an instant that is no number", () => {
    expect(() => localClock_s(Number.NaN, denver)).toThrow(/instant_ms/);
  });
});
