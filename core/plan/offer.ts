import type { IceForm } from "../cooler/types.ts";
import type { IcePiece } from "../forecast/planResult.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { type Lay, layersOf, layWords } from "./lay.ts";
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
 * has aboard already; where there is none of either, two sizes of shop bag (`assumed` says why). Dry ice is left out: this version
 * reckons neither its gas in a closed room nor what it freezes.
 */
export function offersOf(trip: Trip): { offers: Offer[]; assumed: string | null } {
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
  return { offers: offers.slice(0, MOST_OFFERS), assumed: listed.length > 0 ? null : whyAssumed(trip) };
}

/** What the file lists instead of ice that the departure can be planned with. */
function whyAssumed({ supply, ice }: Trip): string {
  const found = [
    ...(supply.some(({ form, when_s }) => form === "dry ice" && when_s === null) ? ["dry ice"] : []),
    ...(supply.some(({ when_s }) => when_s !== null) ? ["ice on the way"] : []),
  ];
  if (found.length > 0)
    return `the supply lists ${found.join(" and ")} only, which the departure is not planned with`;
  if (ice.length === 0) return "no ice and no supply is listed";
  const aboard = ice.some(({ putIn_s }) => putIn_s === null) ? "dry ice" : "ice on the way";
  return `no supply is listed, and the file has ${aboard} only`;
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

/** These pieces as ice aboard from the start, a lot for every layer that has some. `order` makes the ids unique. */
export function asIce(offer: Offer, pieces: number, cooler: number, order: number, lay: Lay): TripIce[] {
  const layers = layersOf(offer.form, lay);
  return layers.flatMap((layer, k): TripIce[] => {
    const here = Math.ceil((pieces - k) / layers.length);
    if (here < 1) return [];
    return [
      {
        id: `plan[${order}]${k === 0 ? "" : `.${k}`}`,
        path: "supply",
        form: offer.form,
        mass_kg: here * offer.each_kg,
        pieces: here,
        each: offer.each,
        start_C: offer.at_C,
        liquid_frac: offer.liquid_frac,
        cooler,
        layer,
        price: offer.price,
        putIn_s: null,
        boughtBefore_s: 0,
      },
    ];
  });
}

/** A lot less one piece; nothing where it was the last. */
export function lessOne(lot: TripIce): TripIce[] {
  const pieces = lot.pieces - 1;
  return pieces > 0 ? [{ ...lot, pieces, mass_kg: (lot.mass_kg / lot.pieces) * pieces }] : [];
}

/** Whether a lot is made of the pieces of an offer. */
export function isOf(lot: TripIce, offer: Offer): boolean {
  const alike = lot.form === offer.form && lot.each === offer.each && lot.price === offer.price;
  return alike && lot.start_C === offer.at_C;
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

/** The same with where it lies, if that is not the usual place. */
export function packedWords({ ice, lay }: { ice: readonly TripIce[]; lay: Lay }): string {
  const where = layWords(ice, lay);
  return where === null ? iceWords(ice) : `${iceWords(ice)} (${where})`;
}

/** The kinds that were tried, as one would ask for them: "10-lb block, 10-lb bag of cubes". */
export function offerWords(offers: readonly Offer[]): string {
  const kinds = offers.map(({ form, each }) => pieceWords(1, each, form).replace(/^1 × /, ""));
  return [...new Set(kinds)].join(", ");
}
