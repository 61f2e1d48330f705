import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { forecastProblems } from "../../core/trip/forecastProblems.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Trip } from "../../core/trip/types.ts";

const printed = readFileSync(new URL("./fixtures/contract-trip.yaml", import.meta.url), "utf8");
/** The example names a second cooler, bar, that it does not describe. */
const whole = printed.replace("\nfood: ", "\n  - { name: bar, size: 45 qt, holds: drinks }\nfood: ");

function read(text: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

describe("the example of the file format", () => {
  it("has no problem but the cooler that it leaves undescribed", () => {
    const reading = readTrip(printed, { file: "trip.yaml" });
    if (reading.ok) throw new Error("bar must be missed");
    expect(reading.problems.map(({ path, got }) => `${path} ${got}`)).toEqual([
      "food[2].in bar",
      "ice[1].in bar",
      "events[0].to bar",
      "events[1].from bar",
      "events[5].cooler bar",
    ]);
  });

  it("becomes SI", () => {
    const trip = read(whole);
    expect(trip.duration_s).toBe((4 * 24 + 8.5) * 3600);
    expect(trip.departClock_s).toBe(6.5 * 3600);
    expect(trip.place).toEqual({
      latitude_deg: 38.6,
      longitude_deg: -109.6,
      elevation_m: 1250,
      timezone: "America/Denver",
    });
    expect(trip.limit.limit_C).toBeCloseTo(4.4444, 4);
    expect(trip.confidence_frac).toBeCloseTo(0.9, 12);
    expect(trip.meals).toEqual({ breakfast_s: 7 * 3600, lunch_s: 12.5 * 3600, dinner_s: 18.5 * 3600 });
    const galley = trip.coolers[0]!;
    expect(galley.volume_m3).toBeCloseTo(65 * 0.946352946e-3, 9);
    expect(galley.body.lid.thickness_m).toBeCloseTo(0.06, 12);
    expect(galley.start).toEqual({ kind: "uniform", body_C: 6 });
    expect(galley.sealedUntil_s).toBe((2 * 24 + 12) * 3600);
    expect(galley.openings).toEqual({ perDay: 12, each_s: 20, from_s: 7 * 3600, to_s: 21 * 3600 });
  });

  it("lays the legs end to end", () => {
    const legs = read(whole).legs.map(({ place, from_s, to_s, shade_frac, ground }) => [
      place,
      from_s / 3600,
      to_s / 3600,
      shade_frac,
      ground,
    ]);
    expect(legs).toEqual([
      ["cabin", 0, 5.5, null, null],
      ["camp", 5.5, 100.5, 0.8, "soil"],
      ["cabin", 100.5, 104.5, null, null],
    ]);
  });

  it("takes food and ice from lists and events alike", () => {
    const { food, ice, events } = read(whole);
    expect(
      food.map(({ id, like, state, start_C, putIn_s }) => [id, like.key, state, start_C, putIn_s]),
    ).toEqual([
      ["food[0]", "chili", "frozen", -16, null],
      ["food[1]", "chicken breast", "chilled", 4, null],
      ["food[2]", "soft drink", "ambient", 25, null],
      ["events[3].item", "cod", "ambient", 18, (3 * 24 + 3.5) * 3600],
    ]);
    expect(food[0]).toMatchObject({
      mass_kg: 2.4,
      thick_m: 0.025,
      shape: "slab",
      cooler: 0,
      eat_s: 60 * 3600,
    });
    expect(food[1]).toMatchObject({ raw: true, watertight: true, eat_s: 12 * 3600 });
    expect(food[1]!.mass_kg).toBeCloseTo(3 * 0.45359237, 9);
    // 24 cans of 355 mL of a drink a little denser than water.
    expect(food[2]!.mass_kg).toBeGreaterThan(24 * 0.355);
    expect(food[2]!.mass_kg).toBeLessThan(24 * 0.355 * 1.06);
    expect(food[2]).toMatchObject({ pieces: 24, amount: "24 × 355 mL", eat_s: null, cooler: 1 });
    expect(ice.map(({ form, pieces, each, cooler, price }) => [form, pieces, each, cooler, price])).toEqual([
      ["block", 1, "10 kg", 0, null],
      ["cube", 2, "10 lb", 1, 4.5],
      ["cube", 1, "10 lb", 1, null],
    ]);
    expect(ice[2]!.putIn_s).toBe(33.5 * 3600);
    expect(events.map((event) => event.do)).toEqual(["drain", "open", "merge", "move"]);
    expect(events[3]).toMatchObject({
      place: "truck bed",
      cooler: 0,
      t_s: 50.5 * 3600,
      until_s: 54.5 * 3600,
    });
    expect(events[1]).toMatchObject({ cooler: 1, for_s: 90 });
  });

  it("fills a jug so that its ice just fills it", () => {
    const { supply } = read(whole);
    expect(supply[1]!.each_kg).toBeGreaterThan(3.785 * 0.91);
    expect(supply[1]!.each_kg).toBeLessThan(3.785 * 0.93);
    expect(supply[0]).toMatchObject({
      form: "cube",
      at_C: -2,
      liquid_frac: 0.03,
      price: 4.5,
      where: "town",
      when_s: null,
    });
  });

  it("keeps what was typed", () => {
    expect((read(whole).typed as { freezer: unknown }).freezer).toEqual({ space: "60 L", at: "-18 C" });
  });
});

describe("food without a cooler", () => {
  const trip = (food: string): Trip =>
    read(
      `coldstow: 1\ndepart: 2027-06-18T06:30\nreturn: 2027-06-20T15:00\ncoolers: [{ name: a, size: 45 qt }]\nfood: [${food}]\n`,
    );

  it("reads, and keeps a forecast from being made", () => {
    const problems = forecastProblems(
      trip("{ name: milk, amount: 1 L }, { name: eggs, amount: 1 lb, in: a }"),
    );
    expect(problems.map(({ path, got }) => [path, got])).toEqual([["food[0].in", "nothing"]]);
  });

  it("is allowed in the dry box, and when it is dry", () => {
    const read = trip(
      "{ name: bread, amount: 1 lb, in: dry box }, { name: chips, amount: 1 lb, state: dry }",
    );
    expect(forecastProblems(read)).toEqual([]);
    expect(read.food.map(({ cooler, state }) => [cooler, state])).toEqual([
      [null, "dry"],
      [null, "dry"],
    ]);
  });
});
