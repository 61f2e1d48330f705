import { describe, expect, it } from "vitest";
import { type BodyShape, centreTime_s, type SolidBody } from "../../../core/heat/conduction.ts";
import { coolingTime_s, foodBody } from "../../../core/heat/coolingTime.ts";
import { brickDimensions_ratio, plankFreezing_s } from "../../../core/heat/freezingTime.ts";
import { foodEnthalpy_J_per_kg } from "../../../core/matter/foodProperties.ts";
import { foods } from "../../../core/matter/foods.ts";
import { iceConductivity_W_per_mK } from "../../../core/matter/ice.ts";

// 1 W/mK and 1 MJ/m³K: radius 0.1 m, so that dimensionless time is t·1e-6/0.01.
const plain = (shape: BodyShape): SolidBody => ({
  shape,
  thick_m: 0.2,
  density_kg_per_m3: 1000,
  curve: { t_C: Float64Array.of(-80, 80), h_J_per_kg: Float64Array.of(-80_000, 80_000) },
  k_W_per_mK: [1, 1],
});

/** Root of a falling-then-rising condition by halving. */
function root(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (f(a) * f(middle) <= 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

function bessel(order: 0 | 1, x: number): number {
  let sum = 0;
  const steps = 2000;
  for (let i = 0; i < steps; i++) {
    const angle = (Math.PI * (i + 0.5)) / steps;
    sum += Math.cos(order * angle - x * Math.sin(angle));
  }
  return sum / steps;
}

/** First root and coefficient of the exact series, centre. */
function firstTerm(shape: BodyShape, biot: number): [number, number] {
  if (shape === "slab") {
    const x = root((y) => y * Math.sin(y) - biot * Math.cos(y), 1e-6, Math.PI / 2);
    return [x, (4 * Math.sin(x)) / (2 * x + Math.sin(2 * x))];
  }
  if (shape === "cylinder") {
    const x = root((y) => y * bessel(1, y) - biot * bessel(0, y), 1e-6, 2.4048);
    return [x, (2 / x) * (bessel(1, x) / (bessel(0, x) ** 2 + bessel(1, x) ** 2))];
  }
  const x = root((y) => Math.sin(y) - y * Math.cos(y) - biot * Math.sin(y), 1e-3, Math.PI - 1e-6);
  return [x, (4 * (Math.sin(x) - x * Math.cos(x))) / (2 * x - Math.sin(2 * x))];
}

describe("against the exact series, one term", () => {
  // A tenth of the difference is left, dimensionless time far above 0.2: one term is exact to 1e-4.
  it.each(
    (["slab", "cylinder", "lump"] as const).flatMap((shape) =>
      [0.04, 0.2, 0.9, 2, 10].map((biot) => [shape, biot] as const),
    ),
  )("%s at Biot %d, within 1 %%", (shape, biot) => {
    const [x, coefficient] = firstTerm(shape, biot);
    const exact_s = (Math.log(coefficient / 0.1) / x ** 2) * 1e4;
    const time_s = centreTime_s(plain(shape), 10, { t_C: 0, film_W_per_m2K: 10 * biot }, 1)!;
    expect(Math.abs(time_s / exact_s - 1)).toBeLessThan(0.01);
  });
});

describe("freezing and thawing through", () => {
  it("a cylinder of water that stands at 0 °C freezes as Plank says, 4 %", () => {
    // Plank leaves out the cooling of the ice already made: 2·(−16/2) of 334 kJ/kg, a few per cent.
    const water = foods.water!;
    const latent_J_per_kg = foodEnthalpy_J_per_kg(water, 0) - foodEnthalpy_J_per_kg(water, -1e-6);
    const body = foodBody(water, 0.1, "cylinder");
    const time_s = centreTime_s(body, 0, { t_C: -16, film_W_per_m2K: 8 }, -0.01)!;
    const k_W_per_mK = iceConductivity_W_per_mK(-8);
    const stuff = { density_kg_per_m3: body.density_kg_per_m3, latent_J_per_kg, k_W_per_mK };
    const plank_s = plankFreezing_s(stuff, 16, { thick_m: 0.1, dimensions_ratio: 2 }, 8);
    expect(time_s / plank_s).toBeGreaterThan(1);
    expect(time_s / plank_s).toBeLessThan(1.04);
  });

  it("a 25-mm bag of stew thaws in a refrigerator in about a day", () => {
    const stew = foodBody(foods.chili!, 0.025, "slab");
    const hours = centreTime_s(stew, -16, { t_C: 4, film_W_per_m2K: 7 }, foods.chili!.freezes_C!)! / 3600;
    // Common practice says overnight to a day for a flat bag.
    expect(hours).toBeGreaterThan(10);
    expect(hours).toBeLessThan(30);
  });

  it("twice as thick takes more than twice as long", () => {
    const time = (thick_m: number): number =>
      centreTime_s(
        foodBody(foods["beef steak"]!, thick_m, "lump"),
        -16,
        { t_C: 4, film_W_per_m2K: 8 },
        -1.7,
      )!;
    expect(time(0.1) / time(0.05)).toBeGreaterThan(2);
    expect(time(0.1) / time(0.05)).toBeLessThan(4);
  });
});

describe("what cannot be", () => {
  const meat = { food: foods["game meat"]!, thick_m: 0.1, shape: "lump" } as const;

  it("is null where the bath is no colder, 0 where it is cold already, an error out of range", () => {
    expect(coolingTime_s(meat, 35, { t_C: 4, film_W_per_m2K: 8 }, 4)).toBeNull();
    expect(coolingTime_s(meat, 3, { t_C: 1, film_W_per_m2K: 8 }, 4)).toBe(0);
    expect(() => coolingTime_s(meat, Number.NaN, { t_C: 1, film_W_per_m2K: 8 }, 4)).toThrow(/from_C must be/);
    expect(() => coolingTime_s({ ...meat, thick_m: 0 }, 35, { t_C: 1, film_W_per_m2K: 8 }, 4)).toThrow(
      /thick_m/,
    );
  });

  it("a better film and colder air are never slower", () => {
    const time = (t_C: number, film_W_per_m2K: number): number =>
      coolingTime_s(meat, 35, { t_C, film_W_per_m2K }, 4.4)!;
    expect(time(1, 8)).toBeLessThan(time(2, 8));
    expect(time(1, 100)).toBeLessThan(time(1, 8));
  });
});

describe("the path dimension of a brick", () => {
  it("is 3 for a cube, 2 for a long square bar, 1 for a wide slab", () => {
    for (const biot of [0.05, 0.5, 5]) {
      expect(brickDimensions_ratio(biot, [1, 1, 1])).toBeCloseTo(3, 9);
      expect(brickDimensions_ratio(biot, [1, 1e4, 1])).toBeCloseTo(2, 2);
      expect(brickDimensions_ratio(biot, [1e4, 1e4, 1])).toBeCloseTo(1, 2);
    }
  });
});
