import { describe, expect, it } from "vitest";
import { forecast } from "../../../core/forecast/forecast.ts";
import { judge } from "../../../core/plan/need.ts";
import { planIce } from "../../../core/plan/planIce.ts";
import { stageFor } from "../../../core/plan/scene.ts";
import { plannedYaml } from "../../../core/trip/plannedYaml.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Trip } from "../../../core/trip/types.ts";

// An invented weekend with jugs from home and nothing else: on the floor they leave what lies above them warm.
const file = `coldstow: 1
depart: 2027-07-02T08:00
return: 2027-07-04T08:00
weather: { days: [{ high: 34 C, low: 17 C }] }
coolers:
  - { name: galley, size: 50 L, build: standard, holds: food }
food:
  - { name: stew, amount: 3 kg, like: chili, state: chilled, watertight: true, eat: day 2 dinner, in: galley }
  - { name: milk, amount: 2 L, like: milk, state: chilled, watertight: true, eat: day 2 breakfast, in: galley }
  - { name: chicken, amount: 2 kg, like: chicken breast, state: chilled, watertight: true, eat: day 2 dinner, in: galley }
supply:
  - { form: jug, each: 1.5 L, at: -16 C, price: 0, where: home }
`;

function tripOf(text: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

const jugs = (pieces: number, layer: string): string =>
  `${file}ice:\n  - { form: jug, pieces: ${pieces}, each: 1.5 L, at: -16 C, in: galley, layer: ${layer} }\n`;
const holds = (text: string): boolean => {
  const trip = tripOf(text);
  return judge(forecast(trip, { effects: false }).result, stageFor(trip, 0).need).outcome === "holds";
};

describe("where planned ice lies", () => {
  const plan = planIce(tripOf(file), { aim: "pieces" });
  const count = plan.addedIce.reduce((sum, lot) => sum + lot.pieces, 0);

  it("is where it does its work: jugs hold among the food, though no amount of them does on the floor", () => {
    for (let pieces = 1; pieces <= 20; pieces++) expect(holds(jugs(pieces, "base"))).toBe(false);
    expect(holds(jugs(count, "fill"))).toBe(true);
    expect(plan.holds).toBe(true);
    expect(plan.addedIce.map(({ form, layer }) => [form, layer])).toEqual([["jug", "fill"]]);
    expect(plan.forecast.result.warnings.map(({ code }) => code)).not.toContain("ice-short");
  });

  it("needs least there: one jug fewer holds in no layer", () => {
    for (const layer of ["base", "fill", "top"]) expect(holds(jugs(count - 1, layer))).toBe(false);
  });

  it("is told, and written into the planned trip file, which holds as it is read back", () => {
    const says = plan.forecast.result.warnings.find(({ code }) => code === "ice-layer")!.says;
    expect(says).toBe(
      "galley: the plan has jugs among the food. At the usual place no amount that fits is enough.",
    );
    const added = plan.addedIce.map(({ form, pieces, each, layer, price }) => ({
      ...{ form, pieces, each, layer, price },
      ...{ at: "-16 C", liquid: "0 %", in: "galley" },
    }));
    const planned = plannedYaml(file, { ice: added, food: [], coolers: [], events: [] }, "planned");
    expect(planned).toContain("layer: fill");
    expect(holds(planned)).toBe(true);
  });

  it("is the usual place where that needs no more", () => {
    const blocks = file.replace("form: jug, each: 1.5 L, at: -16 C", "form: cube, each: 2 kg, at: -2 C");
    const usual = planIce(tripOf(blocks), { aim: "pieces" });
    expect(usual.holds).toBe(true);
    expect(usual.addedIce.map(({ layer }) => layer)).toEqual(["fill"]);
    expect(usual.forecast.result.warnings.map(({ code }) => code)).not.toContain("ice-layer");
  });
});
