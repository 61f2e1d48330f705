// langmuir-1913: Langmuir, I., Adams, E. Q., Meikle, G. S. (1913), Flow of heat through furnace walls, from memory as it stands in
// Incropera & DeWitt, table 4.1: each metre of edge adds 0.54 and each corner 0.15 of the thickness to A/t. Since nobody
// holds the page, the law is checked against heat conduction itself: one octant of the wall on a cubic grid.
import { describe, expect, it } from "vitest";
import { medianClosures } from "../../core/cooler/closures.ts";
import { buildWalls } from "../../core/cooler/walls.ts";
import { type BoxSize, boxConductance_W_per_K } from "../../core/heat/wall.ts";
import { insulations } from "../../core/matter/insulation.ts";

/**
 * Steady conductance of a box's wall in units of k, metres, on cubic cells of `thickness_m / n`: finite volumes with the two
 * faces half a cell away, solved by conjugate gradients. Inside sizes are whole numbers of two cells.
 */
function conductedOnGrid_m(inside: BoxSize, thickness_m: number, n: number): number {
  const cell_m = thickness_m / n;
  const hollow = [inside.length_m, inside.width_m, inside.height_m].map((side) =>
    Math.round(side / 2 / cell_m),
  );
  const size = hollow.map((cells) => cells + n);
  const [nx, ny, nz] = size as [number, number, number];
  const stride = [1, nx, nx * ny];
  const isHollow = (at: readonly number[]) => at.every((index, axis) => index < hollow[axis]!);
  const total = nx * ny * nz;
  const solid = new Uint8Array(total);
  const diagonal = new Float64Array(total);
  const warm = new Float64Array(total);
  const links = [new Float64Array(total), new Float64Array(total), new Float64Array(total)];
  for (let z = 0; z < nz; z++)
    for (let y = 0; y < ny; y++)
      for (let x = 0; x < nx; x++) {
        const at = [x, y, z];
        if (isHollow(at)) continue;
        const i = x + nx * y + nx * ny * z;
        solid[i] = 1;
        for (let axis = 0; axis < 3; axis++) {
          const up = at.map((index, other) => index + (other === axis ? 1 : 0));
          const down = at.map((index, other) => index - (other === axis ? 1 : 0));
          if (up[axis] === size[axis]) diagonal[i]! += 2;
          else {
            diagonal[i]! += 1;
            links[axis]![i] = 1;
          }
          if (at[axis] === 0) continue;
          if (isHollow(down)) {
            diagonal[i]! += 2;
            warm[i]! += 2;
          } else diagonal[i]! += 1;
        }
      }
  const apply = (t: Float64Array, out: Float64Array) => {
    for (let i = 0; i < total; i++) out[i] = diagonal[i]! * t[i]!;
    for (let axis = 0; axis < 3; axis++) {
      const link = links[axis]!;
      const step = stride[axis]!;
      for (let i = 0; i + step < total; i++) {
        if (link[i] === 0) continue;
        out[i]! -= t[i + step]!;
        out[i + step]! -= t[i]!;
      }
    }
  };
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const t = new Float64Array(total);
  const rest = Float64Array.from(warm);
  const way = Float64Array.from(warm);
  const pushed = new Float64Array(total);
  let left = dot(rest, rest);
  const first = left;
  while (left > 1e-16 * first) {
    apply(way, pushed);
    const pace = left / dot(way, pushed);
    for (let i = 0; i < total; i++) {
      t[i]! += pace * way[i]!;
      rest[i]! -= pace * pushed[i]!;
    }
    const now = dot(rest, rest);
    for (let i = 0; i < total; i++) way[i] = rest[i]! + (now / left) * way[i]!;
    left = now;
  }
  let flow = 0;
  for (let i = 0; i < total; i++) if (solid[i] === 1) flow += warm[i]! * (1 - t[i]!);
  return 8 * flow * cell_m;
}

describe.each([
  ["cube", { length_m: 0.3, width_m: 0.3, height_m: 0.3 }, 0.05],
  ["long chest", { length_m: 0.6, width_m: 0.35, height_m: 0.35 }, 0.05],
  ["small box with thick walls", { length_m: 0.24, width_m: 0.18, height_m: 0.18 }, 0.06],
])("%s", (_name, inside, thickness_m) => {
  it("conducts what the shape factors say, ±1 %", () => {
    // The re-entrant edge slows the grid down to an error of about h^(4/3); two grids take it out. What is left is < 0.2 %.
    const coarse = conductedOnGrid_m(inside, thickness_m, 4);
    const fine = conductedOnGrid_m(inside, thickness_m, 8);
    const grid_m = fine + (fine - coarse) / (2 ** (4 / 3) - 1);
    expect(Math.abs(boxConductance_W_per_K(inside, thickness_m, 1) / grid_m - 1)).toBeLessThan(0.01);
    expect(Math.abs(fine / grid_m - 1)).toBeLessThan(0.02);
  });

  it("is what the chains of the simulated walls add up to", () => {
    const zone = { thickness_m, insulation: "EPS" as const };
    const joint = { emptyWeight_kg: 3, seal_W_per_mK: 0, leak_per_h: 0, absorptance_frac: 0.3 };
    const body = { inside, lid: zone, sides: zone, base: zone, ...joint, measured_W_per_K: null };
    const walls = buildWalls(body, { ...medianClosures, thickness_frac: 1, foam_frac: 1 });
    const sum = walls.wall_W_per_K.reduce((a, b) => a + b, 0);
    const k_W_per_mK = insulations.EPS.k10_W_per_mK!.p50;
    expect(sum / boxConductance_W_per_K(inside, thickness_m, k_W_per_mK)).toBeCloseTo(1, 9);
  });
});
