import type { Trip } from "../trip/types.ts";
import { coolerHabits } from "./coolerHabits.ts";
import type { Habit } from "./habit.ts";
import { loadHabits } from "./loadHabits.ts";
import { placeHabits } from "./placeHabits.ts";
import { sharingHabits } from "./sharingHabits.ts";
import { useHabits } from "./useHabits.ts";

/** Every habit that can be asked of a trip. */
export const habitsFor = (trip: Trip): Habit[] => [
  ...coolerHabits,
  ...useHabits(trip),
  ...loadHabits,
  ...placeHabits,
  ...sharingHabits,
];
