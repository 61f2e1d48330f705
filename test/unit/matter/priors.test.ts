import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { insulations } from "../../../core/matter/insulation.ts";
import { emittances, shellPlastics, solarAbsorptances } from "../../../core/matter/shells.ts";
import type { Spread } from "../../../core/matter/spread.ts";

const sources = JSON.parse(
  readFileSync(new URL("../../../core/sources.json", import.meta.url), "utf8"),
) as Record<string, unknown>;

function expectOrdered({ p10, p50, p90 }: Spread): void {
  expect(p10).toBeLessThanOrEqual(p50);
  expect(p50).toBeLessThanOrEqual(p90);
}

describe("materials of the wall", () => {
  it.each(Object.entries(insulations))("%s lies in the plausible ranges", (name, row) => {
    if (row.k10_W_per_mK === null) expect(name).toBe("air");
    else {
      expectOrdered(row.k10_W_per_mK);
      expect(row.k10_W_per_mK.p10).toBeGreaterThanOrEqual(0.003);
      expect(row.k10_W_per_mK.p90).toBeLessThanOrEqual(0.05);
    }
    expectOrdered(row.dk_dT_W_per_mK2);
    expect(row.density_kg_per_m3).toSatisfy((rho: number) => rho > 1 && rho <= 250);
    expect(row.heatCapacity_J_per_kgK).toSatisfy((c: number) => c >= 700 && c <= 2500);
    expect(Object.keys(sources)).toContain(row.source);
  });

  it("vacuum beats foam, foamed plastic beats a soft bag", () => {
    const k = (name: keyof typeof insulations) => insulations[name].k10_W_per_mK!.p50;
    expect(k("vacuum panel")).toBeLessThan(k("polyurethane"));
    expect(k("polyurethane")).toBeLessThan(k("EPS"));
    expect(k("EPS")).toBeLessThan(k("soft foam"));
  });

  it("polyurethane's range holds the published 0.028 W/mK (CIBSE Guide A)", () => {
    const { p10, p90 } = insulations.polyurethane.k10_W_per_mK!;
    expect(p10 < 0.028 && 0.028 < p90).toBe(true);
  });

  it("surfaces: shares of one in order, and darker absorbs more", () => {
    for (const spread of [...Object.values(emittances), ...Object.values(solarAbsorptances)]) {
      expectOrdered(spread);
      expect(spread.p10 > 0 && spread.p90 < 1).toBe(true);
    }
    for (const plastic of Object.values(shellPlastics)) expectOrdered(plastic.heatCapacity_J_per_kgK);
    const a = solarAbsorptances;
    expect(a.white.p50 < a.light.p50 && a.light.p50 < a.medium.p50 && a.medium.p50 < a.dark.p50).toBe(true);
  });
});
