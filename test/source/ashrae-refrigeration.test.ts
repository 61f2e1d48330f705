// ASHRAE Handbook—Refrigeration, "Thermal properties of foods": worked examples 1–4 and the table of thermal properties.
// The table was read in a copy. The examples are from memory, reproduced from their stated inputs: their figures agree
// with the formulas, which is why they may stand here, but a page has yet to be seen.
import { describe, expect, it } from "vitest";
import {
  mixtureDensity_kg_per_m3,
  mixtureHeatCapacity_J_per_kgK,
  parallelConductivity_W_per_mK,
  seriesConductivity_W_per_mK,
} from "../../core/matter/choiOkos.ts";
import { chenEnthalpy_J_per_kg } from "../../core/matter/enthalpyPeers.ts";
import { foodEnthalpy_J_per_kg, foodHeatCapacity_J_per_kgK } from "../../core/matter/foodProperties.ts";
import { foods } from "../../core/matter/foods.ts";
import {
  type Freezing,
  foodLatent_J_per_kg,
  milesIce_frac,
  tchigeovIce_frac,
} from "../../core/matter/iceFraction.ts";

describe("worked examples (from memory)", () => {
  it("1: a 150 kg beef carcass at −20 °C holds 78 kg of ice and 9 kg of unfrozen water", () => {
    const carcass: Freezing = { water_frac: 0.58, protein_frac: 0.1748, freezes_C: -1.7 };
    const ice = tchigeovIce_frac(carcass, -20);
    // Printed to two digits as 0.52; the masses follow to a kilogram.
    expect(Math.abs(ice - 0.516)).toBeLessThan(0.005);
    expect(Math.abs(150 * ice - 78)).toBeLessThan(1);
    expect(Math.abs(150 * (0.58 - ice) - 9)).toBeLessThan(1);
    // Miles, which the reckoning uses, gives a tenth less ice: the peers' known disagreement on carcasses.
    expect(milesIce_frac(carcass, -20)).toBeCloseTo(0.469, 2);
  });

  it("2: 150 kg of lamb from 10 to 0 °C gives up 5390 kJ", () => {
    const lamb = { water: 0.7342, protein: 0.2029, fat: 0.0525, ash: 0.0106 };
    const c = mixtureHeatCapacity_J_per_kgK(lamb, 5);
    // Three printed digits: 3.59 kJ/kgK and 5390 kJ, so 0.3 %.
    expect(Math.abs(c / 3590 - 1)).toBeLessThan(0.003);
    expect(Math.abs((150 * c * 10) / 5_390_000 - 1)).toBeLessThan(0.003);
  });

  it("3: a 150 kg beef carcass from 10 to −20 °C gives up 34 700 kJ, by Chen", () => {
    const carcass: Freezing = { water_frac: 0.5821, protein_frac: 0.1748, freezes_C: -1.7 };
    const h = (t_C: number) => chenEnthalpy_J_per_kg(carcass, t_C) / 1000;
    // Printed to 0.01 kJ/kg with rounded steps in between.
    expect(Math.abs(h(-20) - 48.79)).toBeLessThan(0.02);
    expect(Math.abs(h(-1.7) - 243.14)).toBeLessThan(0.02);
    expect(Math.abs(h(10) - 280.38)).toBeLessThan(0.02);
    expect(Math.abs(150 * (h(10) - h(-20)) - 34_700)).toBeLessThan(50);
  });

  it("3, by components: 233.0 kJ/kg (computed apart), within 1 %", () => {
    const solids = {
      protein_frac: 0.1748,
      fat_frac: 0.2349,
      carbohydrate_frac: 0,
      fibre_frac: 0,
      ash_frac: 0.0082,
    };
    const carcass = { ...foods["ground beef"]!, ...solids, water_frac: 0.5821, freezes_C: -1.7 };
    const step = foodEnthalpy_J_per_kg(carcass, 10) - foodEnthalpy_J_per_kg(carcass, -20);
    expect(Math.abs(step / 233_000 - 1)).toBeLessThan(0.01);
  });

  it("4: lean pork shoulder at −40 °C", () => {
    const pork: Freezing = { water_frac: 0.7263, protein_frac: 0.1955, freezes_C: -2.2 };
    const ice = tchigeovIce_frac(pork, -40);
    expect(ice).toBeCloseTo(0.672, 3);
    expect(pork.water_frac - ice).toBeCloseTo(0.055, 3);
    // The printed fractions add up to 1.0034 and are used as they stand.
    const frozen = { ice, water: pork.water_frac - ice, protein: 0.1955, fat: 0.0714, ash: 0.0102 };
    expect(Math.abs(mixtureDensity_kg_per_m3(frozen, -40) / 992 - 1)).toBeLessThan(0.001);
    expect(Math.abs(parallelConductivity_W_per_mK(frozen, -40) / 1.962 - 1)).toBeLessThan(0.002);
    expect(Math.abs(seriesConductivity_W_per_mK(frozen, -40) / 0.519 - 1)).toBeLessThan(0.002);
  });
});

