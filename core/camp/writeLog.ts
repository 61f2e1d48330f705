import { stringify } from "yaml";
import type { LogEntryFile, LogFile } from "./logFile.ts";
import { entryLine, inTime } from "./mergeLogs.ts";

/** A camp log as a YAML file with one entry a line, so that a person can read it and two versions can be compared. */
export function writeLog(file: LogFile): string {
  const lines = inTime(file.entries).map((entry) => `  - ${flow(entry)}`);
  const title = file.trip === undefined ? "" : `trip: ${stringify(file.trip, { lineWidth: 0 }).trimEnd()}\n`;
  const body = lines.length === 0 ? "entries: []\n" : `entries:\n${lines.join("\n")}\n`;
  return `coldstow-log: 1\n${title}${body}`;
}

/** Id, moment and cooler first, who wrote it last, so that lines can be read from the left and do not depend on who made them. */
function flow(entry: LogEntryFile): string {
  const { id, at, by, ...rest } = JSON.parse(entryLine(entry)) as Record<string, unknown>;
  const { cooler, ...said } = rest;
  const all = {
    id,
    at,
    ...(cooler === undefined ? {} : { cooler }),
    ...said,
    ...(by === undefined ? {} : { by }),
  };
  return stringify(all, { collectionStyle: "flow", lineWidth: 0 }).trimEnd();
}
