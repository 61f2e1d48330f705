import type { Trip, TripIce } from "../../trip/types.ts";
import { type Lay, layersOf } from "../lay.ts";
import { offersOf, suits } from "../offer.ts";
import { dryBox, type Lump } from "./lumps.ts";
import type { Answer } from "./program.ts";
import type { Task } from "./task.ts";

const isLoose = ({ form }: Pick<TripIce, "form">): boolean => form === "cube" || form === "crushed";

/** A cooler that the plan keeps shut for the first half, and until when. */
export interface Shut {
  cooler: number;
  until_s: number;
}

/** The first meal that takes anything out of the cooler. */
export function shutOf({ lumps, trip }: Task, { place, shut }: Answer): Shut | null {
  if (shut === null) return null;
  const first = lumps.filter((_, i) => place[i] === shut).map(({ firstEaten_s }) => firstEaten_s);
  return { cooler: shut, until_s: Math.min(trip.duration_s, ...first) };
}

/** The trip with every item in its place, and the cooler for the last half kept shut until then. */
export function placedTrip(task: Task, answer: Answer): Trip {
  const { trip, lumps } = task;
  const where = new Map<number, number>();
  lumps.forEach(({ items }: Lump, i) => {
    for (const item of items) where.set(item, answer.place[i]!);
  });
  const shut = shutOf(task, answer);
  return {
    ...trip,
    food: trip.food.map((item, i) => {
      if (!item.open.place) return item;
      const place = where.get(i)!;
      return { ...item, cooler: place === dryBox ? null : place };
    }),
    coolers: trip.coolers.map((cooler, c) =>
      shut?.cooler === c ? { ...cooler, sealedUntil_s: shut.until_s } : cooler,
    ),
  };
}

/** So much ice of the first kind on offer that keeps its shape, or is loose; nothing where none of that kind is. */
export function reserveLots(
  trip: Trip,
  cooler: number,
  loose: boolean,
  mass_kg: number,
  lay: Lay,
): TripIce[] {
  const { offers } = offersOf(trip);
  const offer = offers.find((one) => isLoose(one) === loose && suits(one, trip, cooler));
  if (offer === undefined || mass_kg < 0.05) return [];
  const { form, each, each_kg, at_C, liquid_frac } = offer;
  return [
    {
      id: `reserve ${cooler} ${form}`,
      path: "supply",
      form,
      mass_kg,
      pieces: Math.max(1, Math.round(mass_kg / each_kg)),
      each,
      start_C: at_C,
      liquid_frac,
      cooler,
      layer: lay === "usual" ? null : layersOf(form, lay)[0]!,
      price: null,
      putIn_s: null,
      boughtBefore_s: 0,
    },
  ];
}

/** A placed trip with the ice that the answer reserves, to the gram: a trial of the assignment, no shopping list. */
export function withReserve(
  task: Task,
  answer: Answer,
  placed: Trip,
  { scale_frac = 1, lay = "usual" }: { scale_frac?: number; lay?: Lay } = {},
): Trip {
  const more = task.bins.flatMap((bin, c) => {
    const loose_kg = answer.loose_kg[c]! * scale_frac - bin.writtenLoose_kg;
    const firm_kg = (answer.ice_kg[c]! - answer.loose_kg[c]!) * scale_frac - bin.writtenFirm_kg;
    return [...reserveLots(placed, c, false, firm_kg, lay), ...reserveLots(placed, c, true, loose_kg, lay)];
  });
  return { ...placed, ice: [...placed.ice, ...more] };
}
