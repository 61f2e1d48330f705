import type { Assignment, OtherAssignment, WayOut } from "../../forecast/planResult.ts";
import type { Warning } from "../../forecast/result.ts";
import type { Trip } from "../../trip/types.ts";
import { inTurnWarnings } from "./inTurn.ts";
import { simulatedLosses } from "./losses.ts";
import { lumpsOf } from "./lumps.ts";
import { otherAssignments } from "./otherwise.ts";
import { placedTrip, type Shut, shutOf } from "./placed.ts";
import { assignmentsOf, assignWarnings } from "./reasons.ts";
import { type AssignOptions, fitsIn, refined, type Settled } from "./refine.ts";
import { roomWays } from "./roomWays.ts";
import { taskFor } from "./task.ts";

/** A trip in which everything has its place, and what there is to say about it. */
export interface Assigned {
  /** Every item in a cooler or the dry box; a cooler kept for the last half has its seal. */
  trip: Trip;
  assign: Assignment[];
  otherwise: OtherAssignment[];
  /** Tried where it does not fit; empty where it does. */
  waysOut: WayOut[];
  fits: boolean;
  /** How far the ice and faults of this assignment may be from the least, relative to them. */
  gap_frac: number;
  /** Ice that each cooler was reckoned to need, kg: a guide for choosing, no shopping list. */
  reserve_kg: readonly number[];
  /** The seal that the plan adds; null: none, or the file has one. */
  shut: Shut | null;
  warnings: Warning[];
}

function warmWarnings({ warm }: Settled): Warning[] {
  if (warm.length === 0) return [];
  const names = warm.map(({ name }) => name).join(", ");
  const says = `with the ice that was reckoned for this assignment, these pass the limit before they are eaten in the middle case: ${names}`;
  return [{ code: "assign-warm", says, path: "" }];
}

function otherWarnings({ coolers }: Trip, otherwise: readonly OtherAssignment[]): Warning[] {
  // With one cooler there is nothing to choose between.
  if (otherwise.length > 0 || coolers.length < 2) return [];
  return [
    {
      code: "no-other-assignment",
      says: "no other assignment that fits was found to compare with",
      path: "",
    },
  ];
}

/** Nothing to decide: every item is where the file says, so that nothing is solved but how full it gets. */
const isOpen = (trip: Trip): boolean => trip.food.some(({ open }) => open.place);

/**
 * Decides for every item that the file leaves open which cooler it goes into, or the dry box. Volumes, the kind of load,
 * seals and ice that freezes are rules; raw food beside what is eaten as it is, drinks beside food, weight and a cooler
 * for the last half are weighed against ice, whose losses are simulated for each cooler in the trip's own weather. What
 * the file says stays, even against a rule, and is told. The answer is within 1 % of the least by these weights, then
 * run in the middle case and raised where food warmed; that it holds at the trip's confidence is for `surePlan` to find.
 *
 * The states of the food are taken as decided. Food that is put in later takes no room here. The same trip gives the
 * same answer.
 *
 * @throws Cancelled when the signal is aborted
 */
export async function assignFood(trip: Trip, options: AssignOptions): Promise<Assigned> {
  options.onProgress?.(0, "what each cooler melts");
  const first = taskFor(trip, lumpsOf(trip), simulatedLosses(trip));
  options.onProgress?.(0.1, "which food in which cooler");
  const best = await refined(first, options);
  const { task, answer } = best;
  const fits = fitsIn(best);
  options.onProgress?.(0.7, fits ? "the best other assignment" : "ways to make it fit");
  const otherwise = fits && isOpen(trip) ? await otherAssignments(best, options) : [];
  const waysOut = fits ? [] : await roomWays(best, options);
  const placed = placedTrip(task, answer);
  const inTurn = fits ? inTurnWarnings(placed, best.iceEnd_s) : [];
  options.onProgress?.(1, "which food in which cooler");
  return {
    trip: placed,
    assign: assignmentsOf(task, answer),
    otherwise,
    waysOut,
    fits,
    gap_frac: answer.gap_frac,
    reserve_kg: answer.ice_kg,
    shut: shutOf(task, answer),
    warnings: [
      ...assignWarnings(task, answer),
      ...warmWarnings(best),
      ...inTurn,
      ...otherWarnings(trip, otherwise),
    ],
  };
}
