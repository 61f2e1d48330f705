import { describe, expect, it } from "vitest";
import type { ItemState } from "../../../core/forecast/planResult.ts";
import { decideStates } from "../../../core/plan/states.ts";
import { openTrip, type Told } from "./statesTrip.ts";

function statesOf(food: readonly string[], told: Told = {}): ItemState[] {
  return decideStates(openTrip({ ...told, food })).states;
}
const one = (line: string, told: Told = {}): ItemState => statesOf([line], told)[0]!;

describe("what is frozen", () => {
  it("is what would not keep chilled, with the days and the ice it is worth", () => {
    const stew = one(
      "name: stew, amount: 2 kg, like: chili, shape: { bag: 25 mm }, eat: day 4 dinner, in: galley",
    );
    expect(stew.state).toBe("frozen");
    expect(stew.why).toMatch(/keeps 3 days .* until day 4; frozen it does the work of 1\.\d kg/);
  });

  it("is raw meat from the second day on, and not on the first", () => {
    const steak = "name: steak, amount: 1 kg, like: beef steak, in: galley";
    expect(one(`${steak}, eat: day 1 dinner`).state).toBe("chilled");
    const second = one(`${steak}, eat: day 2 dinner`);
    expect(second.state).toBe("frozen");
    expect(second.why).toContain("raw");
  });

  it("starts as cold as a home freezer leaves it, and no colder than that freezer", () => {
    const line = "name: stew, amount: 2 kg, like: chili, eat: day 4 dinner, in: galley";
    expect(decideStates(openTrip({ food: [line] })).trip.food[0]).toMatchObject({
      state: "frozen",
      start_C: -16,
    });
    const warmer = openTrip({ food: [line] });
    const trip = { ...warmer, freezer: { space_m3: 0.06, at_C: -12 } };
    expect(decideStates(trip).trip.food[0]!.start_C).toBe(-12);
  });
});

describe("what is never frozen", () => {
  it.each([
    "name: eggs, count: 12, each: 60 g, like: egg",
    "name: lettuce, amount: 500 g, like: lettuce",
    "name: cola, count: 12, each: 355 mL, like: cola",
    "name: beer, count: 12, each: 330 mL, like: beer",
    "name: yogurt, amount: 1 kg, like: yogurt",
    "name: mayonnaise, amount: 300 g, like: mayonnaise",
  ])("%s", (line) => {
    const { state, why } = one(`${line}, eat: day 5 lunch`);
    expect(state).toBe("chilled");
    expect(why.length).toBeGreaterThan(10);
  });

  it("nor what would not be thawed by its meal and keeps chilled anyway", () => {
    const roast = one(
      "name: roast, amount: 3 kg, like: beef steak, shape: { lump: 160 mm }, eat: day 2 dinner",
    );
    expect(roast.state).toBe("chilled");
    expect(roast.why).toMatch(/would not be thawed by day 2: thawing takes up to \d+ h/);
  });
});

describe("what stays as it is", () => {
  it("a written state, whatever would be better", () => {
    const state = one(
      "name: lettuce, amount: 500 g, like: lettuce, state: frozen, at: -10 C, eat: day 2 lunch, in: galley",
    );
    expect(state).toMatchObject({ state: "frozen", pinned: true, why: "as written" });
  });

  it("a written temperature says the state", () => {
    const line = "name: stew, amount: 2 kg, like: chili, at: 4 C, eat: day 4 dinner, in: galley";
    expect(one(line)).toMatchObject({ state: "chilled", pinned: true });
  });

  it("shelf goods go to the dry box, unless their cooler is written", () => {
    expect(one("name: bread, amount: 1 kg, like: bread, eat: day 2 lunch").state).toBe("dry");
    expect(one("name: bread, amount: 1 kg, like: bread, eat: day 2 lunch, in: galley").state).toBe("ambient");
  });
});

describe("the freezer's room", () => {
  const stews = Array.from(
    { length: 6 },
    (_, i) => `name: stew ${i}, amount: 2 kg, like: chili, eat: day ${i < 3 ? 4 : 5} lunch, in: galley`,
  );

  it("goes to what is eaten last, and the rest is told as a warning", () => {
    // 10 L, four fifths for pieces: 8 L, three bags of 1.9 L and a bit, a fourth.
    const { states, warnings } = decideStates(openTrip({ food: stews, freezer: "10 L" }));
    expect(states.map(({ state }) => state)).toEqual([
      "frozen",
      "chilled",
      "chilled",
      "frozen",
      "frozen",
      "frozen",
    ]);
    expect(warnings.map(({ code, path }) => [code, path])).toEqual([
      ["freezer-food", "food[1]"],
      ["freezer-food", "food[2]"],
    ]);
  });

  it("has no bound where no freezer is written", () => {
    const { states, warnings } = decideStates(openTrip({ food: stews, freezer: null }));
    expect(new Set(states.map(({ state }) => state))).toEqual(new Set(["frozen"]));
    expect(warnings).toEqual([]);
  });
});

it("keeps nothing open, changes no trip, and tells what is now assumed", () => {
  const food = ["name: stew, amount: 2 kg, like: chili, eat: day 4 dinner, in: galley"];
  const before = openTrip({ food });
  const copy = structuredClone({ food: before.food.map(({ state }) => state), assumed: before.assumed });
  const { trip } = decideStates(before);
  expect({ food: before.food.map(({ state }) => state), assumed: before.assumed }).toEqual(copy);
  expect(trip.food.every(({ open }) => !open.state)).toBe(true);
  expect(trip.assumed.find(({ path }) => path === "food[0].state")).toBeUndefined();
  expect(trip.assumed.find(({ path }) => path === "food[0].at")?.value).toBe("-16 C");
  // Decided once, it stays.
  expect(decideStates(trip).states[0]).toMatchObject({ state: "frozen", pinned: true });
});

it("no food at all is no trouble, nor are four hundred items", () => {
  expect(statesOf([])).toEqual([]);
  const many = Array.from(
    { length: 400 },
    (_, i) =>
      `name: f${i}, amount: ${100 + i} g, like: ${i % 2 ? "chili" : "chicken"}, eat: day ${2 + (i % 3)} dinner`,
  );
  const trip = openTrip({ food: many });
  expect(decideStates(trip).states).toHaveLength(400);
});
