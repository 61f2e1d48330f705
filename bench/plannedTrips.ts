/**
 * How often a plan does not do what it says: random trips are planned, written down, read again and forecast, and what was
 * missed is counted by kind with the numbers of the trips. `PLANNED_TRIPS=300` trips (20 where it is not said) from number
 * `PROPERTY_SEED` on (1907). The law itself is `test/property/plannedTrips.test.ts`, four trips of it with every test run.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const trips = Number(process.env.PLANNED_TRIPS ?? 20);
const perRun = 4;
const root = fileURLToPath(new URL("../../", import.meta.url));
const { status } = spawnSync(
  process.execPath,
  [
    "node_modules/vitest/vitest.mjs",
    "run",
    "test/property/plannedTrips.test.ts",
    "--reporter=dot",
    "--disable-console-intercept",
  ],
  {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, COLDSTOW_SCORE: "print", PROPERTY_RUNS: String(trips / perRun) },
  },
);
// A trip that was missed is what is asked for here, and no failure of the asking.
process.exitCode = status === null ? 1 : 0;
