import type { IceForm } from "../cooler/types.ts";
import type { IcePiece } from "../forecast/planResult.ts";
import type { Trip } from "../trip/types.ts";
import { FROM_FILE, usualWhere } from "./offer.ts";

/** Where a piece comes from; what the file has aboard comes from where its kind usually does. */
export function fromWhere(piece: IcePiece): string {
  return piece.where === FROM_FILE ? usualWhere(piece.form as IceForm) : piece.where;
}

export const isFromHome = (piece: IcePiece): boolean => fromWhere(piece).trim().toLowerCase() === "home";

/** The size of a piece as the person typed it. */
export function eachWords(trip: Trip, { form, each_kg }: IcePiece): string {
  const lots = [
    ...trip.supply.map(({ form, each, each_kg }) => ({ form, each, each_kg })),
    ...trip.ice.map(({ form, each, mass_kg, pieces }) => ({ form, each, each_kg: mass_kg / pieces })),
  ];
  const same = lots.find((lot) => lot.form === form && Math.abs(lot.each_kg - each_kg) < 1e-3 * each_kg);
  return same?.each ?? `${Number(each_kg.toPrecision(2))} kg`;
}
