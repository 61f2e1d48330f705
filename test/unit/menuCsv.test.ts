import { describe, expect, it } from "vitest";
import { readMenuCsv } from "../../core/trip/menuCsv.ts";
import { menuYaml, withMenu } from "../../core/trip/menuYaml.ts";
import { readTrip } from "../../core/trip/readTrip.ts";

const first = (text: string, options = {}): Record<string, unknown> => {
  const { foods, problems } = readMenuCsv(text, options);
  expect(problems).toEqual([]);
  return foods[0]!.food as unknown as Record<string, unknown>;
};
const saysOf = (text: string, options = {}): string =>
  readMenuCsv(text, options)
    .notes.map(({ says }) => says)
    .join(" | ");

const trip = `coldstow: 1
# what follows was typed by hand
title: Menu # a remark
depart: 2027-06-15T08:00
return: 2027-06-18T18:00
party: { adults: 4, children: 0, vulnerable: false, diets: { vegan: 1 } }
coolers:
  - { name: galley, size: 45 qt }
food:
  - { name: milk, amount: 1 L, like: milk, in: galley, eat: day 2 breakfast } # from the dairy
`;
const read = (text: string): ReturnType<typeof readTrip> => readTrip(text, { file: "menu.yaml" });

describe("columns of a menu", () => {
  it("come in any order, under any usual name, and misspelt", () => {
    const food = first("Qty,Meal,Day,Unit,Ingredient\n3,Dinner,2,lb,ground beef\n");
    expect(food).toEqual({ name: "ground beef", like: "ground beef", amount: "3 lb", eat: "day 2 dinner" });
    expect(first("Ingrediant;Ammount\nmilk;2 L\n")).toMatchObject({ name: "milk", amount: "2 L" });
  });

  it("that mean nothing are passed over, and that is told", () => {
    expect(saysOf("item,amount,zodiac\nmilk,2 L,lion\n")).toContain("zodiac");
  });

  it("without one for the food are a problem that names its line", () => {
    const { foods, problems } = readMenuCsv("zodiac,stars\nlion,4\n");
    expect(foods).toEqual([]);
    expect(problems).toMatchObject([{ line: 1, must: expect.stringContaining("item") }]);
  });

  it.each([",", ";", "\t"])("are parted by %j", (mark) => {
    const text = ["item,amount,meal", "stew,2 kg,day 1 dinner"].join("\n").replaceAll(",", mark);
    expect(first(text)).toMatchObject({ amount: "2 kg", eat: "day 1 dinner" });
  });
});

describe("amounts", () => {
  it.each([
    ["2,5 kg", { amount: "2.5 kg" }],
    ["1 1/2 lb", { amount: "1 1/2 lb" }],
    ["6 x 500 mL", { count: 6, each: "500 mL" }],
    ["2 dozen", { count: 24, each: "57 g" }],
    ["24 12 oz cans", { count: 24, each: "12 oz" }],
  ])("%s", (typed, wanted) => {
    expect(first(`item;amount\negg;${typed}\n`)).toMatchObject(wanted);
  });

  it("without a unit are counted for eggs, and weighed in the file's units for meat, which is told", () => {
    const text = "item,amount\nflank steak,4\neggs,18\nbacon,2 lb\n";
    const { foods } = readMenuCsv(text);
    expect(foods.map(({ food }) => food)).toMatchObject([
      { amount: "4 lb" },
      { count: 18, each: "2 oz" },
      { amount: "2 lb" },
    ]);
    expect(foods[0]!.guesses.join()).toContain("no unit: lb");
    expect(foods[1]!.guesses.join()).toContain("counted");
    expect(foods[2]!.guesses).toEqual([]);
    expect(first("item,amount\nflank steak,4\nbacon,1 kg\n")).toMatchObject({ amount: "4 kg" });
  });

  it("of drinks in oz are fluid", () => {
    expect(first("item,amount,each\nbeer,24,12 oz\n")).toMatchObject({ count: 24, each: "12 fl oz" });
    expect(saysOf("item,amount\norange juice,64 oz\n")).toContain("fluid");
  });

  it("with a comma that may part thousands are told", () => {
    const text = 'item,amount\nbeans,"1,500 g"\n';
    expect(first(text)).toMatchObject({ amount: "1500 g" });
    expect(saysOf(text)).toContain("thousands");
  });

  it("per person stay so", () => {
    expect(first("item,per person\nstew,400 g\n")).toMatchObject({ "per person": "400 g" });
    expect(first("item,amount\nstew,400 g per person\n")).toMatchObject({ "per person": "400 g" });
  });

  it.each(["a few", "-3 lb", "0 kg", "", "three kg", "1e9 kg", "∞"])("refuses %j", (typed) => {
    expect(readMenuCsv(`item,amount,meal\nbacon,${typed},day 1 dinner\n`).problems).toMatchObject([
      { line: 2, path: "amount" },
    ]);
  });
});

