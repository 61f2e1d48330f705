import { linkedCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { lotName } from "./inputs.ts";
import type { Draws } from "./types.ts";

/** All that a member's run of one cooler takes from the trip that ice and events of a plan may change. */
function signatureOf(trip: Trip, cooler: number): string {
  const lot = (ice: TripIce): unknown[] => {
    const { form, pieces, mass_kg, start_C, liquid_frac, layer, putIn_s } = ice;
    return [lotName(trip, ice), form, pieces, mass_kg, start_C, liquid_frac, layer, putIn_s];
  };
  const lots = trip.ice.filter((ice) => ice.cooler === cooler).map(lot);
  const concerns = (event: Trip["events"][number]): boolean =>
    event.do === "take out" ||
    (event.do === "merge" ? event.from === cooler || event.into === cooler : event.cooler === cooler);
  return JSON.stringify([lots, trip.events.filter(concerns).map((event) => ({ ...event, path: "" }))]);
}

/**
 * Coolers that members must be run for again when ice or events of a trip were changed and nothing else was; those joined
 * to a changed one by a merge, before or after, are among them.
 */
export function changedCoolers(before: Trip, after: Trip): number[] {
  const changed = new Set<number>();
  after.coolers.forEach((_, i) => {
    if (signatureOf(before, i) === signatureOf(after, i)) return;
    for (const trip of [before, after]) for (const linked of linkedCoolers(trip, i)) changed.add(linked);
  });
  return [...changed].sort((a, b) => a - b);
}

/** Draws of a trip of which some coolers were run again: theirs from `fresh`, the others' as they were. */
export function withFresh(trip: Trip, before: Draws, fresh: Draws, only: readonly number[]): Draws {
  const isFresh = new Set(only.flatMap((i) => [...linkedCoolers(trip, i)]));
  const inCoolers = trip.food.filter(({ cooler }) => cooler !== null);
  const pick = <T>(was: readonly T[], is: readonly T[], at: (k: number) => number): T[] =>
    was.map((one, k) => (isFresh.has(at(k)) ? is[k]! : one));
  const own = (k: number): number => k;
  return {
    from: fresh.from,
    to: fresh.to,
    coolers: pick(before.coolers, fresh.coolers, own),
    food: pick(before.food, fresh.food, (k) => inCoolers[k]!.cooler!),
    series: before.series === null || fresh.series === null ? null : pick(before.series, fresh.series, own),
  };
}
