import type { LogEntryFile, LogFile, Problem, UnitSystem } from "../../core/index.ts";

/*
 * What the Camp place asks of the desk: everything that needs the trip read, or YAML. Plain data.
 */

/** One entry as a page shows it. */
export interface Logged {
  id: string;
  at_ms: number;
  by: string | null;
  /** Name of its cooler; null: it is about no single one. */
  cooler: string | null;
  says: string;
  file: LogEntryFile;
  isWithdrawn: boolean;
}

/** Something that can be added by the bag. */
export interface IceKind {
  form: string;
  each: string;
}

/** What a page has to know of a trip to log on it. */
export interface CampFacts {
  title: string;
  timezone: string;
  /** Local ISO, as typed. */
  depart: string;
  depart_ms: number;
  return_ms: number;
  coolers: readonly string[];
  /** Food and drink, with the cooler that the file puts it in; null: none. */
  items: readonly { name: string; cooler: string | null; like: string }[];
  /** Ice of the trip and of its shops, each kind once. */
  ice: readonly IceKind[];
  /** Meals by day, as a log names them: "day 3 dinner". */
  meals: readonly { name: string; at_ms: number }[];
  /** Places that sell ice on the way. */
  shops: readonly string[];
  /** Highest and lowest air by day, as typed; the last repeats. Empty for hourly weather. */
  days: readonly { high: string; low: string }[];
}

export interface LogOnDesk {
  /** Mistakes of the trip, or entries that do not fit it any more. */
  problems: readonly Problem[];
  /** null: the trip has mistakes. */
  facts: CampFacts | null;
  /** In order of time; empty where there are problems. */
  entries: readonly Logged[];
}

/** Another log, read and laid beside one's own, before anything is joined. */
export interface JoinOnDesk {
  problems: readonly Problem[];
  /** Entries of the other that are not in one's own. */
  fresh: readonly Logged[];
  nClashes: number;
  /** Title in the other's file; null: none. */
  title: string | null;
  /** The other's log; null where there are problems. */
  other: LogFile | null;
}

export type LogAsk =
  | { do: "log"; text: string; log: LogFile; units: UnitSystem }
  | { do: "join"; text: string; log: LogFile; other: string; units: UnitSystem }
  | { do: "writeLog"; log: LogFile };

export interface LogAnswers {
  log: LogOnDesk;
  join: JoinOnDesk;
  writeLog: string;
}
