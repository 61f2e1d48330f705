import type { Trip, TripEvent } from "./types.ts";

/** Coolers that a merge joins, itself included; a cooler that no merge names stands alone. */
export function linkedCoolers(trip: Trip, cooler: number): ReadonlySet<number> {
  const linked = new Set([cooler]);
  for (let before = 0; before < linked.size; ) {
    before = linked.size;
    for (const event of trip.events) {
      if (event.do !== "merge" || (!linked.has(event.from) && !linked.has(event.into))) continue;
      linked.add(event.from).add(event.into);
    }
  }
  return linked;
}

/**
 * The same trip with nothing in it but these coolers, what is in them and what happens to them. Their own results do
 * not change, since a cooler knows of another one only through a merge: keep merged coolers together.
 */
export function onlyCoolers(trip: Trip, keep: ReadonlySet<number>): Trip {
  const kept = trip.coolers.map((_, i) => i).filter((i) => keep.has(i));
  const place = (cooler: number): number => kept.indexOf(cooler);
  return {
    ...trip,
    coolers: kept.map((i) => trip.coolers[i]!),
    food: trip.food
      .filter(({ cooler }) => cooler !== null && keep.has(cooler))
      .map((food) => ({ ...food, cooler: place(food.cooler!) })),
    ice: trip.ice
      .filter(({ cooler }) => keep.has(cooler))
      .map((ice) => ({ ...ice, cooler: place(ice.cooler) })),
    events: trip.events
      .filter((event) => keep.has(coolerOf(trip, event)))
      .map((event) => placed(event, place)),
  };
}

/** −1 for what is taken out of the dry box. */
function coolerOf(trip: Trip, event: TripEvent): number {
  if (event.do === "take out") return trip.food.find(({ id }) => id === event.item)?.cooler ?? -1;
  return event.do === "merge" ? event.from : event.cooler;
}

function placed(event: TripEvent, place: (cooler: number) => number): TripEvent {
  if (event.do === "take out") return event;
  if (event.do === "merge") return { ...event, from: place(event.from), into: place(event.into) };
  return { ...event, cooler: place(event.cooler) };
}
