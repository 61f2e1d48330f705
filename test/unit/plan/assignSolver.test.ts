import { expect, it } from "vitest";
import { LpText } from "../../../core/plan/assign/lpText.ts";
import { solver } from "../fixtures/assignTrip.ts";

it("solves a knapsack that can be counted by hand", async () => {
  // Worth 6, 5 and 4 at weights 5, 4 and 3 with room for 7: the last two.
  const lp = new LpText();
  const things = [
    [6, 5, "a"],
    [5, 4, "b"],
    [4, 3, "c"],
  ] as const;
  for (const [worth, , name] of things) {
    lp.cost(-worth, name);
    lp.binary(name);
  }
  lp.row(
    things.map(([, weight, name]) => [weight, name]),
    "<=",
    7,
  );
  const { values, gap_frac } = await (await solver())(lp.text());
  expect(things.map(([, , name]) => Math.round(values.get(name)!))).toEqual([0, 1, 1]);
  expect(gap_frac).toBeLessThanOrEqual(0.01);
});

it("refuses a text that is no linear program, which the solver itself takes silently", async () => {
  const solve = await solver();
  await expect(solve("no program")).rejects.toThrow();
});

it("refuses a program without an answer", async () => {
  const solve = await solver();
  await expect(solve("Minimize\n obj: x\nSubject To\n a: x >= 2\n b: x <= 1\nEnd\n")).rejects.toThrow(
    "no answer",
  );
});

it("writes long sums over several lines, and sums of nothing as a column of no weight", async () => {
  const lp = new LpText();
  for (let i = 0; i < 30; i++) lp.cost(1 + i / 10, `c${i}`);
  lp.row([], "<=", 1);
  lp.row([[1, "c0"]], ">=", 2.5);
  const text = lp.text();
  expect(text.split("\n").every((line) => line.length < 200)).toBe(true);
  const { values } = await (await solver())(text);
  expect(values.get("c0")).toBeCloseTo(2.5, 9);
});
