import type { CloseOutCooler, CloseOutResult, NextTime } from "../camp/closeOutResult.ts";
import { massWords } from "../quantity/show.ts";
import { asText } from "./forecastText.ts";
import { conductanceWords, narrowed_frac } from "./historyText.ts";
import { cut, hanging } from "./lines.ts";
import type { TextOptions, Voice } from "./voice.ts";
import { departureClock, whatIfVoice } from "./whatIfVoice.ts";
import { nameWords, printable } from "./words.ts";

/**
 * A close-out as a person reads it: each cooler against what was thought and what that taught, what went into the bin, and
 * what to take less or more of next time. Plain text within `width` columns.
 *
 * @throws DomainError for a width outside 60…200
 */
export function closeOutText(result: CloseOutResult, options: TextOptions): string {
  const voice = whatIfVoice(departureClock(result.trip), result.members, options);
  return asText([
    [voice.paint.strong(cut(`${printable(result.trip.title)}: what it taught`, voice.width))],
    ...result.coolers.map((cooler) => coolerLines(cooler, voice)),
    binnedLines(result, voice),
    nextLines(result, voice),
    hanging(
      "",
      "One trip is one trip: numbers are the middle of what could be, in the weather as it was written. What was in doubt went into the bin, and that was right.",
      voice.width,
      voice.paint.faint,
    ),
  ]);
}

function coolerLines(cooler: CloseOutCooler, voice: Voice): string[] {
  const { name, seen, place, why, learned_W_per_K: learned } = cooler;
  const was = `${seenWords(seen)} left, ${thoughtWords(cooler, voice)}`;
  const lines = [
    ...hanging("", `${printable(name)}: ${was}. ${PLACES[place]}`.trim(), voice.width, voice.paint.strong),
  ];
  if (why !== null) lines.push(...hanging("  ", `Nothing learned of it: ${why}.`, voice.width));
  if (learned !== null) lines.push(...hanging("  ", learnedWords(cooler), voice.width));
  if (cooler.odd.length > 0)
    lines.push(
      ...hanging(
        "  ",
        `${nameWords(cooler.odd)} ${cooler.odd.length === 1 ? "does" : "do"} not agree with its other trips: was lid, gasket or drain other than else?`,
        voice.width,
        voice.paint.warn,
      ),
    );
  return lines;
}

const PLACES: Readonly<Record<CloseOutCooler["place"], string>> = {
  "as thought": "That is within what was thought.",
  more: "That is more than in eight of ten runs.",
  less: "That is less than in eight of ten runs.",
  beyond: "That is outside all that was thought.",
  "not told": "",
};

/** "a quarter of its ice" as "1/4 of its ice"; weights as typed. */
function seenWords(seen: string): string {
  const word = printable(seen).toLowerCase();
  if (word === "water") return "no ice";
  if (word === "full") return "all of its ice";
  return /^\d\/\d$/.test(word) ? `${word} of its ice` : word === "slush" ? word : `${printable(seen)} of ice`;
}

/** Ice that nobody would find. */
const NONE_kg = 0.05;

function thoughtWords({ thought, left_kg }: CloseOutCooler, { units }: Voice): string {
  const { p10, p50, p90 } = thought.iceLeft_kg;
  const mass = (kg: number | null): string => ((kg ?? 0) < NONE_kg ? "none" : massWords(kg!, units));
  const about = left_kg === null || left_kg === 0 ? "" : `about ${mass(left_kg)}; `;
  const range = mass(p90) === "none" ? "" : ` (${mass(p10)} to ${mass(p90)})`;
  return `${about}thought ${mass(p50)}${range}`;
}

