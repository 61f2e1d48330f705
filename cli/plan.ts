import { join } from "node:path";
import { type Command as Base, Command, Option } from "commander";
import {
  type Aim,
  bookPictures,
  booksText,
  type Forecast,
  failuresOf,
  highsSolver,
  joinDraws,
  type Paint,
  type Planned,
  planCalendar,
  plannedFile,
  planText,
  tasksFor,
  tripBook,
  unitsOf,
  type WholeOptions,
  type WholePlan,
  wholePlan,
} from "../core/index.ts";
import { addRunFlags, addTrip, type RunFlags } from "./flags.ts";
import { warmThreads } from "./memberPool.ts";
import { drainBanded, sourceOf, withProgress } from "./members.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepForecast } from "./outputs.ts";
import { answer, note, Progress, paint, textWidth } from "./speak.ts";

const PLANNED = "trip.planned.yaml";
const BOOK = "book.html";
const CALENDAR = "countdown.ics";

type PlanFlags = RunFlags & { aim: Aim; paper: "A4" | "Letter"; check?: true };

/** `coldstow plan`: decides what the file leaves open, and writes the planned trip, the trip book and the calendar. */
export function planCommand(finish: (code: number) => void): Base {
  const command = new Command("plan")
    .summary("Decide what the file leaves open.")
    .description(
      "Decide what the file leaves open: what is frozen, which food goes where, how much ice, merges, ice runs. What the file says stays.",
    );
  const aim = new Option("--aim <what>", "what to have least of")
    .choices(["pieces", "weight", "cost"])
    .default("pieces");
  const paper = new Option("--paper <size>", "paper of the trip book").choices(["A4", "Letter"]);
  addRunFlags(addTrip(command).addOption(aim).addOption(paper), 256, 0).option(
    "--check",
    "also print the books of heat and water",
  );
  return command.action(async (name: string, flags: PlanFlags) => {
    const open = openTrip(name, flags, false);
    const progress = new Progress(flags);
    const { forecast, planned, holds } = await planOf(open, flags, progress);
    progress.end();
    const file = fileOf(open, planned, flags);
    const whole = withFiles(await drainBanded(forecast, sourceOf(open, file), flags), flags);
    const books = flags.check ? `\n${booksText(whole)}` : "";
    const text = (width: number, colour: Paint): string =>
      planText(whole, { units: open.units, width, colour }) + books;
    if (flags.out !== undefined) keepForecast(flags, open, whole, text, filesOf(open, whole, file, flags));
    else note(flags, "With --out DIR the planned trip file, the trip book and a calendar are written there.");
    answer(flags, whole.result, () => text(textWidth(), paint()));
    finish(holds && failuresOf(whole.result).length === 0 ? 0 : 1);
  });
}

async function planOf(open: OpenTrip, flags: PlanFlags, progress: Progress): Promise<WholePlan> {
  const { aim, members, seed } = flags;
  if (members > 0) warmThreads();
  const draw: WholeOptions["draw"] = async (planned, count, only) => {
    progress.end();
    const source = sourceOf(open, fileOf(open, planned, flags));
    const isAll = count === "all";
    const tasks = tasksFor(0, null, isAll ? members : count, seed, isAll, only);
    return joinDraws(await withProgress([source], flags, (run, hooks) => run(tasks, hooks)));
  };
  const solve = await highsSolver();
  return wholePlan(open.trip, { aim, members, seed, solve, draw, onProgress: progress.tell });
}

const inOut = (flags: PlanFlags, name: string): string | null =>
  flags.out === undefined ? null : join(flags.out, name);

function withFiles(forecast: Forecast, flags: PlanFlags): Forecast {
  const file = inOut(flags, PLANNED);
  const book = inOut(flags, BOOK);
  const calendar = inOut(flags, CALENDAR);
  const plan = { ...forecast.result.plan!, file, book, calendar };
  return { ...forecast, result: { ...forecast.result, plan } };
}

function filesOf(
  open: OpenTrip,
  forecast: Forecast,
  file: string,
  flags: PlanFlags,
): ReadonlyMap<string, string> {
  const { units } = open;
  const now = new Date();
  const made = new Intl.DateTimeFormat("en-CA", { dateStyle: "short" }).format(now);
  const paper = flags.paper ?? (units === "us" ? "Letter" : "A4");
  const pictures = bookPictures(forecast, units);
  return new Map([
    [PLANNED, file],
    [BOOK, tripBook(forecast, { units, made, paper, pictures })],
    [CALENDAR, planCalendar(forecast, Math.floor(now.getTime() / 1000))],
  ]);
}

function fileOf(open: OpenTrip, planned: Planned, { aim, members }: PlanFlags): string {
  const how = members === 0 ? "middle case" : `tried on ${members} members`;
  const comment = `Added by coldstow plan, aim: ${aim}; ${how}.`;
  return plannedFile(open.file.text, open.trip, planned, unitsOf(open.file.text), comment);
}
