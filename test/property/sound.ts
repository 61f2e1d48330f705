import { expect } from "vitest";
import { balanceOf } from "../../core/cooler/balance.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import { type Bounds, temperaturesIn } from "./bounds.ts";

/** Heat of a kilojoule moves in seconds: before that much has moved, rounding is measured against it. */
const leastMoved_J = 1000;
/**
 * A step may be wrong by what its tolerance allows, also past a bound: 0.1 K in a wall. Air and water have no heat to
 * speak of and follow what is around them, so they may be out by more for a moment.
 */
const overshoot_K = 0.5;
const airOvershoot_K = 2;

/** Energy and water of every box: nothing is lost and nothing is made. */
export function expectBooksClosed(fleet: Fleet): void {
  for (const box of fleet.boxes) {
    const { residual_J, waterLost_kg } = balanceOf(box);
    const moved_J = Math.max(leastMoved_J, box.books.moved_J);
    expect(Math.abs(residual_J) / moved_J, `energy of box ${box.index} at ${fleet.t_s} s`).toBeLessThan(1e-6);
    expect(Math.abs(waterLost_kg), `water of box ${box.index} at ${fleet.t_s} s`).toBeLessThan(1e-3);
    expect(box.pool_kg).toBeGreaterThanOrEqual(0);
  }
}

/** No temperature is colder or warmer than all that could have made it so, and none is not a number. */
export function expectWithin(fleet: Fleet, { low_C, high_C }: Bounds): void {
  for (const box of fleet.boxes) {
    const dry = box.pool_kg < 1e-3;
    for (const { what, t_C } of temperaturesIn(fleet, box)) {
      // Less than a gram of water is reckoned as a gram, so that it has a temperature at all.
      if (dry && (what === "pool" || what === `air ${box.layers}`)) continue;
      const says = `${what} of box ${box.index} at ${fleet.t_s} s`;
      const over_K = what === "pool" || what.startsWith("air") ? airOvershoot_K : overshoot_K;
      expect(t_C, says).toBeGreaterThan(low_C - over_K);
      expect(t_C, says).toBeLessThan(high_C + over_K);
    }
  }
}
