// What the examples said when somebody last looked. This proves only that nothing moved; `npx vitest run test/golden -u`
// writes it anew, and CHANGELOG tells which numbers moved and why.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  coldStair,
  coldStairData,
  foodClock,
  foodClockData,
  compare,
  compareBands,
  compareText,
  doubtBars,
  drainBands,
  ensemble,
  forecast,
  forecastText,
  habitLadder,
  habits,
  habitsText,
  highsSolver,
  iceBand,
  iceBandData,
  packSection,
  planText,
  type RunTasks,
  readTrip,
  runTask,
  spreadOver,
  stress,
  stressGrid,
  stressText,
  type Trip,
  wholePlan,
} from "../../core/index.ts";

const folder = join(import.meta.dirname, "../../examples");
const examples = [
  ["family-three-days", "us"],
  ["festival-weekend", "metric"],
  ["desert-river", "us"],
] as const;

function tripOf(name: string): Trip {
  const reading = readTrip(readFileSync(join(folder, `${name}.yaml`), "utf8"), { file: `${name}.yaml` });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

/** Runs in this thread; few members, for nothing here is measured. */
const runOf = (...trips: Trip[]): RunTasks => spreadOver([{ run: async (task) => runTask(trips, task) }]);
const few = { members: 32, seed: 1 } as const;
const fewer = { members: 8, seed: 1 } as const;

describe.each(examples)("%s", (name, units) => {
  const trip = tripOf(name);
  const run = runOf(trip);
  const options = { width: 720, units, id: "golden" } as const;

  test("forecast, in words and pictures", async () => {
    const told = await drainBands(await ensemble(forecast(trip), run, few), run, fewer);
    await expect(forecastText(told, { units })).toMatchFileSnapshot(`${name}.forecast.txt`);
    await expect(foodClock(foodClockData(told), options)).toMatchFileSnapshot(`${name}.food.svg`);
    for (let i = 0; i < trip.coolers.length; i++) {
      await expect(iceBand(iceBandData(told, i), options)).toMatchFileSnapshot(`${name}.${i}.ice.svg`);
      await expect(coldStair(coldStairData(told, i), options)).toMatchFileSnapshot(`${name}.${i}.cold.svg`);
      await expect(doubtBars(told, i, options)).toMatchFileSnapshot(`${name}.${i}.doubts.svg`);
    }
  }, 60_000);

  test("the middle case, in words", async () => {
    await expect(forecastText(forecast(trip), { units })).toMatchFileSnapshot(`${name}.middle.txt`);
  });

  test("plan, in words", async () => {
    const draw = (): Promise<never> => Promise.reject(new Error("there are no members"));
    const options = { aim: "pieces", members: 0, seed: 1, solve: await highsSolver(), draw } as const;
    const plan = await wholePlan(trip, options);
    await expect(planText(plan.forecast, { units })).toMatchFileSnapshot(`${name}.plan.txt`);
    const { layers } = plan.forecast.result.plan!;
    for (const { name: cooler } of plan.planned.trip.coolers) {
      const map = packSection(plan.planned.trip, layers, cooler, { width: 680, units, id: "golden" });
      await expect(map).toMatchFileSnapshot(`${name}.pack.${cooler.replace(" ", "-")}.svg`);
    }
  }, 60_000);

  test("habits, in words and as a picture", async () => {
    const result = await habits(trip, run, fewer);
    await expect(habitsText(result, { units })).toMatchFileSnapshot(`${name}.habits.txt`);
    await expect(habitLadder(result, options)).toMatchFileSnapshot(`${name}.habits.svg`);
  }, 60_000);

  test("stress, in words and as a picture", async () => {
    const result = await stress(trip, run, few);
    await expect(stressText(result, { units })).toMatchFileSnapshot(`${name}.stress.txt`);
    await expect(stressGrid(result, options)).toMatchFileSnapshot(`${name}.stress.svg`);
  }, 60_000);
});

test("a trip beside one with half as much ice", async () => {
  const trip = tripOf("desert-river");
  const less = { ...trip, ice: trip.ice.map((ice) => ({ ...ice, mass_kg: ice.mass_kg / 2 })) };
  const files = [
    { trip, file: "desert-river.yaml" },
    { trip: less, file: "less-ice.yaml" },
  ];
  const result = await compare(files, runOf(trip, less), few);
  const options = { width: 720, units: "us", id: "golden" } as const;
  await expect(compareText(result, { units: "us" })).toMatchFileSnapshot("compare.txt");
  await expect(compareBands(result, options)).toMatchFileSnapshot("compare.svg");
}, 60_000);
