import { describe, expect, it } from "vitest";
import type { IcePiece, PrepAct } from "../../../core/forecast/planResult.ts";
import { type Countdown, countdown } from "../../../core/plan/countdown.ts";
import { foodJob, freezableWithin, iceJob } from "../../../core/plan/freezerTimes.ts";
import { decideStates } from "../../../core/plan/states.ts";
import { openTrip, type Told } from "./statesTrip.ts";

const gallon_kg = 3.47;
const jugs = (pieces: number): IcePiece => ({
  form: "jug",
  pieces,
  each_kg: gallon_kg,
  cooler: "galley",
  where: "home",
  by: "",
  price: 0,
  weight_kg: pieces * gallon_kg,
});
const block = (pieces: number): IcePiece => ({
  ...jugs(pieces),
  form: "block",
  each_kg: 5,
  where: "ice works",
});

function planned(told: Told, ice: readonly IcePiece[] = []): Countdown {
  const { trip, states } = decideStates(openTrip(told));
  return countdown(trip, { ice, states });
}
const found = (acts: readonly PrepAct[], id: string): PrepAct[] =>
  acts.filter((act) => act.id === id || act.id.startsWith(`${id}:`));

describe("a small freezer", () => {
  const freezer = { space_m3: 0.025, at_C: -15 };

  it("of 25 L at −15 °C refuses twelve gallon jugs by tomorrow and has room for three", () => {
    const { pieces, limit, says } = freezableWithin(freezer, iceJob("jug", gallon_kg, "1 gal", 12, -15), 30);
    expect(pieces).toBe(3);
    expect(limit).toBe("room");
    expect(says).toMatch(/^3 of 12 × 1-gal frozen jugs .* no room for more; buy block ice for the rest$/);
  });

  it("tells the same in the countdown, and puts in only those", () => {
    const trip = { ...openTrip({ freezer: "25 L" }), freezer };
    const { prep, warnings } = countdown(trip, { ice: [jugs(12)], states: [] });
    const told = warnings.find(({ code }) => code === "freezer-room")!;
    expect(told.says).toContain("room for 3 of 12 × 1-gal frozen jugs".replace("1-gal", "3.5-kg"));
    expect(told.says).toContain("buy block ice");
    const put = found(prep, "freeze").reduce((sum, { does }) => sum + Number(/Put (\d+)/.exec(does)?.[1]), 0);
    expect(put).toBe(3);
  });

  it("needs longer for one jug than a single night", () => {
    expect(freezableWithin(freezer, iceJob("jug", gallon_kg, "1 gal", 1, -15), 10)).toMatchObject({
      pieces: 0,
      limit: "time",
    });
  });

  it("never freezes a eutectic pack that melts at −10.7 °C when it is itself at −12 °C", () => {
    expect(iceJob("eutectic pack", 0.5, "500 g", 1, -12).takes_h).toEqual({
      p10: null,
      p50: null,
      p90: null,
    });
  });
});

it("a flat bag freezes faster than a loaf-shaped block, and that than a jug", () => {
  const bag = openTrip({
    food: [
      "name: stew, amount: 1 kg, like: chili, state: frozen, shape: { bag: 25 mm }, in: galley, eat: day 3 dinner",
    ],
  }).food[0]!;
  const bag_h = foodJob(bag, -18)!.takes_h.p50!;
  const block_h = iceJob("block", 2.2, "2 kg", 1, -18).takes_h.p50!;
  const jug_h = iceJob("jug", gallon_kg, "1 gal", 1, -18).takes_h.p50!;
  expect(bag_h).toBeLessThan(block_h);
  expect(block_h).toBeLessThan(jug_h);
  // Common practice: overnight for a flat bag, a day and more for a gallon.
  expect(bag_h).toBeLessThan(12);
  expect(jug_h).toBeGreaterThan(16);
  expect(jug_h).toBeLessThan(40);
});

