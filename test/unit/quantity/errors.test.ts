import { describe, expect, it } from "vitest";
import { parseClock } from "../../../core/quantity/clock.ts";
import { DomainError, ModelError, requireFinite } from "../../../core/quantity/errors.ts";

describe("requireFinite", () => {
  it("passes both ends of the range and what lies between", () => {
    expect([-60, 0, 90].map((value) => requireFinite("outside_C", value, -60, 90))).toEqual([-60, 0, 90]);
  });

  it("says the range and the value", () => {
    expect(() => requireFinite("outside_C", 300, -60, 90)).toThrow("outside_C must be −60…90, got 300");
    expect(() => requireFinite("outside_C", -61, -60, 90)).toThrow(DomainError);
  });

  it("never passes NaN or an infinite value, even into an endless range", () => {
    for (const value of [Number.NaN, Infinity, -Infinity]) {
      expect(() => requireFinite("mass_kg", value, -Infinity, Infinity)).toThrow(DomainError);
    }
  });
});

it("a ModelError carries its residual", () => {
  expect(new ModelError("the books do not close", 12.5)).toMatchObject({
    name: "ModelError",
    residual: 12.5,
  });
});

describe("time of day", () => {
  it("is read as seconds since midnight", () => {
    expect(["07:00", "7:30", "23:59:59", "24:00", "00:00"].map(parseClock)).toEqual(
      [25200, 27000, 86399, 86400, 0].map((clock_s) => ({ ok: true, clock_s })),
    );
  });

  it.each(["7", "25:00", "24:01", "12:60", "7 pm", "-1:00", "07:00Z", "", `${"0".repeat(500)}7:00`])(
    "refuses %s",
    (text) => {
      expect(parseClock(text)).toMatchObject({ ok: false });
    },
  );
});
