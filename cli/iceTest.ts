import { Command } from "commander";
import {
  type IceTest,
  type IceTestResult,
  iceTest,
  iceTestFit,
  iceTestText,
  noPaint,
  readIceTest,
  standalone,
  unitsOf,
  withRecord,
} from "../core/index.ts";
import { InputError } from "./failure.ts";
import { addFlags, type Flags } from "./flags.ts";
import { WIDTH_px } from "./pictures.ts";
import { readBeside, readNamed, type TextFile } from "./readFiles.ts";
import { answer, note, paint, textWidth } from "./speak.ts";
import { fileNames, writeFolder } from "./writeFolder.ts";

interface IceTestFlags extends Flags {
  out?: string;
}

/** `coldstow icetest`: learns one cooler from weighed ice. A test that does not tell ends with 1; one that only begins, with 0. */
export function iceTestCommand(finish: (code: number) => void): Command {
  const command = new Command("icetest")
    .summary("Learn a cooler from ice weighed at home.")
    .description("Learn a cooler from ice weighed at home; before anything is weighed: how to run the test.")
    .argument("<test>", "file with cooler, room, ice and weights; - is standard input");
  return addFlags(command)
    .option("--out <dir>", "write the text, the result, a picture and the cooler's history into this folder")
    .action((name: string, flags: IceTestFlags) => {
      const file = readNamed(name);
      const { test, read } = opened(file);
      const result = iceTest(test);
      const units = flags.units ?? unitsOf(file.text);
      if (flags.out !== undefined) {
        const files = new Map([
          ["icetest.txt", iceTestText(result, { units, width: 80, colour: noPaint })],
          ["result.json", `${JSON.stringify(result, null, 2)}\n`],
          ["fit.svg", standalone(iceTestFit(result, { width: WIDTH_px, units, id: "fit" }), "day")],
          ...historyOf(result),
        ]);
        const paths = writeFolder(
          flags.out,
          files,
          [...(file.path === null ? [] : [file.path]), ...read],
          new Map(),
        );
        note(flags, `Wrote ${paths.length} files into ${flags.out}.`);
      }
      answer(flags, result, () => iceTestText(result, { units, width: textWidth(), colour: paint() }));
      finish(result.tells || result.weighings.length === 0 ? 0 : 1);
    });
}

function opened(file: TextFile): { test: IceTest; read: string[] } {
  const read: string[] = [];
  const refused = new Map<string, { must: string; got: string }>();
  const reading = readIceTest(file.text, (name) => {
    const found = readBeside(file, name);
    if ("text" in found) {
      read.push(found.path);
      return found.text;
    }
    refused.set(name, found);
    return null;
  });
  if (reading.ok) return { test: reading.test, read };
  // The reader knows only that it got no text; why not is known here.
  throw new InputError(
    file.name,
    reading.problems.map((problem) => ({ ...problem, ...refused.get(problem.got) })),
  );
}

/** What the test says by itself, as the history that a trip names at its cooler. */
function historyOf({
  test,
  class_W_per_K: before,
  learned_W_per_K: learned,
}: IceTestResult): [string, string][] {
  if (learned === null) return [];
  const record = {
    trip: test.title,
    ended: test.ended,
    from: "ice test",
    conductance_W_per_K: learned,
  } as const;
  const [name] = fileNames([test.cooler]);
  return [[`${name}.history.yaml`, withRecord(null, test.cooler, before, record)]];
}
