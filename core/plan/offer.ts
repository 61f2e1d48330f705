import type { IceForm, LayerWish } from "../cooler/types.ts";
import type { IcePiece } from "../forecast/result.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { pieceWords } from "./pieceWords.ts";

/** A kind of piece that can be taken along at departure. */
export interface Offer {
  form: IceForm;
  /** As typed ("10 lb"). */
  each: string;
  each_kg: number;
  at_C: number;
  liquid_frac: number;
  price: number | null;
  where: string;
  /** Pieces to be had for the whole trip. */
  max: number | null;
}

/** Where ice comes from that the file has aboard already. */
export const FROM_FILE = "your file";

/** Jugs and packs are frozen at home, the rest is bought: where a file says nothing. Common practice. */
export function usualWhere(form: IceForm): string {
  return form === "jug" || form === "gel pack" || form === "eutectic pack" ? "home" : "shop";
}

/** Offers looked at; a file that lists more is planned with the first so many. */
const MOST_OFFERS = 4;

/**
 * What the planner may choose from: the departure supply of the file; where it lists none, the pieces that the file
 * has aboard already; where it has no ice at all, two sizes of shop bag (`assumed`). Dry ice is left out: this version
 * reckons neither its gas in a closed room nor what it freezes.
 */
export function offersOf(trip: Trip): { offers: Offer[]; assumed: boolean } {
  const supply = trip.supply.filter(({ when_s, form }) => when_s === null && form !== "dry ice");
  const aboard = trip.ice.filter(isReplaceable).map((ice) => ({
    form: ice.form,
    each: ice.each,
    each_kg: ice.mass_kg / ice.pieces,
    at_C: ice.start_C,
    liquid_frac: ice.liquid_frac,
    price: ice.price,
    where: usualWhere(ice.form),
    max: null,
  }));
  const listed: Offer[] = supply.length > 0 ? supply : aboard;
  const offers: Offer[] = [];
  for (const offer of listed.length > 0 ? listed : shopBags(trip))
    if (!offers.some((known) => isAlike(known, offer))) offers.push(offer);
  return { offers: offers.slice(0, MOST_OFFERS), assumed: listed.length === 0 };
}

/** Ice that the file has aboard at departure and that other pieces could stand in for. */
export function isReplaceable(ice: TripIce): boolean {
  return ice.putIn_s === null && ice.form !== "dry ice";
}

function isAlike(a: Offer, b: Offer): boolean {
  return (
    a.form === b.form &&
    a.each_kg === b.each_kg &&
    a.at_C === b.at_C &&
    a.price === b.price &&
    a.where === b.where
  );
}

/** Shop ice as it is usual: 3 % water already, at −2 °C (common practice); sizes in the units of the coolers. */
function shopBags(trip: Trip): Offer[] {
  const us = trip.coolers.some(({ size }) => /(?:qt|gal|in|ft)\b/.test(size));
  const bag = (form: IceForm): Offer => ({
    form,
    each: us ? "10 lb" : "5 kg",
    each_kg: us ? 4.5359237 : 5,
    at_C: -2,
    liquid_frac: form === "cube" ? 0.03 : 0,
    price: null,
    where: "shop",
    max: null,
  });
  return [bag("block"), bag("cube")];
}

/** Packs that melt below 0 °C are kept from food that freezing spoils. */
export function suits(offer: Offer, trip: Trip, cooler: number): boolean {
  return (
    offer.form !== "eutectic pack" || !trip.food.some((food) => food.cooler === cooler && food.freezesBadly)
  );
}

/** Where a form does most for the food: slow ice below, loose ice between, packs on top. Common practice. */
function layerOf(form: IceForm): LayerWish {
  if (form === "block" || form === "jug") return "base";
  return form === "gel pack" || form === "eutectic pack" ? "top" : "fill";
}

/** These pieces as ice aboard from the start. `order` makes the id unique. */
export function asIce(offer: Offer, pieces: number, cooler: number, order: number): TripIce {
  return {
    id: `plan[${order}]`,
    path: "supply",
    form: offer.form,
    mass_kg: pieces * offer.each_kg,
    pieces,
    each: offer.each,
    start_C: offer.at_C,
    liquid_frac: offer.liquid_frac,
    cooler,
    layer: layerOf(offer.form),
    price: offer.price,
    putIn_s: null,
  };
}

/** A line of the shopping list. Price and weight are those of the whole line. */
export function asPiece(ice: TripIce, where: string, trip: Trip): IcePiece {
  return {
    form: ice.form,
    pieces: ice.pieces,
    each_kg: ice.mass_kg / ice.pieces,
    cooler: trip.coolers[ice.cooler]!.name,
    where,
    by: trip.depart,
    price: ice.price === null ? null : ice.price * ice.pieces,
    weight_kg: ice.mass_kg,
  };
}

/** "3 × 10-lb bags of cubes + 1 × 1-gal frozen jug", or "no ice"; equal pieces are counted together. */
export function iceWords(ice: readonly TripIce[]): string {
  const counts = new Map<string, { lot: TripIce; pieces: number }>();
  for (const lot of ice) {
    const key = `${lot.form} ${lot.each}`;
    counts.set(key, { lot, pieces: (counts.get(key)?.pieces ?? 0) + lot.pieces });
  }
  if (ice.length === 0) return "no ice";
  return [...counts.values()].map(({ lot, pieces }) => pieceWords(pieces, lot.each, lot.form)).join(" + ");
}

/** The kinds that were tried, as one would ask for them: "10-lb block, 10-lb bag of cubes". */
export function offerWords(offers: readonly Offer[]): string {
  const kinds = offers.map(({ form, each }) => pieceWords(1, each, form).replace(/^1 × /, ""));
  return [...new Set(kinds)].join(", ");
}
