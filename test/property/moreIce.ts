import { runMembers } from "../../core/ensemble/runMembers.ts";
import { withBands } from "../../core/ensemble/withBands.ts";
import { forecast } from "../../core/forecast/forecast.ts";
import { asIce, iceWords, isOf, type Offer, offersOf } from "../../core/plan/offer.ts";
import type { Planned } from "../../core/plan/plannedFile.ts";
import type { Trip, TripIce } from "../../core/trip/types.ts";
import { failing } from "./provePlan.ts";

const withIce = (trip: Trip, ice: readonly TripIce[]): Trip => ({ ...trip, ice: [...trip.ice, ...ice] });

/** How many pieces of an offer go in on top of what is planned; the supply's own most counts. */
function room(trip: Trip, offer: Offer, cooler: number): number {
  const taken = trip.ice.filter((lot) => isOf(lot, offer)).reduce((sum, { pieces }) => sum + pieces, 0);
  const most = offer.max === null ? Infinity : offer.max - taken;
  const fits = (pieces: number): boolean =>
    forecast(withIce(trip, asIce(offer, pieces, cooler, 900, "usual")), { effects: false }).result.coolers[
      cooler
    ]!.filled_frac <= 1;
  let pieces = 0;
  while (pieces < Math.min(most, 12) && fits(pieces + 1)) pieces++;
  return pieces;
}

/**
 * Whether plain ice on top of a plan that does not hold, one kind in every cooler with perishables at its usual place, would
 * make it hold over the same members; in words, null: not found. The freezer's room is not asked.
 */
export function moreIce(
  { trip }: Planned,
  { members, seed }: { members: number; seed: number },
): string | null {
  const used = new Set(
    trip.food.flatMap(({ cooler, like }) => (cooler !== null && like.perishable ? [cooler] : [])),
  );
  const coolers = [...used];
  for (const offer of offersOf(trip).offers) {
    const most = coolers.map((cooler) => room(trip, offer, cooler));
    for (const share_frac of [1, 0.5, 0.25]) {
      const ice = coolers.flatMap((cooler, k) =>
        asIce(offer, Math.ceil(share_frac * most[k]!), cooler, 900 + k, "usual"),
      );
      if (ice.length === 0) continue;
      const more = withIce(trip, ice);
      const draws = runMembers(more, { from: 0, to: members, seed, series: true });
      const middle = forecast(more, { effects: false });
      const told = withBands(middle, draws, seed).result;
      if (failing(more, told, middle.result).length === 0) return `${iceWords(ice)} more and it holds`;
    }
  }
  return null;
}