function learnedWords({ learned_W_per_K, before_W_per_K, next_W_per_K, records }: CloseOutCooler): string {
  const narrower = Math.round(100 * narrowed_frac(before_W_per_K!, next_W_per_K!));
  const trips = records === 1 ? "this trip" : `${records} trips`;
  const why =
    narrower < 1
      ? "it was known as well before"
      : `what is known of its walls is narrower by ${narrower} %, since ${trips} ${records === 1 ? "counts" : "count"} now`;
  return `This trip alone says ${conductanceWords(learned_W_per_K!)}; before it was ${conductanceWords(before_W_per_K!)}. Next forecast: ${conductanceWords(next_W_per_K!)}; ${why}.`;
}

function binnedLines({ binned, neverOpened, wrong }: CloseOutResult, voice: Voice): string[] {
  const { items, mass_kg, share_frac, cost } = binned;
  const lines: string[] = [];
  if (items.length > 0) {
    const share = share_frac === null ? "" : `, ${Math.round(100 * share_frac)} % of all food taken`;
    const paid = cost === null ? "" : `, worth ${cost.toFixed(2)}`;
    const each = items.map(
      (one) => `${printable(one.name)} ${massWords(one.mass_kg, voice.units)} (${one.why})`,
    );
    lines.push(
      ...hanging(
        "binned: ",
        `${massWords(mass_kg, voice.units)}${share}${paid}: ${each.join("; ")}.`,
        voice.width,
      ),
    );
  }
  if (neverOpened.length > 0)
    lines.push(...hanging("never opened: ", `${nameWords(neverOpened, 12)}.`, voice.width));
  if (wrong.length > 0)
    lines.push(
      ...hanging("went wrong: ", `${wrong.map((line) => printable(line)).join("; ")}.`, voice.width),
    );
  return lines;
}

function nextLines({ next }: CloseOutResult, voice: Voice): string[] {
  if (next.length === 0) return [];
  return [
    voice.paint.strong("Next time"),
    ...next.flatMap((one) => hanging("- ", nextWords(one, voice), voice.width)),
  ];
}

/** One line of "next time": what, how much less or more, and why. */
function nextWords(one: NextTime, { units }: Pick<Voice, "units">): string {
  const name = printable(one.name);
  const mass = (kg: number | null): string => massWords(kg ?? 0, units);
  const was = mass(one.was_kg);
  const pieces = Math.abs(one.pieces ?? 0);
  const lot = `${pieces} ${pieces === 1 ? "piece" : "pieces"} of ${printable(one.each ?? "")}`;
  const share = Math.round(100 * Math.abs(1 - (one.want_kg ?? 0) / one.was_kg));
  switch (one.code) {
    case "ice less":
      return `${name}: ${lot} fewer, ${mass(one.want_kg)} of ice instead of ${was} (${share} % less); it would still have come home with some. ${mass(one.left_kg)} were left.`;
    case "ice enough":
      return `${name}: the same ice again, ${was}; one piece of ${printable(one.each ?? "")} fewer would have been too close.`;
    case "ice more":
      return `${name}: ${lot} more, ${mass(one.want_kg)} of ice instead of ${was}, to bring some home.`;
    case "ice does not fit":
      return `${name}: ${was} of ice was too little, and what it would take does not fit or cannot be carried: less food in it, shade, fewer openings, or ice on the way.`;
    case "food less":
      return `${name}: ${mass(one.want_kg)} instead of ${was} (${share} % less); ${mass(one.left_kg)} went into the bin.`;
    case "food leave":
      return `${name}: leave it at home; ${one.left_kg === null ? `${was} came back unopened` : "all of it went into the bin"}.`;
    case "food more":
      return one.want_kg === null
        ? `${name}: more than ${was}; it ran out.`
        : `${name}: ${mass(one.want_kg)} instead of ${was} (${share} % more), at the rate at which it went.`;
    case "food colder":
      return `${name}: not less of it, but colder or sooner: freeze it, put it against the ice, or eat it earlier. ${mass(one.left_kg)} of ${was} were lost.`;
    case "food drier":
      return `${name}: not less of it, but dry: watertight packing, or higher up. ${mass(one.left_kg)} of ${was} got wet.`;
  }
}
