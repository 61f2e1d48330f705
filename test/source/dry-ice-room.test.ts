// Carbon dioxide in a room: balance dC/dt = G/V − n(C − C0), computed apart from the code for 5 kg of dry ice that
// loses 2 % an hour (0.0547 m³/h) in a car of 3 m³; limits of US OSHA read in copies. Tolerance 1 %.
import { describe, expect, it } from "vitest";
import { DomainError } from "../../core/quantity/errors.ts";
import {
  airChangesNeeded_per_h,
  airLimits,
  carbonDioxide_ppm,
  closedRooms,
  dryIceGas_m3_per_h,
  dryIceLeft_kg,
  timeToCarbonDioxide_h,
} from "../../core/safety/dryIce.ts";

const gas_m3_per_h = dryIceGas_m3_per_h(5 * 0.02);
const car = (airChanges_per_h: number) => ({ gas_m3_per_h, room_m3: 3, airChanges_per_h });
const near = (ours: number, published: number): void =>
  expect(Math.abs(ours / published - 1)).toBeLessThan(0.01);

describe("5 kg at 2 % an hour in a car of 3 m³", () => {
  it("gives 0.0547 m³ an hour", () => near(gas_m3_per_h, 0.0547));

  it("shut: 5000 ppm after 15.1 min, 30 000 after 97 min, 40 000 after 130 min", () => {
    near(timeToCarbonDioxide_h(car(0), airLimits.day.limit_ppm)! * 60, 15.1);
    near(timeToCarbonDioxide_h(car(0), airLimits.short.limit_ppm)! * 60, 97);
    near(timeToCarbonDioxide_h(car(0), airLimits.danger.limit_ppm)! * 60, 130);
  });

  it("settles at 18 600 ppm with one change of air an hour, at 4060 with five", () => {
    near(carbonDioxide_ppm(car(1), 100), 18_600);
    near(carbonDioxide_ppm(car(5), 100), 4060);
    expect(timeToCarbonDioxide_h(car(5), 5000)).toBeNull();
  });

  it("needs 3.98 changes an hour to stay below 5000 ppm", () =>
    near(airChangesNeeded_per_h(car(0), 5000), 3.98));

  it("is where the time says, with and without fresh air", () => {
    for (const n of [0, 0.5, 2]) near(carbonDioxide_ppm(car(n), timeToCarbonDioxide_h(car(n), 5000)!), 5000);
  });
});

describe("what is left of dry ice that waits", () => {
  it("loses 7.8 kg a day at 0.5 W/K and 25 °C (computed), and never more than there is", () => {
    near(20 - dryIceLeft_kg(20, 0.5, 25, 86_400), 7.8);
    expect(dryIceLeft_kg(5, 0.5, 25, 86_400)).toBe(0);
    expect(dryIceLeft_kg(5, 0.5, 25, 0)).toBe(5);
  });

  it("refuses what is not a number", () => {
    expect(() => dryIceLeft_kg(Number.NaN, 0.5, 25, 1)).toThrow(DomainError);
    expect(() => carbonDioxide_ppm(car(-1), 1)).toThrow(DomainError);
    expect(() => timeToCarbonDioxide_h({ ...car(0), room_m3: 0 }, 5000)).toThrow(DomainError);
  });
});

it("closed places are reckoned with the small end of a plausible range of air", () => {
  for (const { least_m3, range_m3 } of Object.values(closedRooms)) {
    expect(least_m3).toBe(range_m3[0]);
    expect(range_m3[0]).toBeGreaterThanOrEqual(2);
    expect(range_m3[1]).toBeLessThanOrEqual(200);
  }
});
