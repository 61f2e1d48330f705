import { Command } from "commander";
import {
  camp,
  campJson,
  campText,
  failuresOf,
  type Log,
  type LogFile,
  livedFile,
  lookLadder,
  mergeLogs,
  type Paint,
  readLog,
  readTrip,
  standalone,
  type Trip,
  writeLog,
} from "../core/index.ts";
import { InputError } from "./failure.ts";
import { addRunFlags, addTrip, localMoment, type RunFlags } from "./flags.ts";
import { sourceOf, withProgress } from "./members.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepFiles } from "./outputs.ts";
import { pictures, WIDTH_px } from "./pictures.ts";
import { readNamed } from "./readFiles.ts";
import { answer, paint, textWidth } from "./speak.ts";

interface CampFlags extends RunFlags {
  now?: string;
}

/** `coldstow camp`: what was seen and done in camp, and what it changes. */
export function campCommand(finish: (code: number) => void): Command {
  const command = addTrip(
    new Command("camp").description(
      "Forecast again from what was seen and done in camp, and say what to do now.",
    ),
  ).argument("<logs...>", "camp logs of this trip, YAML or JSON; several are joined");
  return addRunFlags(command, 256, 1)
    .option("--now <moment>", "the present, as 2027-06-18T06:30 (default: the last entry)", localMoment)
    .action(async (name: string, names: readonly string[], flags: CampFlags) => {
      const open = openTrip(name, flags, false);
      const { log, file } = joinedLogs(open.trip, names);
      const lived = livedTrip(open, log);
      const now_s = flags.now === undefined ? undefined : nowOf(lived.trip, flags.now);
      const { members, seed } = flags;
      const whole = await withProgress([sourceOf(open, lived.text)], flags, (run, hooks) =>
        camp(lived.trip, log, run, { members, seed, ...(now_s === undefined ? {} : { now_s }), ...hooks }),
      );
      const { units } = open;
      const text = (width: number, colour: Paint): string => campText(whole, { units, width, colour });
      const ladder = lookLadder(whole, { width: WIDTH_px, units, id: "looks" });
      const more: [string, string][] = [
        ["trip.lived.yaml", lived.text],
        ["log.yaml", writeLog(file)],
        ...pictures(whole.told, units),
        ...(ladder === null ? [] : [["looks.svg", standalone(ladder, "day")] as [string, string]]),
      ];
      const copies = [...open.beside].map(([other, { text: own }]) => [other, own] as const);
      keepFiles(flags, [open], ["camp.txt", text], campJson(whole), more, new Map(copies));
      answer(flags, campJson(whole), () => text(textWidth(), paint()));
      finish(failuresOf(whole.told.result).length > 0 ? 1 : 0);
    });
}

/** @throws InputError with every problem of the first log that has one */
function joinedLogs(trip: Trip, names: readonly string[]): { log: Log; file: LogFile } {
  const files = names.map((name) => {
    const { text, name: said } = readNamed(name);
    const reading = readLog(text, trip);
    if (!reading.ok) throw new InputError(said, reading.problems);
    return reading.file;
  });
  const file = mergeLogs(...files);
  const joined = readLog(writeLog(file), trip);
  if (!joined.ok) throw new InputError("the joined log", joined.problems);
  return { log: joined.log, file };
}

/** @throws InputError where the trip as lived is none, such as with food put into no cooler */
function livedTrip(open: OpenTrip, log: Log): { text: string; trip: Trip } {
  const text = livedFile(open.file.text, open.trip, log);
  const reading = readTrip(text, {
    file: open.file.name,
    readBeside: (other) => open.beside.get(other)?.text ?? null,
  });
  if (!reading.ok) throw new InputError(`${open.file.name} as lived`, reading.problems);
  return { text, trip: reading.trip };
}

/** Seconds from departure of a local moment. */
function nowOf(trip: Trip, iso: string): number {
  const at_s = (Date.parse(`${iso}Z`) - Date.parse(`${trip.depart.slice(0, 16)}Z`)) / 1000;
  return Math.max(0, at_s);
}
