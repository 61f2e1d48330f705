import { describe, expect, it } from "vitest";
import type { Box } from "../../../core/cooler/box.ts";
import type { AnyTrip } from "../../property/anyCooler.ts";
import { cooler, food, ice, runTo, trip, weather } from "../../property/plainTrip.ts";

/*
 * The stepper claims second order while nothing jumps. With steps held at h, h/2, h/4 … successive answers then differ by
 * a quarter each time. Body and load start at one temperature, the air swings smoothly.
 */

const start_C = 12;

function smooth(load: Partial<AnyTrip["coolers"][number]>): AnyTrip {
  return trip({
    end_s: 12 * 3600,
    weather: weather({ mean_C: 20, swing_K: 6, sky_K: 5 }),
    coolers: [cooler({ start: { kind: "uniform", body_C: start_C }, ice: [], ...load })],
  });
}

const milk = (t_C: number): AnyTrip["coolers"][number]["food"] => [
  food({ food: "milk", mass_kg: 8, start_C: t_C, thick_m: 0.1, shape: "lump" }),
];

/** Answers of h, h/2, h/4, h/8; each move must be under a third of the one before, until it is nothing. */
function expectSecondOrder(any: AnyTrip, what: (box: Box) => number): void {
  const answers = [120, 60, 30, 15].map((maxStep_s) => {
    const [box] = runTo(any, { tolerance: 1e12, maxStep_s }).boxes;
    return { value: what(box), nothing: 1e-7 * box.books.moved_J };
  });
  const moves = answers.slice(1).map(({ value }, i) => Math.abs(value - answers[i].value));
  for (let i = 1; i < moves.length; i++)
    expect(moves[i], `moves ${moves.join(", ")} J`).toBeLessThan(
      Math.max(moves[i - 1] / 3, answers[0].nothing),
    );
}

const border_J = ({ books }: Box): number => books.lid_J + books.sides_J + books.base_J;

describe("half the step, a quarter of the error", () => {
  it("of the heat through the walls and of what food takes up", () => {
    const any = smooth({ food: milk(start_C) });
    expectSecondOrder(any, border_J);
    expectSecondOrder(any, (box) => box.parts[0].skin_J + box.parts[0].core_J);
  });

  it("with ice melting among the food", () => {
    const any = smooth({ ice: [ice({ start_C: 0, mass_kg: 8 })], food: milk(6) });
    expectSecondOrder(any, border_J);
    expectSecondOrder(any, ({ parts }) => parts.reduce((sum, part) => sum + part.skin_J + part.core_J, 0));
  });
});
