import { expect, it } from "vitest";
import { type Assigned, assignFood } from "../../../core/plan/assign/assignFood.ts";
import { assignTrip, cooler, solver, type Wanted } from "../fixtures/assignTrip.ts";

const stew = "{ name: stew, amount: 2 kg, like: stew, state: frozen, eat: day 4 dinner, watertight: true }";
const ham = "{ name: ham, amount: 500 g, like: ham, state: chilled, eat: day 1 lunch, watertight: true }";
const salad = "{ name: salad, amount: 500 g, like: romaine, state: chilled, eat: day 2 lunch }";
const chicken =
  "{ name: chicken, amount: 1.5 kg, like: chicken breast, raw: true, state: chilled, eat: day 2 dinner, watertight: true }";
const cans = "{ name: cans, count: 12, each: 355 mL, like: soft drink, state: ambient, eat: throughout }";

async function assigned(wanted: Wanted): Promise<Assigned> {
  return assignFood(assignTrip(wanted), { solve: await solver(), members: 0 });
}

const where = ({ assign }: Assigned, item: string): string | undefined =>
  assign.find((one) => one.item === item)?.cooler;
const codes = ({ warnings }: Assigned): string[] => warnings.map(({ code }) => code);

it("keeps drinks and food apart where there are two coolers that could hold both", async () => {
  const got = await assigned({
    coolers: [cooler("one", 50), cooler("two", 40)],
    food: [ham, salad, stew, cans],
  });
  expect(where(got, "cans")).not.toBe(where(got, "ham"));
  expect(where(got, "salad")).toBe(where(got, "ham"));
  expect(got.fits).toBe(true);
});

it("puts drinks beside food where there is one cooler, and tells so", async () => {
  const got = await assigned({ coolers: [cooler("only", 70)], food: [ham, cans] });
  expect([where(got, "ham"), where(got, "cans")]).toEqual(["only", "only"]);
  expect(codes(got)).toContain("drinks-beside-food");
});

it("keeps raw food away from what is eaten as it is", async () => {
  const got = await assigned({
    coolers: [cooler("one", 50), cooler("two", 50)],
    food: [ham, salad, chicken],
  });
  expect(where(got, "chicken")).not.toBe(where(got, "ham"));
  expect(where(got, "chicken")).not.toBe(where(got, "salad"));
  expect(got.assign.find(({ item }) => item === "chicken")?.why).toMatch(/^raw: kept away/);
});

it("tells that raw lies beside ready food where there is one cooler", async () => {
  const got = await assigned({ coolers: [cooler("only", 60)], food: [ham, chicken] });
  expect(where(got, "chicken")).toBe("only");
  expect(codes(got)).toContain("raw-beside-ready");
});

it("puts nothing into a sealed cooler that is eaten before it is opened", async () => {
  const late = cooler("late", 60, "holds: food, sealed until: day 3 breakfast");
  const got = await assigned({
    coolers: [cooler("early", 40, "holds: food"), late],
    food: [ham, salad, stew],
  });
  expect([where(got, "ham"), where(got, "salad")]).toEqual(["early", "early"]);
});

it("keeps one of two coolers shut for the first half, with nothing in it that is eaten before", async () => {
  const steak =
    "{ name: steak, amount: 4 kg, like: ground beef, raw: true, state: frozen, eat: day 4 dinner, watertight: true }";
  const busy = "holds: food";
  const got = await assigned({
    coolers: [cooler("one", 40, busy), cooler("two", 40, busy)],
    food: [ham, salad, steak],
  });
  expect(got.shut).not.toBeNull();
  const shut = got.shut!;
  const inside = got.trip.food.filter((item) => item.cooler === shut.cooler);
  expect(inside.map(({ name }) => name)).toEqual(["steak"]);
  expect(got.trip.coolers[shut.cooler]!.sealedUntil_s).toBe(shut.until_s);
  expect(shut.until_s).toBe(inside[0]!.eat_s);
});

it("keeps what freezing spoils out of a cooler with dry ice", async () => {
  const coolers = [cooler("cold", 60, "holds: food"), cooler("mild", 40, "holds: food")];
  const more = "ice: [ { form: dry ice, amount: 5 kg, at: -78 C, in: cold } ]";
  const got = await assigned({ coolers, food: [salad, stew], more });
  expect(where(got, "salad")).toBe("mild");
});

it("leaves what the file says where it is, plans around it, and tells the rule that it goes against", async () => {
  const pinned = cans.replace("eat:", "in: food box, eat:");
  const coolers = [cooler("food box", 50, "holds: food"), cooler("bar", 40, "holds: drinks")];
  const got = await assigned({ coolers, food: [ham, pinned] });
  expect(where(got, "cans")).toBe("food box");
  expect(got.assign.find(({ item }) => item === "cans")?.pinned).toBe(true);
  expect(codes(got)).toContain("pin-against-rule");
});