/** Food, printed heat capacity above freezing kJ/kgK, printed latent heat kJ/kg. */
const table: readonly (readonly [key: string, c_kJ_per_kgK: number, latent_kJ_per_kg: number])[] = [
  ["carrot", 3.92, 293],
  ["broccoli", 4.01, 303],
  ["iceberg lettuce", 4.09, 320],
  ["tomato", 4.02, 311],
  ["potato", 3.67, 264],
  ["onion", 3.95, 300],
  ["apple", 3.81, 280],
  ["banana", 3.56, 248],
  ["strawberry", 4.0, 306],
  ["orange", 3.81, 275],
  ["watermelon", 3.97, 306],
  ["cod", 3.78, 271],
  ["tuna steak", 3.43, 227],
  ["shrimp", 3.65, 253],
  ["beef steak", 3.53, 239],
  ["lamb", 3.6, 245],
  ["pork", 3.59, 243],
  ["ground turkey", 3.53, 235],
  ["hot dog", 3.15, 180],
  ["egg", 3.63, 252],
  ["cheddar", 2.77, 123],
  ["swiss cheese", 2.78, 124],
  ["cottage cheese", 3.73, 266],
  ["cream cheese", 3.16, 180],
  ["mozzarella", 3.15, 181],
  ["milk", 3.89, 293],
  ["half and half", 3.73, 269],
  ["ice cream", 3.22, 204],
  ["orange juice", 3.9, 297],
  ["soft drink", 3.9, 299],
  ["butter", 2.4, 60],
];

/** Rows that we miss, kept with the gap (ours over printed, less 1) and the reason. */
const missed: Readonly<Record<string, { c: number; latent: number; why: string }>> = {
  mozzarella: { c: -0.03, latent: -0.07, why: "another cheese: the printed one holds 54 % water, ours 50 %" },
  orange: { c: 0.01, latent: 0.05, why: "the printed orange holds 82.3 % water, ours 87 %" },
  butter: {
    c: -0.03,
    latent: -0.11,
    why: "melting fat in the printed heat capacity; salt in ours; 16 against 17.9 % water",
  },
};

describe("table of thermal properties", () => {
  // Heat capacity by composition misses the printed table by up to 2.5 % even with the table's own compositions; rounding
  // ours to whole percents adds a little. Latent heat is 333.6 × water: a whole percent of water, and cuts and varieties
  // that differ by one or two, make 3 % of it, half as much again in dry foods.
  it.each(table.filter(([key]) => missed[key] === undefined))("%s: %d kJ/kgK, %d kJ/kg", (key, c, latent) => {
    const food = foods[key]!;
    expect(Math.abs(foodHeatCapacity_J_per_kgK(food, 10) / 1000 / c - 1)).toBeLessThan(0.027);
    const ours = (foodLatent_J_per_kg * food.water_frac) / 1000;
    expect(Math.abs(ours - latent)).toBeLessThan(Math.max(0.03 * latent, 5));
  });

  it.each(Object.entries(missed))("%s: missed, by the gap written down", (key, gap) => {
    const food = foods[key]!;
    const [, c, latent] = table.find((row) => row[0] === key)!;
    expect(foodHeatCapacity_J_per_kgK(food, 10) / 1000 / c - 1).toBeCloseTo(gap.c, 2);
    expect((foodLatent_J_per_kg * food.water_frac) / 1000 / latent - 1).toBeCloseTo(gap.latent, 2);
  });

  it("latent heat is 333.6 kJ/kg times the printed water", () => {
    // Printed as whole kJ/kg.
    for (const [water_frac, latent] of [
      [0.8779, 293],
      [0.717, 239],
      [0.8122, 271],
    ] as const) {
      expect(Math.abs((foodLatent_J_per_kg * water_frac) / 1000 - latent)).toBeLessThan(1);
    }
  });

  it("chicken is printed at 4.34 kJ/kgK, more than water: not a target, ours is 3.5", () => {
    expect(foodHeatCapacity_J_per_kgK(foods["chicken breast"]!, 10)).toSatisfy(
      (c: number) => c > 3400 && c < 3600,
    );
  });

  it("published freezing points stand in the table of foods", () => {
    const printed = {
      carrot: -1.4,
      cod: -2.2,
      "beef steak": -1.7,
      lamb: -1.9,
      egg: -0.6,
      cheddar: -12.9,
      "ice cream": -5.6,
    };
    for (const [key, freezes_C] of Object.entries(printed)) {
      expect(foods[key]).toMatchObject({ freezes_C, freezesMark: "published" });
    }
  });
});
