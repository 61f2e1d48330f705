import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { Command } from "commander";
import {
  type CloseOutResult,
  closeOut,
  closeOutText,
  historyBands,
  historyText,
  type Paint,
  readCloseOut,
  standalone,
  type Trip,
  type TripSource,
  tripsOf,
  withoutOwnRecord,
  withoutRecord,
  withRecord,
} from "../core/index.ts";
import { InputError, inputError } from "./failure.ts";
import { addRunFlags, addTrip, type RunFlags } from "./flags.ts";
import { sourceOf, withProgress } from "./members.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepFiles } from "./outputs.ts";
import { WIDTH_px } from "./pictures.ts";
import { readNamed } from "./readFiles.ts";
import { answer, note, paint, textWidth } from "./speak.ts";
import { writeFile } from "./writeFile.ts";
import { fileNames } from "./writeFolder.ts";

interface CloseOutFlags extends RunFlags {
  keep?: true;
}

/** `coldstow closeout`: what a trip taught. Whatever it finds, it ends with 0. */
export function closeOutCommand(finish: (code: number) => void): Command {
  const command = addTrip(
    new Command("closeout")
      .summary("Learn from a trip for the next one.")
      .description("Learn from a trip: its coolers' walls, and what to take next time."),
  ).argument("<seen>", "what was left, binned and wrong; - is standard input");
  return addRunFlags(command, 256, 1)
    .option("--keep", "write each cooler's history beside the trip file")
    .action(async (name: string, seenName: string, flags: CloseOutFlags) => {
      if (name === "-" && seenName === "-") throw inputError("-", "", "one file from standard input", "two");
      const open = openTrip(name, flags, true);
      const { trip, source } = withoutItself(open);
      const file = readNamed(seenName);
      const reading = readCloseOut(file.text, trip);
      if (!reading.ok) throw new InputError(file.name, reading.problems);
      const { members, seed } = flags;
      const result = await withProgress([source], flags, (run, hooks) =>
        closeOut(trip, reading.closeOut, run, { members, seed, ...hooks }),
      );
      const histories = historiesOf(trip, source, result);
      const text = (width: number, colour: Paint): string =>
        closeOutText(result, { units: open.units, width, colour });
      const seen = { ...open, file, beside: new Map() };
      const more = [...histories, ...picturesOf(result, open)];
      keepFiles(flags, [open, seen], ["closeout.txt", text], result, more);
      answer(flags, result, () => text(textWidth(), paint()));
      if (flags.keep) keepHistories(open, histories, flags);
      finish(0);
    });
}

/** A trip teaches once: what its histories hold of this very trip must not be believed before it is told anew. */
function withoutItself(open: OpenTrip): { trip: Trip; source: TripSource } {
  const names = new Set(open.trip.coolers.map(({ history }) => history?.file));
  const itself = { trip: open.trip.title, ended: open.trip.return };
  const source = sourceOf(open);
  const beside = source.beside.map(
    ([name, text]) => [name, names.has(name) ? withoutRecord(text, itself) : text] as const,
  );
  const told = { ...source, text: withoutOwnRecord(source.text, itself), beside };
  return { trip: tripsOf([told])[0]!, source: told };
}

/** The history of every cooler that something was learned of, as name and text of its file. */
function historiesOf(trip: Trip, source: TripSource, result: CloseOutResult): [string, string][] {
  const names = fileNames(trip.coolers.map(({ name }) => name));
  return result.coolers.flatMap(({ name, before_W_per_K, learned_W_per_K }): [string, string][] => {
    if (before_W_per_K === null || learned_W_per_K === null) return [];
    const at = trip.coolers.findIndex((cooler) => cooler.name === name);
    const earlier = trip.coolers[at]!.history;
    const known = earlier?.file ?? null;
    const inFile = earlier === null ? null : historyText(earlier);
    const text = known === null ? inFile : (source.beside.find(([other]) => other === known)?.[1] ?? null);
    const record = {
      trip: trip.title,
      ended: trip.return,
      from: "close-out",
      conductance_W_per_K: learned_W_per_K,
    } as const;
    return [[known ?? `${names[at]}.history.yaml`, withRecord(text, name, before_W_per_K, record)]];
  });
}

/** Beside the trip file: over the histories that it names, and into new files for the others. */
function keepHistories(open: OpenTrip, histories: readonly [string, string][], flags: CloseOutFlags): void {
  const folder = open.file.path === null ? "." : dirname(open.file.path);
  const named = new Set(open.trip.coolers.map(({ history }) => history?.file));
  for (const [name, text] of histories) {
    const path = join(folder, name);
    if (!named.has(name) && existsSync(path))
      throw inputError(path, "--keep", `a trip that names ${name} under history, since it is there`, "none");
    writeFile(path, text, named.has(name));
    note(
      flags,
      named.has(name)
        ? `Kept in ${name}.`
        : `Kept in ${name}: write "history: ${name}" at that cooler, and the next forecast begins there.`,
    );
  }
  if (histories.length === 0) note(flags, "Nothing was learned of a cooler; no history was written.");
}

/** What is known of each cooler, trip by trip, as `NAME-history.svg`. */
function picturesOf(result: CloseOutResult, open: OpenTrip): [string, string][] {
  const told = result.coolers.filter(({ next_W_per_K }) => next_W_per_K !== null);
  const names = fileNames(told.map(({ name }) => name));
  return told.map((cooler, i) => {
    const earlier = open.trip.coolers.find(({ name }) => name === cooler.name)?.history ?? null;
    const svg = historyBands(cooler, earlier, result.trip, {
      width: WIDTH_px,
      units: open.units,
      id: `history${i}`,
    });
    return [`${names[i]}-history.svg`, standalone(svg, "day")];
  });
}
