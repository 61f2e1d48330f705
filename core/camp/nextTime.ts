import { medianClosures } from "../cooler/closures.ts";
import { conductanceRange_W_per_K } from "../cooler/walls.ts";
import { overLimit_s } from "../forecast/coolerResult.ts";
import { runTrip } from "../forecast/run.ts";
import type { Spread } from "../matter/spread.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import type { NextTime } from "./closeOutResult.ts";
import type { CloseOut } from "./readCloseOut.ts";

/** More pieces than this nobody would carry on the word of one trip. */
const mostPieces = 12;
/** Ice that must be left at the return for a piece to count as too many: a twentieth of what was loaded. */
const spare_frac = 0.05;
const gone_frac = 0.01;

/** The lot that a person would take fewer or more of: bought rather than made at home, else the one in most pieces. */
function lotOf(trip: Trip, cooler: number): TripIce | null {
  const lots = trip.ice.filter((ice) => ice.cooler === cooler && ice.form !== "dry ice");
  const rank = (ice: TripIce): number => ((ice.price ?? 0) > 0 ? 1000 : 0) + ice.pieces;
  return lots.reduce<TripIce | null>(
    (best, ice) => (best === null || rank(ice) > rank(best) ? ice : best),
    null,
  );
}

/** The trip with a cooler as it was learned to be, and one of its lots in so many pieces more or fewer. */
function changed(trip: Trip, cooler: number, known: Spread, lot: TripIce, pieces: number): Trip {
  const { body } = trip.coolers[cooler];
  const { least_W_per_K, most_W_per_K } = conductanceRange_W_per_K(body, medianClosures);
  // The worse one in ten: what is bought must last in a bad case too.
  const measured_W_per_K = Math.min(0.999 * most_W_per_K, Math.max(1.001 * least_W_per_K, known.p90));
  const total = lot.pieces + pieces;
  const as = { ...lot, pieces: total, mass_kg: (lot.mass_kg / lot.pieces) * total };
  const ice = trip.ice.flatMap((one) => (one.id !== lot.id ? [one] : total === 0 ? [] : [as]));
  const coolers = trip.coolers.map((one, i) =>
    i === cooler ? { ...one, body: { ...one.body, measured_W_per_K } } : one,
  );
  return { ...trip, coolers, ice };
}

interface Tried {
  /** Share of what was loaded that is left at the return. */
  left_frac: number;
  over_s: number | null;
  /** Above 1 it does not fit. */
  filled_frac: number;
}

function tried(trip: Trip, cooler: number): Tried {
  const fleet = runTrip(trip);
  const track = fleet.tracks[cooler];
  const { books, walls } = fleet.boxes[cooler];
  return {
    left_frac: books.iceIn_kg > 0 ? track.ice_kg.at(-1)! / books.iceIn_kg : 0,
    over_s: overLimit_s(trip, fleet, cooler),
    filled_frac: Math.max(...track.stack_m) / walls.height_m,
  };
}

/** No perishable is over its limit earlier than it was. */
const noWorse = (before: Tried, after: Tried): boolean =>
  after.over_s === null || (before.over_s !== null && after.over_s >= before.over_s);

/**
 * How many pieces of ice fewer would have done for one cooler, or how many more it would have taken to bring some home: run
 * again in the middle case of the same trip with the walls that were learned, taken at the worse one in ten. Whole pieces of one
 * lot. It says nothing about other weather.
 */
export function nextIce(trip: Trip, cooler: number, known: Spread, left_kg: number): NextTime | null {
  const lot = lotOf(trip, cooler);
  if (lot === null) return null;
  const was_kg = trip.ice
    .filter((ice) => ice.cooler === cooler && ice.form !== "dry ice")
    .reduce((sum, ice) => sum + ice.mass_kg, 0);
  const each_kg = lot.mass_kg / lot.pieces;
  const told = (code: NextTime["code"], pieces: number): NextTime => ({
    code,
    name: trip.coolers[cooler].name,
    was_kg,
    want_kg: was_kg + pieces * each_kg,
    pieces,
    each: lot.each,
    left_kg,
  });
  const now = tried(changed(trip, cooler, known, lot, 0), cooler);
  if (left_kg <= gone_frac * was_kg) return moreIce(trip, cooler, known, lot, told);
  let fewer = 0;
  while (fewer < lot.pieces && fewer < mostPieces) {
    const one = tried(changed(trip, cooler, known, lot, -fewer - 1), cooler);
    if (!(one.left_frac > spare_frac && noWorse(now, one))) break;
    fewer++;
  }
  return fewer === 0 ? told("ice enough", 0) : told("ice less", -fewer);
}

function moreIce(
  trip: Trip,
  cooler: number,
  known: Spread,
  lot: TripIce,
  told: (code: NextTime["code"], pieces: number) => NextTime,
): NextTime {
  for (let more = 0; more <= mostPieces; more++) {
    const one = tried(changed(trip, cooler, known, lot, more), cooler);
    if (one.filled_frac > 1 && more > 0) return told("ice does not fit", more);
    if (one.left_frac > gone_frac) return more === 0 ? told("ice enough", 0) : told("ice more", more);
  }
  return told("ice does not fit", mostPieces);
}

/** What of the food to take less or more of, from the bin, what was never opened and what ran out. */
export function nextFood(trip: Trip, { binned, neverOpened, ranOut }: CloseOut): NextTime[] {
  const none = { pieces: null, each: null };
  const inBin = new Set(binned.map(({ item }) => item.id));
  const fromBin = binned.map(({ item, mass_kg, why }): NextTime => {
    const { name, mass_kg: was_kg } = item;
    const told = { name, was_kg, left_kg: mass_kg, ...none };
    if (why === "wet") return { ...told, code: "food drier", want_kg: was_kg };
    if (why === "warm" || why === "spoiled") return { ...told, code: "food colder", want_kg: was_kg };
    const want_kg = Math.max(0, was_kg - mass_kg);
    return want_kg < 0.01 * was_kg
      ? { ...told, code: "food leave", want_kg: 0 }
      : { ...told, code: "food less", want_kg };
  });
  const unopened = neverOpened
    .filter(({ id }) => !inBin.has(id))
    .map(
      ({ name, mass_kg }): NextTime => ({
        ...{ code: "food leave", name, was_kg: mass_kg, want_kg: 0, left_kg: null },
        ...none,
      }),
    );
  const short = ranOut.map(({ item, when_s }): NextTime => {
    const { name, mass_kg: was_kg, eat_s, parts_s } = item;
    const isThroughout = eat_s === null && parts_s === null;
    // At the rate at which it went; what is for one meal tells no rate.
    const want_kg =
      isThroughout && when_s !== null && when_s > 0 ? (was_kg * trip.duration_s) / when_s : null;
    return { code: "food more", name, was_kg, want_kg, left_kg: null, ...none };
  });
  return [...fromBin, ...unopened, ...short];
}
