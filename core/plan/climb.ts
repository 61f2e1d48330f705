import type { Trip, TripIce } from "../trip/types.ts";
import type { Aim } from "./leastPieces.ts";
import { asIce, isOf, type Offer } from "./offer.ts";
import type { IceSearch } from "./planIce.ts";
import { type Fills, type Scene, stageFor, triedIn, usableFrom } from "./scene.ts";
import { isNearer, isSure, type Standing } from "./standing.ts";

/** Kinds of piece that are added one after the other. */
const MOST_KINDS = 3;
/** No cooler gets more pieces of a kind than this on top of what was found. */
const MOST_PIECES = 32;

/** A search with how it stands over the members. */
export interface Stood {
  search: IceSearch;
  standing: Standing;
}

type Stand = (search: IceSearch) => Promise<Stood>;

/** How many pieces of each kind a cooler has; what is alike counts once. */
function countsOf(ice: readonly TripIce[], offers: readonly Offer[]): number[] {
  const counts = offers.map(() => 0);
  for (const lot of ice) {
    const kind = offers.findIndex((offer) => isOf(lot, offer));
    if (kind >= 0) counts[kind]! += lot.pieces;
  }
  return counts;
}

/** The fill of one cooler with more pieces of one kind, as its lay has them. */
function withMore(
  fill: Fills[number],
  cooler: number,
  offers: readonly Offer[],
  kind: number,
  more: number,
): TripIce[] {
  const counts = countsOf(fill.ice, offers);
  counts[kind]! += more;
  return offers.flatMap((offer, i) => asIce(offer, counts[i]!, cooler, cooler * 10 + i, fill.lay));
}

/** More of one kind in the coolers that want it, up to what is to be had and fits. */
interface Brim {
  kind: number;
  /** Most pieces by cooler; 0 where the kind is not wanted. */
  most: number[];
  top: number;
}

class Climb {
  readonly #scene: Scene;
  readonly #trip: Trip;
  readonly #stand: Stand;

  constructor(scene: Scene, trip: Trip, stand: Stand) {
    this.#scene = scene;
    this.#trip = trip;
    this.#stand = stand;
  }

  /** Pieces of a kind that fit into one cooler on top of its own, while the others hold theirs. */
  #room({ added, offers }: IceSearch, fills: Fills, cooler: number, kind: number): number {
    const others = fills.flatMap((other, i) => (i === cooler ? [] : other.ice));
    const stage = stageFor({ ...this.#trip, ice: [...this.#trip.ice, ...others] }, cooler);
    const fill = added[cooler]!;
    const most = usableFrom(offers, stage, others)[kind]!.max;
    const has = countsOf(fill.ice, offers)[kind]!;
    const tried = triedIn(this.#scene, stage, offers, others);
    const now = tried(fill.ice).freezes;
    const fits = (more: number): boolean => {
      const { outcome, freezes } = tried(withMore(fill, cooler, offers, kind, more));
      // More ice must not ruin by freezing what was well without it.
      return outcome !== "over" && [...freezes].every((path) => now.has(path));
    };
    let low = 0;
    let high = Math.min(MOST_PIECES, Math.max(0, (most ?? Infinity) - has)) + 1;
    let isTooMuch = false;
    while (high - low > 1) {
      const next: number = isTooMuch ? (low + high) >> 1 : Math.min(high - 1, Math.max(1, 2 * low));
      if (fits(next)) low = next;
      else [high, isTooMuch] = [next, true];
    }
    return low;
  }

  brims({ search, standing }: Stood): Brim[] {
    return search.offers.flatMap((_, kind) => {
      const fills = [...search.added];
      const most = fills.map(() => 0);
      for (const cooler of standing.weak) {
        if (fills[cooler]!.need.none) continue;
        most[cooler] = this.#room(search, fills, cooler, kind);
        const ice = withMore(fills[cooler]!, cooler, search.offers, kind, most[cooler]!);
        fills[cooler] = { ...fills[cooler]!, ice };
      }
      const top = Math.max(0, ...most);
      return top > 0 ? [{ kind, most, top }] : [];
    });
  }

  /** Of every cooler the same share of what it takes, rounded up. */
  at({ search }: Stood, { kind, most, top }: Brim, level: number): Promise<Stood> {
    const added = search.added.map((fill, i) => {
      const more = Math.ceil((level * most[i]!) / top);
      return more === 0 ? fill : { ...fill, ice: withMore(fill, i, search.offers, kind, more) };
    });
    const addedIce = added.flatMap(({ ice }) => ice);
    return this.#stand({ ...search, scene: this.#scene, added, addedIce, isClimbed: true });
  }

  /** The lowest level that is sure, where the top is. */
  async least(from: Stood, brim: Brim, top: Stood): Promise<Stood> {
    let best = top;
    let [low, high] = [0, brim.top];
    while (high - low > 1) {
      // Little is mostly enough, so the low half is looked at first.
      const level = low + Math.max(1, Math.floor((high - low) / 3));
      const tried = await this.at(from, brim, level);
      if (isSure(tried.standing)) [best, high] = [tried, level];
      else low = level;
    }
    return best;
  }
}

/** Pieces, weight or cost of what was added, as the aim has it; unpriced pieces are dearer than any. */
function worth({ search }: Stood, aim: Aim): number {
  return search.addedIce.reduce((sum, { pieces, mass_kg, price }) => {
    if (aim === "weight") return sum + mass_kg;
    return sum + (aim === "cost" ? pieces * (price ?? 1e6) : pieces);
  }, 0);
}

/**
 * Adds ice to a plan that is not sure yet and asks the members themselves, since one hard world does not stand for all:
 * coolers that want it are filled to the brim with one kind after the other, and where that is enough, the least level
 * of it is taken. Where nothing is enough, what came nearest; where nothing came nearer, the plan as it was.
 *
 * Limits: one kind at a time, on top of what is there, every cooler by the same share of its room.
 *
 * @param scene for the middle case, in which it is asked what fits
 * @param stand runs a plan over members
 */
export async function climb(scene: Scene, trip: Trip, start: Stood, stand: Stand): Promise<Stood> {
  const climbing = new Climb(scene, trip, stand);
  let best = start;
  for (let kinds = 0; kinds < MOST_KINDS && !isSure(best.standing); kinds++) {
    const from = best;
    const sure: Stood[] = [];
    for (const brim of climbing.brims(from)) {
      scene.says("more ice, asked of the members");
      const top = await climbing.at(from, brim, brim.top);
      if (isSure(top.standing)) sure.push(await climbing.least(from, brim, top));
      else if (isNearer(top.standing, best.standing)) best = top;
    }
    const { aim } = scene.options;
    if (sure.length > 0) return sure.reduce((a, b) => (worth(b, aim) < worth(a, aim) ? b : a));
    if (best === from) break;
  }
  return best;
}
