import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import { assumedLines, cautionLines, warningLines } from "./closingText.ts";
import { coldLines, coolerSentence, loadLines } from "./coolerText.ts";
import { dayTable } from "./dayTable.ts";
import { foodAnswer, foodLines } from "./foodText.ts";
import { cut, hanging } from "./lines.ts";
import { type TextOptions, type Voice, voiceFor } from "./voice.ts";
import { durationWords, momentWords, printable } from "./words.ts";

/** Assumptions named at the foot of a forecast; the rest are counted. */
const ASSUMED_SHOWN = 5;

/**
 * A forecast as a person reads it in a terminal: the cold food first, then each cooler in a sentence, the warnings, each cooler by day and where
 * its cold went, then what was assumed, and cautions. It is plain text within `width` columns; `colour` only
 * repeats what the words say.
 *
 * @throws DomainError for a width outside 60…200
 */
export function forecastText(forecast: Forecast, options: TextOptions): string {
  const voice = voiceFor(forecast, options);
  const { result } = forecast;
  const strong = voice.paint.strong;
  const blocks: string[][] = [
    headLines(forecast, voice),
    [...hanging("", foodAnswer(forecast, voice), voice.width, strong), ...foodLines(forecast, voice)],
    result.coolers.flatMap((_, i) => hanging("", coolerSentence(forecast, i, voice), voice.width)),
    warningLines(forecast, voice),
    ...result.coolers.flatMap((cooler, i) => [
      [strong(cut(printable(cooler.name), voice.width)), ...dayTable(forecast, i, voice)],
      [...coldLines(forecast, i, voice), ...loadLines(forecast, i, voice)],
    ]),
    assumedLines(result.assumed, ASSUMED_SHOWN, voice),
    cautionLines(forecast, voice),
  ];
  return asText(blocks);
}

/** Blocks with a blank line between them; lines keep no spaces at their end. */
export function asText(blocks: readonly (readonly string[])[]): string {
  const filled = blocks.filter((block) => block.length > 0);
  return `${filled.map((block) => block.map((line) => line.trimEnd()).join("\n")).join("\n\n")}\n`;
}

function headLines({ result }: Forecast, voice: Voice): string[] {
  const { hours } = result.trip;
  const span = `${momentWords(0, voice.clock)} to ${momentWords(hours, voice.clock)}, ${durationWords(hours)}`;
  const limit = `Limit ${temperatureWords(result.limit.limit_C, voice.units)} (${result.limit.profile} profile).`;
  const doubt = voice.middle ? "Middle case alone: no band yet." : "A range holds 8 times in 10.";
  return [voice.paint.strong(cut(printable(result.trip.title), voice.width)), span, `${limit} ${doubt}`];
}
