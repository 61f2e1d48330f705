import type { FoodHistory } from "../safety/verdict.ts";
import type { Trip, TripFood } from "../trip/types.ts";

const day_s = 86_400;

/** Frozen when it goes in; not food that has no freezing point. */
export function isFrozenAtStart({ like, start_C }: TripFood): boolean {
  return like.freezes_C !== null && start_C < like.freezes_C;
}

/**
 * How long an item was cold since it was made, opened or bought, or since it thawed: freezing stops the clock, days
 * used before it count. Days before departure that the file leaves out count as one; as none for what was frozen, and for
 * what goes in on the way, caught or bought there.
 *
 * @param thawed_s when it had thawed; null: it did not
 * @param end_s when it is eaten, or the return
 */
export function coldClock(
  trip: Trip,
  item: TripFood,
  thawed_s: number | null,
  end_s: number,
): Pick<FoodHistory, "cold_s" | "coldGuessed" | "mark_days"> {
  const isFrozen = isFrozenAtStart(item);
  const from_s = isFrozen ? thawed_s : (item.putIn_s ?? 0);
  if (from_s === null || end_s <= from_s) return { cold_s: null, coldGuessed: false, mark_days: null };
  const coldGuessed = item.daysCold === null && !isFrozen && item.putIn_s === null;
  const before_days = item.daysCold ?? (coldGuessed ? 1 : 0);
  const calendarDay = (t_s: number): number => Math.floor((trip.departClock_s + t_s) / day_s);
  return {
    cold_s: before_days * day_s + end_s - from_s,
    coldGuessed,
    mark_days: Math.floor(before_days) + calendarDay(end_s) - calendarDay(from_s) + 1,
  };
}
