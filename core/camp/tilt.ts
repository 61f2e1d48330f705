import { effectiveCount } from "./weights.ts";

/** A place near what was seen from which further members are drawn: a normal curve of its own on a few inputs. */
export interface Tilt {
  /** Places of the inputs. */
  inputs: readonly number[];
  /** Standard scores: middle and deviation. */
  middle: readonly number[];
  deviation: readonly number[];
}

/** Inputs that looks can move at once; more only bring the noise of the estimate. */
const most = 5;
/** Standard errors that an input's middle must have moved by. */
const surely = 2.5;
/** A tilt is wider than what was learned: what it leaves out no weight can bring back. */
const wider = 1.15;
const leastDeviation = 0.5;

const mean = (of: (member: number) => number, weights: Float64Array): number =>
  weights.reduce((sum, weight, i) => (weight > 0 ? sum + weight * of(i) : sum), 0);

/**
 * Which inputs the weighted members have moved on, and to where; null where none has surely moved. It is an estimate
 * from few members, so it only guides where to draw: the weights put right what it gets wrong.
 *
 * @param scores standard scores, one member after the other
 */
export function tiltOf(scores: Float64Array, nInputs: number, weights: Float64Array): Tilt | null {
  const effective = Math.max(2, effectiveCount(weights));
  const moved = Array.from({ length: nInputs }, (_, k) => {
    const middle = mean((i) => scores[i * nInputs + k]!, weights);
    const square = mean((i) => (scores[i * nInputs + k]! - middle) ** 2, weights);
    return { k, middle, square };
  })
    .filter(({ middle }) => Math.abs(middle) * Math.sqrt(effective) > surely)
    .sort((a, b) => Math.abs(b.middle) - Math.abs(a.middle) || a.k - b.k)
    .slice(0, most);
  if (moved.length === 0) return null;
  return {
    inputs: moved.map(({ k }) => k),
    middle: moved.map(({ middle }) => middle),
    deviation: moved.map(({ square }) =>
      Math.min(1, Math.max(leastDeviation, wider * Math.sqrt((square * effective) / (effective - 1)))),
    ),
  };
}

/** Draws of the prior moved to the tilt: in place, one member after the other. */
export function moveTo(tilt: Tilt, scores: Float64Array, nInputs: number): void {
  for (let from = 0; from < scores.length; from += nInputs)
    tilt.inputs.forEach((k, j) => {
      scores[from + k] = tilt.middle[j]! + tilt.deviation[j]! * scores[from + k]!;
    });
}

/** How much likelier a member is to be drawn from the tilt than from the prior. */
export function tiltedRatio(tilt: Tilt, scores: Float64Array, nInputs: number, member: number): number {
  let log = 0;
  tilt.inputs.forEach((k, j) => {
    const score = scores[member * nInputs + k]!;
    const own = (score - tilt.middle[j]!) / tilt.deviation[j]!;
    log += 0.5 * (score * score - own * own) - Math.log(tilt.deviation[j]!);
  });
  return Math.exp(log);
}
