import type { EnsembleOptions } from "../ensemble/ensemble.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import type { RunTasks } from "../ensemble/types.ts";
import type { Trip } from "../trip/types.ts";
import { headOf, runVariants } from "./batch.ts";
import { type Drawn, fails_frac, firstOver_h, holds, uncooled } from "./gains.ts";
import { stresses } from "./stressTable.ts";
import type { StressCase, StressResult } from "./types.ts";
import { stressKey } from "./variants.ts";

/** The perishable that passes its limit in the most members; of equals the one that does so first. */
function firstToFail({ trip, draws }: Drawn): StressCase["first"] {
  const [left] = uncooled(trip);
  if (left !== undefined)
    return {
      item: left.name,
      cooler: "dry box",
      overLimit_h: bandOf([left.putIn_s ?? 0].map((t) => t / 3600)),
    };
  let most = 0;
  let first: StressCase["first"] = null;
  trip.food
    .filter((item) => item.cooler !== null)
    .forEach((item, k) => {
      const { overLimit_h } = draws.food[k];
      const fails = overLimit_h.filter((hours) => !Number.isNaN(hours)).length;
      if (!item.like.perishable || fails === 0 || fails < most) return;
      const band = bandOf(overLimit_h);
      const sooner = (band.p10 ?? Infinity) < (first?.overLimit_h.p10 ?? Infinity);
      if (fails === most && !sooner) return;
      most = fails;
      first = { item: item.name, cooler: trip.coolers[item.cooler!].name, overLimit_h: band };
    });
  return first;
}

/** A case in which no member is moved by anything that is told of it. */
function changesNothing({ draws }: Drawn, written: Drawn): boolean {
  const same = (a: Float64Array, b: Float64Array): boolean => a.every((value, m) => Object.is(value, b[m]));
  return draws.coolers.every(
    ({ iceCarriedOn_h, overLimit_h }, i) =>
      same(iceCarriedOn_h, written.draws.coolers[i].iceCarriedOn_h) &&
      same(overLimit_h, written.draws.coolers[i].overLimit_h),
  );
}

function caseOf(key: StressCase["key"], says: string, drawn: Drawn, written: Drawn | null): StressCase {
  const { trip, draws } = drawn;
  const idle = written !== null && changesNothing(drawn, written);
  const failing_frac = fails_frac(drawn);
  return {
    key,
    says: idle ? `${says} (that changes nothing on this trip)` : says,
    fails_frac: failing_frac,
    holds: holds(trip, failing_frac),
    first: firstToFail(drawn),
    overLimit_h: bandOf(firstOver_h(draws)),
    coolers: trip.coolers.map(({ name }, i) => ({ name, iceOut_h: bandOf(draws.coolers[i].iceOut_h) })),
  };
}

/**
 * What breaks first: the trip as written and with one thing after another going worse, over the same members. A trip is
 * robust when it holds in every case; that says nothing of what was not tried.
 *
 * @param run the trip is its number 0
 * @throws Cancelled when the signal is given
 * @throws DomainError for fewer than one member
 */
export async function stress(trip: Trip, run: RunTasks, options: EnsembleOptions): Promise<StressResult> {
  const keys = stresses.map(({ key }) => stressKey(key));
  const drawsOf = await runVariants(run, [null, ...keys], options);
  const written = { trip, draws: drawsOf(null) };
  const cases = [
    caseOf("as written", "the trip as written", written, null),
    ...stresses.map(({ key, says, make }) =>
      caseOf(key, says, { trip: make(trip), draws: drawsOf(stressKey(key)) }, written),
    ),
  ];
  return {
    ...headOf(trip, options),
    command: "stress",
    confidence_frac: trip.confidence_frac,
    cases,
    robust: cases.every((one) => one.holds),
  };
}
