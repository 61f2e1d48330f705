import { Command } from "commander";
import {
  booksText,
  enoughIce,
  failuresOf,
  forecast,
  forecastText,
  type Paint,
  type Warning,
} from "../core/index.ts";
import { addFlags, type Flags } from "./flags.ts";
import { openTrip } from "./openTrip.ts";
import { keepOutputs } from "./outputs.ts";
import { answer, note, Progress, paint, textWidth } from "./speak.ts";

/** `coldstow forecast`: what happens to this trip as written. */
export function forecastCommand(finish: (code: number) => void): Command {
  const command = new Command("forecast").description("Say what happens to this trip as written.");
  return addFlags(command).action((name: string, flags: Flags) => {
    const open = openTrip(name, flags, true);
    const progress = new Progress(flags);
    const told = forecast(open.trip, { onProgress: progress.tell });
    const enough = enoughIce(open.trip, { aim: "pieces", onProgress: progress.tell });
    progress.end();
    const warnings: Warning[] = [
      ...told.result.warnings,
      ...enough.map(({ says }, i) => ({ code: "ice-enough", says, path: `coolers[${i}]` })),
      ...ensembleWarning(flags),
    ];
    const whole = { ...told, result: { ...told.result, warnings } };
    const books = flags.check ? `\n${booksText(whole)}` : "";
    const text = (width: number, colour: Paint): string =>
      forecastText(whole, { units: open.units, width, colour }) + books;
    keepOutputs(flags, open, whole, text);
    answer(flags, whole.result, () => text(textWidth(), paint()));
    finish(failuresOf(whole.result).length > 0 ? 1 : 0);
  });
}

/** Bands hold the middle case alone in this version; whoever asked for members is told. */
export function ensembleWarning(flags: Flags): Warning[] {
  if (!flags.members) return [];
  const says = `no ensemble in this version: --members ${flags.members} is read, and every band holds the middle case alone`;
  note(flags, `Note: ${says}.`);
  return [{ code: "middle-case-only", says, path: "" }];
}
