import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { type BuildKey, bodyOf } from "../../../core/cooler/builds.ts";
import { type Closures, medianClosures } from "../../../core/cooler/closures.ts";
import { runFleet, startFleet } from "../../../core/cooler/fleet.ts";
import type { Around, CoolerInput } from "../../../core/cooler/types.ts";
import { insulations } from "../../../core/matter/insulation.ts";

/*
 * The same box twice. Once by the simulation. Once as three slabs of foam in many slices each, written here from the
 * laws, with the conductivity of every slice at its own temperature and radiation to the fourth power, and left to a
 * general solver with error control. To make the inside simple every film in it is so good that all of it is at 0 °C.
 */

interface GeneralSolver {
  relativeTolerance: number;
  absoluteTolerance: number;
  maxSteps: number;
  solve(f: (t: number, y: number[]) => number[], from: number, y0: number[], to: number): { y: number[] };
}
const require = createRequire(import.meta.url);
const { Solver } = require("odex") as { Solver: new (size: number) => GeneralSolver };

const hour_s = 3600;
const latent_J_per_kg = 333_550;
const sigma = 5.670374419e-8;
const slices = 10;
const start_C = 20;

const air_C = (t_s: number): number => 27 + 7 * Math.sin((2 * Math.PI * t_s) / (24 * hour_s));
const ground_C = 24;
const groundResistance_m2K_per_W = 0.2;

/** One part of the wall from the liner at 0 °C out: conductance, areas, and the plastic on its outside. */
interface Slab {
  k10_W_per_mK: number;
  k_slope: number;
  foam_J_per_m3K: number;
  thick_m: number;
  inside_m2: number;
  outside_m2: number;
  wall_W_per_K: number;
  onGround: boolean;
}

const perfect = 3e4;
const isothermal: Closures = {
  ...medianClosures,
  wallLot_W_per_m2K: perfect,
  wallPool_W_per_m2K: perfect,
  lotPool_W_per_m2K: perfect,
  contact_W_per_m2K: perfect,
  headWall_W_per_m2K: perfect,
  headLid_W_per_m2K: perfect,
  headTop_W_per_m2K: perfect,
};

/** A slice's area grows as e^(g·x): by halving, that g with which the slab conducts what it must. */
function growthOf(slab: Slab): number {
  const plane = (slab.k10_W_per_mK * slab.inside_m2) / slab.thick_m;
  let low = 1e-6;
  let high = 20;
  for (let n = 0; n < 60; n++) {
    const g = 0.5 * (low + high);
    if ((plane * g) / (1 - Math.exp(-g)) < slab.wall_W_per_K) low = g;
    else high = g;
  }
  return low;
}

/** Rates of a slab's slice temperatures, then its shell's, then the heat that has reached the liner. */
function slabRates(slab: Slab, shell_J_per_K: number): (t_s: number, y: number[]) => number[] {
  const g = growthOf(slab);
  const dx = slab.thick_m / slices;
  const area = (x: number): number => slab.inside_m2 * Math.exp((g * x) / slab.thick_m);
  const k = (t_C: number): number => slab.k10_W_per_mK + slab.k_slope * (t_C - 10);
  return (t_s, y) => {
    const shell_C = y[slices];
    const flow = (i: number): number => {
      // Into slice i − 1 from slice i; the liner stands before the first, the shell behind the last.
      const inner = i === 0 ? 0 : y[i - 1];
      const outer = y[i];
      const edge = i === 0 || i === slices;
      const x = i === 0 ? dx / 4 : i === slices ? slab.thick_m - dx / 4 : i * dx;
      return ((k(0.5 * (inner + outer)) * area(x)) / (edge ? dx / 2 : dx)) * (outer - inner);
    };
    const out = new Array<number>(slices + 2);
    for (let i = 0; i < slices; i++)
      out[i] = (flow(i + 1) - flow(i)) / (slab.foam_J_per_m3K * area((i + 0.5) * dx) * dx);
    const outside_C = air_C(t_s);
    const film = slab.onGround
      ? (ground_C - shell_C) / groundResistance_m2K_per_W
      : 3 * (outside_C - shell_C) + 0.92 * sigma * ((outside_C + 273.15) ** 4 - (shell_C + 273.15) ** 4);
    out[slices] = (film * slab.outside_m2 - flow(slices)) / shell_J_per_K;
    out[slices + 1] = flow(0);
    return out;
  };
}

