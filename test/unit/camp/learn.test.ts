import { describe, expect, it } from "vitest";
import { withoutRecord, withRecord } from "../../../core/camp/historyYaml.ts";
import { type Look, learnFrom, memberConductances_W_per_K } from "../../../core/camp/learn.ts";
import { nextFood, nextIce } from "../../../core/camp/nextTime.ts";
import { readCloseOut } from "../../../core/camp/readCloseOut.ts";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const members = 192;
const trip = smallTrip({ ice_kg: 14 });
const draws = runMembers(trip, { from: 0, to: members, seed: 1, series: false }).coolers[0]!;
const conductance = memberConductances_W_per_K(trip, members, 1)[0]!;
const weighed = (left_kg: number, error_kg = 0.4): Look => ({ kind: "ice", left_kg, error_kg });
const middle = [...draws.iceLeft_kg].sort((a, b) => a - b)[members / 2]!;

describe("what a look at the return teaches of the walls", () => {
  it("holds the true conductance eight times in ten, and is narrower than before", () => {
    // Truths from other draws than those that judge them, each looked at with an error of its own.
    const truths = 64;
    const real = runMembers(trip, { from: 0, to: truths, seed: 7, series: false }).coolers[0]!;
    const walls = memberConductances_W_per_K(trip, truths, 7)[0]!;
    let held = 0;
    let narrower = 0;
    for (let i = 0; i < truths; i++) {
      const slip = 0.4 * Math.sqrt(2) * Math.sin(2.399 * i);
      const learned = learnFrom(weighed(Math.max(0, real.iceLeft_kg[i]! + slip)), conductance, draws);
      const { p10, p90 } = learned.after_W_per_K;
      if (walls[i]! >= p10 && walls[i]! <= p90) held++;
      const { before_W_per_K: before } = learned;
      narrower += Math.log(p90 / p10) / Math.log(before.p90 / before.p10) / truths;
    }
    // Three standard errors of 64 looks that hold 80 % are 15 %.
    expect(held / truths).toBeGreaterThan(0.65);
    expect(held / truths).toBeLessThan(0.95);
    expect(narrower).toBeLessThan(0.95);
  }, 60_000);

  it("more ice left never speaks for leakier walls", () => {
    const likely = [0.6, 1, 1.4].map(
      (times) => learnFrom(weighed(middle * times), conductance, draws).after_W_per_K.p50,
    );
    expect(likely[0]!).toBeGreaterThan(likely[1]!);
    expect(likely[1]!).toBeGreaterThan(likely[2]!);
  });

  it("a rough look teaches less than a scale, and one that knows nothing teaches nothing", () => {
    const width = (look: Look): number => {
      const { p10, p90 } = learnFrom(look, conductance, draws).after_W_per_K;
      return p90 / p10;
    };
    expect(width(weighed(middle, 0.3))).toBeLessThan(width(weighed(middle, 2)));
    expect(learnFrom(weighed(middle, 1000), conductance, draws).alone_W_per_K).toBeNull();
  });

  it("what no run comes near is put down to something else, and nothing is learned", () => {
    const { beyond, alone_W_per_K } = learnFrom(weighed(60), conductance, draws);
    expect([beyond, alone_W_per_K]).toEqual([true, null]);
  });
});

describe("ice next time", () => {
  const known = { p10: 0.5, p50: 0.6, p90: 0.7 };
  const piecesOf = (pieces: number): ReturnType<typeof nextIce> => {
    const one = smallTrip({ ice_kg: pieces });
    const ice = one.ice.map((lot) => ({ ...lot, pieces, each: "1 kg" }));
    return nextIce({ ...one, ice }, 0, known, pieces < 6 ? 0 : 1);
  };

  it("fewer pieces where much was left, more where none was, and the weight follows the pieces", () => {
    const [few, many] = [piecesOf(1)!, piecesOf(18)!];
    expect(few.code).toBe("ice more");
    expect(few.want_kg! - few.was_kg).toBeCloseTo(few.pieces!, 9);
    expect(many.code).toBe("ice less");
    expect(many.was_kg - many.want_kg!).toBeCloseTo(-many.pieces!, 9);
  });

  it("asks for about as much from both sides: fewer of many is no less than more of few", () => {
    const [few, many] = [piecesOf(1)!, piecesOf(18)!];
    // From below until some is left, from above while a twentieth is: the second is never the smaller.
    expect(many.want_kg!).toBeGreaterThanOrEqual(few.want_kg! - 1e-9);
  });
});

