import type { Fleet } from "../cooler/fleetState.ts";
import { massWords, temperatureWords } from "../quantity/show.ts";
import { coolerLift } from "../safety/lifting.ts";
import type { Trip } from "../trip/types.ts";
import { dryIceWarnings } from "./dryIceAir.ts";
import { foodCautions } from "./foodCautions.ts";
import { trackOf } from "./foodResult.ts";
import type { CoolerResult, Warning } from "./result.ts";
import { valueAt } from "./series.ts";

/** A warning is read in any units. */
const bothMasses = (mass_kg: number): string =>
  `${massWords(mass_kg, "metric")}, ${massWords(mass_kg, "us")}`;

/** Growth that is worth another warning: dew and rounding are not. */
const heavier_frac = 1.05;
const nearly_frac = 0.98;

/** Too heavy to lift as it is packed, and at its heaviest moment where that comes later, in the middle case. */
function weightWarnings(
  trip: Trip,
  fleet: Fleet,
  { name, packedWeight_kg }: CoolerResult,
  i: number,
): Warning[] {
  const { people } = trip.carry;
  const { body } = trip.coolers[i]!;
  const path = `coolers[${i}]`;
  const track = fleet.tracks[i];
  const most_kg = track.load_kg.reduce((a, b) => Math.max(a, b));
  // Dew makes it a little heavier for as long as it is cold: the moment that counts is when it became about so heavy.
  const from_s = track.t_s[track.load_kg.findIndex((load) => load > nearly_frac * most_kg)];
  const weight_kg = fleet.boxes[i].input.body.emptyWeight_kg + most_kg;
  const lift = (kg: number): number => coolerLift(kg, people, body).index;
  const words = (kg: number): string =>
    `${lift(kg).toFixed(1)} times what the NIOSH lifting equation recommends for ${people === 1 ? "one person" : `${people} people`} (${bothMasses(coolerLift(0, people, body).recommended_kg)})`;
  const out: Warning[] = [];
  if (lift(packedWeight_kg) > 1)
    out.push({
      code: "heavy",
      says: `${name} weighs ${bothMasses(packedWeight_kg)} packed, ${words(packedWeight_kg)}: split it, or load it in place`,
      path,
    });
  if (lift(weight_kg) > 1 && weight_kg > heavier_frac * packedWeight_kg)
    out.push({
      code: "heavy-later",
      says: `${name} is heaviest from hour ${Math.floor(from_s / 3600)} on, with what is put in on the way: ${bothMasses(weight_kg)}, ${words(weight_kg)}`,
      path,
    });
  return out;
}

/** Colder than this below its freezing point, food is hard enough that a cook waits for it. */
const hard_K = 0.2;

/** Food that a meal waits for because its middle is frozen still. Ice cream and its kind are eaten so. */
function frozenAtMeal(trip: Trip, fleet: Fleet): Warning[] {
  return trip.food.flatMap((item) => {
    const track = trackOf(fleet, item.id);
    const { freezes_C, kind } = item.like;
    if (track === undefined || item.eat_s === null || track.left_s === null || kind === "frozen") return [];
    if (freezes_C === null || item.start_C >= freezes_C || item.eat_s >= trip.duration_s) return [];
    const core_C = valueAt(track.t_s, track.cold_C, track.left_s);
    if (core_C >= freezes_C - hard_K) return [];
    const core = `${temperatureWords(core_C, "metric")}, ${temperatureWords(core_C, "us")}`;
    const says = `${item.name} would be still frozen at its meal (${core} in the middle): take it out of the ice earlier to thaw, kept cold all the while`;
    return [{ code: "frozen-at-meal", says, path: item.path }];
  });
}

/**
 * What a person must know beside the numbers: what does not fit, what is heavy, dry ice where people breathe, food put
 * next to something colder than it bears.
 */
export function warningsFor(trip: Trip, fleet: Fleet, results: readonly CoolerResult[]): Warning[] {
  const out: Warning[] = [...dryIceWarnings(trip, fleet), ...foodCautions(trip)];
  out.push(...results.flatMap((result, i) => weightWarnings(trip, fleet, result, i)));
  results.forEach((result, i) => {
    const path = `coolers[${i}]`;
    if (result.filled_frac > 1 + 1e-9)
      out.push({
        code: "does-not-fit",
        says: `${result.name} would be ${Math.ceil(result.filled_frac * 100)} % full: the lid does not close`,
        path,
      });
  });
  out.push(...frozenAtMeal(trip, fleet));
  for (const item of trip.food) {
    if (!item.freezesBadly || item.cooler === null) continue;
    const index = fleet.lots.findIndex((lot) => lot.id === item.id);
    const freezes_C = item.like.freezes_C ?? 0;
    if (index >= 0 && fleet.lotTracks[index].cold_C.some((t) => t < freezes_C - 0.2))
      out.push({ code: "freezes", says: `${item.name} would freeze, and that ruins it`, path: item.path });
  }
  return out;
}
