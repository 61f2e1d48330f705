/** What the app offers to change on a plan is a trip that can be planned, and it is what the button says. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { changesOf } from "../../app/decide/changes.ts";
import { editedTrip, readTrip, type Trip } from "../../core/index.ts";

const folder = join(import.meta.dirname, "../../examples");
const examples = readdirSync(folder).filter((name) => name.endsWith(".yaml"));

function tripOf(text: string): Trip {
  const reading = readTrip(text, { file: "trip" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

const warm = ({ food }: Trip): number => food.filter(({ state }) => state === "ambient").length;

describe.each(examples)("what can be changed on %s", (name) => {
  const text = readFileSync(join(folder, name), "utf8");
  const changes = changesOf(parse(text));

  it("is at least three things, each a trip without a mistake and another one", () => {
    expect(changes.length).toBeGreaterThanOrEqual(3);
    for (const { edits } of changes) {
      const edited = editedTrip(text, edits);
      expect(edited).not.toBe(text);
      tripOf(edited);
    }
  });

  it("does what it says", () => {
    const before = tripOf(text);
    for (const { says, edits } of changes) {
      const after = tripOf(editedTrip(text, edits));
      if (says === "cubes only")
        expect(new Set(after.supply.map(({ form }) => form))).toEqual(new Set(["cube"]));
      if (says.startsWith("without ")) expect(after.coolers.length).toBe(before.coolers.length - 1);
      if (says === "warm drinks chilled at home") expect(warm(after)).toBeLessThan(warm(before));
      if (says === "full shade") expect(after.legs.every(({ shade_frac }) => shade_frac !== 0.6)).toBe(true);
      if (/ of \d+ /.test(says)) {
        const room = (trip: Trip): number => Math.max(...trip.coolers.map(({ volume_m3 }) => volume_m3));
        expect(room(after) / room(before)).toBeCloseTo(1.5, 1);
      }
    }
  });
});

it("offers nothing on a trip that has nothing to change", () => {
  expect(changesOf(null)).toEqual([]);
  expect(changesOf({ coolers: [] })).toEqual([]);
});