describe("when it is eaten", () => {
  // The fifteenth of June 2027 is a Tuesday.
  const options = { depart: "2027-06-15T08:00" };
  it.each([
    ["day 3 dinner", "day 3 dinner"],
    ["D3 dinner", "day 3 dinner"],
    ["3 supper", "day 3 dinner"],
    ["Tue dinner", "day 1 dinner"],
    ["Thursday lunch", "day 3 lunch"],
    ["Mon breakfast", "day 7 breakfast"],
    ["2027-06-17 lunch", "day 3 lunch"],
    ["2-4 lunch", "day 2-4 lunch"],
    ["day 1 and 3 dinner", ["day 1 dinner", "day 3 dinner"]],
    ["breakfast daily", "every breakfast"],
    ["snack", "throughout"],
  ])("%s", (typed, wanted) => {
    expect(first(`item,amount,meal\nstew,2 kg,${typed}\n`, options)).toMatchObject({ eat: wanted });
  });

  it("from a day and a meal column", () => {
    expect(first("item,amount,day,meal\nstew,2 kg,3,lunch\n")).toMatchObject({ eat: "day 3 lunch" });
  });

  it("a meal that is not said is guessed and told, silence stays silence", () => {
    expect(first("item,amount,meal\nstew,2 kg,3\n")).toMatchObject({ eat: "day 3 dinner" });
    expect(saysOf("item,amount,meal\nstew,2 kg,3\n")).toContain("dinner");
    expect(first("item,amount,meal\nstew,2 kg,\n")).not.toHaveProperty("eat");
  });

  it.each(["Tue dinner", "day 0 dinner", "whenever", "4-2 lunch", "2027-02-30 lunch"])(
    "refuses %s",
    (typed) => {
      expect(readMenuCsv(`item,amount,meal\nstew,2 kg,${typed}\n`).problems).toMatchObject([
        { line: 2, path: "eat" },
      ]);
    },
  );
});

describe("the rest of a line", () => {
  it("state, diet, cooler, price and allergens", () => {
    const text =
      "item,per person,frozen,diet,cooler,price,allergens\nstew,200 g,yes,Vegan,galley,$12.50,soy and gluten\n";
    expect(first(text)).toMatchObject({
      state: "frozen",
      for: "vegan",
      in: "galley",
      price: 12.5,
      contains: ["soy", "wheat"],
    });
  });

  it("an allergen nobody knows leaves all unsaid: never an empty list", () => {
    const text = "item,amount,allergens\nstew,2 kg,milk and starlight\n";
    expect(first(text)).not.toHaveProperty("contains");
    expect(saysOf(text)).toContain("starlight");
    expect(first("item,amount,allergens\nstew,2 kg,none\n")).toMatchObject({ contains: [] });
    expect(first("item,amount,allergens\nstew,2 kg,\n")).not.toHaveProperty("contains");
  });

  it("a food nobody knows takes the nearest, which is told", () => {
    const text = "item,amount\ngrandmother's smoky bean chili,2 kg\n";
    expect(first(text)).toMatchObject({ like: expect.any(String) });
    expect(saysOf(text)).toContain("not a food that is known");
  });

  it("a formula is text, and marks that turn writing around are gone", () => {
    const text = 'item,amount,like\n"=HYPERLINK(""x"")",2 kg,stew\nch\u202eili,1 kg,chili\n';
    const { foods, problems } = readMenuCsv(text);
    expect(problems).toEqual([]);
    expect(foods[0]!.food.name).toBe('=HYPERLINK("x")');
    expect(foods[1]!.food.name).toBe("ch ili");
    const reading = read(withMenu(trip, foods));
    expect(reading.ok && reading.trip.food[1]!.name).toBe('=HYPERLINK("x")');
  });
});

describe("bounds", () => {
  it("a thousand lines and no more, two megabytes and no more, nothing at all", () => {
    const rows = (n: number): string => `item,amount\n${"stew,2 kg\n".repeat(n)}`;
    expect(readMenuCsv(rows(1000)).foods).toHaveLength(1000);
    expect(readMenuCsv(rows(1001)).problems).toHaveLength(1);
    expect(readMenuCsv("x".repeat(2_000_001)).problems).toHaveLength(1);
    expect(readMenuCsv("").problems).toHaveLength(1);
    expect(readMenuCsv("item,amount\n")).toEqual({ foods: [], notes: [], problems: [] });
  });

  it("every mistake is told, and what is right stands", () => {
    const { foods, problems } = readMenuCsv("item,amount\nstew,2 kg\n,1 kg\nbacon,some\n");
    expect(foods).toHaveLength(1);
    expect(problems.map(({ line }) => line)).toEqual([3, 4]);
  });
});

describe("as YAML", () => {
  const menu = readMenuCsv(
    "item,amount,meal,diet,price\neggs,12,day 2 breakfast,,4\nyes,2 kg,day 1 dinner,,\nbean chili: hot #1,3 lb,day 2 dinner,vegan,9\n",
  );

  it("a trip file takes it, and each guess is remarked", () => {
    const text = menuYaml(menu.foods);
    expect(text).toContain("# guessed: no unit: counted");
    const reading = read(`${trip.slice(0, trip.indexOf("food:"))}${text}`);
    expect(reading.ok ? [] : reading.problems).toEqual([]);
    expect(reading.ok && reading.trip.food.map(({ name }) => name)).toEqual([
      "eggs",
      "yes",
      "bean chili: hot #1",
    ]);
  });

  it("is added to a trip file whose remarks stay", () => {
    const text = withMenu(trip, menu.foods);
    for (const remark of ["# what follows was typed by hand", "# a remark", "# from the dairy"])
      expect(text).toContain(remark);
    const reading = read(text);
    expect(reading.ok && reading.trip.food).toHaveLength(4);
  });

  it("is added to JSON, which stays JSON, and to a trip without food", () => {
    const json = JSON.stringify({
      depart: "2027-06-15T08:00",
      return: "2027-06-16T08:00",
      coolers: [{ name: "a", size: "45 qt" }],
    });
    expect((JSON.parse(withMenu(json, menu.foods)) as { food: unknown[] }).food).toHaveLength(3);
    expect(withMenu(trip.slice(0, trip.indexOf("food:")), menu.foods)).toContain("bean chili");
  });
});
