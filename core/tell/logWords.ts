import type { IceLevel, LogEntryFile } from "../camp/logFile.ts";
import { parseQuantity } from "../quantity/parse.ts";
import { quantityWords } from "../quantity/show.ts";
import type { Dimension, UnitSystem } from "../quantity/units.ts";
import { printable } from "./words.ts";

/** How a level of ice is called beside its picture. */
export const iceLevelWords: Readonly<Record<IceLevel, string>> = {
  full: "full",
  "3/4": "¾",
  "1/2": "½",
  "1/4": "¼",
  slush: "slush",
  water: "water",
};

/**
 * What an entry of a camp log says, without its moment and without its cooler's name: "ice at ½". Quantities are as
 * typed where their unit belongs to the reader's family. It says nothing of an entry that was withdrawn since.
 */
export function entryWords(entry: LogEntryFile, units: UnitSystem): string {
  const said = (typed: string, dimension: Dimension): string => {
    const reading = parseQuantity(typed, dimension);
    return reading.ok ? quantityWords(reading.quantity, units) : printable(typed);
  };
  if ("ice" in entry) return iceWords(entry.ice);
  if ("read" in entry) return `${said(entry.read, "temperature")} in ${placeWords(entry.of)}`;
  if ("drained" in entry)
    return entry.drained === true ? "water let out" : `${said(entry.drained, "volume")} of water let out`;
  if ("added" in entry) return `ice added: ${addedWords(entry.added)}`;
  if ("opened" in entry)
    return entry.opened === true ? "opened" : `stood open for ${said(entry.opened, "duration")}`;
  if ("out" in entry) return `${shareWords(entry.share)}${printable(entry.out)} taken out`;
  if ("in" in entry) return `${printable(entry.in.name)} put in${beside(entry.in.amount)}`;
  return plainWords(entry);
}

function iceWords(level: IceLevel): string {
  if (level === "slush") return "slush, no solid ice";
  return level === "water" ? "water, no ice" : `ice at ${iceLevelWords[level]}`;
}

function placeWords(of: string | undefined): string {
  if (of === undefined || of === "air") return "the air under the lid";
  return of === "water" ? "the meltwater" : printable(of);
}

const beside = (amount: string | undefined): string => (amount === undefined ? "" : `, ${printable(amount)}`);

function addedWords({
  form,
  amount,
  pieces,
  each,
}: {
  form: string;
  amount?: string | undefined;
  pieces?: number | undefined;
  each?: string | undefined;
}): string {
  if (amount !== undefined) return `${printable(amount)} of ${form}`;
  return `${pieces ?? 1} × ${printable(each ?? "")} ${form}`;
}

const shareWords = (share: string | undefined): string =>
  share === undefined ? "" : `${printable(share)} of `;

/** Entries whose words hold no quantity. */
function plainWords(entry: LogEntryFile): string {
  if ("moved" in entry) return `moved: ${entry.moved}`;
  if ("merged into" in entry) return `emptied into ${printable(entry["merged into"])}`;
  if ("covered" in entry) return entry.covered === "none" ? "cover taken off" : `covered: ${entry.covered}`;
  if ("wetted" in entry) return "cloth wetted";
  if ("swamped" in entry) return "swamped: water came in from outside";
  if ("dumped" in entry) return "lost with all that was in it";
  if ("return" in entry) return `home at ${printable(entry.return)}`;
  if ("skipped" in entry) return `${printable(entry.skipped)} was not eaten`;
  if ("swapped" in entry) return `${entry.swapped.map(printable).join(" and ")} change places`;
  if ("none at" in entry) return `no ice to be had at ${printable(entry["none at"])}`;
  return "taken back";
}
