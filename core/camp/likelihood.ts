import type { IceLevel } from "./logFile.ts";
import type { Look } from "./looks.ts";

/**
 * How each kind of look errs. A glance at the ice sorts it into one of six levels and misjudges the share by some tenths of
 * itself; a thermometer under the lid is off by its own error and by where it hangs; poured water is measured in a
 * marked bottle or counted in mugs. A few looks in a hundred are of the wrong cooler, the wrong hour or the wrong tap.
 *
 * @source engineering-judgement
 */
export const lookErrors = {
  /** Standard deviation of a judged share: at little ice, and at much. */
  glanceLeast_frac: 0.02,
  glanceMost_frac: 0.12,
  /** Share of ice from which a glance errs by the most. */
  glanceFull_frac: 0.35,
  air_K: 1.5,
  poured_frac: 0.1,
  poured_L: 0.2,
  /** Share of looks that say nothing at all. */
  wrong_frac: 0.03,
} as const;

/** Where one level ends and the next begins, as a share of the most ice that the cooler held so far. */
export const levelBounds_frac: Readonly<Record<IceLevel, readonly [number, number]>> = {
  full: [0.875, Number.POSITIVE_INFINITY],
  "3/4": [0.625, 0.875],
  "1/2": [0.375, 0.625],
  "1/4": [0.15, 0.375],
  slush: [0.02, 0.15],
  water: [Number.NEGATIVE_INFINITY, 0.02],
};

/** Standard deviation of a judged share of ice. */
export function glanceError_frac(ice_frac: number): number {
  const { glanceLeast_frac, glanceMost_frac, glanceFull_frac } = lookErrors;
  const rise = Math.min(1, Math.max(0, ice_frac) / glanceFull_frac);
  return glanceLeast_frac + (glanceMost_frac - glanceLeast_frac) * rise;
}

/**
 * Share of a normal curve below a standard score; within 2e-7 of the exact value (tested against the inverse). The
 * polynomial is formula 26.2.17 of Abramowitz and Stegun.
 *
 * @source from-memory
 */
export function normalBelow_frac(score: number): number {
  if (score === Number.POSITIVE_INFINITY) return 1;
  if (score === Number.NEGATIVE_INFINITY) return 0;
  const t = 1 / (1 + 0.2316419 * Math.abs(score));
  const tail =
    (Math.exp(-0.5 * score * score) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return score > 0 ? 1 - tail : tail;
}

const density = (off: number, sigma: number): number =>
  Math.exp(-0.5 * (off / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI));

/** Chance of this look if it was a right one, per unit of its scale, and if it was a wrong one. */
interface Chances {
  right: number;
  wrong: number;
}

/** @param predicted what the reckoning has: share of ice, °C, or litres of water before the drain was opened */
function chancesOf(look: Look, predicted: number): Chances {
  if (look.of === "ice") {
    const [low, high] = levelBounds_frac[look.level];
    const sigma = glanceError_frac(predicted);
    const right = normalBelow_frac((high - predicted) / sigma) - normalBelow_frac((low - predicted) / sigma);
    return { right: Math.max(0, right), wrong: 1 / 6 };
  }
  // A wrong reading lies anywhere in a range that coolers can have.
  if (look.of === "air") return { right: density(look.read_C - predicted, lookErrors.air_K), wrong: 1 / 40 };
  const sigma = Math.hypot(lookErrors.poured_L, lookErrors.poured_frac * Math.max(0, predicted));
  return { right: density(look.drained_L - predicted, sigma), wrong: 1 / 20 };
}

/** Likelihood of a look in a world that predicts this; a prediction that is none (NaN) tells nothing. */
export function likelihood(look: Look, predicted: number): number {
  if (Number.isNaN(predicted)) return 1;
  const { right, wrong } = chancesOf(look, predicted);
  return (1 - lookErrors.wrong_frac) * right + lookErrors.wrong_frac * wrong;
}

/** Chance that the look was a wrong one, given what a world predicts. */
export function wrongChance_frac(look: Look, predicted: number): number {
  if (Number.isNaN(predicted)) return 0;
  const { right, wrong } = chancesOf(look, predicted);
  const all = (1 - lookErrors.wrong_frac) * right + lookErrors.wrong_frac * wrong;
  return (lookErrors.wrong_frac * wrong) / all;
}
