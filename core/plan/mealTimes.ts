import { clockMoments_s, localInstant_ms } from "../sky/localTime.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { dayAt } from "./moment.ts";

type MealWord = "breakfast" | "lunch" | "dinner";

const MEAL_WORDS: readonly MealWord[] = ["breakfast", "lunch", "dinner"];

/** One meal of the trip. */
export interface MealMoment {
  t_s: number;
  meal: MealWord;
  /** Day of the trip; 1 is the local day of departure. */
  day: number;
}

/** Every meal after departure and before return, in order. */
export function mealMoments(trip: Trip): MealMoment[] {
  const { timezone } = trip.place;
  const start_ms = localInstant_ms(trip.depart, timezone);
  const all = MEAL_WORDS.flatMap((meal) =>
    clockMoments_s(start_ms, timezone, trip.meals[`${meal}_s`], 0, trip.duration_s).map((t_s) => ({
      t_s,
      meal,
      day: dayAt(trip, t_s),
    })),
  );
  return all.filter(({ t_s }) => t_s > 0 && t_s < trip.duration_s).sort((a, b) => a.t_s - b.t_s);
}

/** When parts of a food are eaten, in order and equal in size: once, at its meals, or at every meal from when it is there. */
export function eatingTimes_s(food: TripFood, meals: readonly MealMoment[]): readonly number[] {
  if (food.parts_s !== null && food.parts_s.length > 0) return food.parts_s;
  if (food.eat_s !== null) return [food.eat_s];
  return meals.map(({ t_s }) => t_s).filter((t_s) => t_s > (food.putIn_s ?? 0));
}
