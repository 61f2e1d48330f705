import { Command } from "commander";
import { type Paint, standalone, stress, stressGrid, stressText } from "../core/index.ts";
import { addRunFlags, addTrip, type RunFlags } from "./flags.ts";
import { sourceOf, withProgress } from "./members.ts";
import { openTrip } from "./openTrip.ts";
import { keepFiles } from "./outputs.ts";
import { WIDTH_px } from "./pictures.ts";
import { answer, paint, textWidth } from "./speak.ts";

/** `coldstow stress`: whether the trip still holds when things go wrong. It fails only when the trip as written does. */
export function stressCommand(finish: (code: number) => void): Command {
  const command = new Command("stress")
    .summary("Say what breaks first when things go worse.")
    .description(
      "Try the trip hotter, opened twice as often, without shade, with half the ice, started warm.",
    );
  return addRunFlags(addTrip(command), 128, 1).action(async (name: string, flags: RunFlags) => {
    const open = openTrip(name, flags, true);
    const { members, seed } = flags;
    const result = await withProgress([sourceOf(open)], flags, (run, hooks) =>
      stress(open.trip, run, { members, seed, ...hooks }),
    );
    const text = (width: number, colour: Paint): string =>
      stressText(result, { units: open.units, width, colour });
    const svg = stressGrid(result, { width: WIDTH_px, units: open.units, id: "stress" });
    keepFiles(flags, [open], ["stress.txt", text], result, [["stress.svg", standalone(svg, "day")]]);
    answer(flags, result, () => text(textWidth(), paint()));
    finish(result.cases.find(({ key }) => key === "as written")!.holds ? 0 : 1);
  });
}
