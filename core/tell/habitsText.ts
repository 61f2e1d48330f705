import type { Band } from "../forecast/result.ts";
import { temperatureWords } from "../quantity/show.ts";
import type { HabitResult, HabitsResult, SayingResult } from "../whatif/types.ts";
import { cautionLines } from "./closingText.ts";
import { asText } from "./forecastText.ts";
import { gainHours, gainWords, makesNoDifference, membersWords, NOTHING } from "./gainWords.ts";
import { cut, hanging, padded, wrap } from "./lines.ts";
import type { TextOptions, Voice } from "./voice.ts";
import { departureClock, whatIfVoice } from "./whatIfVoice.ts";
import { hasNoIce, isPoint, nameWords, printable, spanWords } from "./words.ts";

/**
 * What each habit is worth on one trip, as a person reads it: all good ways against all bad ones first, then each habit
 * with what it does for the food and for the ice, what makes no difference, what could not be tried, and what people say
 * beside what came out. Plain text within `width` columns; `colour` only repeats what the words say.
 *
 * @throws DomainError for a width outside 60…200
 */
export function habitsText(result: HabitsResult, options: TextOptions): string {
  const voice = whatIfVoice(departureClock(result.trip), result.members, options);
  const counts = result.habits.filter(({ gain }) => !makesNoDifference(gain));
  const idle = result.habits.filter(({ gain }) => makesNoDifference(gain));
  return asText([
    headLines(result, voice),
    allLines(result, voice),
    counts.flatMap((habit, i) => habitLines(habit, i + 1, result.habits, voice)),
    idleLines(idle, voice),
    skippedLines(result, voice),
    sayingLines(result.sayings, voice),
    cautionLines(voice),
  ]);
}

function headLines({ trip, limit, members, seed }: HabitsResult, voice: Voice): string[] {
  const limitWords = temperatureWords(limit.limit_C, voice.units);
  const means = `Each habit is switched alone, from how it is now to the other way, all else as written. Food: hours later that the first perishable passes ${limitWords} (${printable(limit.profile)}). Ice: hours longer that it lasts.`;
  return [
    voice.paint.strong(cut(`${printable(trip.title)}: what each habit is worth`, voice.width)),
    ...hanging("", means, voice.width),
    ...hanging("", membersWords(members, seed), voice.width),
  ];
}

function allLines({ all }: HabitsResult, voice: Voice): string[] {
  const end = (band: Band): string => spanWords(band, voice.clock, voice.middle);
  const row = (head: string, { overLimit_h, iceOut_h }: HabitsResult["all"]["bad"]): string[] =>
    hanging(
      `  ${padded(head, 17)}`,
      `food in its limit ${end(overLimit_h)}; ${hasNoIce(iceOut_h) ? "no water ice" : `ice ${end(iceOut_h)}`}`,
      voice.width,
    );
  const { p10, p50, p90 } = all.iceRatio;
  const times = (ratio: number | null): string => (ratio === null ? "beyond telling" : ratio.toFixed(1));
  const ratio = isPoint(all.iceRatio) ? times(p50) : `${times(p50)}, ${times(p10)} to ${times(p90)}`;
  const sum = `From all bad to all good: ${gainWords(all.gain, voice.units)}. Ice lasts this many times as long: ${ratio}.`;
  return [
    ...hanging("", sum, voice.width, voice.paint.strong),
    ...row("every habit bad", all.bad),
    ...row("as written", all.written),
    ...row("every habit good", all.good),
  ];
}

function habitLines(habit: HabitResult, rank: number, all: readonly HabitResult[], voice: Voice): string[] {
  const { says, now, instead, insteadIsGood, gain } = habit;
  const head = `${String(rank).padStart(2)}. `;
  const change = insteadIsGood
    ? `now: ${printable(now)}; instead: ${printable(instead)}`
    : `now: ${printable(now)}; without it: ${printable(instead)}`;
  return [
    ...hanging(head, `${printable(says)}${placeWords(habit, all)}`, voice.width, voice.paint.strong),
    ...hanging("    ", change, voice.width),
    ...hanging("    ", gainWords(gain, voice.units), voice.width),
  ];
}

/** " (galley and late)"; nothing where it touches every cooler that any habit does. */
export function placeWords({ coolers }: HabitResult, all: readonly HabitResult[]): string {
  const every = new Set(all.flatMap((one) => one.coolers));
  return coolers.length === 0 || (every.size > 1 && coolers.length === every.size)
    ? ""
    : ` (${nameWords(coolers)})`;
}

function idleLines(idle: readonly HabitResult[], voice: Voice): string[] {
  if (idle.length === 0) return [];
  const said = idle.map(({ says }) => printable(says)).join("; ");
  return hanging("", `On this trip ${NOTHING}: ${said}.`, voice.width);
}

function skippedLines({ skipped }: HabitsResult, voice: Voice): string[] {
  if (skipped.length === 0) return [];
  return [
    "Not tried:",
    ...skipped.flatMap(({ says, why }) =>
      hanging("  ", `${printable(says)}: ${printable(why)}`, voice.width),
    ),
  ];
}

/** What people say on the left, what came out on the right; neither is commented on. */
function sayingLines(sayings: readonly SayingResult[], voice: Voice): string[] {
  if (sayings.length === 0) return [];
  const side = Math.floor((voice.width - 3) / 2);
  const rows = (left: readonly string[], right: readonly string[]): string[] =>
    Array.from(
      { length: Math.max(left.length, right.length) },
      (_, i) => `${padded(left[i] ?? "", side)} │ ${right[i] ?? ""}`,
    );
  const rule = `${"─".repeat(side)}─┼─${"─".repeat(voice.width - side - 3)}`;
  return [
    voice.paint.faint(`${padded("what people say", side)} │ what came out on this trip`),
    ...sayings.flatMap((one) => {
      const left = [
        ...wrap(`“${printable(one.saying)}”`, side),
        ...wrap(`Claimed: ${printable(one.claims)} (${sourceWords(one.source)}).`, side),
      ];
      const right = [
        ...wrap(`${printable(one.found)}.`.replace(/\.\.$/, "."), voice.width - side - 3),
        ...wrap(`Tried: ${printable(one.tried)}.`, voice.width - side - 3),
        ...wrap(
          `Food ${gainHours(one.gain.food_h)}; ice ${gainHours(one.gain.ice_h)}.`,
          voice.width - side - 3,
        ),
        ...wrap(`Do the two agree? ${AGREES[one.agrees]}`, voice.width - side - 3),
      ];
      return [voice.paint.faint(rule), ...rows(left, right)];
    }),
  ];
}

const AGREES: Readonly<Record<SayingResult["agrees"], string>> = {
  yes: "Yes.",
  no: "No.",
  "in part": "In part.",
  "cannot tell": "Cannot be told.",
};

function sourceWords(source: string): string {
  return source === "common-practice" ? "common practice" : printable(source);
}
