import { beforeAll, describe, expect, it } from "vitest";
import { spreadOver } from "../../../core/ensemble/spread.ts";
import { Cancelled } from "../../../core/ensemble/types.ts";
import { DomainError } from "../../../core/quantity/errors.ts";
import { compare } from "../../../core/whatif/compare.ts";
import { habits } from "../../../core/whatif/habits.ts";
import { runTask } from "../../../core/whatif/runTask.ts";
import { stress } from "../../../core/whatif/stress.ts";
import type { CompareResult, HabitsResult, StressResult } from "../../../core/whatif/types.ts";
import { inThread, oneCooler, smallTrip } from "./smallTrip.ts";

const trip = smallTrip();
const options = { members: 4, seed: 3 };

describe("habits of a trip", () => {
  let result: HabitsResult;
  const told: number[] = [];
  beforeAll(async () => {
    const onProgress = (done: number): void => void told.push(done);
    result = await habits(trip, inThread([trip]), { ...options, onProgress });
  }, 120_000);

  it("says how far it is, up to the end", () => {
    expect(told.at(-1)).toBe(1);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
    expect(told.length).toBeGreaterThan(30);
  });

  it("tries the good way of what is not good, and the bad way of what is", () => {
    const of = (key: string): HabitsResult["habits"][number] => result.habits.find((one) => one.key === key)!;
    expect(of("pre-chill")).toMatchObject({ insteadIsGood: true, coolers: ["galley"] });
    expect(of("drain galley")).toMatchObject({ insteadIsGood: false, now: "meltwater kept" });
    expect(of("drain bar")).toMatchObject({ insteadIsGood: true, now: "drain open" });
    expect(of("colour")).toMatchObject({ coolers: ["bar"], now: "dark outside", instead: "white outside" });
    expect(of("packs on top")).toMatchObject({ insteadIsGood: false, coolers: ["galley"] });
  });

  it("says why a habit cannot be tried, and tries or skips every one", () => {
    const skipped = result.skipped.map(({ key }) => key);
    expect(skipped).toContain("ride in the cabin");
    for (const { why } of result.skipped) expect(why.length).toBeGreaterThan(10);
    expect(result.sayings.length + result.habits.length + skipped.length).toBeGreaterThan(30);
  });

  it("ranks by what the good way is worth to the food first", () => {
    const worth = result.habits.map(({ gain, insteadIsGood }) => (insteadIsGood ? 1 : -1) * gain.food_h.p50!);
    for (let i = 1; i < worth.length; i++) expect(worth[i]!).toBeLessThanOrEqual(worth[i - 1]! + 0.1);
  });

  it("puts every saying beside a claim, its source and a finding", () => {
    expect(result.sayings.map(({ key }) => key)).toContain("one opening");
    for (const { claims, source, found } of result.sayings) {
      expect(source).toBe("common-practice");
      expect(claims).not.toBe("");
      expect(found).toMatch(/\d|cannot tell/);
    }
  });

  it("is the same by whomever it is run", async () => {
    const run = async (task: Parameters<typeof runTask>[1]): Promise<ReturnType<typeof runTask>> =>
      runTask([smallTrip()], task);
    const again = await habits(trip, spreadOver([{ run }, { run }, { run }]), options);
    expect(again).toEqual(result);
  }, 120_000);

  it("stops when it is called off", async () => {
    await expect(habits(trip, inThread([trip]), { ...options, signal: { aborted: true } })).rejects.toThrow(
      Cancelled,
    );
  });

  it("is nothing without members", async () => {
    await expect(habits(trip, inThread([trip]), { members: 0, seed: 1 })).rejects.toThrow(DomainError);
  });

  it("of a trip with one cooler and no drinks skips what takes two", async () => {
    const alone = oneCooler();
    const { skipped } = await habits(alone, inThread([alone]), { members: 1, seed: 1 });
    const why = new Map(skipped.map((one) => [one.key, one.why]));
    expect(why.get("drinks apart")).toBe("there are no drinks");
    expect(why.get("merge")).toBe("there is only one cooler");
  }, 60_000);
});

