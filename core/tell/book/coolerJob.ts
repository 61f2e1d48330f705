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
  if (holds === "drinks") facts.push("drinks");
  if (holds === "ready") facts.push("ready");
  if (days !== null && sealedUntil_s === null)
    facts.push(days.from === days.to ? `day ${days.from}` : `days ${days.from}–${days.to}`);
  const words = `${numberOf(book, cooler)} ${called}, ${facts.join(", ")}`.split(" ");
  return words.slice(0, MOST_WORDS).join(" ").replace(/, *$/, "");
}
