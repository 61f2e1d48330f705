import type { TripIce } from "../trip/types.ts";
import { type Lay, laysFor } from "./lay.ts";
import { type Aim, leastPieces } from "./leastPieces.ts";
import type { Judgement } from "./need.ts";
import { asIce, type Offer } from "./offer.ts";

/** Pieces for one cooler: the least that hold, else the best that fit. */
export interface Fill {
  ice: TripIce[];
  lay: Lay;
  /** The least that hold with every form at its usual place; null: none does. */
  usual: TripIce[] | null;
  holds: boolean;
  judgement: Judgement;
}

/** Forecasts that one lay of one cooler may cost. */
const BUDGET = 140;
/** No cooler is asked to hold more pieces of one kind than this. */
const MOST_PIECES = 60;

/** The forecast of a trial with this ice, read against the need. */
export type Tried = (ice: readonly TripIce[]) => Judgement;

/** A mix that was asked about. */
interface Known {
  lay: Lay;
  counts: readonly number[];
  judgement: Judgement;
}

/**
 * Chooses pieces for one cooler by running the forecast with them, in every lay that makes a difference, and takes the
 * lay that needs least. Where no amount that fits holds, it takes the amount that fits and keeps the food cold longest
 * (then the ice, then the fewest pieces). One lay holds for all pieces: a block below and a jug above are not tried.
 *
 * @param lays those to try; left out: all that differ for these offers
 */
export function fillCooler(
  cooler: number,
  offers: readonly Offer[],
  aim: Aim,
  tried: Tried,
  lays: readonly Lay[] = laysFor(offers.filter(({ max }) => max !== 0).map(({ form }) => form)),
): Fill {
  const empty = tried([]);
  const none: Known = { lay: "usual", counts: offers.map(() => 0), judgement: empty };
  if (empty.outcome !== "short")
    return { ice: [], lay: "usual", usual: [], holds: empty.outcome === "holds", judgement: empty };
  const known: Known[] = [none];
  const iceOf = ({ counts, lay }: Known): TripIce[] =>
    offers.flatMap((offer, i) => asIce(offer, counts[i]!, cooler, cooler * 10 + i, lay));
  const look = (counts: readonly number[], lay: Lay): Judgement => {
    const same = known.find((one) => one.lay === lay && one.counts.every((n, i) => n === counts[i]));
    if (same !== undefined) return same.judgement;
    const mix = { lay, counts: [...counts], judgement: empty };
    if (counts.some((n) => n > 0)) mix.judgement = spared(tried(iceOf(mix)), empty, lay);
    known.push(mix);
    return mix.judgement;
  };
  const choices = choicesFrom(offers, empty, (counts) => look(counts, lays[0]!));
  let best: Known | null = null;
  let usual: TripIce[] | null = null;
  for (const lay of lays) {
    const ask = (counts: readonly number[]): Judgement["outcome"] => look(counts, lay).outcome;
    const counts = leastPieces(choices, aim, ask, { budget: BUDGET, knownCount: best?.counts ?? null });
    if (counts !== null) best = { lay, counts, judgement: look(counts, lay) };
    if (lay === "usual") usual = best && iceOf(best);
  }
  const taken = best ?? bestThatFits(known) ?? none;
  return { ice: iceOf(taken), lay: taken.lay, usual, holds: best !== null, judgement: taken.judgement };
}

/** An unusual lay must not freeze what would not freeze without this ice: more of it would only be worse. */
function spared(judgement: Judgement, empty: Judgement, lay: Lay): Judgement {
  const freezes = [...judgement.freezes].some((path) => !empty.freezes.has(path));
  return lay !== "usual" && freezes ? { ...judgement, outcome: "over" } : judgement;
}

/** Offers with the most pieces that are worth asking about. */
function choicesFrom(
  offers: readonly Offer[],
  empty: Judgement,
  look: (counts: readonly number[]) => Judgement,
): (Offer & { max: number })[] {
  return offers.map((offer, i) => {
    const available = Math.min(offer.max ?? MOST_PIECES, MOST_PIECES);
    if (available < 1) return { ...offer, max: 0 };
    const each_frac = look(offers.map((_, k) => (k === i ? 1 : 0))).filled_frac - empty.filled_frac;
    // Two more than the room says: the packing is asked about each amount anyway.
    const room = each_frac > 0 ? Math.floor((1 - empty.filled_frac) / each_frac) + 2 : MOST_PIECES;
    return { ...offer, max: Math.min(available, Math.max(1, room)) };
  });
}

function bestThatFits(known: readonly Known[]): Known | null {
  const fitting = known.filter(({ judgement }) => judgement.outcome !== "over");
  const pieces = (counts: readonly number[]): number => counts.reduce((a, b) => a + b, 0);
  fitting.sort(
    (a, b) =>
      Math.round(b.judgement.food_h - a.judgement.food_h) ||
      Math.round(b.judgement.ice_h - a.judgement.ice_h) ||
      pieces(a.counts) - pieces(b.counts),
  );
  return fitting[0] ?? null;
}
