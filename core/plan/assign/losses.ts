import type { Fleet } from "../../cooler/fleetState.ts";
import { looseStep_rel, runTrip } from "../../forecast/run.ts";
import { valueAt } from "../../forecast/series.ts";
import { iceDensity_kg_per_m3 } from "../../matter/ice.ts";
import type { Trip, TripFood, TripIce } from "../../trip/types.ts";

const day_s = 86_400;
/** A cooler as it is halfway through: so much of its room is ice, and so much food. */
const ice_frac = 0.4;
const food_frac = 0.3;

/** Ice that each cooler melts by itself, in the trip's place and weather, with cold food in it. */
export interface Losses {
  /** By cooler, until the end of each day from departure on, kg, rising. */
  until_kg: readonly (readonly number[])[];
  /** By cooler: what staying shut for the first half would save, kg. */
  shutSaves_kg: readonly number[];
}

/** Moments that the losses are told at: whole days from departure, the last one at the return. */
export const dayEnds_s = (trip: Trip): number[] =>
  Array.from({ length: Math.max(1, Math.ceil(trip.duration_s / day_s - 1e-9)) }, (_, k) =>
    Math.min(trip.duration_s, (k + 1) * day_s),
  );

/** Place in the days of a moment. */
export const dayIndex = (trip: Trip, t_s: number): number =>
  Math.max(
    0,
    dayEnds_s(trip).findIndex((end_s) => t_s <= end_s + 1),
  );

/** One like those aboard, so that it behaves as this menu's food does: the heaviest that is chilled. */
function typicalFood(trip: Trip): TripFood | null {
  const chilled = trip.food.filter(({ state }) => state === "chilled");
  return chilled.reduce<TripFood | null>((a, b) => (a !== null && a.mass_kg >= b.mass_kg ? a : b), null);
}

/** The trip with every cooler half full of ice and cold food, and nothing else happening to what is in it. */
function trialTrip(trip: Trip): Trip {
  const food = typicalFood(trip);
  return {
    ...trip,
    ice: trip.coolers.map(({ volume_m3 }, cooler): TripIce => {
      const mass_kg = ice_frac * volume_m3 * iceDensity_kg_per_m3(0);
      const piece = { form: "block" as const, pieces: 1, each: "", start_C: 0, liquid_frac: 0 };
      const rest = { layer: null, price: null, putIn_s: null, boughtBefore_s: 0 };
      return { id: `trial ice ${cooler}`, path: "", mass_kg, cooler, ...piece, ...rest };
    }),
    food: trip.coolers.flatMap(({ volume_m3 }, cooler): TripFood[] => {
      if (food === null) return [];
      const mass_kg = food_frac * volume_m3 * 600;
      const when = { eat_s: trip.duration_s, parts_s: null, putIn_s: null };
      return [{ ...food, id: `trial food ${cooler}`, cooler, mass_kg, start_C: 1, ...when }];
    }),
    events: trip.events.filter((event) => event.do !== "merge"),
  };
}

/** Melted until a moment; where the ice was gone before, carried on at its mean rate. */
function melted_kg(fleet: Fleet, cooler: number, t_s: number): number {
  const { t_s: times, ice_kg } = fleet.tracks[cooler]!;
  const first_kg = ice_kg[0]!;
  const gone = ice_kg.findIndex((left) => left <= 0.02 * first_kg);
  const gone_s = gone === -1 ? Infinity : times[gone]!;
  if (t_s <= gone_s) return Math.max(0, first_kg - valueAt(times, ice_kg, t_s));
  return (first_kg * t_s) / Math.max(1, gone_s);
}

const rising = (values: readonly number[]): number[] => {
  let most = 0;
  return values.map((value) => {
    most = Math.max(most, value);
    return most;
  });
};

/** Runs every cooler alone, once as it is used and once shut for the first half. */
export function simulatedLosses(trip: Trip): Losses {
  const trial = trialTrip(trip);
  const half_s = trip.duration_s / 2;
  const how = { tolerance: looseStep_rel, books: "end" } as const;
  const fleet = runTrip(trial, how);
  const coolers = trial.coolers.map((cooler) => ({
    ...cooler,
    sealedUntil_s: cooler.sealedUntil_s ?? half_s,
  }));
  const shut = runTrip({ ...trial, coolers }, how);
  return {
    until_kg: trip.coolers.map((_, c) => rising(dayEnds_s(trip).map((t_s) => melted_kg(fleet, c, t_s)))),
    shutSaves_kg: trip.coolers.map((_, c) =>
      Math.max(0, melted_kg(fleet, c, half_s) - melted_kg(shut, c, half_s)),
    ),
  };
}
