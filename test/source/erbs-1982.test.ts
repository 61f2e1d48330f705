// Erbs, D. G., Klein, S. A., Duffie, J. A. (1982), Solar Energy 28:293–302, hourly diffuse fraction. The paper was not
// read; expected values are those that pvlib-python prints in its test of the same model.
import { expect, it } from "vitest";
import { diffuse_W_per_m2, diffuseShare_frac } from "../../core/sky/diffuse.ts";

// 1e-6: the same polynomial; the printed digits end there.
it.each([
  { clearness: 0.405723511, share: 41.5703604 / 50 },
  { clearness: 0.718132729, share: 217.860117 / 1000 },
  { clearness: 0.768214312, share: 170.790318 / 1000 },
])("clearness $clearness", ({ clearness, share }) => {
  expect(diffuseShare_frac(clearness)).toBeCloseTo(share, 6);
});

// 2 W/m²: theirs takes a solar constant of 1366.1 and another series for the distance, ours those of FAO-56 (0.2 % apart
// at most); near clearness 0.75 the share falls by 0.9 per unit of clearness.
it.each([
  { global: 50, height_deg: 5, date: Date.UTC(2019, 0, 1), diffuse: 41.57 },
  { global: 1000, height_deg: 80, date: Date.UTC(2019, 0, 1), diffuse: 217.86 },
  { global: 1000, height_deg: 80, date: Date.UTC(2019, 5, 20), diffuse: 170.79 },
])(
  "$global W/m² with the sun at $height_deg°: $diffuse W/m² diffuse",
  ({ global, height_deg, date, diffuse }) => {
    expect(Math.abs(diffuse_W_per_m2(global, height_deg, date) - diffuse)).toBeLessThan(2);
  },
);

it("the pieces nearly meet, as the docstring says, and the night has none", () => {
  expect(Math.abs(diffuseShare_frac(0.22) - diffuseShare_frac(0.2200001))).toBeLessThan(0.007);
  expect(Math.abs(diffuseShare_frac(0.8) - diffuseShare_frac(0.8000001))).toBeLessThan(0.002);
  expect(diffuse_W_per_m2(0, -3, 0)).toBe(0);
});
