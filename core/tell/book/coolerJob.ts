import { pieceWords } from "../../plan/pieceWords.ts";
import type { TripFood } from "../../trip/types.ts";
import { localTime, mealWords, momentWords, printable } from "../words.ts";
import { type Book, numberOf, packedIn } from "./book.ts";

/** What a cooler holds by way of raw and ready food. */
export type Holds = "raw" | "ready" | "both" | "drinks" | "nothing";

/** Raw animal food, or what may be eaten as it is; drinks where there is nothing else. */
export function holdsOf(book: Book, cooler: number): Holds {
  const food = packedIn(book, cooler);
  const others = food.filter(({ like }) => like.kind !== "drink");
  if (food.length === 0) return "nothing";
  if (others.length === 0) return "drinks";
  const raw = others.filter(({ raw: isRaw }) => isRaw);
  return raw.length === 0 ? "ready" : raw.length === others.length ? "raw" : "both";
}

/** The first and the last day on which something out of a cooler is eaten; null where nothing has a meal. */
function daysOf(book: Book, cooler: number): { from: number; to: number } | null {
  const { clock } = book.voice;
  const days = packedIn(book, cooler)
    .flatMap((food) => mealsOf_s(food))
    .map((t_s) => localTime(t_s / 3600, clock).day);
  return days.length === 0 ? null : { from: Math.min(...days), to: Math.max(...days) };
}

/** When parts of it are eaten, seconds from departure. */
function mealsOf_s({ eat_s, parts_s }: TripFood): number[] {
  return parts_s !== null && parts_s.length > 0 ? [...parts_s] : eat_s === null ? [] : [eat_s];
}

/** "day 3 dinner" or "the whole trip", as a row of a map says when something is wanted. */
export function wantedWords(food: TripFood, book: Book): string {
  const meals = mealsOf_s(food);
  const { clock } = book.voice;
  if (meals.length === 0) return "throughout";
  const first = mealWords(meals[0]! / 3600, clock).split(",")[0]!;
  if (meals.length === 1) return first;
  return `${first} to day ${localTime(meals.at(-1)! / 3600, clock).day}`;
}

/** What a cooler is for, in a line: "Drinks.", "Food of days 4 to 7. SEALED until Tue day 4, 18:30." */
export function jobWords(book: Book, cooler: number): string {
  const days = daysOf(book, cooler);
  const holds = holdsOf(book, cooler);
  const sealed_s = book.forecast.trip.coolers[cooler]!.sealedUntil_s;
  const what = {
    raw: "Raw food",
    ready: "Ready-to-eat food",
    both: "Food, raw and ready",
    drinks: "Drinks",
    nothing: "Nothing packed at departure",
  }[holds];
  const when =
    days === null
      ? ""
      : days.from === days.to
        ? ` of day ${days.from}`
        : ` of days ${days.from} to ${days.to}`;
  const sealed = sealed_s === null ? "" : ` Sealed until ${momentWords(sealed_s / 3600, book.voice.clock)}.`;
  return `${what}${when}.${sealed}`;
}

/** "Mon day 3, 18:30: takes over what is in drinks"; nothing where it takes nothing over. */
export function takesOver({ forecast, voice }: Book, cooler: number): string {
  return forecast.trip.events
    .flatMap((event) =>
      event.do === "merge" && event.into === cooler
        ? [
            `${momentWords(event.t_s / 3600, voice.clock)}: takes over what is in ${printable(forecast.trip.coolers[event.from]!.name)}`,
          ]
        : [],
    )
    .join("; ");
}

/** What comes to pass with it on the way, a line each: ice that goes in, merges, its seal. */
export function wayLines(book: Book, cooler: number): string[] {
  const { forecast, voice } = book;
  const { trip } = forecast;
  const name = (i: number): string => printable(trip.coolers[i]!.name);
  const acts = [
    ...trip.ice.flatMap(({ putIn_s, cooler: at, pieces, each, form }) =>
      putIn_s !== null && at === cooler
        ? [{ t_s: putIn_s, says: `+ ${pieceWords(pieces, printable(each), form)}` }]
        : [],
    ),
    ...trip.events.flatMap((event) => {
      if (event.do !== "merge" || (event.from !== cooler && event.into !== cooler)) return [];
      const says =
        event.from === cooler ? `empty it into ${name(event.into)}` : `takes over ${name(event.from)}`;
      return [{ t_s: event.t_s, says }];
    }),
  ];
  return acts
    .sort((a, b) => a.t_s - b.t_s)
    .map(({ t_s, says }) => `${momentWords(t_s / 3600, voice.clock)}: ${says}`);
}

/**
 * Whether its map has all raw food below all that is eaten as it is. Side by side in trays is no such thing; without a
 * map nothing is known, and it counts as not.
 */
export function isRawLowest({ plan, forecast }: Book, cooler: number): boolean {
  const { name } = forecast.result.coolers[cooler]!;
  const layers = plan.layers.filter((layer) => layer.cooler === name);
  const at = (raw: boolean): number[] =>
    layers.flatMap(({ layer, places }) =>
      places.some(({ kind }) =>
        raw ? kind === "raw" : kind === "ready" || kind === "produce" || kind === "frozen",
      )
        ? [layer]
        : [],
    );
  const [raw, ready] = [at(true), at(false)];
  return raw.length > 0 && ready.length > 0 && Math.max(...raw) < Math.min(...ready);
}

/** At most so many words fit on a strip of tape. */
export const MOST_WORDS = 8;

/** What to write on tape: number, name, and what somebody at the lid must know, in at most eight words. */
export function tapeWords(book: Book, cooler: number): string {
  const { name, sealedUntil_s } = book.forecast.trip.coolers[cooler]!;
  const days = daysOf(book, cooler);
  const holds = holdsOf(book, cooler);
  const called = printable(name)
    .split(" ")
    .slice(0, 2)
    .map((word) => [...word].slice(0, 14).join(""))
    .join(" ");
  const facts: string[] = [];
  if (sealedUntil_s !== null) {
    const [weekday, , , time] = momentWords(sealedUntil_s / 3600, book.voice.clock).split(" ");
    facts.push(`not before ${weekday} ${time}`);
  }
  if (holds === "raw") facts.push("RAW");
  if (holds === "both") facts.push("RAW inside");
  if (holds === "drinks" && !called.toLowerCase().includes("drink")) facts.push("drinks");
  if (holds === "nothing") facts.push("empty");
  if (holds === "ready") facts.push("ready");
  if (days !== null && sealedUntil_s === null)
    facts.push(days.from === days.to ? `day ${days.from}` : `days ${days.from}–\u2060${days.to}`);
  const words = [`${numberOf(book, cooler)} ${called}`, ...facts].join(", ").split(" ");
  return words.slice(0, MOST_WORDS).join(" ").replace(/, *$/, "");
}
