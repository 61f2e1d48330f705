import { describe, expect, it } from "vitest";
import { livedFile } from "../../../core/camp/livedFile.ts";
import { readLog } from "../../../core/camp/readLog.ts";
import { loadTrip } from "../../../core/forecast/load.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Trip } from "../../../core/trip/types.ts";

const text = `# kept
depart: 2027-07-16T08:00
return: 2027-07-19T08:00
place: { timezone: America/Denver }
meals: { breakfast: "08:00", lunch: "12:00", dinner: "18:00" }
coolers:
  - { name: galley, size: 60 L, openings: { per day: 6, for: 20 s } }
  - { name: bar, size: 40 L }
food:
  - { name: stew, amount: 2 kg, eat: day 2 dinner, in: galley }
  - { name: eggs, amount: 1 kg, like: egg, eat: day 3 breakfast, in: galley }
  - { name: cheese, amount: 1 kg, like: cheddar, eat: throughout, in: galley }
ice: [{ form: block, amount: 5 kg, in: galley }, { form: block, amount: 5 kg, in: bar }]
supply:
  - { form: cube, each: 3 kg, where: store, when: [day 2 09:00, day 3 09:00] }
  - { form: block, each: 5 kg, where: store, when: day 2 09:00 }
events:
  - { at: day 2 10:00, do: drain, cooler: bar }
  - { at: day 2 09:00, do: add ice, to: bar, form: cube, pieces: 2, each: 3 kg }
  - { at: day 3 10:00, do: merge, from: bar, into: galley } # planned
`;

function tripOf(yaml: string): Trip {
  const reading = readTrip(yaml, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

function lived(...entries: string[]): Trip {
  const trip = tripOf(text);
  const log = readLog(
    `coldstow-log: 1\nentries:\n${entries.map((one) => `  - { ${one} }\n`).join("")}`,
    trip,
  );
  if (!log.ok) throw new Error(JSON.stringify(log.problems));
  return tripOf(livedFile(text, trip, log.log));
}

const hour = 3600;
const at = (trip: Trip, what: string): number[] =>
  trip.events.filter((event) => event.do === what).map(({ t_s }) => t_s / hour);

describe("the trip as lived", () => {
  it("is the file itself, to the letter, where nothing was done", () => {
    const trip = tripOf(text);
    expect(livedFile(text, trip, { entries: [] })).toBe(text);
  });

  it("has a logged act in place of the planned one of its kind, and keeps what the log does not deny", () => {
    const trip = lived("id: a, at: day 2 14:00, cooler: bar, drained: 2 L");
    expect(at(trip, "drain")).toEqual([30]);
    expect(at(trip, "merge")).toEqual([50]);
  });

  it("has an act on another cooler, or on another day, on top of the planned one", () => {
    expect(at(lived("id: a, at: day 2 14:00, cooler: galley, drained: true"), "drain")).toEqual([26, 30]);
    expect(at(lived("id: a, at: day 3 14:00, cooler: bar, drained: true"), "drain")).toEqual([26, 54]);
  });

  it("moves a merge that came a day early", () => {
    expect(at(lived("id: a, at: day 2 09:00, cooler: bar, merged into: galley"), "merge")).toEqual([25]);
  });

  it("fetches nothing on a visit to a place that had none, and keeps the next visit", () => {
    const trip = lived("id: a, at: day 2 09:30, none at: Store");
    expect(trip.ice.filter(({ putIn_s }) => putIn_s !== null)).toEqual([]);
    expect(trip.supply.map(({ when_s }) => when_s)).toEqual([[49 * hour], [25 * hour]]);
    expect(trip.supply.map(({ max }) => max)).toEqual([null, 0]);
    expect(() => lived("id: a, at: day 2 09:30, none at: harbour")).toThrow(/supply: store/);
  });

  it("adds ice that was fetched, with its weight", () => {
    const trip = lived(
      "id: a, at: day 2 09:00, cooler: galley, added: { form: cube, pieces: 2, each: 3 kg }",
    );
    expect(trip.ice.find(({ cooler, putIn_s }) => putIn_s === 25 * hour && cooler === 0)).toMatchObject({
      mass_kg: 6,
    });
  });

  it("eats what was taken out then, and takes a share of what is eaten throughout", () => {
    const trip = lived(
      "id: a, at: day 1 20:00, cooler: galley, out: stew",
      "id: b, at: day 2 20:00, cooler: galley, out: cheese, share: 50 %",
    );
    expect(trip.food.find(({ name }) => name === "stew")!.eat_s).toBe(12 * hour);
    const cheese = trip.food.find(({ name }) => name === "cheese")!;
    expect(loadTrip(trip).acts).toContainEqual({
      do: "take out",
      t_s: 36 * hour,
      lot: cheese.id,
      share_frac: 0.5,
    });
  });

  it("leaves a skipped meal's food in the cooler until the return, and swaps two meals", () => {
    const eaten = (trip: Trip): (number | null)[] => trip.food.slice(0, 2).map(({ eat_s }) => eat_s! / hour);
    expect(eaten(lived("id: a, at: day 2 19:00, skipped: day 2 dinner"))).toEqual([72, 48]);
    expect(eaten(lived("id: a, at: day 2 17:00, swapped: [day 2 dinner, day 3 breakfast]"))).toEqual([
      48, 34,
    ]);
  });

  it("comes home earlier without what was planned after it, and later", () => {
    const early = lived("id: a, at: day 2 19:00, return: day 2 22:00");
    expect(early.duration_s).toBe(38 * hour);
    expect(at(early, "merge")).toEqual([]);
    expect(early.food[1]!.eat_s).toBe(38 * hour);
    expect(lived("id: a, at: day 3 19:00, return: 2027-07-20T08:00").duration_s).toBe(96 * hour);
  });

  it("does nothing for what was withdrawn, or for an opening that the habit has already", () => {
    const trip = lived(
      "id: a, at: day 2 09:00, cooler: galley, drained: true",
      "id: b, at: day 2 09:05, withdraws: a",
      "id: c, at: day 2 09:10, cooler: galley, opened: true",
      "id: d, at: day 2 09:20, cooler: galley, opened: 30 s",
    );
    expect(trip.events.map((event) => event.do)).toEqual(["drain", "merge"]);
    expect(at(lived("id: d, at: day 2 09:20, cooler: galley, opened: 5 min"), "open")).toHaveLength(1);
  });
});