describe("the acts", () => {
  const food = [
    "name: stew, amount: 2 kg, like: chili, shape: { bag: 25 mm }, eat: day 4 dinner, in: galley",
    "name: cola, count: 24, each: 355 mL, like: cola, eat: throughout, in: bar",
  ];
  const supply = `supply:
  - { form: block, each: 5 kg, at: -10 C, price: 6, where: ice works, open: "08:00-12:00", closed: [Thursday] }
  - { form: jug, each: 1 gal, at: -16 C, price: 0, where: home }`;
  const told = { food, more: supply };
  const { prep, warnings } = planned(told, [jugs(4), block(2)]);

  it("come in order of time, each before departure, each with a reason and an id of its own", () => {
    expect(prep.map(({ at }) => at)).toEqual(prep.map(({ at }) => at).sort());
    expect(prep.every(({ at }) => at < "2027-06-18T09:00")).toBe(true);
    expect(new Set(prep.map(({ id }) => id)).size).toBe(prep.length);
    expect(prep.every(({ does, why }) => does.length > 10 && why.length > 10)).toBe(true);
    expect(warnings).toEqual([]);
  });

  it("lie by day", () => {
    for (const { at } of prep) expect(at.slice(11) >= "06:00" && at.slice(11) < "22:00", at).toBe(true);
  });

  it("leave each thing its time before packing, the slow end of it", () => {
    const pack = Date.parse(`${found(prep, "pack")[0]!.at}Z`);
    for (const act of prep.filter(({ id }) => /^(freeze|chill|prechill)/.test(id))) {
      const left_h = (pack - Date.parse(`${act.at}Z`)) / 3_600_000;
      expect(left_h, act.id).toBeGreaterThanOrEqual(act.lasts_h!.p90!);
    }
  });

  it("freeze a day's heat at a time: four gallons are more than one batch", () => {
    const batches = found(prep, "freeze:1-gal-frozen-jug");
    expect(batches.length).toBeGreaterThan(1);
    expect(new Set(batches.map(({ at }) => at.slice(0, 10))).size).toBe(batches.length);
  });

  it("buy ice on the last open day and hour: Wednesday, as Thursday is closed", () => {
    expect(found(prep, "buy-ice")[0]!.at).toBe("2027-06-16T10:30");
  });

  it("pre-chill the warm cooler with a computed weight, and not the cold one", () => {
    const acts = found(prep, "prechill");
    expect(acts.map(({ id }) => id)).toEqual(["prechill:bar"]);
    expect(Number(/Put ([\d.]+) kg/.exec(acts[0]!.does)![1])).toBeGreaterThan(1);
  });

  it("keep their ids when the plan changes elsewhere", () => {
    const other = planned({ ...told, depart: "2027-06-19T09:00", return: "2027-06-24T15:00" }, [
      jugs(2),
      block(5),
    ]).prep;
    for (const id of [
      "chill:cola",
      "freeze:stew",
      "buy-ice:ice-works",
      "pack",
      "load",
      "label",
      "prechill:bar",
    ])
      expect(
        other.filter((act) => act.id === id),
        id,
      ).toHaveLength(1);
  });
});

describe("the edges", () => {
  it("an early departure packs at night, and nothing else does", () => {
    const { prep } = planned({ depart: "2027-06-18T05:00" }, [jugs(2)]);
    const night = prep.filter(({ at }) => at.slice(11) < "06:00" || at.slice(11) >= "22:00");
    expect(night.map(({ id }) => id)).toEqual(["pack", "weigh", "load"]);
  });

  it("a hundred jugs without a freezer in the file lie far back, and that is told", () => {
    const { prep, warnings } = planned({ freezer: null }, [jugs(100)]);
    expect(warnings.map(({ code }) => code)).toEqual(["freezer-slow", "freezer-unknown"]);
    expect(prep[0]!.at < "2027-06-01").toBe(true);
  });

  it("a shop that is closed all week is told", () => {
    const closed = "Monday, Tuesday, Wednesday, Thursday, Friday, Saturday, Sunday";
    const more = `supply: [{ form: block, each: 5 kg, at: -10 C, where: ice works, closed: [${closed}] }]`;
    const { prep, warnings } = planned({ more }, [block(2)]);
    expect(found(prep, "buy-ice")).toEqual([]);
    expect(warnings.map(({ code }) => code)).toEqual(["ice-closed"]);
  });

  it("frozen food for the first evening is moved to the refrigerator beforehand", () => {
    const food = [
      "name: roast, amount: 2 kg, like: beef steak, state: frozen, eat: day 1 dinner, in: galley",
    ];
    const { prep } = planned({ food });
    expect(found(prep, "thaw:roast")[0]!.at < "2027-06-18T07:00").toBe(true);
    expect(found(prep, "freeze:roast")[0]!.at < found(prep, "thaw:roast")[0]!.at).toBe(true);
  });
});
