import { temperatureWords } from "../quantity/show.ts";
import type { StressCase, StressResult } from "../whatif/types.ts";
import { cautionLines } from "./closingText.ts";
import { asText } from "./forecastText.ts";
import { inHundred, membersWords } from "./gainWords.ts";
import { cut, hanging, padded } from "./lines.ts";
import type { TextOptions, Voice } from "./voice.ts";
import { departureClock, whatIfVoice } from "./whatIfVoice.ts";
import { fromWords, hasNoIce, nameWords, printable, spanWords } from "./words.ts";

const KEY_COLUMNS = 15;

/**
 * What breaks a trip: each case with its word, how many members of a hundred fail, which food goes first and when, and how
 * long the ice lasts. "Robust" only where every case holds. Plain text within `width` columns.
 *
 * @throws DomainError for a width outside 60…200
 */
export function stressText(result: StressResult, options: TextOptions): string {
  const voice = whatIfVoice(departureClock(result.trip), result.members, options);
  return asText([
    headLines(result, voice),
    ...result.cases.map((one) => caseLines(one, result, voice)),
    cautionLines(voice),
  ]);
}

/** "Robust: all 6 cases hold." or what does not hold, named. */
export function stressAnswer({ cases, robust }: StressResult): string {
  const broken = cases.filter(({ holds }) => !holds);
  if (robust && broken.length === 0) return `Robust: all ${cases.length} cases hold.`;
  const held = cases.length - broken.length;
  return `Breaks in ${broken.length} of ${cases.length} cases: ${nameWords(
    broken.map(({ key }) => key),
    6,
  )}. ${held === 0 ? "None holds" : `${held} ${held === 1 ? "holds" : "hold"}`}.`;
}

function headLines(result: StressResult, voice: Voice): string[] {
  const { trip, limit, confidence_frac, members, seed } = result;
  const limitWords = temperatureWords(limit.limit_C, voice.units);
  const allowed = Math.round((1 - confidence_frac) * 100);
  const holds = `A member fails when a perishable passes ${limitWords} (${printable(limit.profile)}) before it is eaten; a case holds when no more than ${allowed} in 100 members fail.`;
  return [
    voice.paint.strong(cut(`${printable(trip.title)}: what breaks it`, voice.width)),
    ...hanging("", stressAnswer(result), voice.width, voice.paint.strong),
    ...hanging("", holds, voice.width),
    ...hanging("", membersWords(members, seed), voice.width),
  ];
}

function caseLines(one: StressCase, { limit }: StressResult, voice: Voice): string[] {
  const limitWords = temperatureWords(limit.limit_C, voice.units);
  const word = one.holds ? "HOLDS" : "BREAKS";
  const paint = one.holds ? voice.paint.strong : voice.paint.bad;
  const head = `${padded(word, 8)}${padded(one.key, KEY_COLUMNS)}`;
  const [first, ...rest] = hanging(head, `${failWords(one)}; ${printable(one.says)}`, voice.width);
  const coolers = one.coolers.map(
    ({ name, iceOut_h }) =>
      `${nameWords([name])} ${hasNoIce(iceOut_h) ? "has no water ice" : spanWords(iceOut_h, voice.clock, voice.middle)}`,
  );
  return [
    paint(first!.slice(0, word.length)) + first!.slice(word.length),
    ...rest,
    ...hanging("        food: ", firstWords(one, limitWords, voice), voice.width),
    ...(coolers.length === 0 ? [] : hanging("        ice: ", coolers.join("; "), voice.width)),
  ];
}

/** "31 in 100 fail", "none fails". */
export function failWords({ fails_frac }: StressCase): string {
  return fails_frac <= 0 ? "none fails" : `${inHundred(fails_frac)} fail`;
}

/** Which food goes first and when; with none, how long everything stays under the limit. */
export function firstWords(
  { first }: StressCase,
  limit: string,
  { clock, middle }: Pick<Voice, "clock" | "middle">,
): string {
  if (first === null) return `no perishable passes ${limit} before it is eaten`;
  const item = `${nameWords([first.item])} (${nameWords([first.cooler])})`;
  if (first.overLimit_h.p10 === null) return `under ${limit}, nine times in ten; ${item} would go first`;
  const when = fromWords(first.overLimit_h, clock, middle);
  return `${item} first over ${limit}: ${when}`;
}
