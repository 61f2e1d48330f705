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
  forecast,
  forecastText,
  iceBand,
  iceBandData,
  planIce,
  planText,
  readTrip,
  type Trip,
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

describe.each(examples)("%s", (name, units) => {
  const trip = tripOf(name);
  const told = forecast(trip);
  const options = { width: 720, units, id: "golden" } as const;

  test("forecast, in words", async () => {
    await expect(forecastText(told, { units })).toMatchFileSnapshot(`${name}.forecast.txt`);
  });

  test("plan, in words", async () => {
    const plan = planIce(trip, { aim: "pieces" });
    await expect(planText(plan.forecast, { units })).toMatchFileSnapshot(`${name}.plan.txt`);
  });

  test("pictures", async () => {
    await expect(foodClock(foodClockData(told), options)).toMatchFileSnapshot(`${name}.food.svg`);
    for (let i = 0; i < trip.coolers.length; i++) {
      await expect(iceBand(iceBandData(told, i), options)).toMatchFileSnapshot(`${name}.${i}.ice.svg`);
      await expect(coldStair(coldStairData(told, i), options)).toMatchFileSnapshot(`${name}.${i}.cold.svg`);
    }
  });
});