/** Heat through all walls onto the ice up to each moment, with what the liner held, J. */
function slabHeat_J(build: BuildKey, litres: number, moments_s: readonly number[]): number[] {
  const body = bodyOf(build, litres / 1000, 0.25);
  const { length_m: a, width_m: b, height_m: c } = body.inside;
  const thick = body.sides.thickness_m;
  const thick_m = thick * medianClosures.thickness_frac;
  const foam = insulations[body.sides.insulation];
  const k10_W_per_mK = foam.k10_W_per_mK!.p50;
  const same = {
    k10_W_per_mK,
    k_slope: foam.dk_dT_W_per_mK2.p50,
    foam_J_per_m3K: foam.density_kg_per_m3 * foam.heatCapacity_J_per_kgK,
    thick_m,
  };
  // Langmuir: 0.54 k for a metre of edge, 0.15 k t for a corner; an edge counts half to each side, a corner a third.
  const rim = 0.54 * k10_W_per_mK * (a + b);
  const corner = 4 * 0.15 * k10_W_per_mK * thick_m;
  const outer = [a + 2 * thick, b + 2 * thick, c + 2 * thick] as const;
  const flat: Slab = {
    ...same,
    inside_m2: a * b,
    outside_m2: outer[0] * outer[1],
    wall_W_per_K: (k10_W_per_mK * a * b) / thick_m + rim + corner / 3,
    onGround: false,
  };
  const sides_m2 = 2 * (a + b) * c;
  const sides: Slab = {
    ...same,
    inside_m2: sides_m2,
    outside_m2: 2 * (outer[0] + outer[1]) * outer[2],
    wall_W_per_K:
      (k10_W_per_mK * sides_m2) / thick_m + 0.54 * k10_W_per_mK * 4 * c + 2 * rim + (4 / 3) * corner,
    onGround: false,
  };
  const slabs = [flat, sides, { ...flat, onGround: true }];
  const body_J_per_K = medianClosures.body_J_per_kgK * body.emptyWeight_kg;
  const foam_J_per_K = slabs.reduce((sum, slab) => {
    const g = growthOf(slab);
    return sum + (slab.foam_J_per_m3K * slab.inside_m2 * thick_m * (Math.exp(g) - 1)) / g;
  }, 0);
  const plastic_J_per_K = Math.max(0.3 * body_J_per_K, body_J_per_K - foam_J_per_K);
  const skin_m2 = slabs.reduce((sum, slab) => sum + slab.inside_m2 + slab.outside_m2, 0);
  const seal_W_per_K = body.seal_W_per_mK * 2 * (a + b);
  const w = (2 * Math.PI) / (24 * hour_s);
  const sum_J = moments_s.map((t) => seal_W_per_K * (27 * t + (7 / w) * (1 - Math.cos(w * t))));
  for (const slab of slabs) {
    const solver = new Solver(slices + 2);
    solver.relativeTolerance = 1e-6;
    solver.absoluteTolerance = 1e-4;
    solver.maxSteps = 1e6;
    const rates = slabRates(slab, (plastic_J_per_K * slab.outside_m2) / skin_m2);
    let y = [...new Array<number>(slices + 1).fill(start_C), 0];
    moments_s.forEach((moment_s, i) => {
      y = solver.solve(rates, moments_s[i - 1] ?? 0, y, moment_s).y;
      sum_J[i] += y[slices + 1] + ((plastic_J_per_K * slab.inside_m2) / skin_m2) * start_C;
    });
  }
  return sum_J;
}

const around: Around = {
  stays: [],
  breaks_s: [],
  at: (t_s, out) =>
    Object.assign(out, {
      air_C: air_C(t_s),
      humidity_kg_per_kg: 0.004,
      pressure_Pa: 101_325,
      wind_m_per_s: 0,
      lidSun_W_per_m2: 0,
      sideSun_W_per_m2: 0,
      lidRadiant_C: air_C(t_s),
      sideRadiant_C: air_C(t_s),
      ground_C,
      groundResistance_m2K_per_W,
    }),
};

/** The simulated box: melted ice, kg, at each moment. */
function melted_kg(build: BuildKey, litres: number, ice_kg: number, moments_s: readonly number[]): number[] {
  const body = bodyOf(build, litres / 1000, 0.25);
  for (const zone of [body.lid, body.base]) Object.assign(zone, body.sides);
  body.leak_per_h = 0;
  const lot = { kind: "ice", id: "ice", form: "cube", mass_kg: ice_kg, pieces: 1, start_C: 0 } as const;
  const box: CoolerInput = {
    name: "box",
    body,
    start: { kind: "uniform", body_C: start_C },
    cover: "none",
    top: "none",
    drain: "open",
    openings: null,
    sealedUntil_s: null,
    around,
    lots: [{ ...lot, liquid_frac: 0, layer: null }],
  };
  const end_s = Math.max(...moments_s);
  const fleet = startFleet({ end_s, acts: [], coolers: [box] }, { closures: isothermal });
  return moments_s.map((moment_s) => {
    runFleet(fleet, moment_s);
    return ice_kg - (fleet.tracks[0].ice_kg.at(-1) ?? Number.NaN);
  });
}

describe("two days of a box of ice, against slabs in many slices and a general solver", () => {
  const moments_s = [12, 24, 48].map((hours) => hours * hour_s);
  for (const [build, litres, ice_kg] of [
    ["standard", 45, 20],
    ["foam", 20, 12],
    ["standard", 120, 50],
  ] as const)
    it(`${build}, ${litres} L: the same ice melts, within 0.5 %, after 12, 24 and 48 h`, () => {
      const expected_kg = slabHeat_J(build, litres, moments_s).map((heat_J) => heat_J / latent_J_per_kg);
      melted_kg(build, litres, ice_kg, moments_s).forEach((melted, i) => {
        expect(melted).toBeGreaterThan(0.3);
        expect(Math.abs(melted / expected_kg[i] - 1), `${melted} kg, not ${expected_kg[i]}`).toBeLessThan(
          0.005,
        );
      });
    });
});
