import { runFleet, type SimulateOptions, startFleet } from "../cooler/fleet.ts";
import type { Fleet } from "../cooler/fleetState.ts";
import type { Trip } from "../trip/types.ts";
import { inWorld } from "./inWorld.ts";
import { loadTrip } from "./load.ts";
import type { World } from "./world.ts";

/**
 * Allowed error of a step, relative to the standard one, where many runs are compared or make a band: twice as fast, and
 * off by less than 0.1 % of ice-out, which is small against what they tell apart.
 */
export const looseStep_rel: number = 6;

/** Simulates a whole trip, one run: the middle case, or the world given. */
export function runTrip(trip: Trip, options: SimulateOptions & { world?: World } = {}): Fleet {
  const { world, ...how } = options;
  const input = loadTrip(trip);
  const fleet = startFleet(world === undefined ? input : inWorld(input, trip.weather, world), how);
  runFleet(fleet, trip.duration_s);
  return fleet;
}

/** Share of the ice loaded below which the ice counts as gone (contract §5). */
export const gone_frac: number = 0.01;

/**
 * When the last solid ice is gone, s from departure: 0 without ice, null when there is some at the end. Ice added later
 * counts: it is the last moment after which no more than a hundredth of all that was loaded is solid.
 */
export function iceOut_s(fleet: Fleet, cooler: number): number | null {
  const track = fleet.tracks[cooler];
  const loaded_kg = fleet.boxes[cooler].books.iceIn_kg;
  if (loaded_kg <= 0) return 0;
  const limit = gone_frac * loaded_kg;
  const last = track.t_s.length - 1;
  if (track.ice_kg[last] > limit) return null;
  for (let i = last; i > 0; i--) {
    if (track.ice_kg[i - 1] <= limit) continue;
    const drop = track.ice_kg[i - 1] - track.ice_kg[i];
    return track.t_s[i - 1] + ((track.ice_kg[i - 1] - limit) / drop) * (track.t_s[i] - track.t_s[i - 1]);
  }
  return 0;
}

/** The latest end of ice that is told apart, for a trip of this length. */
export const carriedOnUntil_s = (duration_s: number): number => 4 * duration_s;

/**
 * Ice-out as a number even where ice is left at the return: carried on at the melting of the last day, for three more lengths
 * of the trip at the most. It ranks runs and tells them apart; where both of two runs come to that end, the trip shows no
 * difference between them, and where one does, the difference is at least what is told.
 */
export function iceOutCarriedOn_s(fleet: Fleet, cooler: number): number {
  const out = iceOut_s(fleet, cooler);
  if (out !== null) return out;
  const track = fleet.tracks[cooler];
  const last = track.t_s.length - 1;
  const end_s = track.t_s[last];
  const most_s = carriedOnUntil_s(end_s);
  let i = last;
  while (i > 0 && end_s - track.t_s[i - 1] < 86_400 && track.ice_kg[i - 1] >= track.ice_kg[i]) i--;
  const rate = (track.ice_kg[i] - track.ice_kg[last]) / Math.max(1, end_s - track.t_s[i]);
  return end_s + (rate > 0 ? Math.min(most_s - end_s, track.ice_kg[last] / rate) : most_s - end_s);
}
