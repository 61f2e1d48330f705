import type { Trip } from "../trip/types.ts";
import { isAboard, mainCoolerIndex, nSharedPieces, withFood, withIce } from "./change.ts";
import { packed_frac } from "./filled.ts";
import { fails_frac, holds } from "./gains.ts";
import { allWays } from "./habit.ts";
import { habitsFor } from "./habitTable.ts";
import { iceSayings } from "./iceSayings.ts";
import { noEnd_ratio, ratioWithin, type Saying, sidesOf } from "./saying.ts";
import { useSayings } from "./useSayings.ts";
import { iceToLoad_ratio, withRatio } from "./volumeRatio.ts";

/** Half of everything that a cooler is packed with. */
function halfOf(trip: Trip, cooler: number): Trip {
  const half = <Lot extends Trip["ice"][number] | Trip["food"][number]>(lot: Lot): Lot =>
    isAboard(lot) && lot.cooler === cooler
      ? { ...lot, mass_kg: lot.mass_kg / 2, pieces: nSharedPieces(lot.pieces, 0.5) }
      : lot;
  return withFood(withIce(trip, half), half);
}

const percent = (share_frac: number): string => `${Math.round(100 * share_frac)} %`;

const twoToOne: Saying = {
  key: "two to one",
  saying: "two parts of ice to one of food, by volume",
  claims: "2 : 1 is enough, and 1 : 1 is not (others say it is)",
  source: "common-practice",
  sides: (trip) =>
    sidesOf(
      withRatio(trip, 2),
      withRatio(trip, 1),
      "the same food with ice at 2 : 1 against 1 : 1, frozen food counted as ice",
    ),
  find: (written, one, other) => {
    const [two, oneToOne, packed] = [one, other, written].map(fails_frac);
    const ratio = iceToLoad_ratio(written.trip)!;
    const found = `food passes its limit in ${percent(two)} of the members at 2 : 1, in ${percent(oneToOne)} at 1 : 1, in ${percent(packed)} as packed (${ratio.toFixed(1)} : 1)`;
    if (!holds(written.trip, two)) return { found, agrees: "no" };
    return { found, agrees: holds(written.trip, oneToOne) ? "in part" : "yes" };
  },
};

const ofLoad: Saying[] = [
  twoToOne,
  {
    key: "full box",
    saying: "a full cooler lasts longer than a half-empty one",
    claims: "longer; read here as 5 % or more",
    source: "common-practice",
    sides: (trip) => {
      const main = mainCoolerIndex(trip);
      const packed = Math.round(100 * packed_frac(trip, main));
      return sidesOf(
        trip,
        halfOf(trip, main),
        `as packed (about ${packed} % full) against half of its food and ice`,
      );
    },
    find: ratioWithin([1.05, noEnd_ratio]),
  },
];

/** Against every habit good, as people set the two against each other. */
const allBad: Saying = {
  key: "all the bad habits",
  saying: "all the bad habits together halve the time, or worse",
  claims: "half as long or less",
  source: "common-practice",
  sides: (trip) => {
    const habits = habitsFor(trip);
    return sidesOf(
      allWays(trip, habits, false),
      allWays(trip, habits, true),
      "every habit bad against every habit good",
    );
  },
  find: ratioWithin([0, 0.5]),
};

/** Every saying that can be tried on a trip: those about ice need some in its main cooler. */
export const sayingsFor = (trip: Trip): Saying[] =>
  trip.ice.some((lot) => lot.cooler === mainCoolerIndex(trip))
    ? [...iceSayings, ...useSayings, ...ofLoad, allBad]
    : [];