describe("stress of a trip", () => {
  let result: StressResult;
  beforeAll(async () => {
    result = await stress(trip, inThread([trip]), { members: 8, seed: 3 });
  }, 60_000);

  it("has the trip as written and five cases, robust only if all hold", () => {
    expect(result.cases.map(({ key }) => key)).toEqual([
      "as written",
      "hotter",
      "opened twice",
      "no shade",
      "half the ice",
      "started warm",
    ]);
    expect(result.robust).toBe(result.cases.every(({ holds }) => holds));
  });

  it("fails no less often with half the ice than as written, and says what goes first", () => {
    const [written, , , , half] = result.cases;
    expect(half!.fails_frac).toBeGreaterThanOrEqual(written!.fails_frac);
    for (const { fails_frac, first } of result.cases) expect(first === null).toBe(fails_frac === 0);
  });

  it("fails in every case where a perishable lies in the dry box", async () => {
    const left = oneCooler((draft) => {
      draft.food[0].in = "dry box";
      draft.food[0].state = "dry";
    });
    const { cases, robust } = await stress(left, inThread([left]), { members: 1, seed: 1 });
    expect(robust).toBe(false);
    for (const one of cases)
      expect(one).toMatchObject({ fails_frac: 1, first: { item: "milk", cooler: "dry box" } });
  }, 60_000);
});

describe("trips side by side", () => {
  const better = smallTrip((draft) => {
    draft.title = "More ice";
    draft.coolers[1]!.name = "drinks";
    draft.food[2]!.in = "drinks";
    draft.ice[2]!.in = "drinks";
    draft.ice[0].amount = "9 kg";
    delete draft.ice[1]!.price;
    draft.events.push({ at: "day 1 12:00", do: "open", cooler: "galley", for: "60 s" });
  });
  const named = [
    { trip, file: "a.yaml" },
    { trip, file: "b.yaml" },
    { trip: better, file: "c.yaml" },
  ];
  let result: CompareResult;
  beforeAll(async () => {
    result = await compare(named, inThread(named.map((one) => one.trip)), { members: 8, seed: 3 });
  }, 60_000);

  it("a trip gains nothing over itself, and ice is gained by more ice, in the middle member", () => {
    const gain = (a: string, b: string): (number | null)[] =>
      result.pairs.filter((pair) => pair.a === a && pair.b === b).map((pair) => pair.iceOutGain_h.p50);
    expect(gain("A", "B")).toEqual([0, 0]);
    expect(gain("A", "C")[0]).toBeGreaterThan(1);
  });

  it("pairs coolers by name, else by place", () => {
    const names = result.pairs.filter(({ b }) => b === "C").map(({ cooler }) => cooler);
    expect(names).toEqual(["galley", "bar / drinks", "galley", "bar / drinks"]);
  });

  it("counts what each takes: ice, money where every piece has a price, fuss", () => {
    const [a, , c] = result.trips;
    expect(a!.ice_kg).toBeCloseTo(12, 9);
    expect(c!.ice_kg).toBeCloseTo(15, 9);
    expect([a!.cost, c!.cost]).toEqual([6, null]);
    // 20 openings a day for a day and a half; C has one more.
    expect([a!.fuss.openings, c!.fuss.openings]).toEqual([30, 31]);
    expect(c!.packedWeight_kg - a!.packedWeight_kg).toBeCloseTo(3, 9);
  });

  it("gives the ice of every cooler against time", () => {
    expect(result.series.map(({ letter, cooler }) => `${letter} ${cooler}`)).toEqual([
      "A galley",
      "A bar",
      "B galley",
      "B bar",
      "C galley",
      "C drinks",
    ]);
    for (const { t_h, p10, p50, p90 } of result.series) {
      expect(p50.length).toBe(t_h.length);
      t_h.forEach((_, i) => {
        expect(p10[i]!).toBeLessThanOrEqual(p50[i]!);
        expect(p50[i]!).toBeLessThanOrEqual(p90[i]!);
      });
    }
  });
});
