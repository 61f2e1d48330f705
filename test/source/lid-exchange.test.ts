// One full exchange of 50 L of air against outside air, the inside saturated at 4 °C. Source: computed on the project's
// facts page from psychrometrics (mark C); the size agrees with ten exchanges a day of a 36-qt box at 30–40 BTU,
// a boating magazine's test read second-hand. 5 %: the page rounds to two digits and names no density.
import { describe, expect, it } from "vitest";
import { runFleet, startFleet } from "../../core/cooler/fleet.ts";
import { makeLidHeat, setLidHeat } from "../../core/cooler/lidOpen.ts";
import { iceLatent_J_per_kg } from "../../core/matter/ice.ts";
import { humidityRatio_kg_per_kg } from "../../core/matter/moistAir.ts";
import { fleetOf } from "../property/anyCooler.ts";
import { trip } from "../property/plainTrip.ts";

const sea_Pa = 101_325;

/** Heat that 50 L of outside air bring to a top layer at 4 °C, as the kernel reckons it, kJ. */
function exchange_kJ(air_C: number, relative_frac: number): number {
  const fleet = startFleet(fleetOf(trip()));
  runFleet(fleet, 3600);
  const [box] = fleet.boxes;
  box.pool_kg = 1;
  const { outside } = fleet.steppers[0].bench;
  Object.assign(outside.around, {
    air_C,
    humidity_kg_per_kg: humidityRatio_kg_per_kg(air_C, relative_frac, sea_Pa),
    pressure_Pa: sea_Pa,
  });
  const heat = makeLidHeat();
  setLidHeat(box, outside, { open_frac: 0, exchange_m3_per_s: 0.05 }, 4, heat);
  return (heat.air_W_per_K * (air_C - 4) + heat.airVapour_W) / 1000;
}

describe("one full exchange of 50 L", () => {
  it.each([
    [30, 0.6, 3.1],
    [35, 0.3, 2.6],
    [38, 0.2, 2.5],
  ])("of air at %d °C and %d relative humidity brings %d kJ", (air_C, relative_frac, kJ) => {
    expect(Math.abs(exchange_kJ(air_C, relative_frac) / kJ - 1)).toBeLessThan(0.05);
  });

  it("is worth 9.4 g of ice at 30 °C and 60 %", () => {
    expect((exchange_kJ(30, 0.6) * 1e6) / iceLatent_J_per_kg).toBeGreaterThan(9.4 * 0.95);
    expect((exchange_kJ(30, 0.6) * 1e6) / iceLatent_J_per_kg).toBeLessThan(9.4 * 1.05);
  });
});