it("puts what needs no cold into the dry box and nothing that spoils", async () => {
  const bread = "{ name: bread, amount: 1 kg, like: bread, state: ambient, eat: throughout }";
  const got = await assigned({ coolers: [cooler("only", 40)], food: [bread, ham] });
  expect([where(got, "bread"), where(got, "ham")]).toEqual(["dry box", "only"]);
  expect(got.assign[0]?.why).toBe("needs no cold");
});

it("has an answer for no food at all", async () => {
  const got = await assigned({ coolers: [cooler("only", 40)], food: [] });
  expect([got.assign, got.fits, got.waysOut]).toEqual([[], true, []]);
});

it("gathers frozen food and needs less ice for it than for as much that is chilled", async () => {
  const food = (state: string): string[] =>
    ["a", "b", "c"].map(
      (name) =>
        `{ name: ${name}, amount: 2 kg, like: stew, state: ${state}, eat: day 3 dinner, watertight: true }`,
    );
  const coolers = [cooler("one", 60, "holds: food"), cooler("two", 60, "holds: food")];
  const frozen = await assigned({ coolers, food: food("frozen") });
  const chilled = await assigned({ coolers, food: food("chilled") });
  const sum = (got: Assigned): number => got.reserve_kg.reduce((a, b) => a + b, 0);
  expect(new Set(frozen.assign.map((one) => one.cooler)).size).toBe(1);
  expect(sum(frozen)).toBeLessThan(sum(chilled));
});

it("tries at least three ways out where nothing fits, and one of them works", async () => {
  const much = "{ name: milk, count: 30, each: 1 L, like: milk, state: chilled, eat: throughout }";
  const got = await assigned({ coolers: [cooler("small", 20)], food: [much, ham] });
  expect(got.fits).toBe(false);
  expect(codes(got)).toContain("does-not-fit");
  expect(got.waysOut.length).toBeGreaterThanOrEqual(3);
  expect(got.waysOut.some(({ holds }) => holds)).toBe(true);
  for (const { says, holds } of got.waysOut)
    expect(says).toContain(holds ? "then it fits" : "still does not fit");
});

it("tells how much ice a cooler has no room for", async () => {
  const milk = "{ name: milk, count: 12, each: 1 L, like: milk, state: chilled, eat: throughout }";
  const got = await assigned({ days: 9, coolers: [cooler("small", 22)], food: [milk] });
  expect(codes(got)).toContain("no-room-for-ice");
});

it("gives the same answer twice, within a hundredth of the least", async () => {
  const wanted = { coolers: [cooler("one", 50), cooler("two", 40)], food: [ham, salad, stew, chicken, cans] };
  const [one, two] = [await assigned(wanted), await assigned(wanted)];
  expect(one.assign).toEqual(two.assign);
  expect(one.reserve_kg).toEqual(two.reserve_kg);
  expect(one.gap_frac).toBeLessThanOrEqual(0.01);
});

it("places four hundred items", { timeout: 60_000 }, async () => {
  const likes = ["stew", "ham", "yogurt", "hummus", "tomato"];
  const food = Array.from({ length: 400 }, (_, i) => {
    const like = likes[i % likes.length]!;
    return `{ name: item ${i}, amount: ${50 + (i % 7) * 20} g, like: ${like}, state: chilled, eat: day ${1 + (i % 4)} dinner }`;
  });
  const coolers = [
    cooler("one", 90, "holds: food"),
    cooler("two", 70, "holds: food"),
    cooler("bar", 40, "holds: drinks"),
  ];
  const got = await assigned({ coolers, food });
  expect(
    got.assign.filter((one) => one !== undefined && one.cooler !== "dry box" && one.cooler !== "bar"),
  ).toHaveLength(400);
});

it("stops when it is called off", async () => {
  const trip = assignTrip({ coolers: [cooler("only", 40)], food: [ham] });
  await expect(assignFood(trip, { solve: await solver(), signal: { aborted: true } })).rejects.toThrow(
    "called off",
  );
});

it("compares the best other assignment over members of the ensemble", { timeout: 60_000 }, async () => {
  const trip = assignTrip({
    coolers: [cooler("one", 50, "holds: food"), cooler("two", 60, "holds: food")],
    food: [ham, salad, stew, chicken],
  });
  const got = await assignFood(trip, { solve: await solver(), members: 4 });
  expect(got.otherwise).toHaveLength(1);
  expect(got.otherwise[0]!.iceGain_h).not.toBeNull();
  expect(got.otherwise[0]!.foodGain_h).not.toBeNull();
});
