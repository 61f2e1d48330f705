import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { CholeskyDecomposition, inverse, Matrix, solve } from "ml-matrix";
import type { IceTestModel, Scores, WeighedRow } from "./iceTestModel.ts";
import type { TestWeighing } from "./readIceTest.ts";

/** What was fitted: scores of conductance and body, and how far they may be off. */
export interface IceFit {
  scores: Scores;
  /** Covariance of the two scores; before anything was weighed it is the unit matrix. */
  covariance: readonly (readonly number[])[];
  /** Weighings less the fitted course, kg. */
  residual_kg: readonly number[];
  /** Change of each weighing with each score, kg. */
  slope_kg: readonly (readonly number[])[];
  scatter_kg2: readonly (readonly number[])[];
}

const slopeStep = 0.1;

/** Change of a course with the two scores, from both sides. */
export function slopes_kg(model: IceTestModel, rows: readonly WeighedRow[], [c, b]: Scores): number[][] {
  const [cUp, cDown] = [
    model.predict_kg(rows, [c + slopeStep, b]),
    model.predict_kg(rows, [c - slopeStep, b]),
  ];
  const [bUp, bDown] = [
    model.predict_kg(rows, [c, b + slopeStep]),
    model.predict_kg(rows, [c, b - slopeStep]),
  ];
  return rows.map((_, i) => [
    (cUp[i]! - cDown[i]!) / (2 * slopeStep),
    (bUp[i]! - bDown[i]!) / (2 * slopeStep),
  ]);
}

/** Covariance of the scores that weighings with these slopes and this scatter leave, the prior counted in. */
export function leftOver(
  slope_kg: readonly (readonly number[])[],
  scatter_kg2: readonly (readonly number[])[],
): number[][] {
  const precision = Matrix.eye(2, 2);
  if (slope_kg.length > 0) {
    const slopes = new Matrix(slope_kg.map((row) => [...row]));
    const scatter = new Matrix(scatter_kg2.map((row) => [...row]));
    precision.add(slopes.transpose().mmul(solve(scatter, slopes)));
  }
  return inverse(precision).to2DArray();
}

/**
 * Fits conductance and heat of the body to weighings by least squares, with what is believed of a cooler of this kind as two
 * measurements more; weighings are whitened, since room and packing push all of them the same way. The interval comes from the
 * curvature at the fit.
 *
 * Limits: two parameters; everything else in doubt widens the scatter and is not fitted.
 *
 * @param scatter_kg2 as `IceTestModel.scatter_kg2`
 * @throws ModelError when no step settles
 */
export function fitIceTest(
  model: IceTestModel,
  weighed: readonly TestWeighing[],
  scatter_kg2: readonly (readonly number[])[],
): IceFit {
  if (weighed.length === 0)
    return { scores: [0, 0], covariance: leftOver([], []), residual_kg: [], slope_kg: [], scatter_kg2: [] };
  const lower = new CholeskyDecomposition(new Matrix(scatter_kg2.map((row) => [...row])))
    .lowerTriangularMatrix;
  const whitened = (values: readonly number[]): number[] =>
    solve(lower, Matrix.columnVector([...values])).to1DArray();
  const measured = weighed.map(({ mass_kg }) => mass_kg);
  const known = new Map<string, number[]>();
  const courseAt = (scores: readonly number[]): number[] => {
    const key = scores.join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const course = [...whitened(model.predict_kg(weighed, [scores[0]!, scores[1]!])), ...scores];
    known.set(key, course);
    return course;
  };
  const wanted = [...whitened(measured), 0, 0];
  const { parameterValues } = levenbergMarquardt(
    { x: wanted.map((_, i) => i), y: wanted },
    (scores) => (i) => courseAt(scores)[i]!,
    {
      initialValues: [0, 0],
      minValues: [-6, -4],
      maxValues: [6, 4],
      gradientDifference: 0.02,
      damping: 1e-3,
      maxIterations: 30,
      errorTolerance: 1e-6,
    },
  );
  const scores: Scores = [parameterValues[0]!, parameterValues[1]!];
  const course = model.predict_kg(weighed, scores);
  const slope_kg = slopes_kg(model, weighed, scores);
  return {
    scores,
    covariance: leftOver(slope_kg, scatter_kg2),
    residual_kg: measured.map((kg, i) => kg - course[i]!),
    slope_kg,
    scatter_kg2,
  };
}
