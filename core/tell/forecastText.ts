import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import { assumedLines } from "./assumedText.ts";
import { cautionLines } from "./closingText.ts";
import { coolerSentence } from "./coolerSentence.ts";
import { coldLines, drainLines, loadLines } from "./coolerText.ts";
import { dayTable } from "./dayTable.ts";
import { doubtLines } from "./doubtsText.ts";
import { foodAnswer, foodLines } from "./foodText.ts";
import { FEW } from "./gainWords.ts";
import { historyLines } from "./historyText.ts";
import { cut, hanging } from "./lines.ts";
import { type TextOptions, type Voice, voiceFor } from "./voice.ts";
import { dangerLines, warningLines } from "./warningText.ts";
import { durationWords, momentWords, ONE_RUN, printable } from "./words.ts";

/** Assumptions named at the foot of a forecast; the rest are counted. */
const ASSUMED_SHOWN = 5;

/**
 * A forecast as a person reads it in a terminal. The head answers: the cold food, each cooler in a sentence, dangers.
 * Below a rule: every food with its reason, warnings, each cooler by day and where its cold went, what was assumed, and
 * cautions. It is plain text within `width` columns; `colour` only repeats what the words say.
 *
 * @throws DomainError for a width outside 60…200
 */
export function forecastText(forecast: Forecast, options: TextOptions): string {
  const voice = voiceFor(forecast, options);
  return asText([answerLines(forecast, voice), ...detailBlocks(forecast, voice)]);
}

/** The head of a forecast: what trip, how the cold food does, each cooler in a sentence, dangers. */
export function answerLines(forecast: Forecast, voice: Voice): string[] {
  return [
    ...headLines(forecast, voice),
    ...hanging("", foodAnswer(forecast, voice), voice.width, voice.paint.strong),
    ...forecast.result.coolers.flatMap((_, i) =>
      hanging("", coolerSentence(forecast, i, voice), voice.width),
    ),
    ...dangerLines(forecast, voice),
  ];
}

/** What stands below the rule. */
export function detailBlocks(forecast: Forecast, voice: Voice): string[][] {
  const { strong, faint } = voice.paint;
  return [
    [faint("─".repeat(voice.width)), ...foodLines(forecast, voice)],
    warningLines(forecast, voice),
    ...forecast.result.coolers.flatMap((cooler, i) => [
      [strong(cut(printable(cooler.name), voice.width)), ...dayTable(forecast, i, voice)],
      [
        ...coldLines(forecast, i, voice),
        ...doubtLines(cooler, voice),
        ...historyLines(cooler, voice),
        ...loadLines(forecast, i, voice),
        ...drainLines(forecast, i, voice),
      ],
    ]),
    assumedLines(forecast, ASSUMED_SHOWN, voice),
    cautionLines(voice),
  ];
}

/** Blocks with a blank line between them; lines keep no spaces at their end. */
export function asText(blocks: readonly (readonly string[])[]): string {
  const filled = blocks.filter((block) => block.length > 0);
  return `${filled.map((block) => block.map((line) => line.trimEnd()).join("\n")).join("\n\n")}\n`;
}

function headLines({ result }: Forecast, voice: Voice): string[] {
  const { hours } = result.trip;
  const span = `${momentWords(0, voice.clock)} to ${momentWords(hours, voice.clock)}, ${durationWords(hours)}`;
  const limit = `limit ${temperatureWords(result.limit.limit_C, voice.units)} (${result.limit.profile})`;
  const doubt = voice.middle
    ? `${ONE_RUN}: your cooler may do a quarter better or worse.`
    : (result.ensemble?.members ?? FEW) < FEW
      ? `${result.ensemble!.members} members: too few for a range to rest on.`
      : `A range holds 8 times in 10${result.ensemble === undefined ? "" : `; ${result.ensemble.members} members`}.`;
  return [
    voice.paint.strong(cut(printable(result.trip.title), voice.width)),
    ...hanging("", `${span}; ${limit}`, voice.width),
    ...hanging("", doubt, voice.width),
  ];
}
