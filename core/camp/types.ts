import type { LogEntryFile } from "./logFile.ts";

/** An entry whose moment, cooler and quantities were read against its trip. */
export interface Entry {
  id: string;
  /** Since departure. */
  t_s: number;
  /** Index into the trip's coolers; null: it is about no single one. */
  cooler: number | null;
  /** As it stands in the log, with quantities as typed. */
  file: LogEntryFile;
  /** The entry that withdraws it; null: it stands. */
  withdrawnBy: string | null;
}

/** A log read against its trip; entries in order of time, those of one moment by id. */
export interface Log {
  entries: readonly Entry[];
}
