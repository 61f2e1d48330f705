import { join } from "node:path";
import { type Command as Base, Command, Option } from "commander";
import {
  type Aim,
  booksText,
  failuresOf,
  type IcePlan,
  type Paint,
  planIce,
  plannedYaml,
  planText,
} from "../core/index.ts";
import { addFlags, type Flags } from "./flags.ts";
import { ensembleWarning } from "./forecast.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepOutputs } from "./outputs.ts";
import { answer, note, Progress, paint, textWidth } from "./speak.ts";

const PLANNED = "trip.planned.yaml";

/** `coldstow plan`: the least ice that does, in pieces that can be had, and the forecast of the trip so planned. */
export function planCommand(finish: (code: number) => void): Base {
  const command = new Command("plan").description(
    "Find the least ice that keeps the food cold. Ice in the file stays and is added to; leave it out to plan from nothing.",
  );
  const aim = new Option("--aim <what>", "what to have least of")
    .choices(["pieces", "weight", "cost"])
    .default("pieces");
  return addFlags(command.addOption(aim)).action((name: string, flags: Flags & { aim: Aim }) => {
    const open = openTrip(name, flags, true);
    const progress = new Progress(flags);
    const plan = planIce(open.trip, { aim: flags.aim, onProgress: progress.tell });
    progress.end();
    const whole = withFile(plan, flags);
    const books = flags.check ? `\n${booksText(whole)}` : "";
    const text = (width: number, colour: Paint): string =>
      planText(whole, { units: open.units, width, colour }) + books;
    const planned = new Map([[PLANNED, plannedFile(open, plan, flags.aim)]]);
    keepOutputs(flags, open, whole, text, planned);
    if (flags.out === undefined) note(flags, "With --out DIR the planned trip file is written there.");
    answer(flags, whole.result, () => text(textWidth(), paint()));
    finish(plan.holds && failuresOf(whole.result).length === 0 ? 0 : 1);
  });
}

function withFile({ forecast }: IcePlan, flags: Flags): IcePlan["forecast"] {
  const file = flags.out === undefined ? null : join(flags.out, PLANNED);
  const plan = { ...forecast.result.plan!, file };
  const warnings = [...forecast.result.warnings, ...ensembleWarning(flags)];
  return { ...forecast, result: { ...forecast.result, plan, warnings } };
}

function plannedFile(open: OpenTrip, plan: IcePlan, aim: Aim): string {
  const comment =
    plan.addedIce.length === 0
      ? "No ice was added."
      : `Ice added by coldstow plan, aim: ${aim}; middle case.`;
  const added = plan.addedIce.map(({ form, pieces, each, start_C, liquid_frac, cooler, layer, price }) => ({
    form,
    pieces,
    each,
    at: `${Number(start_C.toFixed(4))} C`,
    liquid: `${Number((100 * liquid_frac).toFixed(4))} %`,
    in: open.trip.coolers[cooler]!.name,
    layer,
    price,
  }));
  return plannedYaml(open.file.text, added, comment);
}
