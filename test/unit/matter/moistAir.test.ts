import { describe, expect, it } from "vitest";
import {
  dewPoint_C,
  humidityRatio_kg_per_kg,
  humidityRatioFromDewPoint_kg_per_kg,
  moistAirDensity_kg_per_m3,
  moistAirEnthalpy_J_per_kg,
  quickSaturationHumidityRatio_kg_per_kg,
  saturationHumidityRatio_kg_per_kg,
  saturationPressure_Pa,
  standardPressure_Pa,
  vaporisationHeat_J_per_kg,
  wetBulb_C,
} from "../../../core/matter/moistAir.ts";
import { DomainError } from "../../../core/quantity/errors.ts";

const SEA_PA = 101_325;

describe("moist air", () => {
  it("the quick form agrees with the library within 0.1 % from −80 to 60 °C at three pressures", () => {
    for (const pressure_Pa of [60_000, 80_000, SEA_PA]) {
      for (let t = -80; t <= 60; t += 0.25) {
        const library = saturationHumidityRatio_kg_per_kg(t, pressure_Pa);
        const quick = quickSaturationHumidityRatio_kg_per_kg(t, pressure_Pa);
        // The library reports no ratio below 1e-7.
        expect(Math.abs(quick - library)).toBeLessThanOrEqual(Math.max(0.001 * library, t < -70 ? 1e-6 : 0));
      }
    }
  });

  it("dew point and humidity ratio say the same thing", () => {
    for (const [air_C, relative_frac] of [
      [35, 0.2],
      [30, 0.6],
      [5, 0.9],
    ] as const) {
      const ratio = humidityRatio_kg_per_kg(air_C, relative_frac, SEA_PA);
      const again = humidityRatioFromDewPoint_kg_per_kg(dewPoint_C(air_C, relative_frac), SEA_PA);
      expect(again / ratio).toBeCloseTo(1, 3);
    }
  });

  it("vapour leaves liquid water with the heat that the enthalpies imply", () => {
    for (const t of [0, 20, 40]) {
      const vapour = moistAirEnthalpy_J_per_kg(t, 0.02) - moistAirEnthalpy_J_per_kg(t, 0.01);
      expect(vapour / 0.01 - 4186 * t).toBeCloseTo(vaporisationHeat_J_per_kg(t), -2);
    }
  });

  it("humid air is lighter than dry air, thinner air lighter still", () => {
    expect(moistAirDensity_kg_per_m3(30, 0.02, SEA_PA)).toBeLessThan(
      moistAirDensity_kg_per_m3(30, 0, SEA_PA),
    );
    expect(standardPressure_Pa(2000)).toBeLessThan(0.8 * SEA_PA);
  });

  it("refuses what is no air", () => {
    expect(() => humidityRatio_kg_per_kg(20, 1.2, SEA_PA)).toThrow(DomainError);
    expect(() => wetBulb_C(20, 0.5, 0)).toThrow(DomainError);
    expect(() => saturationPressure_Pa(Number.NaN)).toThrow(DomainError);
  });
});
