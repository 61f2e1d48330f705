import type { Trip } from "../trip/types.ts";

/** For each cooler the coolers that share what is in it, itself among them: a merge takes the one's past into the other. */
export function sharedCoolers(trip: Trip): number[][] {
  const of = trip.coolers.map((_, i) => i);
  for (const event of trip.events) {
    if (event.do !== "merge") continue;
    const [kept, gone] = [of[event.into]!, of[event.from]!];
    of.forEach((group, i) => {
      if (group === gone) of[i] = kept;
    });
  }
  return of.map((group) => of.flatMap((other, i) => (other === group ? [i] : [])));
}
