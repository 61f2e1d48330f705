import { bandOf } from "../ensemble/quantiles.ts";
import type { Draws } from "../ensemble/types.ts";
import type { Trip } from "../trip/types.ts";
import type { Gain } from "./types.ts";

/** A trip, or a variant of one, with its members. */
export interface Drawn {
  trip: Trip;
  draws: Draws;
}

const membersOf = (draws: Draws): number[] => Array.from({ length: draws.to - draws.from }, (_, m) => m);
const earlier = (a: number, b: number): number => (Number.isNaN(a) || b < a ? b : a);

/** When the first perishable of any cooler passes its limit, by member; NaN: none does. */
export function firstOver_h(draws: Draws): number[] {
  return membersOf(draws).map((m) =>
    draws.coolers.reduce((first, { overLimit_h }) => earlier(first, overLimit_h[m]), Number.NaN),
  );
}

/** Hours that all perishables together are over the limit, by member. */
function warm_h({ trip, draws }: Drawn): number[] {
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  const perishable = draws.food.filter((_, k) => inCoolers[k].like.perishable);
  return membersOf(draws).map((m) => perishable.reduce((sum, one) => sum + one.warm_h[m], 0));
}

/** Coolers that have ice of their own to the end: nothing is emptied into another one. */
function keepsIce(trip: Trip, cooler: number): boolean {
  const emptied = trip.events.some((event) => event.do === "merge" && event.from === cooler);
  return !emptied && trip.ice.some((lot) => lot.cooler === cooler);
}

/** How long ice lasts in one cooler, later less earlier, by member. */
export const iceGain_h = (before: Draws, after: Draws, cooler: number): number[] => {
  const [was, is] = [before.coolers[cooler].iceCarriedOn_h, after.coolers[cooler].iceCarriedOn_h];
  return membersOf(before).map((m) => is[m] - was[m]);
};

const size = (values: readonly number[]): number => Math.abs(bandOf(values).p50 ?? 0);

function mostChanged_h(before: Drawn, after: Drawn): number[] {
  const asked = before.trip.coolers
    .map((_, i) => i)
    .filter((i) => keepsIce(before.trip, i) && keepsIce(after.trip, i));
  const gains = asked.map((i) => iceGain_h(before.draws, after.draws, i));
  const none = membersOf(before.draws).map(() => 0);
  return gains.reduce((most, gain) => (size(gain) > size(most) ? gain : most), gains[0] ?? none);
}

const sum_kg = (draws: Draws, m: number): number =>
  draws.coolers.reduce((sum, { iceLeft_kg }) => sum + iceLeft_kg[m], 0);

/** What is gained by going from one variant to another, member by member of the same numbers. */
export function gainOf(before: Drawn, after: Drawn): Gain {
  const [end_h, members] = [before.trip.duration_s / 3600, membersOf(before.draws)];
  const until = (hours: number): number => (Number.isNaN(hours) ? end_h : hours);
  const [overBeforeCount, overAfterCount] = [firstOver_h(before.draws), firstOver_h(after.draws)];
  const [warmBefore, warmAfter] = [warm_h(before), warm_h(after)];
  return {
    food_h: bandOf(members.map((m) => until(overAfterCount[m]) - until(overBeforeCount[m]))),
    warm_h: bandOf(members.map((m) => warmBefore[m] - warmAfter[m])),
    ice_h: bandOf(mostChanged_h(before, after)),
    ice_kg: bandOf(members.map((m) => sum_kg(after.draws, m) - sum_kg(before.draws, m))),
  };
}

/** Items of the trip that are in no cooler but would need one. */
export const uncooled = (trip: Trip): Trip["food"] =>
  trip.food.filter((item) => item.cooler === null && item.like.perishable);

/** Share of the members in which a perishable passes its limit before it is eaten. */
export function fails_frac({ trip, draws }: Drawn): number {
  if (uncooled(trip).length > 0) return 1;
  const over = firstOver_h(draws);
  return over.filter((hours) => !Number.isNaN(hours)).length / over.length;
}

/** Rounding must not fail a share that is exactly as large as allowed. */
const rounding_frac = 1e-9;

/** Whether no more members fail than the trip's confidence allows. */
export const holds = (trip: Trip, failing_frac: number): boolean =>
  failing_frac <= 1 - trip.confidence_frac + rounding_frac;
