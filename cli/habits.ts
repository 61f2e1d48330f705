import { Command } from "commander";
import { habitLadder, habits, habitsText, type Paint, standalone } from "../core/index.ts";
import { addRunFlags, addTrip, type RunFlags } from "./flags.ts";
import { sourceOf, withProgress } from "./members.ts";
import { openTrip } from "./openTrip.ts";
import { keepFiles } from "./outputs.ts";
import { WIDTH_px } from "./pictures.ts";
import { answer, paint, textWidth } from "./speak.ts";

/** `coldstow habits`: what each way of handling ice is worth on this trip. Good or bad news, it ends with 0. */
export function habitsCommand(finish: (code: number) => void): Command {
  const command = new Command("habits")
    .summary("Say what each habit is worth on this trip.")
    .description("Switch habits one by one, and say what each is worth on this trip.");
  return addRunFlags(addTrip(command), 64, 1).action(async (name: string, flags: RunFlags) => {
    const open = openTrip(name, flags, true);
    const { members, seed } = flags;
    const result = await withProgress([sourceOf(open)], flags, (run, hooks) =>
      habits(open.trip, run, { members, seed, ...hooks }),
    );
    const text = (width: number, colour: Paint): string =>
      habitsText(result, { units: open.units, width, colour });
    const svg = habitLadder(result, { width: WIDTH_px, units: open.units, id: "habits" });
    keepFiles(flags, [open], ["habits.txt", text], result, [["habits.svg", standalone(svg, "day")]]);
    answer(flags, result, () => text(textWidth(), paint()));
    finish(0);
  });
}
