import type { Cover } from "../cooler/types.ts";
import type { PlaceKind } from "../sky/types.ts";
import type { FoodFile, IceAmountFile, SpotFile } from "../trip/file.ts";

/*
 * The camp log as it stands in a file or on a phone, once its shape is checked: quantities and moments are still text.
 * Entries are only ever added; an entry is taken back by another one that withdraws it.
 */

type Maybe<T> = T | undefined;

/** How much of its ice a cooler still has, by a glance: of the most it held so far. */
export type IceLevel = "full" | "3/4" | "1/2" | "1/4" | "slush" | "water";

/** What every entry has. */
interface EntryHead {
  /** Unique, made where the entry was made; 1 to 40 letters, digits, `-` and `_`. */
  id: string;
  /** When it was seen or done: local, as every moment of a trip file. */
  at: string;
  /** Which phone or person wrote it; the clock of one phone says nothing about another's. */
  by?: Maybe<string>;
}

/** Entries about one cooler: what was seen, and what was done. */
export type CoolerEntryFile = EntryHead & { cooler: string } & (
    | { ice: IceLevel }
    /** A thermometer's reading: of the air under the lid, of the meltwater, or of an item by its name. */
    | { read: string; of?: Maybe<string> }
    /** Meltwater poured off: how much, or true where nobody measured. */
    | { drained: string | true }
    | { added: IceAmountFile & { from?: Maybe<string> } }
    /** How long the lid stood open; true: a usual go. */
    | { opened: string | true }
    /** An item of the trip by its name, taken out for good; `share` of what is left, else all of it. */
    | { out: string; share?: Maybe<string> }
    | { in: FoodFile }
    | ({ moved: PlaceKind } & SpotFile)
    | { "merged into": string }
    | { covered: Cover }
    /** The cloth over it was wetted. */
    | { wetted: true }
    /** Filled with water from outside: river, rain, capsize. */
    | { swamped: true }
    /** Lost with all that was in it. */
    | { dumped: true }
  );

/** Entries that take another back, or change what the trip is. */
export type TripEntryFile = EntryHead &
  (
    | { withdraws: string }
    /** A new moment of return: an extra night, or home early. */
    | { return: string }
    /** A meal that nobody ate, such as `day 3 dinner`: what was for it stays in the cooler. */
    | { skipped: string }
    /** Two meals whose dishes change places. */
    | { swapped: [string, string] }
    /** The place, as its supply names it, that had no ice: nothing was fetched on that visit. */
    | { "none at": string }
  );

export type LogEntryFile = CoolerEntryFile | TripEntryFile;

/** What an entry says, before it has an id, a moment and a hand that wrote it. */
export type SaidEntry = Record<string, unknown>;

/** A camp log file. */
export interface LogFile {
  "coldstow-log": 1;
  /** Title of the trip that it belongs to. */
  trip?: Maybe<string>;
  entries: LogEntryFile[];
}
