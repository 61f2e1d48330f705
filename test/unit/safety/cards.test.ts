import { describe, expect, it } from "vitest";
import { bodyOf } from "../../../core/cooler/builds.ts";
import { outerSize_m } from "../../../core/cooler/outerSize.ts";
import { forecast } from "../../../core/forecast/forecast.ts";
import type { Warning } from "../../../core/forecast/result.ts";
import { foods } from "../../../core/matter/foods.ts";
import { failuresOf } from "../../../core/plan/need.ts";
import { liftAdvice, recommendedWeight_kg } from "../../../core/safety/lifting.ts";
import { fitsLocker } from "../../../core/safety/locker.ts";
import { rulesQuestions } from "../../../core/safety/rulesCard.ts";
import { frailCaution, frailCautions } from "../../../core/safety/vulnerable.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Trip } from "../../../core/trip/types.ts";

const chest = bodyOf("standard", 0.06, 0.3);

function read(rest: string, more: Partial<Trip> = {}): Trip {
  const reading = readTrip(
    `coldstow: 1
depart: 2027-07-02T08:00
return: 2027-07-04T08:00
weather: { days: [{ high: 31 C, low: 17 C }] }
coolers: [{ name: galley, size: 50 L, build: thin, holds: food }]
${rest}`,
    { file: "trip.yaml" },
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return { ...reading.trip, ...more };
}
const warnings = (trip: Trip): Warning[] => forecast(trip, { effects: false }).result.warnings;

describe("lifting to a tailgate", () => {
  it("takes the stricter end, two thirds of two, and grows with nothing but weight", () => {
    const { width_m, height_m } = outerSize_m(chest);
    const held = {
      reach_cm: 20 + 50 * width_m,
      travel_cm: 75,
      twist_deg: 0,
      frequency_frac: 1,
      grip: "good",
    } as const;
    const ends = [70 * height_m, 70 * height_m + 75].map((height_cm) =>
      recommendedWeight_kg({ ...held, height_cm }),
    );
    const advice = liftAdvice("galley", 30, chest);
    expect(advice.one.limit_kg).toBeCloseTo(Math.min(...ends), 9);
    expect(advice.two.limit_kg / advice.one.limit_kg).toBeCloseTo(4 / 3, 12);
    expect(advice.one.index).toBeCloseTo(30 / advice.one.limit_kg, 12);
    expect(advice.says).toContain("NIOSH does not cover teams");
    expect(liftAdvice("galley", 60, chest).one.limit_kg).toBe(advice.one.limit_kg);
  });

  it("has a finite index for the largest box there is", () => {
    expect(Number.isFinite(liftAdvice("vat", 900, bodyOf("icebox", 1, 0.3)).one.index)).toBe(true);
  });
});

describe("the locker", () => {
  const { length_m, width_m, height_m } = outerSize_m(chest);

  it("takes a chest as it is or turned a quarter, never laid on a side", () => {
    const room = { length_m: length_m + 0.03, width_m: width_m + 0.03, height_m: height_m + 0.03 };
    expect(fitsLocker(chest, room)).toBe(true);
    expect(fitsLocker(chest, { ...room, length_m: room.width_m, width_m: room.length_m })).toBe(true);
    expect(fitsLocker(chest, { ...room, height_m: height_m + 0.01 })).toBe(false);
    expect(fitsLocker(chest, { ...room, length_m: room.height_m, height_m: room.length_m })).toBe(
      height_m >= length_m,
    );
  });

  it("is held against the outside: inside, two walls and four skins", () => {
    expect(length_m - chest.inside.length_m).toBeCloseTo(2 * 0.032 + 4 * 0.003, 12);
    expect(height_m - chest.inside.height_m).toBeCloseTo(0.028 + 0.032 + 4 * 0.003, 12);
  });
});

describe("the rules card", () => {
  it("asks what nobody answered, and the agency and its order first", () => {
    const lines = rulesQuestions(read(""));
    expect(lines.slice(0, 2).map(({ topic }) => topic)).toEqual(["agency", "order of the day"]);
    expect(lines.every(({ answer }) => answer === null)).toBe(true);
    expect(lines[1]!.says).toContain("overrules");
  });

  it("answers for each cooler once the locker is known, and asks of dry ice only where there is some", () => {
    const rules = {
      agency: "county",
      read: null,
      permit: null,
      bears: "locker",
      locker: { length_m: 1.2, width_m: 0.9, height_m: 0.3 },
      glass: false,
      fires: null,
      packOut: null,
      carcass: null,
    } as const;
    const lines = rulesQuestions(read("ice: [{ form: dry ice, each: 3 kg, in: galley }]\n", { rules }));
    expect(lines.find(({ topic }) => topic === "locker size")?.answer).toContain("does not go in");
    expect(lines.find(({ topic }) => topic === "glass")?.answer).toBe("not allowed");
    expect(lines.map(({ topic }) => topic)).toContain("dry ice aboard");
    expect(rulesQuestions(read("")).map(({ topic }) => topic)).not.toContain("dry ice aboard");
  });
});

describe("dry ice in a closed place", () => {
  const ice = "ice: [{ form: dry ice, each: 5 kg, in: galley }]\n";
  const car = `${ice}legs: [{ until: day 1 14:00, where: closed car }, { where: camp }]\n`;
  const aired = (airChanges_per_h: number): Trip => {
    const trip = read(car);
    return { ...trip, legs: trip.legs.map((leg) => ({ ...leg, airChanges_per_h })) };
  };
  const codes = (trip: Trip): string[] => warnings(trip).map(({ code }) => code);

  it("stays a failure until the leg says air enough, and is a note then", () => {
    const { result } = forecast(read(car), { effects: false });
    const [air] = result.warnings.filter(({ code }) => code === "dry-ice-air");
    expect(air!.says).toMatch(/5000 ppm.* after \d+ min; 30 000 ppm/);
    expect(failuresOf(result).join()).toContain("dry ice in a closed place");
    expect(codes(aired(0.5))).toContain("dry-ice-air");
    expect(codes(aired(60))).toContain("dry-ice-aired");
    expect(failuresOf(forecast(aired(60), { effects: false }).result).join()).not.toContain("dry ice");
  });

  it("is not told in the open", () => {
    expect(codes(read(`${ice}legs: [{ where: camp }]\n`))).not.toContain("dry-ice-air");
  });

  it("is less aboard when it was bought earlier", () => {
    const trip = read(ice);
    const earlier = { ...trip, ice: trip.ice.map((lot) => ({ ...lot, boughtBefore_s: 3 * 3600 })) };
    const [caution] = warnings(earlier).filter(({ code }) => code === "dry-ice");
    const left = Number(/About (\d+) % of it is left/.exec(caution!.says)?.[1]);
    expect(left).toBeGreaterThan(5);
    expect(left).toBeLessThan(70);
  });
});

describe("food cautions", () => {
  const food = `party: { adults: 2, vulnerable: true }
food:
  - { name: sliced turkey, amount: 1 kg, like: deli meat, in: galley, eat: day 1 lunch }
  - { name: alfalfa sprouts, amount: 100 g, like: salad, in: galley, eat: day 1 lunch }
  - { name: salmon, amount: 1 kg, in: galley, eat: day 1 dinner }
`;
  it("are told item by item where somebody easily harmed eats", () => {
    const paths = warnings(read(food)).filter(({ code }) => code === "vulnerable-eater");
    expect(paths.map(({ path }) => path)).toEqual(["food[0]", "food[1]"]);
    const strong = warnings(read(food.replace("vulnerable: true", "vulnerable: false")));
    expect(strong.map(({ code }) => code)).not.toContain("vulnerable-eater");
    expect(frailCaution(foods.broccoli!, "brussels sprouts")).toBeNull();
  });

  it("name only foods of the table, and all stand from memory", () => {
    for (const { foods: keys, mark } of frailCautions) {
      expect(keys.filter((key) => foods[key] === undefined)).toEqual([]);
      expect(mark).toBe("M");
    }
  });

  it("tell to open a pack without air", () => {
    const trip = read(food);
    const packed = { ...trip, food: trip.food.map((item) => ({ ...item, reducedOxygen: true })) };
    const opened = warnings(packed).filter(({ code }) => code === "opened-pack");
    expect(opened.map(({ path }) => path)).toEqual(["food[2]"]);
  });
});

describe("days in the cold", () => {
  const chicken = (eat: string, more: object): string => {
    const trip = read(
      `party: { adults: 2, vulnerable: false }\nfood: [{ name: chicken, amount: 1 kg, at: 2 C, in: galley, eat: ${eat}, watertight: true }]\nice: [{ form: cube, pieces: 6, each: 3 kg, in: galley }]\n`,
    );
    const food = trip.food.map((item) => ({ ...item, ...more }));
    return forecast({ ...trip, food }, { effects: false }).result.food[0]!.verdict;
  };

  it("count a day before departure where nothing is said, and what is said instead", () => {
    expect(chicken("day 1 dinner", {})).toBe("eat next");
    expect(chicken("day 1 dinner", { daysCold: 0 })).toBe("keep");
    expect(chicken("day 1 dinner", { daysCold: 2 })).toBe("discard");
    expect(chicken("day 2 dinner", {})).toBe("discard");
  });

  it("do not run while food is frozen", () => {
    expect(chicken("day 2 dinner", { state: "frozen", start_C: -18 })).not.toBe("discard");
  });
});
