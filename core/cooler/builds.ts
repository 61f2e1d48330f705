import type { CoolerBody, WallZone } from "./types.ts";

/** Kinds of body a person can tell apart in a shop or by lifting one. */
export type BuildKey = "soft" | "foam" | "thin" | "standard" | "thick" | "vacuum" | "icebox";

/** What is typical for one kind of body. Every number is common practice or judgement, and a person may overrule each. */
export interface Build {
  says: string;
  lid: WallZone;
  sides: WallZone;
  base: WallZone;
  seal_W_per_mK: number;
  leak_per_h: number;
  /** Empty weight per litre inside, kg. */
  weight_kg_per_L: number;
  /** Inside length : width : height. */
  proportions: readonly [number, number, number];
  source: "common-practice";
}

const polyurethane = (mm: number): WallZone => ({ thickness_m: mm / 1000, insulation: "polyurethane" });

/**
 * Typical bodies. Thicknesses are as stated by makers (mean of the zone); the model takes 0.92 of them
 * (docs/model.md). Seal and leak follow the kind of joint: gasket 0.02 W/mK and 0.1/h, none 0.03 and 0.5,
 * zip 0.05 and 1. Source: common-practice.
 *
 * @source common-practice
 */
export const builds: Readonly<Record<BuildKey, Build>> = {
  soft: {
    says: "soft bag with a zip",
    lid: { thickness_m: 0.012, insulation: "soft foam" },
    sides: { thickness_m: 0.015, insulation: "soft foam" },
    base: { thickness_m: 0.015, insulation: "soft foam" },
    seal_W_per_mK: 0.05,
    leak_per_h: 1,
    weight_kg_per_L: 0.06,
    proportions: [1.5, 1, 1],
    source: "common-practice",
  },
  foam: {
    says: "bare white foam box",
    lid: { thickness_m: 0.025, insulation: "EPS" },
    sides: { thickness_m: 0.025, insulation: "EPS" },
    base: { thickness_m: 0.025, insulation: "EPS" },
    seal_W_per_mK: 0.03,
    leak_per_h: 0.5,
    weight_kg_per_L: 0.02,
    proportions: [1.5, 1, 1],
    source: "common-practice",
  },
  thin: {
    says: "light chest, thin foamed walls, hollow lid",
    lid: { thickness_m: 0.025, insulation: "air" },
    sides: polyurethane(22),
    base: polyurethane(22),
    seal_W_per_mK: 0.03,
    leak_per_h: 0.5,
    weight_kg_per_L: 0.085,
    proportions: [1.75, 1, 1.05],
    source: "common-practice",
  },
  standard: {
    says: "chest with foamed walls and lid, no gasket",
    lid: polyurethane(28),
    sides: polyurethane(32),
    base: polyurethane(32),
    seal_W_per_mK: 0.03,
    leak_per_h: 0.5,
    weight_kg_per_L: 0.13,
    proportions: [1.75, 1, 1.05],
    source: "common-practice",
  },
  thick: {
    says: "heavy chest, thick foamed walls, gasket",
    lid: polyurethane(60),
    sides: polyurethane(50),
    base: polyurethane(55),
    seal_W_per_mK: 0.02,
    leak_per_h: 0.1,
    weight_kg_per_L: 0.23,
    proportions: [1.75, 1, 0.95],
    source: "common-practice",
  },
  vacuum: {
    says: "chest with vacuum panels, gasket",
    lid: { thickness_m: 0.03, insulation: "vacuum panel" },
    sides: { thickness_m: 0.03, insulation: "vacuum panel" },
    base: { thickness_m: 0.03, insulation: "vacuum panel" },
    seal_W_per_mK: 0.02,
    leak_per_h: 0.1,
    weight_kg_per_L: 0.26,
    proportions: [1.6, 1, 1],
    source: "common-practice",
  },
  icebox: {
    says: "built-in icebox of a boat or van, top lid",
    lid: polyurethane(50),
    sides: polyurethane(75),
    base: polyurethane(75),
    seal_W_per_mK: 0.03,
    leak_per_h: 0.5,
    weight_kg_per_L: 0.3,
    proportions: [1, 1, 1.1],
    source: "common-practice",
  },
};

/**
 * A body of one kind with the given room inside. Not a measured cooler: use `measured_W_per_K` for that.
 *
 * @param inside_m3 room inside, 0.002…1 m³
 */
export function bodyOf(key: BuildKey, inside_m3: number, absorptance_frac: number): CoolerBody {
  const build = builds[key];
  const [length, width, height] = build.proportions;
  const unit_m = Math.cbrt(inside_m3 / (length * width * height));
  return {
    inside: { length_m: length * unit_m, width_m: width * unit_m, height_m: height * unit_m },
    lid: { ...build.lid },
    sides: { ...build.sides },
    base: { ...build.base },
    emptyWeight_kg: build.weight_kg_per_L * inside_m3 * 1000,
    seal_W_per_mK: build.seal_W_per_mK,
    leak_per_h: build.leak_per_h,
    absorptance_frac,
    measured_W_per_K: null,
  };
}
