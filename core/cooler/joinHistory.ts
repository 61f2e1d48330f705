import type { Spread } from "../matter/spread.ts";
import { DomainError } from "../quantity/errors.ts";

/** Standard score of the 90 % point. */
const z90 = 1.2815515655446004;

/**
 * How much the conductance of one cooler changes from trip to trip by itself: how the lid sits, worn gasket, water in the
 * foam, what stands against it. It is the floor of what any number of trips can teach, and part of what each of them says. Our
 * own choice, as wide as what is believed of a cooler that was measured once.
 *
 * @source engineering-judgement
 */
export const tripChange_frac: Spread = { p10: 0.95, p50: 1, p90: 1.05 };

interface LogNormal {
  mean: number;
  variance: number;
}

const widthOf = ({ p10, p90 }: Spread): number => (Math.log(p90) - Math.log(p10)) / (2 * z90);
const floor = widthOf(tripChange_frac);

/** The lognormal that stands for three numbers: their middle one, and their width; how it leans to a side is lost. */
function logNormalOf(what: string, spread: Spread): LogNormal {
  const { p10, p50, p90 } = spread;
  if (!(p10 > 0 && p10 <= p50 && p50 <= p90 && p10 < p90 && Number.isFinite(p90)))
    throw new DomainError(`${what} must have 0 < p10 ≤ p50 ≤ p90, got ${p10}, ${p50}, ${p90}`);
  return { mean: Math.log(p50), variance: widthOf(spread) * widthOf(spread) };
}

const spreadOf = (mean: number, width: number): Spread => ({
  p10: Math.exp(mean - z90 * width),
  p50: Math.exp(mean),
  p90: Math.exp(mean + z90 * width),
});

/** Sums that do not depend on the order of their terms, to the last bit. */
const sumOf = (terms: readonly number[]): number =>
  [...terms].sort((a, b) => a - b).reduce((sum, term) => sum + term, 0);

/**
 * What is believed of a cooler's conductance for its next trip: the prior joined with what each trip by itself taught, as
 * lognormals weighted by precision. Each record counts with its own width and with `tripChange_frac`; however many there
 * are, the outcome is no narrower than that change (or than the prior, where that is narrower still). The order of the
 * records does not matter, one more of them never makes the band wider, and without any the prior is handed back.
 * It does not look whether records contradict each other (see `oddRecords`).
 *
 * @param prior what was believed before the first record, W/K or any unit that both share
 * @param learned what each trip says without the prior (see `core/camp/learn.ts`)
 * @throws DomainError for a spread that is not 0 < p10 ≤ p50 ≤ p90 with p10 < p90
 * @source derivation, engineering-judgement
 */
export function joinHistory(prior: Spread, learned: readonly Spread[]): Spread {
  const believed = logNormalOf("prior", prior);
  if (learned.length === 0) return prior;
  const records = learned.map((record) => logNormalOf("a record", record));
  const weights = records.map(({ variance }) => 1 / (variance + floor * floor));
  const precision = 1 / believed.variance + sumOf(weights);
  const told = sumOf(records.map(({ mean }, i) => mean * weights[i]));
  const mean = (believed.mean / believed.variance + told) / precision;
  const least = Math.min(floor, Math.sqrt(believed.variance));
  return spreadOf(mean, Math.max(least, Math.sqrt(1 / precision)));
}

/** Standard score that chance passes once in a hundred, to either side. */
const odd = 2.576;

/**
 * Places of records that the prior and the other records together would hardly lead to, in order: something changed about
 * the cooler, or something else went wrong on that trip. The worst is set aside first, so that it does not make the
 * others look odd.
 *
 * @throws DomainError as `joinHistory`
 * @source derivation
 */
export function oddRecords(prior: Spread, learned: readonly Spread[]): number[] {
  const kept = learned.map((record, at) => ({ record, at }));
  const found: number[] = [];
  while (kept.length > 0) {
    const scores = kept.map((_, i) =>
      offOthers(
        prior,
        kept.map(({ record }) => record),
        i,
      ),
    );
    const worst = scores.indexOf(Math.max(...scores));
    if (scores[worst] <= odd) break;
    found.push(kept.splice(worst, 1)[0].at);
  }
  return found.sort((a, b) => a - b);
}

/** How far one record lies from what prior and others lead to, as a standard score. */
function offOthers(prior: Spread, records: readonly Spread[], i: number): number {
  const others = logNormalOf("prior", joinHistory(prior, records.toSpliced(i, 1)));
  const own = logNormalOf("a record", records[i]);
  return Math.abs(own.mean - others.mean) / Math.sqrt(own.variance + floor * floor + others.variance);
}

/**
 * What was seen on a trip says by itself: the posterior with the prior taken out again, so that joining the record with that
 * prior gives the posterior back (but for the change from trip to trip). Null where the posterior is hardly narrower than
 * the prior: nothing was learned.
 *
 * @throws DomainError as `joinHistory`
 * @source derivation
 */
export function learnedAlone(prior: Spread, posterior: Spread): Spread | null {
  const before = logNormalOf("prior", prior);
  const after = logNormalOf("posterior", posterior);
  const precision = 1 / after.variance - 1 / before.variance;
  if (!(precision * before.variance > leastLearned)) return null;
  const mean = (after.mean / after.variance - before.mean / before.variance) / precision;
  return spreadOf(mean, Math.sqrt(1 / precision));
}

/** Precision gained, in units of what was there: less is noise of the sample. */
const leastLearned = 0.05;
