import { group } from "d3-array";
import { type DrainAdvice, drainAdvice, ratioWords } from "../../plan/drainLine.ts";
import { coolerSentence } from "../coolerSentence.ts";
import { drainLines, loadParts } from "../coolerText.ts";
import { momentWords, nameWords, printable } from "../words.ts";
import { type Book, packedIn } from "./book.ts";
import { heading, list, type Piece, paragraph } from "./flow.ts";
import { sentence } from "./html.ts";

/** Items named for one reason; the rest are counted. */
const NAMED = 4;

const HABITS = {
  keep: "the meltwater kept",
  daily: "the meltwater let out once a day",
  open: "the drain left open",
} as const;

/** What to do with the meltwater, day by day, and what the numbers of this book rest on. */
export function waterPieces(book: Book, index: number): Piece[] {
  const { forecast, voice, options } = book;
  const { name, drain } = forecast.trip.coolers[index]!;
  const advice = drainAdvice(forecast.trip, forecast).filter(({ cooler }) => cooler === name);
  if (advice.length === 0) return [];
  const other = drainLines(forecast, index, voice).map((line) => line.replace(/^drain: /, ""));
  const switched = other.length === 0 ? "" : ` ${sentence(other.join(" "))}`;
  return [
    heading("Meltwater"),
    ...list(dayAdvice(advice), options.paper, "box"),
    paragraph(`Reckoned with ${HABITS[drain]}.${switched}`, options.paper),
  ];
}

/** Days that follow each other with the same advice and reason are told as one. */
function dayAdvice(advice: readonly DrainAdvice[]): string[] {
  return [...group(advice, ({ does, reasons }) => `${does}|${reasons[0]}`).values()].map((same) => {
    const { does, reasons } = same[0]!;
    const act = does === "keep" ? "keep the water" : "let the water out";
    return `${sentence(dayWords(same.map(({ day }) => day)))}: ${act}. ${sentence(printable(reasons[0] ?? ""))}.`;
  });
}

/** "day 1", "days 3 to 6", "days 2, 4 and 6". */
function dayWords(days: readonly number[]): string {
  const [first, last] = [days[0]!, days.at(-1)!];
  if (days.length === 1) return `day ${first}`;
  if (days.length > 2 && last - first === days.length - 1) return `days ${first} to ${last}`;
  return `days ${nameWords(days.map(String), days.length)}`;
}

/** Why this food, this much ice and no other; `hasBand`: a picture tells how long it lasts. */
export function whyOf(book: Book, index: number, hasBand: boolean): string[] {
  const { forecast, voice } = book;
  const cooler = forecast.result.coolers[index]!;
  const { sealedUntil_s } = forecast.trip.coolers[index]!;
  const sealed =
    sealedUntil_s === null
      ? []
      : [
          `Seal: tape the lid. It opens first on ${momentWords(sealedUntil_s / 3600, voice.clock)}; every opening before costs ice.`,
        ];
  return [
    ...(hasBand ? [] : [sentence(coolerSentence(forecast, index, voice).replace(/^[^:]*: /, ""))]),
    `${sentence(loadParts(forecast, index, voice).join("; "))}.`,
    ...assignedWords(book, cooler.name),
    ...(packedIn(book, index).length === 0 || cooler.iceToLoad_ratio === null
      ? []
      : [`${sentence(ratioWords(cooler))}.`]),
    ...sealed,
  ];
}

/** The food by its reason; a day by which it is eaten stands beside the name, so that the reason is told once. */
function assignedWords({ plan }: Book, cooler: string): string[] {
  const told = plan.assign
    .filter((one) => one.cooler === cooler)
    .map(({ item, why }) => {
      const [, by, rest] = /^eaten by (day \d+): (.+)$/.exec(why) ?? [];
      return by === undefined
        ? { name: printable(item), why: printable(why) }
        : { name: `${printable(item)} (by ${by})`, why: printable(rest!) };
    });
  return [...group(told, ({ why }) => why)].map(([why, items]) => {
    const names = items.map(({ name }) => name);
    const shown = names.slice(0, NAMED).join(", ");
    const more = names.length > NAMED ? ` and ${names.length - NAMED} more` : "";
    return `${sentence(why)}: ${shown}${more}.`;
  });
}
