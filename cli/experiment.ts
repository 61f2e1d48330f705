import { Command } from "commander";
import {
  experiment,
  experimentPoster,
  experimentText,
  noPaint,
  readExperiment,
  standalone,
  unitsOf,
  worksheet,
} from "../core/index.ts";
import { InputError } from "./failure.ts";
import { addRunFlags, type RunFlags } from "./flags.ts";
import { WIDTH_px } from "./pictures.ts";
import { readNamed } from "./readFiles.ts";
import { answer, note, paint, textWidth } from "./speak.ts";
import { writeFolder } from "./writeFolder.ts";

interface ExperimentFlags extends RunFlags {
  reveal?: true;
}

/** `coldstow experiment`: predict, run, see. Whatever comes out, it ends with 0. */
export function experimentCommand(finish: (code: number) => void): Command {
  const command = new Command("experiment")
    .summary("Guess, weigh and see: a kitchen experiment.")
    .description(
      "A kitchen experiment: a worksheet to run it from, and once you guessed, what the model thinks beside it.",
    )
    .argument("<experiment>", "file with two or three arms; - is standard input");
  return addRunFlags(command, 96, 1)
    .option("--reveal", "say what the model thinks before anybody guessed")
    .action((name: string, flags: ExperimentFlags) => {
      const file = readNamed(name);
      const reading = readExperiment(file.text);
      if (!reading.ok) throw new InputError(file.name, reading.problems);
      const { members, seed } = flags;
      const asked = reading.experiment;
      const result = experiment(asked, { members, seed });
      const units = flags.units ?? unitsOf(file.text);
      // Who measured without a guess has seen the answer already.
      const reveal = flags.reveal === true || asked.guesses.length > 0 || asked.measured.length > 0;
      const text = { units, reveal };
      const sheet = worksheet(result, { units, paper: units === "us" ? "Letter" : "A4" });
      const poster = experimentPoster(result, { width: WIDTH_px, units, id: "experiment" });
      if (flags.out !== undefined) {
        const shown: [string, string][] = [
          ["poster.svg", standalone(poster, "day")],
          ["result.json", `${JSON.stringify(result, null, 2)}\n`],
        ];
        const files = new Map([
          ["worksheet.html", sheet],
          ["experiment.txt", experimentText(result, { ...text, width: 80, colour: noPaint })],
          ...(reveal ? shown : []),
        ]);
        const paths = writeFolder(flags.out, files, file.path === null ? [] : [file.path], new Map());
        note(flags, `Wrote ${paths.length} files into ${flags.out}.`);
      }
      answer(flags, result, () => experimentText(result, { ...text, width: textWidth(), colour: paint() }));
      finish(0);
    });
}
