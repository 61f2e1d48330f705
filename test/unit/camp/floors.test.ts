import { describe, expect, it } from "vitest";
import { withFloors } from "../../../core/camp/floors.ts";
import { readLog } from "../../../core/camp/readLog.ts";
import type { Entry } from "../../../core/camp/types.ts";
import { forecast } from "../../../core/forecast/forecast.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const trip = smallTrip({ ice_kg: 8, high_C: 24 });
const told = forecast(trip, { effects: false });
const hour = 3600;

function entries(...lines: string[]): readonly Entry[] {
  if (lines.length === 0) return [];
  const log = readLog(`coldstow-log: 1\nentries:\n${lines.map((one) => `  - { ${one} }\n`).join("")}`, trip);
  if (!log.ok) throw new Error(JSON.stringify(log.problems));
  return log.log.entries;
}

function verdicts(now_h: number, ...lines: string[]): Record<string, string> {
  const { result } = withFloors(told, entries(...lines), now_h * hour);
  return Object.fromEntries(result.food.map(({ name, verdict }) => [name, verdict]));
}

describe("verdicts held to the log", () => {
  it("stay as reckoned without a reading, and with cold ones", () => {
    expect(verdicts(24).milk).toBe("keep");
    expect(verdicts(24, "id: a, at: day 1 20:00, cooler: chest, read: 3 C, of: milk").milk).toBe("keep");
  });

  it("count from the last cold reading to the next: 3 h warm is more than the charts' 2 h", () => {
    const cold = "id: a, at: day 1 18:00, cooler: chest, read: 3 C, of: milk";
    const warm = "id: b, at: day 1 20:00, cooler: chest, read: 9 C, of: milk";
    const again = "id: c, at: day 1 21:00, cooler: chest, read: 3 C, of: milk";
    expect(verdicts(24, cold, warm, again).milk).toBe("discard");
    const soon = "id: a, at: day 1 19:30, cooler: chest, read: 3 C, of: milk";
    expect(
      verdicts(24, soon, warm, "id: c, at: day 1 20:30, cooler: chest, read: 3 C, of: milk").milk,
    ).not.toBe("discard");
  });

  it("keep a warm reading that is withdrawn later, and forget one that the same hand took back at once", () => {
    const warm = "id: b, at: day 1 20:00, by: ana, cooler: chest, read: 9 C, of: milk";
    expect(verdicts(24, warm, "id: c, at: day 1 22:00, by: ana, withdraws: b").milk).toBe("discard");
    expect(verdicts(24, warm, "id: c, at: day 1 20:05, by: ben, withdraws: b").milk).toBe("discard");
    expect(verdicts(24, warm, "id: c, at: day 1 20:05, by: ana, withdraws: b").milk).toBe("keep");
  });

  it("take no account of air that the reckoning knows to be warm, and full account of air that it does not", () => {
    expect(verdicts(24, "id: b, at: day 1 20:00, cooler: chest, read: 5 C, of: air").milk).toBe("keep");
    expect(verdicts(24, "id: b, at: day 1 20:00, cooler: chest, read: 30 C, of: air").milk).toBe("discard");
  });

  it("let a sight of ice end the gap that a thermometer in the water left open, but not one in the food", () => {
    const seen = "id: a, at: day 1 19:50, cooler: chest, ice: 1/2";
    const after = "id: c, at: day 1 20:10, cooler: chest, ice: 1/2";
    expect(
      verdicts(24, seen, "id: b, at: day 1 20:00, cooler: chest, read: 9 C, of: water", after).milk,
    ).not.toBe("discard");
    expect(verdicts(24, seen, "id: b, at: day 1 20:00, cooler: chest, read: 9 C, of: milk", after).milk).toBe(
      "discard",
    );
  });

  it("discard what was swamped unless it is watertight, and everything that was lost", () => {
    expect(verdicts(24, "id: a, at: day 1 20:00, cooler: chest, swamped: true").milk).toBe("keep");
    expect(verdicts(24, "id: a, at: day 1 20:00, cooler: chest, dumped: true").milk).toBe("discard");
  });

  it("never get milder by any reading", () => {
    const rank = { keep: 0, "eat next": 1, discard: 2 } as Record<string, number>;
    const hot = forecast(smallTrip({ ice_kg: 1, high_C: 38 }), { effects: false });
    const before = new Map(hot.result.food.map(({ name, verdict }) => [name, rank[verdict]!]));
    for (const read of ["1 C", "4 C", "5 C", "12 C", "40 C"])
      for (const of of ["air", "water", "milk", "chicken"]) {
        const log = entries(`id: a, at: day 1 20:00, cooler: chest, read: ${read}, of: ${of}`);
        for (const { name, verdict } of withFloors(hot, log, 24 * hour).result.food)
          expect(rank[verdict]!).toBeGreaterThanOrEqual(before.get(name)!);
      }
  });
});
