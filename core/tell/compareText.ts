import type { Band } from "../forecast/result.ts";
import type { ComparedTrip, ComparePair, CompareResult } from "../whatif/types.ts";
import { cautionLines } from "./closingText.ts";
import { compareRows } from "./compareRows.ts";
import { asText } from "./forecastText.ts";
import { gainHours, inHundred, membersWords, NOTHING } from "./gainWords.ts";
import { cut, hanging, padded, paddedLeft } from "./lines.ts";
import type { TextOptions, Voice } from "./voice.ts";
import { whatIfVoice } from "./whatIfVoice.ts";
import { durationWords, hasNoIce, isPoint, nameWords, PAST_RETURN, printable } from "./words.ts";

const LABEL_COLUMNS = 24;

/**
 * Trips side by side as a person reads them: each with its cold food and its ice, a table of what it takes, and how many
 * hours one keeps ice longer than another over the same members. Plain text within `width` columns.
 *
 * @throws DomainError for a width outside 60…200
 */
export function compareText(result: CompareResult, options: TextOptions): string {
  // Trips may leave at different hours, so their ends are told as hours since their own departures.
  const clock = { date: "2000-01-01", depart_ms: 0, timezone: "UTC", length_h: 0, meals: [] };
  const voice = whatIfVoice(clock, result.members, options);
  const letters = result.trips.map(({ letter }) => letter);
  return asText([
    [
      voice.paint.strong(`${result.trips.length} trips side by side: ${letters.join(", ")}`),
      ...hanging("", membersWords(result.members, result.seed), voice.width),
    ],
    ...result.trips.map((trip) => tripLines(trip, voice)),
    tableLines(result.trips, voice),
    result.pairs.flatMap((pair) => hanging("", pairWords(pair), voice.width)),
    cautionLines(voice),
  ]);
}

/** "3 days 4 h, could be 2 days 20 h to past the return", from departure. */
function lastsWords(band: Band): string {
  const say = (hours: number | null): string =>
    hours === null ? PAST_RETURN : durationWords(Math.round(hours));
  if (band.p10 === null) return "to the return, nine times in ten";
  if (isPoint(band)) return say(band.p50);
  return `likely ${say(band.p50)}, could be ${say(band.p10)} to ${say(band.p90)}`;
}

/** "ice likely 40 h, could be 33 h to 2 days", "no water ice". */
export const iceLasts = (band: Band): string => (hasNoIce(band) ? "no water ice" : `ice ${lastsWords(band)}`);

/** "A to B, galley: ice +26 h, 17 to 34". */
export function pairWords({ a, b, cooler, iceOutGain_h }: ComparePair): string {
  const gain = gainHours(iceOutGain_h);
  return gain === NOTHING
    ? `From ${a} to ${b}, ${nameWords([cooler])}: ${NOTHING} of the ice.`
    : `From ${a} to ${b}, ${nameWords([cooler])}: ice ${gain}.`;
}

/** What may be lost, in a sentence without its stop. */
export function riskWords({ atRisk, fails_frac }: ComparedTrip): string {
  const often = fails_frac <= 0 ? "no member fails" : `${inHundred(fails_frac)} members fail`;
  return atRisk.length === 0
    ? `no food at risk (${often})`
    : `food at risk: ${nameWords(atRisk, 6)} (${often})`;
}

function tripLines(trip: ComparedTrip, voice: Voice): string[] {
  const title = cut(`${trip.letter}  ${printable(trip.title)} (${printable(trip.file)})`, voice.width);
  const ends = trip.coolers.flatMap(({ name, perishables, overLimit_h, iceOut_h }) => {
    const food =
      overLimit_h.p10 === null
        ? "cold food in its limit, nine times in ten"
        : `cold food ${lastsWords(overLimit_h)}`;
    return hanging(
      `   ${nameWords([name])}: `,
      `${perishables ? food : "nothing perishable in it"}; ${iceLasts(iceOut_h)}`,
      voice.width,
    );
  });
  return [
    voice.paint.strong(title),
    ...hanging("   ", riskWords(trip), voice.width, trip.atRisk.length > 0 ? voice.paint.warn : undefined),
    ...ends,
  ];
}

function tableLines(trips: readonly ComparedTrip[], voice: Voice): string[] {
  const column = Math.min(12, Math.floor((voice.width - LABEL_COLUMNS) / trips.length));
  const row = (head: string, cells: readonly string[]): string =>
    padded(head, LABEL_COLUMNS) + cells.map((cell) => paddedLeft(cell, column)).join("");
  return [
    voice.paint.faint(
      row(
        "",
        trips.map(({ letter }) => letter),
      ),
    ),
    ...compareRows(trips, voice.units).map(({ what, cells }) => row(what, cells)),
  ];
}
