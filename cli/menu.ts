import { Command } from "commander";
import { type MenuReading, menuYaml, readMenuCsv, readTrip, withMenu } from "../core/index.ts";
import { InputError, inputError } from "./failure.ts";
import { type Flags, localMoment } from "./flags.ts";
import { openTrip } from "./openTrip.ts";
import { readBeside, readNamed } from "./readFiles.ts";
import { answer, note } from "./speak.ts";
import { writeFile } from "./writeFile.ts";

interface MenuFlags extends Flags {
  into?: string;
  depart?: string;
  out?: string;
  force?: true;
}

/** `coldstow menu`: the foods of a spreadsheet as a trip file says them, or a trip file with them added. */
export function menuCommand(finish: (code: number) => void): Command {
  return new Command("menu")
    .summary("Turn a spreadsheet (CSV) into food of a trip file.")
    .description(
      "Turn a menu from a spreadsheet (CSV, a heading line, a food a line) into food entries of a trip file. What had to be guessed is said.",
    )
    .argument("<menu>", "CSV file; - is standard input")
    .option("--into <trip>", "print this trip file with the foods added")
    .option("--depart <moment>", "day of departure, where the menu names days of the week", localMoment)
    .option("--out <file>", "write there instead of printing")
    .option("--force", "write over a file that is there")
    .option("--json", "print foods and notes as JSON, and nothing else")
    .option("--quiet", "no notes")
    .action((name: string, flags: MenuFlags) => {
      if (name === "-" && flags.into === "-")
        throw inputError("-", "", "one file from standard input", "two");
      const open = flags.into === undefined ? null : openTrip(flags.into, flags, false);
      const file = readNamed(name);
      const depart = flags.depart ?? open?.trip.depart;
      const menu = readMenuCsv(file.text, depart === undefined ? {} : { depart });
      if (menu.problems.length > 0) throw new InputError(file.name, menu.problems);
      const text = open === null ? menuYaml(menu.foods) : added(open.file, menu);
      for (const { line, says } of menu.notes) note(flags, `line ${line}: ${says}`);
      if (flags.out !== undefined) writeFile(flags.out, text, flags.force === true);
      if (flags.out === undefined || flags.json)
        answer(flags, { foods: menu.foods, notes: menu.notes }, () => text);
      finish(0);
    });
}

/** The trip file with the foods, once it is known that it can be read with them. */
function added(file: ReturnType<typeof readNamed>, menu: MenuReading): string {
  const text = withMenu(file.text, menu.foods);
  const reading = readTrip(text, {
    file: file.name,
    readBeside: (other) => {
      const found = readBeside(file, other);
      return "text" in found ? found.text : null;
    },
  });
  if (!reading.ok) throw new InputError(`${file.name} with the menu`, reading.problems);
  return text;
}
