// ASHRAE Handbook—Fundamentals, psychrometrics: worked example 1 (from memory: 40 °C dry, 20 °C wet, 101.325 kPa), and
// saturation pressures by the formulas of Hyland and Wexler that it prints (computed).
import { describe, expect, it } from "vitest";
import {
  dewPoint_C,
  humidityRatio_kg_per_kg,
  moistAirDensity_kg_per_m3,
  moistAirEnthalpy_J_per_kg,
  saturationHumidityRatio_kg_per_kg,
  saturationPressure_Pa,
  wetBulb_C,
} from "../../core/matter/moistAir.ts";

const SEA_PA = 101_325;

describe("example 1 (from memory; the example reads a chart, so two digits count)", () => {
  const relative_frac = 0.1398;
  const ratio = humidityRatio_kg_per_kg(40, relative_frac, SEA_PA);

  it("14 % relative humidity is a wet bulb of 20 °C", () => {
    expect(Math.abs(wetBulb_C(40, relative_frac, SEA_PA) - 20)).toBeLessThan(0.1);
  });

  it("6.5 g/kg, 56.7 kJ/kg, dew point 7 °C, 0.896 m³ per kg of dry air", () => {
    expect(Math.abs(ratio - 0.0065)).toBeLessThan(0.0002);
    expect(Math.abs(moistAirEnthalpy_J_per_kg(40, ratio) / 1000 - 56.7)).toBeLessThan(0.5);
    expect(Math.abs(dewPoint_C(40, relative_frac) - 7)).toBeLessThan(0.5);
    expect((1 + ratio) / moistAirDensity_kg_per_m3(40, ratio, SEA_PA)).toBeCloseTo(0.896, 3);
  });
});

it.each([
  [4, 813.5],
  [10, 1228],
  [20, 2338.8],
  [30, 4246],
  [35, 5627.8],
])("saturation pressure at %d °C is %d Pa", (t, pressure_Pa) => {
  expect(Math.abs(saturationPressure_Pa(t) / pressure_Pa - 1)).toBeLessThan(1e-4);
});

it.each([
  [30, 0.3, 0.00792, 50.4],
  [35, 0.6, 0.02144, 90.2],
])("air at %d °C and %d: humidity ratio and enthalpy (computed)", (t, relative_frac, ratio, h_kJ_per_kg) => {
  const ours = humidityRatio_kg_per_kg(t, relative_frac, SEA_PA);
  expect(Math.abs(ours - ratio)).toBeLessThan(1e-5);
  expect(Math.abs(moistAirEnthalpy_J_per_kg(t, ours) / 1000 - h_kJ_per_kg)).toBeLessThan(0.1);
});

it("saturated air at 4 °C holds 5.034 g/kg (computed)", () => {
  expect(saturationHumidityRatio_kg_per_kg(4, SEA_PA)).toBeCloseTo(0.005034, 6);
});
