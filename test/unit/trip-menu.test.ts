import { describe, expect, it } from "vitest";
import { loadTrip } from "../../core/forecast/load.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Problem, Trip, TripFood } from "../../core/trip/types.ts";

interface Parts {
  party?: string;
  food?: readonly string[];
  rest?: string;
  depart?: string;
  return?: string;
}

function text({ party = "{ adults: 4, vulnerable: false }", food = [], rest = "", ...dates }: Parts): string {
  return [
    `depart: ${dates.depart ?? "2027-06-18T08:00"}`,
    `return: ${dates.return ?? "2027-06-21T18:30"}`,
    'meals: { breakfast: "08:00", lunch: "12:30", dinner: "18:30" }',
    `party: ${party}`,
    "coolers: [{ name: a, size: 60 L }]",
    food.length === 0 ? "" : `food:\n${food.map((item) => `  - { ${item} }\n`).join("")}`,
    rest,
  ].join("\n");
}

function trip(parts: Parts): Trip {
  const reading = readTrip(text(parts), { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

function problems(parts: Parts): readonly Problem[] {
  const reading = readTrip(text(parts), { file: "trip.yaml" });
  return reading.ok ? [] : reading.problems;
}

const one = (item: string, parts: Parts = {}): TripFood => trip({ ...parts, food: [item] }).food[0]!;
const stew = "name: stew, in: a";
const hour_s = 3600;

describe("meals", () => {
  // Departure is at breakfast on day 1, return at dinner on day 4.
  it.each([
    ["every breakfast", [24, 48, 72]],
    ["every lunch", [4.5, 28.5, 52.5, 76.5]],
    ["every dinner", [10.5, 34.5, 58.5, 82.5]],
    ["day 2-3 breakfast", [24, 48]],
    ["days 2 to 3 lunch", [28.5, 52.5]],
    ["day 1–3 Dinner", [10.5, 34.5, 58.5]],
    ["[day 3 dinner, day 1 lunch]", [4.5, 58.5]],
    ["[every breakfast, day 2 breakfast, day 1 21:00]", [13, 24, 48, 72]],
  ])("of %s are after departure and up to return", (eat, hours) => {
    const item = one(`${stew}, amount: 1 kg, eat: ${eat}`);
    expect(item.parts_s).toEqual(hours.map((t) => t * hour_s));
    expect(item.eat_s).toBe(hours.at(-1)! * hour_s);
  });

  it("that are only one make one part", () => {
    const item = one(`${stew}, amount: 1 kg, eat: [day 2 dinner]`);
    expect([item.parts_s, item.eat_s]).toEqual([null, 34.5 * hour_s]);
  });

  it("keep their hour across a clock change", () => {
    const item = one(`${stew}, amount: 1 kg, eat: every lunch`, {
      depart: "2027-03-27T08:00",
      return: "2027-03-29T20:00",
      rest: "place: { latitude: 46, longitude: 8, timezone: Europe/Zurich }",
    });
    expect(item.parts_s).toEqual([4.5, 27.5, 51.5].map((t) => t * hour_s));
  });

  it("of days that the trip does not have are left out, and that is said", () => {
    const { food, assumed } = trip({ food: [`${stew}, amount: 1 kg, eat: day 3-9 lunch`] });
    expect(food[0]!.parts_s).toHaveLength(2);
    expect(assumed.find(({ path }) => path === "food[0].eat")?.value).toBe("day 3-4 lunch");
  });

  it("of what is put in on the way come after that", () => {
    const rest =
      "events:\n  - { at: day 2 10:00, do: put in, item: { name: trout, amount: 1 kg, like: trout, at: 12 C, eat: every lunch }, to: a }";
    expect(trip({ rest }).food[0]!.parts_s).toEqual([28.5, 52.5, 76.5].map((t) => t * hour_s));
    const early = rest.replace("every lunch", "[day 1 lunch, day 3 lunch]");
    expect(problems({ rest: early }).map(({ path }) => path)).toEqual(["events[0].item.eat[0]"]);
  });

  it("take out equal parts", () => {
    const loaded = loadTrip(trip({ food: [`${stew}, amount: 1 kg, eat: every dinner`] }));
    const taken = loaded.acts.flatMap((act) => (act.do === "take out" ? [act] : []));
    let left = 1;
    for (const { share_frac } of taken) {
      expect(left * share_frac).toBeCloseTo(1 / 4, 12);
      left -= left * share_frac;
    }
    expect(taken.map(({ t_s }) => t_s / hour_s)).toEqual([10.5, 34.5, 58.5, 82.5]);
    expect(left).toBeCloseTo(0, 12);
  });

  it.each([
    ["every brunch", "food[0].eat", /every breakfast/],
    ["day 5-3 lunch", "food[0].eat", /first to the last/],
    ["day 0-3 lunch", "food[0].eat", /day 1/],
    ["day 8-9 lunch", "food[0].eat", /at least one lunch/],
    ["[]", "food[0].eat", /at least one/],
    ["[day 2 lunch, day 9 lunch]", "food[0].eat[1]", /within the trip/],
    ["[day 2 lunch, throughout]", "food[0].eat[1]", /a moment/],
    ["[day 2 lunch, 5]", "food[0].eat", /moment/],
  ])("%s is refused", (eat, path, must) => {
    const found = problems({ food: [`${stew}, amount: 1 kg, eat: ${eat}`] });
    expect(found.map((problem) => problem.path)).toEqual([path]);
    expect(found[0]!.must).toMatch(must);
  });
});

describe("amounts counted from heads", () => {
  it("are portion × eaters × meals", () => {
    const item = one(`${stew}, per person: 150 g, eat: every lunch`);
    expect(item.mass_kg).toBeCloseTo(0.15 * 4 * 4, 12);
    expect(item).toMatchObject({ amount: "2.4 kg", portion: { each: "150 g", heads: 4, meals: 4 } });
  });

  it("count a child in part, and go with the appetite", () => {
    const party = "{ adults: 8, children: 4, vulnerable: false, appetite: 110 % }";
    const { food, assumed } = trip({ party, food: [`${stew}, per person: 220 g, eat: day 1 lunch`] });
    expect(food[0]!.mass_kg).toBeCloseTo(0.22 * (8 + 0.6 * 4) * 1.1, 12);
    expect(food[0]!.portion?.heads).toBeCloseTo(10.4, 12);
    expect(assumed.find(({ path }) => path === "party.child portion")?.value).toBe("60 %");
    const own = party.replace("}", ", child portion: 80 % }");
    expect(one(`${stew}, per person: 220 g, eat: day 1 lunch`, { party: own }).portion?.heads).toBeCloseTo(
      11.2,
    );
  });

  it.each([
    ["8 oz", 3, "1.5 lb"],
    ["100 g", 3, "300 g"],
    ["355 mL", 3, "1.1 L"],
    ["12 fl oz", 3, "1.2 qt"],
    ["41 g", 3, "130 g"],
    ["3 g", 3, "9 g"],
    ["10 lb", 13, "130 lb"],
  ])("of %s for %i are told as %s, never less than there is", (each, adults, words) => {
    const party = `{ adults: ${adults}, vulnerable: false }`;
    expect(one(`${stew}, per person: ${each}, eat: day 1 lunch`, { party }).amount).toBe(words);
  });

  it("grow smoothly from twelve to thirteen", () => {
    const masses = [11, 12, 13, 14].map(
      (adults) =>
        one(`${stew}, per person: 150 g, eat: every lunch`, {
          party: `{ adults: ${adults}, vulnerable: false }`,
        }).mass_kg,
    );
    for (const i of [1, 2, 3]) expect(masses[i]! - masses[i - 1]!).toBeCloseTo(0.6, 9);
  });

  it("are whole pieces where a piece is given", () => {
    const item = one(
      "name: eggs, like: egg, per person: 1.5, each: 60 g, eat: [day 2 breakfast, day 3 breakfast], in: a",
      {
        party: "{ adults: 3, children: 1, vulnerable: false }",
      },
    );
    // 1.5 × 3.6 × 2 = 10.8
    expect(item).toMatchObject({
      pieces: 11,
      amount: "11 × 60 g",
      portion: { each: "1.5 × 60 g", meals: 2 },
    });
    expect(item.mass_kg).toBeCloseTo(0.66, 12);
  });

  it("of what is eaten throughout count every meal before return", () => {
    const item = one("name: lemonade, per person: 1, each: 330 mL, in: a");
    expect(item).toMatchObject({ eat_s: null, parts_s: null, portion: { meals: 10 }, pieces: 40 });
  });

  it("part the party by diet, and lose nobody", () => {
    const party = "{ adults: 5, children: 3, vulnerable: false, diets: { vegetarian: 2, No nuts: 6 } }";
    const food = ["for: vegetarian", "not for: Vegetarian", "for: no nuts", "not for: no nuts"].map(
      (who) => `${stew}, per person: 100 g, eat: day 1 lunch, ${who}`,
    );
    const heads = trip({ party, food }).food.map((item) => item.portion!.heads);
    expect(heads[0]).toBeCloseTo(2, 12);
    expect(heads[0]! + heads[1]!).toBeCloseTo(5 + 1.8, 12);
    expect(heads[2]).toBeCloseTo(5 + 0.6, 12);
    expect(heads[2]! + heads[3]!).toBeCloseTo(5 + 1.8, 12);
  });

  it.each([
    ["per person: 150 g, amount: 1 kg", ["amount"]],
    ["per person: 150 g, each: 60 g", ["each"]],
    ["per person: 2", ["each"]],
    ["per person: 2, each: 60 g, count: 8", ["count"]],
    ["per person: 2 C", ["per person"]],
    ["per person: 150", ["per person"]],
    ["per person: -1", ["per person"]],
    ["per person: 900 kg", ["per person"]],
    ["amount: 1 kg, for: vegan", ["for"]],
    ["per person: 150 g, for: vegetable", ["for"]],
    ["per person: 150 g, for: vegan, not for: nobody", ["not for"]],
    ["per person: 150 g, for: nobody", ["for"]],
    ["per person: 150 g, not for: everybody", ["not for"]],
  ])("are refused for %s", (keys, paths) => {
    const party = "{ adults: 4, vulnerable: false, diets: { vegan: 2, nobody: 0, everybody: 4 } }";
    const found = problems({ party, food: [`${stew}, eat: day 1 lunch, ${keys}`] });
    expect(found.map(({ path }) => path)).toEqual(paths.map((key) => `food[0].${key}`));
  });

  it("name the diet that was meant", () => {
    const party = "{ adults: 4, vulnerable: false, diets: { vegetarian: 1 } }";
    const found = problems({
      party,
      food: [`${stew}, per person: 100 g, for: vegetarien, eat: day 1 lunch`],
    });
    expect(found[0]!.near).toBe("vegetarian");
  });
});

describe("the party", () => {
  it.each([
    ["{ adults: 2, vulnerable: false, diets: { vegan: 3 } }", "party.diets.vegan"],
    ["{ adults: 2, vulnerable: false, diets: { vegan: -1 } }", "party.diets.vegan"],
    ["{ adults: 2, vulnerable: false, diets: [vegan] }", "party.diets"],
    ["{ adults: 2, vulnerable: false, appetite: 20 % }", "party.appetite"],
    ["{ adults: 2, vulnerable: false, appetite: large }", "party.appetite"],
    ["{ adults: 2, vulnerable: false, child portion: 130 % }", "party.child portion"],
    ["{ adults: 2, vulnerable: false, allergies: [nut] }", "party.allergies[0]"],
  ])("%s is refused", (party, path) => {
    expect(problems({ party }).map((problem) => problem.path)).toEqual([path]);
  });

  it("keeps odd names of diets as plain words", () => {
    const party = "{ adults: 2, vulnerable: false, diets: { valueOf: 1 }, allergies: [tree nuts, milk] }";
    expect(trip({ party }).party).toMatchObject({
      diets: { valueOf: 1 },
      allergies: ["tree nuts", "milk"],
    });
    const told = problems({ party, food: [`${stew}, per person: 100 g, for: toString, eat: day 1 lunch`] });
    expect(told.map(({ path }) => path)).toEqual(["food[0].for"]);
  });

  it("that nobody counted is listed as moving amounts, where it does", () => {
    const why = (food: string): string | undefined =>
      trip({ party: "{ vulnerable: false }", food: [food] }).assumed.find(
        ({ path }) => path === "party.adults",
      )?.why;
    expect(why(`${stew}, amount: 1 kg, eat: day 1 lunch`)).toMatch(/no heat/);
    expect(why(`${stew}, per person: 300 g, eat: day 1 lunch`)).toMatch(/counted/);
  });
});

describe("what is known of a food", () => {
  it("is kept", () => {
    const item = one(
      "name: smoked salmon, like: salmon, amount: 1 kg, eat: day 2 lunch, in: a, vacuum packed: true, refrozen: true, days old: 2, contains: [fish], price: 12.50",
    );
    expect(item).toMatchObject({
      reducedOxygen: true,
      refrozen: true,
      daysCold: 2,
      contains: ["fish"],
      price: 12.5,
    });
  });

  it("is unknown where the file is silent", () => {
    const item = one(`${stew}, amount: 1 kg, eat: day 2 lunch`);
    expect(item).toMatchObject({
      reducedOxygen: false,
      refrozen: false,
      daysCold: null,
      contains: null,
      price: null,
    });
  });

  it.each([
    ["contains: [gluten]", "food[0].contains[0]", "wheat"],
    ["contains: milk", "food[0].contains", null],
    ["days old: 2 d", "food[0].days old", null],
    ["price: free", "food[0].price", null],
    ["vacuum packed: maybe", "food[0].vacuum packed", null],
  ])("is refused as %s", (keys, path, near) => {
    const found = problems({ food: [`${stew}, amount: 1 kg, eat: day 2 lunch, ${keys}`] });
    expect(found.map((problem) => [problem.path, problem.near])).toEqual([[path, near]]);
  });

  it("leaves a place open to the plan only where none is written", () => {
    const food = [
      "name: stew, eat: day 2 lunch, amount: 1 kg",
      `${stew}, amount: 1 kg, state: frozen, eat: day 2 lunch`,
    ];
    const rest =
      "events: [{ at: day 2 10:00, do: put in, item: { name: trout, amount: 1 kg, like: trout, at: 12 C }, to: a }]";
    expect(
      trip({ food: [...food, "name: rice, like: bread, amount: 1 kg, state: dry"], rest }).food.map(
        ({ open }) => open,
      ),
    ).toEqual([
      { place: true, state: true },
      { place: false, state: false },
      { place: false, state: false },
      { place: false, state: true },
    ]);
  });
});

describe("medicines", () => {
  it.each([
    ["name: Insulin pens, like: water", "food[0].name"],
    ["name: Dad's box, like: eye drops", "food[0].like"],
    ["name: cholera vaccine", "food[0].name"],
    ["name: medicine for the dog", "food[0].name"],
    ["name: breast milk, like: milk", "food[0].name"],
  ])("are refused with a referral: %s", (keys, path) => {
    const found = problems({ food: [`${keys}, amount: 100 mL, in: a`] });
    expect(found.map((problem) => problem.path)).toEqual([path]);
    expect(found[0]!.must).toMatch(/pharmacist/);
  });

  it.each(["cough drop cake", "blood orange", "medicinal tea"])("are not seen in %s", (name) => {
    expect(one(`name: ${name}, like: orange juice, amount: 1 L, in: a`).name).toBe(name);
  });

  it("are refused as a warm load and on the way too", () => {
    const rest =
      "warm load: { name: vaccine, amount: 1 kg, by: day 2 12:00 }\nevents: [{ at: day 2 10:00, do: put in, item: { name: insulin, amount: 10 mL, like: water, at: 5 C }, to: a }]";
    expect(problems({ rest }).map(({ path }) => path)).toEqual(["warm load.name", "events[0].item.name"]);
  });
});
