import { medianClosures } from "../../cooler/closures.ts";
import { iceLotDensity_kg_per_m3 } from "../../cooler/layout.ts";
import type { Trip, TripIce } from "../../trip/types.ts";
import { offersOf } from "../offer.ts";
import type { Losses } from "./losses.ts";
import type { Lump } from "./lumps.ts";
import { eachLifts_kg } from "./weights.ts";

const isLoose = ({ form }: Pick<TripIce, "form">): boolean => form === "cube" || form === "crushed";

/** Litres that a kilogram of ice takes up, gaps included. */
export const firm_L_per_kg: number = 1000 / iceLotDensity_kg_per_m3("block") / medianClosures.blockFloor_frac;
export const loose_L_per_kg: number =
  1000 / iceLotDensity_kg_per_m3("cube") / medianClosures.cubePacking_frac;

/** One cooler as the solver sees it. */
export interface Bin {
  room_L: number;
  empty_kg: number;
  /** Ice that the file has aboard at departure. */
  writtenFirm_kg: number;
  writtenLoose_kg: number;
  /** May stay shut for the first half, though the file does not say so. */
  mayShut: boolean;
  /** Beyond what its losses say: what the trials lacked. */
  more_kg: number;
  holds: "food" | "drinks" | "any";
}

/** One question to the solver. */
export interface Task {
  trip: Trip;
  lumps: readonly Lump[];
  bins: readonly Bin[];
  losses: Losses;
  /** Which kinds of ice can be had. */
  ice: { firm: boolean; loose: boolean };
  /** Drinks beside food cost nothing. */
  drinksAnywhere?: boolean;
  /** Places that an item's lump may not go to this time. */
  banned?: readonly { lump: Lump; place: number }[];
  /** Ice fetched on the way: only that of the first days has to be aboard; a count of days. */
  daysCount?: number;
}

/** Most that a cooler should weigh for those who carry it. More than four find no hold on it. */
export const mostLifted_kg = ({ carry }: Trip): number => eachLifts_kg * Math.min(4, carry.people);

const written_kg = (trip: Trip, cooler: number, loose: boolean): number =>
  trip.ice
    .filter((ice) => ice.cooler === cooler && ice.putIn_s === null && isLoose(ice) === loose)
    .reduce((sum, { mass_kg }) => sum + mass_kg, 0);

/** A cooler for the last half is proposed where there are several for food, none is sealed, and the trip is long enough. */
function mayShut(trip: Trip, cooler: number): boolean {
  const food = trip.coolers.filter(({ holds }) => holds !== "drinks");
  const { holds, openings } = trip.coolers[cooler]!;
  return (
    holds !== "drinks" &&
    openings !== null &&
    food.length >= 2 &&
    food.every(({ sealedUntil_s }) => sealedUntil_s === null) &&
    trip.duration_s >= 2 * 86_400
  );
}

export function taskFor(trip: Trip, lumps: readonly Lump[], losses: Losses): Task {
  const { offers } = offersOf(trip);
  const kinds = offers.map(isLoose);
  return {
    trip,
    lumps,
    losses,
    ice: { firm: kinds.includes(false), loose: kinds.includes(true) },
    bins: trip.coolers.map((cooler, c) => ({
      room_L: 1000 * cooler.volume_m3,
      empty_kg: cooler.body.emptyWeight_kg,
      writtenFirm_kg: written_kg(trip, c, false),
      writtenLoose_kg: written_kg(trip, c, true),
      mayShut: mayShut(trip, c),
      more_kg: 0,
      holds: cooler.holds,
    })),
  };
}
