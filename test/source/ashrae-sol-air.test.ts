// ASHRAE Handbook—Fundamentals, sol-air temperature. The form is as quoted elsewhere; the two colour numbers (0.026 and
// 0.052 m²K/W) and the 3.9 K of a level face are from memory, so this shows agreement and proves nothing about them.
// In the handbook's inch-pound tables 0.15 and 0.30 stand for α/h_o too, not for an absorptance.
import { expect, it } from "vitest";
import { solAir_C } from "../../core/sky/solAir.ts";

it("800 W/m² on a level face: 16.9 K above air when light, 37.7 K when dark (from memory)", () => {
  expect(solAir_C(30, 800, 0.026, 3.9) - 30).toBeCloseTo(16.9, 1);
  expect(solAir_C(30, 800, 0.052, 3.9) - 30).toBeCloseTo(37.7, 1);
});

it("an upright face has no long-wave correction", () => {
  expect(solAir_C(30, 0, 0.052, 0)).toBe(30);
});
