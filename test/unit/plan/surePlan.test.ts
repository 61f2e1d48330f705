import { describe, expect, it } from "vitest";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import type { Draws } from "../../../core/ensemble/types.ts";
import { type IcePlan, planIce } from "../../../core/plan/planIce.ts";
import { surePlan } from "../../../core/plan/surePlan.ts";
import type { Trip, TripIce } from "../../../core/trip/types.ts";
import { smallTrip } from "../fixtures/smallTrip.ts";

const members = 40;
const supply = "supply:\n  - { form: cube, each: 1 kg, at: -2 C, price: 1, where: shop }\n";

type Draw = (addedIce: readonly TripIce[], count: number | "all") => Promise<Draws>;

function drawOf(trip: Trip, most = members): Draw {
  return async (addedIce, count) =>
    runMembers(
      { ...trip, ice: [...trip.ice, ...addedIce] },
      { from: 0, to: count === "all" ? most : count, seed: 1, series: count === "all" },
    );
}

/** Members in which a perishable passes its limit before it is eaten. */
function failing({ food, to }: Draws): number {
  return Array.from({ length: to }, (_, m) =>
    food.some(({ overLimit_h }) => !Number.isNaN(overLimit_h[m])),
  ).filter(Boolean).length;
}

const pieces = ({ addedIce }: IcePlan): number => addedIce.reduce((sum, ice) => sum + ice.pieces, 0);

describe("a plan at the trip's confidence", () => {
  const trip = smallTrip({ ice_kg: 1, more: supply });

  it("has no more members failing than the confidence leaves, where the middle case alone has", async () => {
    const draw = drawOf(trip);
    const middle = planIce(trip, { aim: "pieces" });
    expect(failing(await draw(middle.addedIce, "all"))).toBeGreaterThan(0.1 * members);
    const { plan, forecast } = await surePlan(trip, { aim: "pieces", seed: 1, members, draw });
    expect(failing(await draw(plan.addedIce, "all"))).toBeLessThanOrEqual(0.1 * members);
    expect(pieces(plan)).toBeGreaterThan(pieces(middle));
    expect(forecast.result.warnings[0]!.code).toBe("plan-sure");
  }, 60_000);

  it("asks for no less ice the surer it must be", async () => {
    const at = async (confidence_frac: number): Promise<number> => {
      const asked = { ...trip, confidence_frac };
      return pieces((await surePlan(asked, { aim: "pieces", seed: 1, members, draw: drawOf(asked) })).plan);
    };
    expect(await at(0.95)).toBeGreaterThanOrEqual(await at(0.6));
  }, 60_000);

  it("judges by all members what a round tried on some", async () => {
    const most = 160;
    const counts: (number | "all")[] = [];
    const draw: Draw = (addedIce, count) => {
      counts.push(count);
      return drawOf(trip, most)(addedIce, count);
    };
    const { plan, draws } = await surePlan(trip, { aim: "pieces", seed: 1, members: most, draw });
    expect(counts[0]).toBeLessThan(most);
    expect(counts).toContain("all");
    expect(draws.to).toBe(most);
    expect(draws.series).not.toBeNull();
    expect(failing(await draw(plan.addedIce, "all"))).toBeLessThanOrEqual(0.1 * most);
  }, 60_000);

  it("says so where no ice that fits reaches it", async () => {
    const hopeless = smallTrip({
      ice_kg: 1,
      high_C: 45,
      more: "supply:\n  - { form: cube, each: 1 kg, at: -2 C, max: 1, where: shop }\n",
    });
    const { forecast } = await surePlan(hopeless, {
      aim: "pieces",
      seed: 1,
      members,
      draw: drawOf(hopeless),
    });
    expect(forecast.result.warnings[0]!.code).toBe("plan-unsure");
  }, 60_000);
});
