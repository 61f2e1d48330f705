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
import { unitsOf } from "./units.ts";

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
    at: typedAt(open, form, start_C),
    liquid: `${Number((100 * liquid_frac).toFixed(4))} %`,
    in: open.trip.coolers[cooler]!.name,
    layer,
    price,
  }));
  return plannedYaml(open.file.text, added, comment);
}

/**
 * How cold a form of ice is, in the person's own words where they wrote it for supply or ice, else in the unit of the
 * file: a number of theirs is never handed back converted.
 */
function typedAt({ trip, file }: OpenTrip, form: string, start_C: number): string {
  const typed = trip.typed as Record<"supply" | "ice", readonly { at?: string }[] | undefined>;
  const supply = trip.supply.map((lot, i) => ({ ...lot, start_C: lot.at_C, at: typed.supply?.[i]?.at }));
  const ice = trip.ice.map((lot, i) => ({ ...lot, at: typed.ice?.[i]?.at }));
  const own = [...supply, ...ice].find(
    (lot) => lot.form === form && lot.start_C === start_C && lot.at !== undefined,
  );
  if (own?.at !== undefined) return own.at;
  return unitsOf(file.text) === "us"
    ? `${Number((start_C * 1.8 + 32).toFixed(4))} F`
    : `${Number(start_C.toFixed(4))} C`;
}
