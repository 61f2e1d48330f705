import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { editedTrip } from "../../core/trip/editTrip.ts";
import { readTrip } from "../../core/trip/readTrip.ts";

const text = readFileSync(join(import.meta.dirname, "../../examples/family-three-days.yaml"), "utf8");
const typed = (made: string): Record<string, unknown> => {
  const reading = readTrip(made, { file: "made" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip.typed as Record<string, unknown>;
};

describe("editing a trip file", () => {
  it("changes what was edited and keeps every other line, comments too", () => {
    const made = editedTrip(text, [{ path: "coolers[0].size", value: "54 qt" }]);
    const [before, after] = [editedTrip(text, []).split("\n"), made.split("\n")];
    const differing = after.filter((line, i) => line !== before[i]);
    expect(made).toContain("size: 54 qt");
    expect(made).toContain("# straight from the garage");
    expect(differing).toEqual(["    size: 54 qt"]);
    expect(typed(editedTrip(text, []))).toEqual(typed(text));
  });

  it("adds to lists, takes out of them, and makes what is missing on the way", () => {
    const { food } = typed(text) as { food: unknown[] };
    const more = { name: "plums", amount: "1 kg", like: "plum", in: "chest" };
    const made = editedTrip(text, [
      { path: `food[${food.length}]`, value: more },
      { path: "food[0]", value: undefined },
      { path: "party.allergies", value: ["milk"] },
    ]);
    const after = typed(made) as { food: { name: string }[]; party: { allergies: string[] } };
    expect(after.food).toHaveLength(food.length);
    expect(after.food.at(-1)).toEqual(more);
    expect(after.party.allergies).toEqual(["milk"]);
  });

  it("begins from nothing, list and mapping by what the path asks for", () => {
    const made = editedTrip("", [
      { path: "coldstow", value: 1 },
      { path: "coolers[0].name", value: "galley" },
      { path: "coolers[0].openings.per day", value: 4 },
    ]);
    expect(made).toBe("coldstow: 1\ncoolers:\n  - name: galley\n    openings:\n      per day: 4\n");
  });

  it("undoes itself: an edit put back gives the text that the file had as edited text", () => {
    const once = editedTrip(text, []);
    const there = editedTrip(once, [{ path: "title", value: "Other" }]);
    expect(editedTrip(there, [{ path: "title", value: "Heron Hollow, three days" }])).toBe(once);
  });

  it("refuses a text that is no mapping", () => {
    expect(() => editedTrip("- 1", [{ path: "title", value: "x" }])).toThrow("trip file");
  });
});