describe("a close-out against its trip", () => {
  const good = `coldstow-closeout: 1
coolers: [{ name: Chest, ice: 1/4 }]
binned: [{ item: milk, share: 25 %, why: too much }, { item: chicken, why: warm }]
ran out: [{ item: milk, when: day 2 07:00 }]
wrong: [nothing]
`;

  it("is read with names in any case, weights and moments", () => {
    const reading = readCloseOut(good, trip);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const { left, binned, ranOut } = reading.closeOut;
    expect(left).toEqual([{ cooler: 0, typed: "1/4", level: "1/4", weighed_kg: null, gone_s: null }]);
    expect(binned.map(({ item, mass_kg }) => mass_kg / item.mass_kg)).toEqual([0.25, 1]);
    expect(ranOut[0]!.when_s).toBe(23 * 3600);
    expect(nextFood(trip, reading.closeOut).map(({ code, name }) => `${code}: ${name}`)).toEqual([
      "food less: milk",
      "food colder: chicken",
      "food more: milk",
    ]);
  });

  it.each<[string, string, number, string]>([
    ["a cooler that is not there", good.replace("Chest", "chst"), 2, "coolers[0].name"],
    ["ice in no words", good.replace("1/4", "lots"), 2, "coolers[0].ice"],
    ["a weight without a unit", good.replace("1/4", '"2"'), 2, "coolers[0].ice"],
    ["ice that went, and is there", good.replace("1/4", "1/4, gone: day 2 07:00"), 2, "coolers[0].gone"],
    ["a moment after the trip", good.replace("day 2 07:00", "day 9 07:00"), 4, "ran out[0].when"],
    ["an item that is not there", good.replace("item: chicken", "item: goose"), 3, "binned[1].item"],
    ["more than was packed", good.replace("share: 25 %", "amount: 5 kg"), 3, "binned[0].amount"],
    ["a strange key", good.replace("wrong:", "wrng:"), 5, "wrng"],
    ["a reason on no list", good.replace("why: warm", "why: gone off"), 3, "binned[1].why"],
  ])("%s is told with line and path", (_what, text, line, path) => {
    const reading = readCloseOut(text, trip);
    expect(reading.ok ? [] : reading.problems.map((one) => [one.line, one.path])).toEqual([[line, path]]);
  });
});

describe("the history that is written", () => {
  const before = { p10: 0.7, p50: 0.951, p90: 1.3 };
  const record = {
    trip: "First: a 'test', # yes",
    ended: "2026-07-01T10:00",
    from: "close-out",
    conductance_W_per_K: { p10: 0.8, p50: 0.9, p90: 1 },
  } as const;
  const known = (text: string): readonly unknown[] => {
    const reading = readTrip(
      "depart: 2027-06-18T08:00\nreturn: 2027-06-19T08:00\ncoolers: [{ name: c, size: 45 L, history: h.yaml }]\n",
      { file: "t.yaml", readBeside: () => text },
    );
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    return reading.trip.coolers[0]!.history!.records;
  };

  it("is read back as it was told; the same trip once more takes its own place", () => {
    const first = withRecord(null, "c", before, record);
    expect(known(first)).toEqual([record]);
    const second = { ...record, trip: "second", conductance_W_per_K: { p10: 0.81, p50: 0.92, p90: 1.04 } };
    const both = withRecord(first, "c", before, second);
    expect(known(both)).toEqual([record, second]);
    expect(known(withRecord(both, "c", before, second))).toEqual([record, second]);
    expect(known(withoutRecord(both, record))).toEqual([second]);
    expect(withoutRecord(first, { trip: "never", ended: null })).toBe(first);
  });

  it("keeps what a person wrote beside it", () => {
    const first = `${withRecord(null, "c", before, record)}# mended the gasket in May\n`;
    const second = { ...record, trip: "second" };
    expect(withRecord(first, "c", before, second)).toContain("# mended the gasket in May");
  });
});
