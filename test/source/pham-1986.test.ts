// pham-1986: Pham's simplified freezing time, and plank-1913 below it. Both formulas are from memory, so that nothing
// here is a printed value: the two are held against each other and against conduction through the whole enthalpy curve,
// which shares no formula with them.
import { describe, expect, it } from "vitest";
import { centreTime_s } from "../../core/heat/conduction.ts";
import { foodBody } from "../../core/heat/coolingTime.ts";
import { freezingStuff, phamFreezing_s, plankFreezing_s } from "../../core/heat/freezingTime.ts";
import { foods } from "../../core/matter/foods.ts";

const shapes = [
  ["slab", 1],
  ["cylinder", 2],
  ["lump", 3],
] as const;

describe("worked by hand", () => {
  it("a 0.25 m slab of lean beef in −30 °C air: 30.0 h", () => {
    // Mean freezing temperature 1.8 − 2.63 − 3.15 = −3.98 °C. Cooling 3500·8.98 = 31.43 kJ/kg over 30.51 K; freezing
    // 248 000 + 1800·6.02 = 258.8 kJ/kg over 26.02 K; Biot 2.5: 1050·0.125/30·(1030 + 9947)·2.25 s = 108 100 s.
    const beef = {
      density_kg_per_m3: 1050,
      unfrozen_J_per_kgK: 3500,
      frozen_J_per_kgK: 1800,
      latent_J_per_kg: 248_000,
      kFrozen_W_per_mK: 1.5,
      pureFreezes_C: null,
    };
    const slab = { thick_m: 0.25, dimensions_ratio: 1 };
    expect(phamFreezing_s(beef, slab, 5, -30, -10, 30) / 3600).toBeCloseTo(30.02, 1);
  });

  it("Plank: 0.05 m slab, 1000 kg/m³, 250 kJ/kg, k 1.5, 20 K, film 10: 9.4 h", () => {
    // 2.5e8 · 0.025 / (10·20) · (1 + 0.25/3) = 33 854 s.
    const stuff = { density_kg_per_m3: 1000, latent_J_per_kg: 250_000, k_W_per_mK: 1.5 };
    const slab = { thick_m: 0.05, dimensions_ratio: 1 };
    expect(plankFreezing_s(stuff, 20, slab, 10)).toBeCloseTo(33_854, -1);
  });
});

describe.each(["beef steak", "chicken breast", "cod", "chili", "soup", "casserole"])("%s", (key) => {
  const food = foods[key]!;
  const stuff = freezingStuff(food)!;

  // The method claims about 10 % on measured food; conduction here has the composition's own enthalpies, 5 % by themselves.
  it.each(shapes)("as a %s freezes by Pham within 12 % of conduction", (shape, dimensions_ratio) => {
    for (const [thick_m, film, air_C] of [
      [0.025, 8, -16],
      [0.06, 8, -18],
      [0.12, 8, -16],
      [0.06, 30, -30],
    ] as const) {
      const pham_s = phamFreezing_s(stuff, { thick_m, dimensions_ratio }, 15, air_C, -10, film);
      const bath = { t_C: air_C, film_W_per_m2K: film };
      const exact_s = centreTime_s(foodBody(food, thick_m, shape), 15, bath, -10)!;
      expect(Math.abs(pham_s / exact_s - 1), `${thick_m} ${film} ${air_C}`).toBeLessThan(0.12);
    }
  });
});

it("water freezes by the two-period law at 0 °C within 4 % of conduction", () => {
  for (const [shape, dimensions_ratio] of shapes) {
    const pham_s = phamFreezing_s(
      freezingStuff(foods.water!)!,
      { thick_m: 0.1, dimensions_ratio },
      15,
      -16,
      -10,
      8,
    );
    const bath = { t_C: -16, film_W_per_m2K: 8 };
    const exact_s = centreTime_s(foodBody(foods.water!, 0.1, shape), 15, bath, -10)!;
    expect(Math.abs(pham_s / exact_s - 1)).toBeLessThan(0.04);
  }
});

it("misses bread in a cold blast, which has little water: a third too long", () => {
  const bread = foods.bread!;
  const pham_s = phamFreezing_s(
    freezingStuff(bread)!,
    { thick_m: 0.06, dimensions_ratio: 1 },
    15,
    -30,
    -10,
    30,
  );
  const exact_s = centreTime_s(foodBody(bread, 0.06, "slab"), 15, { t_C: -30, film_W_per_m2K: 30 }, -10)!;
  expect(pham_s / exact_s).toBeGreaterThan(1.15);
  expect(pham_s / exact_s).toBeLessThan(1.45);
});
