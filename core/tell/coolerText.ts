import { max } from "d3-array";
import type { CoolerResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { massWords, temperatureWords, volumeWords } from "../quantity/show.ts";
import { coldSpent } from "./cold.ts";
import { bar, cut, hanging, padded, paddedLeft } from "./lines.ts";
import { roundToSum } from "./numbers.ts";
import { pieceWords } from "./pieces.ts";
import { iceAmount, iceNumber, iceUnit, type Voice } from "./voice.ts";
import { dayPart, NO_BAND, printable, spanWords } from "./words.ts";

/** "galley: ice until day 4 evening; the food stays under 40 °F to the return." */
export function coolerSentence(forecast: Forecast, index: number, voice: Voice): string {
  const cooler = forecast.result.coolers[index]!;
  const said = `${cut(printable(cooler.name), 40)}: ${iceWords(cooler, voice)}; ${foodColdWords(forecast, cooler, voice)}`;
  return `${said}${voice.middle ? ` (${NO_BAND})` : ""}.`;
}

function iceWords(cooler: CoolerResult, voice: Voice): string {
  if (max(cooler.series.ice_kg.p90) === 0) return "no ice";
  const gaps = cooler.iceGaps_h.map(([from_h, to_h]) =>
    gapWords(dayPart(from_h, voice.clock), dayPart(to_h, voice.clock)),
  );
  const but = gaps.length === 0 ? "" : `, but none ${gaps.join(" and ")}`;
  return `ice ${spanWords(cooler.iceOut_h, voice.clock, voice.middle)}${but}`;
}

function gapWords(from: string, to: string): string {
  return from === to ? `for a while ${from}` : `from ${from} to ${to}`;
}

function foodColdWords(forecast: Forecast, cooler: CoolerResult, voice: Voice): string {
  const limit = temperatureWords(forecast.result.limit.limit_C, voice.units);
  const held = forecast.result.food.some((food) => food.perishable && food.cooler === cooler.name);
  if (!held) return "nothing perishable packed in it";
  if (cooler.overLimit_h.p10 === 0 && cooler.overLimit_h.p90 === 0)
    return `food over ${limit} from the start`;
  return `the food stays under ${limit} ${spanWords(cooler.overLimit_h, voice.clock, voice.middle)}`;
}

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
  const lines = [voice.paint.faint(`where the cold went ${until}, in ${unit} of ice, middle case`)];
  spent.parts.forEach((part, i) => {
    const value = shown.parts[i]!;
    const drawn = value < 0 ? "(came out)" : bar(value / largest, 20);
    lines.push(cut(`${coldRow(part.name, value)}  ${padded(drawn, 21)} ${part.fact}`, voice.width));
  });
  const gas_kg = spent.dryIceGasWithin_kg;
  const within = [
    `the sun ${iceNumber(spent.sunWithin_kg, voice.units)}`,
    ...(gas_kg === 0 ? [] : [`dry-ice gas ${iceNumber(gas_kg, voice.units)}`]),
  ];
  const perDay = (shown.total / spent.span_days).toFixed(1);
  lines.push(`${coldRow("adds up to", shown.total)}  ${unit}, ${perDay} a day`);
  lines.push(`${" ".repeat(28)}of it ${within.join(", ")}`);
  return lines;
}

function coldRow(name: string, value: number): string {
  return padded(name, 18) + paddedLeft(value.toFixed(1).replace("-", "−"), 8);
}

/** How much ice went in, against what it had to cool, and what the box weighs. */
export function loadLines(forecast: Forecast, index: number, voice: Voice): string[] {
  const cooler = forecast.result.coolers[index]!;
  const lots = forecast.trip.ice.filter((lot) => lot.cooler === index && lot.putIn_s === null);
  const pieces = lots.map((lot) => pieceWords(lot.pieces, lot.each, lot.form)).join(", ");
  const ratio = cooler.iceToLoad_ratio;
  const sentences = [
    pieces === "" ? "no ice packed" : `packed with ${pieces}`,
    ...(ratio === null ? [] : [`${ratio.toFixed(1)} of ice and frozen food to 1 of the rest by volume`]),
    `${massWords(cooler.iceMelted_kg, voice.units)} melted, ${volumeWords(cooler.drained_L / 1000, voice.units)} drained`,
    `${Math.round(cooler.filled_frac * 100)} % full`,
    `${massWords(cooler.packedWeight_kg, voice.units)} packed`,
  ];
  return hanging("ice: ", `${sentences.join("; ")}.`, voice.width);
}
