import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { withValue } from "../../core/trip/paths.ts";
import { readTrip, readTripObject } from "../../core/trip/readTrip.ts";
import { templates } from "../../core/trip/templates.ts";
import type { Trip } from "../../core/trip/types.ts";

const bare = `
coldstow: 1
depart: 2027-06-18T06:30
return: 2027-06-20T15:00
coolers:
  - { name: a, size: 45 qt }
food:
  - { name: milk, amount: 1 L, in: a }
  - { name: butter, amount: 1 lb, state: frozen, in: a }
  - { name: cola, count: 12, each: 355 mL, in: a }
ice:
  - { form: cube, each: 10 lb }
  - { form: jug, amount: 1 gal, in: a }
  - { form: dry ice, amount: 2 kg, in: a }
supply:
  - { form: cube, each: 10 lb }
freezer: { space: 20 L }
events:
  - { at: day 2 12:00, do: open, cooler: a }
  - { at: day 2 13:00, do: move, cooler: a, to: raft }
  - { at: day 2 14:00, do: put in, to: a, item: { name: trout, amount: 1 kg } }
`;

function read(text: string): Trip {
  const reading = readTrip(text, { file: "camp/bare.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

const texts: [string, string][] = [
  ["a bare file", bare],
  ...templates.map(({ name, file }): [string, string] => [
    name,
    readFileSync(new URL(`../../examples/${file}`, import.meta.url), "utf8"),
  ]),
];

describe("defaults", () => {
  const trip = read(bare);
  const assumed = new Map(trip.assumed.map((item) => [item.path, item]));

  it("are each listed once, under the path that changes them", () => {
    expect(assumed.size).toBe(trip.assumed.length);
    for (const path of [
      "title",
      "place.latitude",
      "place.longitude",
      "place.timezone",
      "place.elevation",
      "party.adults",
      "party.vulnerable",
      "limit",
      "confidence",
      "meals.dinner",
      "weather.days[0].high",
      "weather.days[0].low",
      "weather.days[0].humidity",
      "weather.days[0].cloud",
      "weather.days[0].wind",
      "legs[0].where",
      "legs[0].shade",
      "legs[0].ground",
      "coolers[0].build",
      "coolers[0].color",
      "coolers[0].start.at",
      "coolers[0].openings.per day",
      "coolers[0].openings.for",
      "coolers[0].drain",
      "coolers[0].cover",
      "coolers[0].top",
      "food[0].like",
      "food[0].state",
      "food[0].at",
      "food[0].thick",
      "food[0].watertight",
      "food[0].warm before",
      "food[2].watertight",
      "food[0].eat",
      "ice[0].pieces",
      "ice[0].at",
      "ice[0].liquid",
      "ice[0].layer",
      "ice[0].in",
      "ice[1].at",
      "ice[2].at",
      "supply[0].at",
      "supply[0].where",
      "freezer.at",
      "events[0].for",
      "events[1].until",
      "events[1].water",
      "events[2].item.at",
      "carry.people",
    ])
      expect([...assumed.keys()]).toContain(path);
  });

  it("are the strict ones where the file says nothing", () => {
    expect(trip.party.vulnerable).toBe(true);
    expect(trip.limit).toEqual({ profile: "consumer", limit_C: (8 * 5) / 9 });
    expect(trip.food[0]).toMatchObject({ watertight: false, eat_s: trip.duration_s });
  });

  it("take food that is sold frozen, or named so, as frozen from a home freezer", () => {
    const names = ["ice cream", "frozen peas", "frozen berries", "strawberry"];
    const list = names.map((name) => `{ name: ${name}, amount: 1 kg, in: a }`).join(", ");
    const { food, assumed: lines } = read(bare.replace(/food:[\s\S]*?\nice:/, `food: [${list}]\nice:`));
    expect(food.slice(0, 4).map(({ state, start_C }) => [state, start_C])).toEqual([
      ["frozen", -16],
      ["frozen", -16],
      ["frozen", -16],
      ["chilled", 4],
    ]);
    for (const path of ["food[0].state", "food[0].at", "food[2].state"])
      expect(lines.map((line) => line.path)).toContain(path);
  });

  it("take drinks as watertight and nothing else, and say what to write", () => {
    expect(trip.food.map(({ watertight }) => watertight)).toEqual([false, false, true, false]);
    expect(assumed.get("food[0].watertight")).toMatchObject({ value: "false" });
    expect(assumed.get("food[0].watertight")!.why).toContain("write true");
    expect(assumed.get("food[2].watertight")!.why).toContain("write false");
  });

  it("list warm time before packing once for each perishable, and for nothing else", () => {
    expect(assumed.get("food[0].warm before")).toMatchObject({ value: "0 h", range: null });
    expect(assumed.has("food[2].warm before")).toBe(false);
    expect(assumed.has("events[2].item.warm before")).toBe(true);
  });

  it("hold a file without its version to this one, and list it", () => {
    const { assumed: lines } = read(bare.replace("coldstow: 1\n", ""));
    expect(lines).toContainEqual(expect.objectContaining({ path: "coldstow", value: "1" }));
  });

  it("say what a boat is where they stand for one", () => {
    const { assumed: lines } = read(`${bare}legs: [{ where: boat }]\n`);
    expect(lines.find(({ path }) => path === "legs[0].ground")!.why).toContain("bilge below deck");
  });

  it("take words and temperatures from the kind of thing", () => {
    expect(trip.title).toBe("bare");
    expect(trip.food.map(({ state, start_C }) => [state, start_C])).toEqual([
      ["chilled", 4],
      ["frozen", -16],
      ["ambient", 25],
      ["chilled", 4],
    ]);
    expect(trip.ice.map(({ start_C, liquid_frac, layer }) => [start_C, liquid_frac, layer])).toEqual([
      [-2, 0.03, "fill"],
      [-16, 0, "base"],
      [-78.5, 0, "top"],
    ]);
    expect(trip.food[2]!.eat_s).toBeNull();
  });

  it.each(texts)("of %s may be typed in, with both ends of their ranges", (_name, text) => {
    const { typed, assumed: list } = read(text);
    for (const { path, value, range } of list) {
      for (const word of [value, ...(range ?? [])]) {
        const reading = readTripObject(withValue(typed, path, word), { file: "x.yaml" });
        if (!reading.ok) throw new Error(`${path}: ${word}: ${JSON.stringify(reading.problems)}`);
        expect(reading.trip.assumed.map((item) => item.path)).not.toContain(path);
      }
    }
  });

  it("typed in change nothing", () => {
    const { weather: _, typed: _typed, assumed: list, ...before } = trip;
    const full = list.reduce((typed, { path, value }) => withValue(typed, path, value), trip.typed);
    const reading = readTripObject(full, { file: "other.yaml" });
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const { weather, typed: _t, assumed: left, ...after } = reading.trip;
    expect(left).toEqual([]);
    // Rules of a place that follow the weather stay open until they are written down; then they are fixed.
    const spots = (stays: object[]): object[] =>
      stays.map((stay) => ({ ...stay, shade_frac: null, ground: null, air_C: null, water_C: null }));
    // A state that is typed is no longer open to the plan.
    const stated = (food: Trip["food"]): object[] =>
      food.map((item) => ({ ...item, open: { ...item.open, state: false } }));
    expect({
      ...after,
      food: stated(after.food),
      legs: spots([...after.legs]),
      events: spots([...after.events]),
    }).toEqual({
      ...before,
      food: stated(before.food),
      legs: spots([...before.legs]),
      events: spots([...before.events]),
    });
    expect(weather.at(43_200).air_C).toBeCloseTo(trip.weather.at(43_200).air_C, 9);
    expect(weather.at(43_200).dewPoint_C).toBeCloseTo(trip.weather.at(43_200).dewPoint_C, 0);
  });

  it("name a source that is listed", () => {
    const sources = JSON.parse(readFileSync(new URL("../../core/sources.json", import.meta.url), "utf8"));
    for (const [, text] of texts)
      for (const { source } of read(text).assumed) expect(Object.keys(sources)).toContain(source);
  });
});

describe("withValue", () => {
  it("copies, and leaves what it was given alone", () => {
    const typed = { coolers: [{ name: "a", openings: { for: "20 s" } }] };
    const changed = withValue(typed, "coolers[0].openings.per day", "12");
    expect(changed).toEqual({ coolers: [{ name: "a", openings: { for: "20 s", "per day": 12 } }] });
    expect(typed).toEqual({ coolers: [{ name: "a", openings: { for: "20 s" } }] });
  });

  it("makes the mappings and lists on the way", () => {
    expect(withValue({}, "weather.days[0].high", "30 C")).toEqual({ weather: { days: [{ high: "30 C" }] } });
  });

  it("reads plain numbers and booleans as such, and leaves quantities as text", () => {
    expect(withValue({}, "place.latitude", "-12.5")).toEqual({ place: { latitude: -12.5 } });
    expect(withValue({}, "party.vulnerable", "false")).toEqual({ party: { vulnerable: false } });
    expect(withValue({}, "confidence", "90 %")).toEqual({ confidence: "90 %" });
  });

  it("touches no prototype", () => {
    withValue({}, "__proto__.polluted", "1");
    withValue({}, "constructor.prototype.polluted", "1");
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
