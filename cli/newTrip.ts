import { readFileSync } from "node:fs";
import { Command } from "commander";
import { newTripText, readTrip, type Template, templates } from "../core/index.ts";
import { inputError } from "./failure.ts";
import { type Flags, localMoment, wholeNumber } from "./flags.ts";
import { note } from "./speak.ts";
import { writeFile } from "./writeFile.ts";

interface NewFlags extends Flags {
  adults?: number;
  children?: number;
  depart?: string;
  return?: string;
  out?: string;
  force?: true;
}

/** `coldstow new`: a trip file of one's own from a template. */
export function newTripCommand(finish: (code: number) => void): Command {
  const names = templates.map(({ name, says }) => `  ${name.padEnd(10)}${says}`).join("\n");
  return new Command("new")
    .summary("Begin a trip file from a template.")
    .description("Begin a trip file from a template, with your own party and dates.")
    .argument("<template>", `one of ${templates.map(({ name }) => name).join(", ")}`)
    .option("--adults <n>", "how many adults", wholeNumber(0, 500))
    .option("--children <n>", "how many children", wholeNumber(0, 500))
    .option("--depart <moment>", "local date and time, as 2027-06-18T06:30", localMoment)
    .option("--return <moment>", "the same; without it the trip keeps its length", localMoment)
    .option("--out <file>", "write there instead of printing")
    .option("--force", "write over a file that is there")
    .option("--quiet", "no notes")
    .addHelpText("after", `\nTemplates, all invented:\n${names}`)
    .action((name: string, flags: NewFlags) => {
      const template = templates.find((one) => one.name === name);
      if (template === undefined) {
        const known = templates.map((one) => one.name).join(", ");
        throw inputError(name, "template", `one of ${known}`, name);
      }
      const { out, force, quiet, ...wanted } = flags;
      const text = newTripText(exampleText(template), wanted);
      tellRest(text, wanted, flags);
      if (out === undefined) process.stdout.write(text);
      else writeFile(out, text, force === true);
      finish(0);
    });
}

/** The template's text, from the folder that ships with the program. */
function exampleText({ file }: Template): string {
  // The built file lies two folders below the examples' folder, the source one.
  for (const place of ["../../examples/", "../examples/"]) {
    try {
      return readFileSync(new URL(place + file, import.meta.url), "utf8");
    } catch {}
  }
  throw inputError(file, "template", "a template that was installed with the program", "nothing there");
}

/** What does not follow by itself. */
function tellRest(text: string, wanted: { adults?: number; children?: number }, flags: Flags): void {
  const reading = readTrip(text, { file: "new" });
  if (!reading.ok) {
    note(flags, "Still to be mended, since the dates changed:");
    for (const { line, path, must } of reading.problems)
      note(flags, `  line ${line ?? "?"}, ${path}: must be ${must}`);
    return;
  }
  if (wanted.adults === undefined && wanted.children === undefined) return;
  const fixed = reading.trip.food.filter(({ portion }) => portion === null).length;
  if (fixed > 0)
    note(
      flags,
      `${fixed} ${fixed === 1 ? "food has" : "foods have"} a fixed amount and did not follow the party; write "per person" for "amount" to let it follow.`,
    );
}
