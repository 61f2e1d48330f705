import { join } from "node:path";
import { type Command as Base, Command, Option } from "commander";
import {
  type Aim,
  booksText,
  type Draws,
  type Forecast,
  failuresOf,
  type IcePlan,
  joinDraws,
  type Paint,
  planIce,
  plannedYaml,
  planText,
  surePlan,
  tasksFor,
} from "../core/index.ts";
import { addRunFlags, addTrip, type RunFlags } from "./flags.ts";
import { drainBanded, sourceOf, withProgress } from "./members.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepForecast } from "./outputs.ts";
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
  addRunFlags(addTrip(command).addOption(aim), 256, 0).option(
    "--check",
    "also print the books of heat and water",
  );
  return command.action(async (name: string, flags: RunFlags & { aim: Aim; check?: true }) => {
    const open = openTrip(name, flags, true);
    const progress = new Progress(flags);
    const { plan, forecast } = await planned(open, flags, progress);
    progress.end();
    const file = plannedFile(open, plan, flags);
    const whole = withFile(await drainBanded(forecast, sourceOf(open, file), flags), flags);
    const books = flags.check ? `\n${booksText(whole)}` : "";
    const text = (width: number, colour: Paint): string =>
      planText(whole, { units: open.units, width, colour }) + books;
    keepForecast(flags, open, whole, text, new Map([[PLANNED, file]]));
    if (flags.out === undefined) note(flags, "With --out DIR the planned trip file is written there.");
    answer(flags, whole.result, () => text(textWidth(), paint()));
    const failures = failuresOf(whole.result);
    finish(plan.holds && failures.length === 0 ? 0 : 1);
  });
}

/** The plan at the trip's confidence, or with no members the middle case alone. */
async function planned(
  open: OpenTrip,
  flags: RunFlags & { aim: Aim },
  progress: Progress,
): Promise<{ plan: IcePlan; forecast: Forecast }> {
  const { aim, members, seed } = flags;
  const search = { aim, onProgress: progress.tell };
  if (members === 0) {
    const plan = planIce(open.trip, search);
    return { plan, forecast: plan.forecast };
  }
  const draw = async (plan: IcePlan): Promise<Draws> => {
    progress.end();
    const source = sourceOf(open, plannedFile(open, plan, flags));
    return joinDraws(
      await withProgress([source], flags, (run, hooks) => run(tasksFor(0, null, members, seed, true), hooks)),
    );
  };
  return surePlan(open.trip, { ...search, seed, draw });
}

function withFile(forecast: Forecast, flags: RunFlags): Forecast {
  const file = flags.out === undefined ? null : join(flags.out, PLANNED);
  return { ...forecast, result: { ...forecast.result, plan: { ...forecast.result.plan!, file } } };
}

function plannedFile(open: OpenTrip, plan: IcePlan, { aim, members }: RunFlags & { aim: Aim }): string {
  const how = members === 0 ? "middle case" : `tried on ${members} members`;
  const comment =
    plan.addedIce.length === 0 ? "No ice was added." : `Ice added by coldstow plan, aim: ${aim}; ${how}.`;
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
