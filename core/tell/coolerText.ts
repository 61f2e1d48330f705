import { group, sum } from "d3-array";
import type { CoolerResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { drainAdvice } from "../plan/drainLine.ts";
import { pieceWords } from "../plan/pieceWords.ts";
import { massWords, volumeWords } from "../quantity/show.ts";
import { coldSpent, largestSaving } from "./cold.ts";
import { gainHours } from "./gainWords.ts";
import { bar, cut, hanging, padded, paddedLeft } from "./lines.ts";
import { roundToSum } from "./numbers.ts";
import { iceAmount, iceNumber, iceUnit, type Voice } from "./voice.ts";
import { printable } from "./words.ts";

const NAME_COLUMNS = 25;
const NUMBER_COLUMNS = 7;
const BAR_COLUMNS = 17;

/** Where the cold went while there was ice: bars whose shown values add up to the shown total. Nothing without ice. */
export function coldLines(forecast: Forecast, index: number, voice: Voice): string[] {
  const spent = coldSpent(forecast, index, voice.units);
  if (spent.span_days === 0) return [];
  const unit = iceUnit(voice.units);
  const shown = roundToSum(
    spent.parts.map((part) => iceAmount(part.ice_kg, voice.units)),
    1,
  );
  const largest = Math.max(...shown.parts.map(Math.abs), 0.1);
  const until = spent.isGone ? "until the ice was gone" : "to the return";
  const which = voice.middle ? "" : ", likely case";
  const lines = hanging(
    "",
    `where the cold went ${until}, told as ${unit} of ice${which}`,
    voice.width,
    voice.paint.faint,
  );
  spent.parts.forEach((part, i) => {
    const value = shown.parts[i]!;
    const drawn = value < 0 ? "(saved)" : bar(value / largest, BAR_COLUMNS);
    lines.push(
      cut(`${coldRow(part.name, value)}  ${padded(drawn, BAR_COLUMNS + 1)} ${part.fact}`, voice.width),
    );
  });
  const gas_kg = spent.dryIceGasWithin_kg;
  const within = [
    `the sun ${iceNumber(spent.sunWithin_kg, voice.units)}`,
    ...(gas_kg === 0 ? [] : [`dry-ice gas ${iceNumber(gas_kg, voice.units)}`]),
  ];
  const perDay = (shown.total / spent.span_days).toFixed(1).replace("-", "−");
  lines.push(`${coldRow("adds up to", shown.total)}  ${unit}, ${perDay} a day`);
  const indent = " ".repeat(NAME_COLUMNS + NUMBER_COLUMNS + 2);
  lines.push(...hanging(indent, `of it ${within.join(", ")}`, voice.width));
  const saving = largestSaving(forecast, index);
  return saving === null ? lines : [...lines, ...hanging("largest: ", saving, voice.width)];
}

function coldRow(name: string, value: number): string {
  return padded(name, NAME_COLUMNS) + paddedLeft(value.toFixed(1).replace("-", "−"), NUMBER_COLUMNS);
}

/** What the other drain habit would do, in hours either way; then what to do by day, with the reason that decides. */
export function drainLines(forecast: Forecast, index: number, voice: Voice): string[] {
  const other = forecast.result.coolers[index]!.drainSwitch;
  if (other === null) return [];
  const food = other.foodGain_h === null ? "" : `; food within its limit ${gainHours(other.foodGain_h)}`;
  const habit = other.to === "open" ? "meltwater let out as it comes" : "meltwater kept";
  const says = `${habit} instead: ice ${gainHours(other.iceGain_h)}${food}. Raw juice, packages that let water in and weight come before these numbers.`;
  return [...hanging("drain: ", says, voice.width), ...drainDays(forecast, index, voice)];
}

/** "day 2 to 4: drain, …": days in a row with the same reason are told once. */
function drainDays(forecast: Forecast, index: number, voice: Voice): string[] {
  const { name } = forecast.result.coolers[index]!;
  const stretches: { from: number; to: number; says: string }[] = [];
  for (const { cooler, day, does, reasons } of drainAdvice(forecast.trip, forecast)) {
    if (cooler !== name) continue;
    const says = `${does === "keep" ? "keep the water" : "drain"}, ${printable(reasons[0]!)}`;
    const last = stretches.at(-1);
    if (last?.says === says && last.to === day - 1) last.to = day;
    else stretches.push({ from: day, to: day, says });
  }
  return stretches.flatMap(({ from, to, says }) =>
    hanging("  ", `day ${from === to ? from : `${from} to ${to}`}: ${says}`, voice.width),
  );
}

/** How much ice went in, against what it had to cool, and what the box weighs. */
export function loadLines(forecast: Forecast, index: number, voice: Voice): string[] {
  const cooler = forecast.result.coolers[index]!;
  const ratio = cooler.iceToLoad_ratio;
  const [packed = "", ...more] = loadParts(forecast, index, voice);
  const frozen = cooler.frozenFoodAsIce_kg > 0;
  const melted = more.filter((part) => /melted|froze\b|drained/.test(part));
  const sentences = [
    packed,
    ...more.filter((part) => !melted.includes(part)),
    ...(ratio === null
      ? []
      : [`ice to food by volume ${ratio.toFixed(1)} to 1${frozen ? " (frozen food counts as ice)" : ""}`]),
    ...melted,
    `${Math.round(cooler.filled_frac * 100)} % full`,
    `${massWords(cooler.packedWeight_kg, voice.units)} packed`,
  ];
  return hanging("ice: ", `${sentences.join("; ")}.`, voice.width);
}

/** What ice goes in at departure and on the way, what frozen food adds to it, and what becomes of it. */
export function loadParts(forecast: Forecast, index: number, voice: Voice): string[] {
  const cooler = forecast.result.coolers[index]!;
  const lots = (later: boolean): string => lotWords(forecast, index, later);
  const counts = `frozen food counts as ${massWords(cooler.frozenFoodAsIce_kg, voice.units)} more`;
  return [
    lots(false) === "" ? "no ice packed" : `packed with ${lots(false)}`,
    ...(lots(true) === "" ? [] : [`on the way ${lots(true)}`]),
    ...(cooler.frozenFoodAsIce_kg > 0 ? [counts] : []),
    ...meltWords(cooler, voice).map((said) => (voice.middle ? said : `likely ${said}`)),
  ];
}

/** Ice of one cooler in pieces, equal ones together. */
function lotWords({ trip }: Forecast, index: number, later: boolean): string {
  const lots = trip.ice.filter((lot) => lot.cooler === index && (lot.putIn_s !== null) === later);
  return [...group(lots, ({ form, each }) => `${form} ${each}`).values()]
    .map((same) =>
      pieceWords(
        sum(same, ({ pieces }) => pieces),
        printable(same[0]!.each),
        same[0]!.form,
      ),
    )
    .join(", ");
}

/** Water that froze onto the ice counts against what melted; where more froze, it is told so. */
function meltWords({ iceMelted_kg, drained_L }: CoolerResult, { units }: Voice): string[] {
  const said: string[] = [];
  if (Math.abs(iceMelted_kg) >= 0.005)
    said.push(`${massWords(Math.abs(iceMelted_kg), units)} ${iceMelted_kg < 0 ? "froze" : "melted"}`);
  if (drained_L >= 0.005) said.push(`${volumeWords(drained_L / 1000, units)} drained`);
  return said.length === 0 ? [] : [said.join(", ")];
}
