import { type Command, InvalidArgumentError, Option } from "commander";

/** What every command understands. */
export interface Flags {
  json?: true;
  units?: "us" | "metric";
  out?: string;
  members?: number;
  seed?: number;
  quiet?: true;
  check?: true;
}

function wholeNumber(most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value > most)
      throw new InvalidArgumentError(`It must be a whole number from 0 to ${most}.`);
    return value;
  };
}

/** Adds the flags of `forecast` and `plan`; `check` has the first three of them. */
export function addFlags(command: Command): Command {
  return addReadFlags(command)
    .option("--out <dir>", "write texts, pictures and files into this folder")
    .addOption(
      new Option("--members <n>", "size of the ensemble; 0 is the middle case alone").argParser(
        wholeNumber(65_536),
      ),
    )
    .addOption(new Option("--seed <n>", "seed of the ensemble").argParser(wholeNumber(4_294_967_295)))
    .option("--check", "also print the books of heat and water");
}

export function addReadFlags(command: Command): Command {
  return command
    .argument("<trip>", "trip file, YAML or JSON; - is standard input")
    .option("--json", "print the result as JSON, and nothing else")
    .addOption(
      new Option("--units <system>", "units of the text (default: as the file is typed)").choices([
        "us",
        "metric",
      ]),
    )
    .option("--quiet", "no notes and no progress");
}
