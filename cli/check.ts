import { Command } from "commander";
import { checkText, forecastProblems } from "../core/index.ts";
import { addFlags, addTrip, type Flags } from "./flags.ts";
import { openTrip } from "./openTrip.ts";
import { answer, note } from "./speak.ts";

/** `coldstow check`: reads a trip file and says what was understood, or everything that is wrong with it. */
export function checkCommand(finish: (code: number) => void): Command {
  const command = new Command("check").description("Validate a trip file, and list what is assumed.");
  return addFlags(addTrip(command)).action((name: string, flags: Flags) => {
    const { trip, units } = openTrip(name, flags, false);
    answer(flags, { problems: [], assumed: trip.assumed }, () => checkText(trip, units));
    for (const { path, must } of forecastProblems(trip))
      note(flags, `A forecast still needs ${path}: ${must}.`);
    finish(0);
  });
}
