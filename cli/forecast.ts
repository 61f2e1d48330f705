import { Command, Option } from "commander";
import {
  booksText,
  coldHours,
  coldHoursText,
  enoughIce,
  type Forecast,
  failuresOf,
  forecast,
  forecastText,
  type Paint,
  type Warning,
} from "../core/index.ts";
import { inputError } from "./failure.ts";
import { addRunFlags, addTrip, hourRange, type RunFlags } from "./flags.ts";
import { banded, sourceOf } from "./members.ts";
import { type OpenTrip, openTrip } from "./openTrip.ts";
import { keepForecast } from "./outputs.ts";
import { answer, Progress, paint, textWidth } from "./speak.ts";

interface ForecastFlags extends RunFlags {
  hours?: readonly [from_h: number, to_h: number];
  check?: true;
}

/** `coldstow forecast`: what happens to this trip as written. */
export function forecastCommand(finish: (code: number) => void): Command {
  const command = addTrip(new Command("forecast").description("Say what happens to this trip as written."));
  return addRunFlags(command, 256, 0)
    .addOption(
      new Option("--hours <from-to>", "also say where the cold went between two hours").argParser(hourRange),
    )
    .option("--check", "also print the books of heat and water")
    .action(async (name: string, flags: ForecastFlags) => {
      const open = openTrip(name, flags, true);
      checkHours(open, flags);
      const whole = withHours(await forecastOf(open, flags), flags);
      const text = (width: number, colour: Paint): string => textOf(whole, open, flags, width, colour);
      keepForecast(flags, open, whole, text);
      answer(flags, whole.result, () => text(textWidth(), paint()));
      finish(failuresOf(whole.result).length > 0 ? 1 : 0);
    });
}

function checkHours({ trip, file }: OpenTrip, { hours }: ForecastFlags): void {
  const end_h = trip.duration_s / 3600;
  if (hours !== undefined && hours[1] > end_h)
    throw inputError(file.name, "--hours", `within the trip, which is ${end_h} hours long`, hours.join("-"));
}

async function forecastOf(open: OpenTrip, flags: ForecastFlags): Promise<Forecast> {
  const progress = new Progress(flags);
  const middle = forecast(open.trip, { onProgress: progress.tell });
  const enough = enoughIce(open.trip, { aim: "pieces", onProgress: progress.tell });
  progress.end();
  const told = await banded(middle, sourceOf(open), flags);
  const warnings: Warning[] = [
    ...told.result.warnings,
    ...enough.map(({ says }, i) => ({
      code: "ice-enough",
      says: `In the middle case: ${says}`,
      path: `coolers[${i}]`,
    })),
  ];
  return { ...told, result: { ...told.result, warnings } };
}

function withHours(whole: Forecast, { hours }: ForecastFlags): Forecast {
  if (hours === undefined) return whole;
  return { ...whole, result: { ...whole.result, coldHours: coldHours(whole, ...hours) } };
}

function textOf(
  whole: Forecast,
  { units }: OpenTrip,
  flags: ForecastFlags,
  width: number,
  colour: Paint,
): string {
  const asked = whole.result.coldHours;
  const hours = asked === undefined ? "" : `\n${coldHoursText(asked, { units, width })}`;
  const books = flags.check ? `\n${booksText(whole)}` : "";
  return forecastText(whole, { units, width, colour }) + hours + books;
}
