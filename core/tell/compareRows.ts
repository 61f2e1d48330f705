import { massWords } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { ComparedTrip } from "../whatif/types.ts";
import { inHundred } from "./gainWords.ts";

/** What compared trips take of one thing. */
export interface CompareRow {
  what: string;
  /** A cell a trip, in their order. */
  cells: string[];
  /** Which trips take least of it, as it is shown; none where all are the same or one is not known. */
  isLeast: boolean[];
}

function rowOf(what: string, values: readonly (number | null)[], say: (value: number) => string): CompareRow {
  const cells = values.map((value) => (value === null ? "–" : say(value)));
  const known = values.flatMap((value) => (value === null ? [] : [value]));
  const smallest = known.length === values.length ? say(Math.min(...known)) : null;
  const isLeast = cells.map((cell) => cell === smallest && cells.some((other) => other !== smallest));
  return { what, cells, isLeast };
}

/** What each trip takes, a row a thing; of everything here less is better. Dry ice only where there is some. */
export function compareRows(trips: readonly ComparedTrip[], units: UnitSystem): CompareRow[] {
  const mass = (mass_kg: number): string => massWords(mass_kg, units);
  const of = (key: (trip: ComparedTrip) => number | null): (number | null)[] => trips.map(key);
  const dry = of(({ dryIce_kg }) => dryIce_kg);
  return [
    rowOf(
      "fail, of 100 members",
      of(({ fails_frac }) => fails_frac),
      (share_frac) => inHundred(share_frac).split(" ")[0]!,
    ),
    rowOf(
      "ice in all",
      of(({ ice_kg }) => ice_kg),
      mass,
    ),
    ...(dry.every((mass_kg) => mass_kg === 0) ? [] : [rowOf("dry ice", dry, mass)]),
    rowOf(
      "price of the ice",
      of(({ cost }) => cost),
      (cost) => cost.toFixed(2),
    ),
    rowOf(
      "packed, all coolers",
      of(({ packedWeight_kg }) => packedWeight_kg),
      mass,
    ),
    rowOf(
      "lids opened",
      of(({ fuss }) => fuss.openings),
      String,
    ),
    rowOf(
      "things to do on the way",
      of(({ fuss }) => fuss.acts),
      String,
    ),
  ];
}
