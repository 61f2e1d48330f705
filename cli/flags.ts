import { type Command, InvalidArgumentError, Option } from "commander";

/** What every command understands. */
export interface Flags {
  json?: true;
  units?: "us" | "metric";
  quiet?: true;
}

/** What every command understands that runs members. */
export interface RunFlags extends Flags {
  out?: string;
  members: number;
  seed: number;
}

const MOST_MEMBERS = 65_536;
const MOST_SEED = 4_294_967_295;

export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < least || value > most)
      throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`);
    return value;
  };
}

/** "2027-06-18T06:30", local to the place of the trip; a date alone is its morning. */
export function localMoment(text: string): string {
  const iso = text.trim().replace(" ", "T");
  const date = new Date(`${iso.slice(0, 10)}T00:00Z`);
  const isDate = !Number.isNaN(date.getTime()) && date.toISOString().startsWith(iso.slice(0, 10));
  if (!/^\d{4}-\d{2}-\d{2}(?:T(?:[01]\d|2[0-3]):[0-5]\d)?$/.test(iso) || !isDate)
    throw new InvalidArgumentError("It must be a local date and time, as 2027-06-18T06:30.");
  return iso.length === 10 ? `${iso}T08:00` : iso;
}

/** "24-48": hours from departure. */
export function hourRange(text: string): readonly [from_h: number, to_h: number] {
  const [, from, to] = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/.exec(text) ?? [];
  if (from === undefined || to === undefined || Number(from) >= Number(to))
    throw new InvalidArgumentError("It must be two hours from departure, as 24-48.");
  return [Number(from), Number(to)];
}

/** The trip that a command is about. */
export function addTrip(command: Command): Command {
  return command.argument("<trip>", "trip file, YAML or JSON; - is standard input");
}

export function addFlags(command: Command): Command {
  return command
    .option("--json", "print the result as JSON, and nothing else")
    .addOption(
      new Option("--units <system>", "units of the text (default: as the file is typed)").choices([
        "us",
        "metric",
      ]),
    )
    .option("--quiet", "no notes and no progress");
}

/**
 * Adds the flags of commands that run members.
 *
 * @param members how many unless somebody says
 * @param least 0 where the middle case alone is an answer
 */
export function addRunFlags(command: Command, members: number, least: 0 | 1): Command {
  const size = least === 0 ? "runs to draw bands from; 0 is the middle case alone" : "runs of each way";
  return addFlags(command)
    .option("--out <dir>", "write texts, pictures and files into this folder")
    .addOption(new Option("--members <n>", size).argParser(wholeNumber(least, MOST_MEMBERS)).default(members))
    .addOption(
      new Option("--seed <n>", "which draw of runs").argParser(wholeNumber(0, MOST_SEED)).default(1),
    );
}
