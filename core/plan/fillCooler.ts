import type { TripIce } from "../trip/types.ts";
import { type Aim, leastPieces } from "./leastPieces.ts";
import type { Judgement } from "./need.ts";
import { asIce, type Offer } from "./offer.ts";

/** Pieces for one cooler: the least that hold, else the best that fit. */
export interface Fill {
  ice: TripIce[];
  holds: boolean;
  judgement: Judgement;
}

/** Forecasts that one cooler may cost. */
const BUDGET = 140;
/** No cooler is asked to hold more pieces of one kind than this. */
const MOST_PIECES = 60;

/**
 * Chooses pieces for one cooler by running the forecast with them. Where no amount that fits holds, it takes the
 * amount that fits and keeps the food cold longest (then the ice, then the fewest pieces).
 *
 * @param tried the forecast of a trial with this ice, read against the need
 */
export function fillCooler(
  cooler: number,
  offers: readonly Offer[],
  aim: Aim,
  tried: (ice: readonly TripIce[]) => Judgement,
): Fill {
  const known = new Map<string, { counts: number[]; judgement: Judgement }>();
  const iceFor = (counts: readonly number[]): TripIce[] =>
    offers.flatMap((offer, i) => (counts[i]! > 0 ? [asIce(offer, counts[i]!, cooler, cooler * 10 + i)] : []));
  const look = (counts: readonly number[]): Judgement => {
    const key = counts.join(" ");
    const before = known.get(key);
    if (before !== undefined) return before.judgement;
    const judgement = tried(iceFor(counts));
    known.set(key, { counts: [...counts], judgement });
    return judgement;
  };
  const none = offers.map(() => 0);
  const empty = look(none);
  if (empty.outcome !== "short") return { ice: [], holds: empty.outcome === "holds", judgement: empty };
  const choices = offers.map((offer, i) => {
    const available = Math.min(offer.max ?? MOST_PIECES, MOST_PIECES);
    if (available < 1) return { ...offer, max: 0 };
    const each_frac = look(none.map((_, k) => (k === i ? 1 : 0))).filled_frac - empty.filled_frac;
    // Two more than the room says: the packing is asked about each amount anyway.
    const room = each_frac > 0 ? Math.floor((1 - empty.filled_frac) / each_frac) + 2 : MOST_PIECES;
    return { ...offer, max: Math.min(available, Math.max(1, room)) };
  });
  const counts = leastPieces(choices, aim, (mix) => look(mix).outcome, BUDGET);
  const best = counts ?? bestThatFits([...known.values()]) ?? none;
  return { ice: iceFor(best), holds: counts !== null, judgement: look(best) };
}

function bestThatFits(known: readonly { counts: number[]; judgement: Judgement }[]): number[] | null {
  const fitting = known.filter(({ judgement }) => judgement.outcome !== "over");
  const pieces = (counts: number[]): number => counts.reduce((a, b) => a + b, 0);
  fitting.sort(
    (a, b) =>
      Math.round(b.judgement.food_h - a.judgement.food_h) ||
      Math.round(b.judgement.ice_h - a.judgement.ice_h) ||
      pieces(a.counts) - pieces(b.counts),
  );
  return fitting[0]?.counts ?? null;
}
