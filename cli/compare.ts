import { Command } from "commander";
import { compare, compareBands, compareText, type Paint, standalone } from "../core/index.ts";
import { inputError } from "./failure.ts";
import { addRunFlags, type RunFlags } from "./flags.ts";
import { sourceOf, withProgress } from "./members.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepFiles } from "./outputs.ts";
import { WIDTH_px } from "./pictures.ts";
import { answer, paint, textWidth } from "./speak.ts";

const MOST_TRIPS = 6;

/** `coldstow compare`: trips side by side over the same weather and the same unknowns. It says which, not whether. */
export function compareCommand(finish: (code: number) => void): Command {
  const command = new Command("compare")
    .description("Set two to six trip files side by side: A, B, …")
    .argument("<trips...>", "trip files, YAML or JSON; one of them may be - for standard input");
  return addRunFlags(command, 256, 1).action(async (names: readonly string[], flags: RunFlags) => {
    const opened = openAll(names, flags);
    const { members, seed } = flags;
    const trips = opened.map(({ trip, file }) => ({ trip, file: file.name }));
    const result = await withProgress(
      opened.map((open) => sourceOf(open)),
      flags,
      (run, hooks) => compare(trips, run, { members, seed, ...hooks }),
    );
    const { units } = opened[0]!;
    const text = (width: number, colour: Paint): string => compareText(result, { units, width, colour });
    const svg = compareBands(result, { width: WIDTH_px, units, id: "compare" });
    keepFiles(flags, opened, ["compare.txt", text], result, [["compare.svg", standalone(svg, "day")]]);
    answer(flags, result, () => text(textWidth(), paint()));
    finish(0);
  });
}

/** @throws InputError for too few or too many files, for a file named twice, and for every mistake in one */
function openAll(names: readonly string[], flags: RunFlags): OpenTrip[] {
  if (names.length < 2 || names.length > MOST_TRIPS)
    throw inputError("compare", "TRIP …", `two to ${MOST_TRIPS} trip files`, String(names.length));
  const opened: OpenTrip[] = [];
  for (const name of names) {
    if (opened.some(({ file }) => file.path === null && name === "-"))
      throw inputError("compare", "TRIP …", "standard input once at most", "- twice");
    const open = openTrip(name, flags, true);
    const same = opened.find(({ file }) => file.path === open.file.path);
    if (same !== undefined)
      throw inputError(
        "compare",
        "TRIP …",
        "different files",
        `${same.file.name} and ${name}, which are one file`,
      );
    opened.push(open);
  }
  return opened;
}
