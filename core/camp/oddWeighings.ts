import { Matrix, solve } from "ml-matrix";
import type { IceFit } from "./fitIceTest.ts";
import type { TestWeighing } from "./readIceTest.ts";

/** Why a test does not hang together. */
export type OddKind = "ice grew" | "one weighing" | "lost at once" | "came back" | "unlike its kind";

export interface Odd {
  kind: OddKind;
  /** Places in the file's list that it concerns; empty where it is the test as a whole. */
  weighings: number[];
  /** How far out, in standard deviations of what was to be expected. */
  score: number;
}

/**
 * A standard score this far out is odd. Of a test with four weighings some seven things are looked at, each past it once in
 * 1500 by chance: about one good test in two hundred is called odd (`test/truth/iceTest.test.ts` counts).
 */
const odd_score = 3.2;

/** An ice weight above an earlier one by more than scales differ: the places of the later ones. */
export function grown(weighed: readonly TestWeighing[], scale_kg: number): number[] {
  let least_kg = Infinity;
  return weighed.flatMap(({ of, mass_kg, index }) => {
    if (of !== "ice") return [];
    if (mass_kg > least_kg + 3 * Math.SQRT2 * scale_kg) return [index];
    least_kg = Math.min(least_kg, mass_kg);
    return [];
  });
}

/** Something that may have gone wrong, as what it adds to each weighing. */
interface Suspect {
  kind: OddKind;
  weighings: number[];
  adds: number[];
}

/** From one weighing on there is less ice, and in the next bucket more water. */
function step(weighed: readonly TestWeighing[], from: number): number[] {
  const bucket = weighed.findIndex(({ of }, i) => of === "drained" && i >= from);
  return weighed.map(({ of }, i) => (of === "ice" ? (i >= from ? -1 : 0) : i === bucket ? 1 : 0));
}

function suspects(weighed: readonly TestWeighing[], { slope_kg }: IceFit): Suspect[] {
  const own = (adds: readonly number[]): number[] =>
    weighed.filter((_, i) => adds[i] !== 0).map(({ index }) => index);
  const single = weighed.map((_, i): Suspect => {
    const adds = weighed.map((_one, k) => (k === i ? 1 : 0));
    return { kind: "one weighing", weighings: own(adds), adds };
  });
  const steps = weighed.slice(1).map((_, k): Suspect => {
    const adds = step(weighed, k + 1);
    return { kind: "lost at once", weighings: own(adds), adds };
  });
  const unlike: Suspect = { kind: "unlike its kind", weighings: [], adds: slope_kg.map(([c]) => c!) };
  // A step that touches one weighing is that weighing.
  return [...single, ...steps.filter(({ weighings }) => weighings.length > 1), unlike];
}

/**
 * The one thing that would explain a test best, where something must be wrong with it: a single weighing, ice lost between
 * two of them (the lid left open) or come back, or a cooler unlike its kind. Null: nothing is out of the ordinary. It looks at
 * how far the weighings lie from what prior and model lead to, so that it does not take a fit that gave way for agreement.
 *
 * Limits: one thing at a time; with a single weighing only the whole can be odd; a scale that creeps evenly looks like
 * conductance.
 *
 * @source derivation, engineering-judgement
 */
export function oddOne(weighed: readonly TestWeighing[], fit: IceFit): (Odd & { adds: number[] }) | null {
  if (weighed.length === 0) return null;
  const slopes = new Matrix(fit.slope_kg.map((row) => [...row]));
  const spread = new Matrix(fit.scatter_kg2.map((row) => [...row])).add(slopes.mmul(slopes.transpose()));
  // What the weighings were off before the fit gave way to them.
  const off = Matrix.columnVector([...fit.residual_kg]).add(
    slopes.mmul(Matrix.columnVector([...fit.scores])),
  );
  let worst: (Odd & { adds: number[] }) | null = null;
  for (const { kind, weighings, adds } of suspects(weighed, fit)) {
    const shape = Matrix.columnVector(adds);
    const told = solve(spread, shape);
    const size = shape.transpose().mmul(told).get(0, 0);
    if (!(size > 0)) continue;
    const score = off.transpose().mmul(told).get(0, 0) / Math.sqrt(size);
    if (worst !== null && Math.abs(score) <= Math.abs(worst.score)) continue;
    const named = kind === "lost at once" && score < 0 ? "came back" : kind;
    worst = { kind: named, weighings, score, adds };
  }
  if (worst === null || Math.abs(worst.score) <= odd_score) return null;
  return weighed.length === 1 ? { ...worst, kind: "unlike its kind", weighings: [] } : worst;
}
