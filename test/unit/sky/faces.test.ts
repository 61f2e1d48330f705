import { describe, expect, it } from "vitest";
import { uprightSun_W_per_m2 } from "../../../core/sky/faces.ts";

const rad = Math.PI / 180;

/** Mean over azimuth of what one upright face gets, by quadrature (Liu & Jordan's isotropic sky for the rest). */
function byQuadrature(global: number, diffuse: number, height_deg: number, albedo: number): number {
  const normal = (global - diffuse) / Math.sin(height_deg * rad);
  const n = 200_000;
  let beam = 0;
  for (let i = 0; i < n; i++) {
    const azimuth = (2 * Math.PI * (i + 0.5)) / n;
    beam += (normal * Math.max(0, Math.cos(height_deg * rad) * Math.cos(azimuth))) / n;
  }
  return beam + 0.5 * diffuse + 0.5 * albedo * global;
}

describe("an upright face of unknown azimuth", () => {
  it.each([10, 35, 60, 85])("mean of max(cos θ, 0) is sin z/π, sun at %d°: 1e-6", (height_deg) => {
    const global = 1000 * Math.sin(height_deg * rad);
    const got = uprightSun_W_per_m2(global, 0.1 * global, height_deg, 0.22);
    expect(got / byQuadrature(global, 0.1 * global, height_deg, 0.22) - 1).toBeLessThan(1e-6);
    expect(got / byQuadrature(global, 0.1 * global, height_deg, 0.22) - 1).toBeGreaterThan(-1e-6);
  });

  it("gets half the sky and half the ground when all is diffuse", () => {
    expect(uprightSun_W_per_m2(200, 200, 40, 0.25)).toBeCloseTo(100 + 25, 12);
  });

  it("gets nothing at night and stays finite at the horizon", () => {
    expect(uprightSun_W_per_m2(0, 0, -5, 0.2)).toBe(0);
    expect(uprightSun_W_per_m2(5, 4, 0.001, 0.2)).toBeLessThan(500);
  });
});
