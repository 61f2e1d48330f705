import { withDrain } from "../forecast/drainSwitch.ts";
import type { Result } from "../forecast/result.ts";
import { iceOutCarriedOn_s } from "../forecast/run.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { neverWords, notYetWords } from "./mergeRules.ts";
import { mergeEvents, withEvents } from "./mergeTrial.ts";
import { hourWords, momentWords } from "./moment.ts";
import type { Run, Trials } from "./trials.ts";
import { backFirst_s, latestGoing, type Visit } from "./visits.ts";

/** Less is not worth telling. */
const LEAST_h = 0.5;
const HOUR_s = 3600;
/** Names told of what to eat first. */
const MOST_NAMES = 3;

/** How far a cooler comes: the first food of its that passes the limit, and the end of its ice; hours. */
interface Far {
  food_h: number;
  ice_h: number;
}

/** Food of a trial that passes its limit, first first. */
function lost({ food }: Result): { name: string; over_h: number }[] {
  return food
    .flatMap(({ name, perishable, overLimit_h: { p50 } }) =>
      perishable && p50 !== null ? [{ name, over_h: p50 }] : [],
    )
    .sort((a, b) => a.over_h - b.over_h);
}

function farOf(run: Run, cooler: number): Far {
  const end_h = run.trip.duration_s / HOUR_s;
  return {
    food_h: lost(run.result)[0]?.over_h ?? end_h,
    ice_h: iceOutCarriedOn_s(run.fleet, cooler) / HOUR_s,
  };
}

/** "food 5 h, ice 7 h": what is gained or lost; empty where neither is worth telling. */
function hoursWords(from: Far, to: Far): string {
  const parts = [
    ["food", to.food_h - from.food_h],
    ["ice", to.ice_h - from.ice_h],
  ] as const;
  return parts
    .filter(([, gain_h]) => gain_h >= LEAST_h)
    .map(([what, gain_h]) => `${what} ${Math.round(gain_h)} h`)
    .join(", ");
}

/** One thing to do instead, with what it gives against doing nothing. */
interface Instead {
  does: string;
  run: Run;
  cooler: number;
}

/** The same pieces at the next chance. */
function laterInstead(
  trials: Trials,
  trip: Trip,
  without: Trip,
  lot: TripIce,
  visits: readonly Visit[],
): Instead[] {
  const next = visits.find(
    (visit) =>
      backFirst_s(visit) > lot.putIn_s! + 60 && trials.leftCount > 0 && visit.supply.form !== "dry ice",
  );
  if (next === undefined) return [];
  const { supply } = next;
  const pieces = Math.min(supply.max ?? lot.pieces, lot.pieces);
  const going = latestGoing(trip, next, backFirst_s(next));
  const ice: TripIce = {
    ...lot,
    form: supply.form,
    pieces,
    each: supply.each,
    mass_kg: pieces * supply.each_kg,
    start_C: supply.at_C,
    liquid_frac: supply.liquid_frac,
    putIn_s: going.in_s,
  };
  const does = `try ${supply.where} ${momentWords(trip, going.there_s)}`;
  return [{ does, run: trials.run({ ...without, ice: [...without.ice, ice] }), cooler: lot.cooler }];
}

/** Emptied into another cooler, or another one into it, where both fit and may. */
function mergeInstead(trials: Trials, without: Trip, lot: TripIce): Instead[] {
  const t_s = lot.putIn_s!;
  const others = without.coolers.map((_, i) => i).filter((i) => i !== lot.cooler);
  const pairs = others.flatMap((other) => [
    { from: other, into: lot.cooler },
    { from: lot.cooler, into: other },
  ]);
  const may = pairs.filter(
    (pair) => neverWords(without, pair) === null && notYetWords(without, pair, t_s) === null,
  );
  return may.slice(0, Math.min(2, trials.leftCount)).flatMap((pair): Instead[] => {
    const run = trials.run(withEvents(without, mergeEvents(without, pair, t_s)));
    const { t_s: times_s, stack_m } = run.fleet.tracks[pair.into]!;
    const after = stack_m.slice(
      Math.max(
        0,
        times_s.findLastIndex((time_s) => time_s <= t_s),
      ),
    );
    const isFull = after.some((stack) => stack > run.fleet.boxes[pair.into]!.walls.height_m * (1 + 1e-9));
    const [from, into] = [without.coolers[pair.from]!.name, without.coolers[pair.into]!.name];
    return isFull ? [] : [{ does: `empty ${from} into ${into}`, run, cooler: pair.into }];
  });
}

function drainInstead(trials: Trials, without: Trip, cooler: number): Instead[] {
  if (trials.leftCount === 0) return [];
  const { drain, name } = without.coolers[cooler]!;
  const to = drain === "keep" ? "open" : "keep";
  const does = to === "keep" ? `keep the meltwater in ${name}` : `let the meltwater of ${name} out`;
  return [{ does, run: trials.run(withDrain(without, cooler, to)), cooler }];
}

/**
 * What to do when a run brings nothing, and what that costs: the trip is run without the ice, and with each thing one can
 * do instead. Middle case; hours are told against the trip with that ice.
 */
export function fallbackWords(trials: Trials, trip: Trip, lot: TripIce, visits: readonly Visit[]): string {
  if (trials.leftCount < 2)
    return "eat first what spoils first, keep the lid shut; what it costs was not reckoned";
  trials.says("what to do without an ice run");
  const without = { ...trip, ice: trip.ice.filter((one) => one !== lot) };
  const [withIt, bare] = [trials.run(trip), trials.run(without)];
  const [best, none] = [farOf(withIt, lot.cooler), farOf(bare, lot.cooler)];
  const costs = hoursWords(none, best);
  const known = new Map(lost(withIt.result).map(({ name, over_h }) => [name, over_h]));
  const atRisk = lost(bare.result).filter(
    ({ name, over_h }) => over_h < (known.get(name) ?? Infinity) - LEAST_h,
  );
  const instead = [
    ...laterInstead(trials, trip, without, lot, visits),
    ...mergeInstead(trials, without, lot),
    ...drainInstead(trials, without, lot.cooler),
  ]
    .map(({ does, run, cooler }) => ({ does, far: farOf(run, cooler) }))
    .sort((a, b) => b.far.food_h - a.far.food_h || b.far.ice_h - a.far.ice_h)
    .flatMap(({ does, far }) =>
      hoursWords(none, far) === "" ? [] : [`${does} (gives back ${hoursWords(none, far)})`],
    );
  const eat = atRisk.slice(0, MOST_NAMES).map(({ name }) => name);
  const first = atRisk[0];
  const steps = [
    ...(first === undefined
      ? []
      : [`eat ${eat.join(", ")} before ${hourWords(trip, first.over_h * HOUR_s)}`]),
    ...instead.slice(0, 2),
  ];
  const lostWords = costs === "" ? "costs less than half an hour" : `costs ${costs}`;
  return `Without it: ${lostWords}. ${steps.length === 0 ? "Nothing else gives much: keep the lid shut" : `Then ${steps.join("; ")}`}.`;
}
