import type { Band, FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import type { TripFood } from "../trip/types.ts";
import type { Voice } from "./voice.ts";
import { durationWords, fromWords, fullHour_h, hourWords, mealWords, spanWords } from "./words.ts";

/** What tells first against a food, and from when, hours from departure. */
export interface Bite {
  kind: "soft" | "meltwater" | "warm";
  from_h: number;
}

/** The item of the trip that a row of the result is about. A result has no ids: name, then time of the meal, tell foods apart. */
export function itemOf(food: FoodResult, { trip }: Forecast): TripFood | undefined {
  const named = trip.food.filter((item) => item.name === food.name);
  const eaten = named.find(
    (item) => item.eat_s !== null && Math.abs(item.eat_s / 3600 - (food.eaten_h ?? -1)) < 1 / 60,
  );
  return eaten ?? named[0];
}

/** From when a food is aboard, hours from departure. */
export function aboardFrom_h(food: FoodResult, forecast: Forecast): number {
  return (itemOf(food, forecast)?.putIn_s ?? 0) / 3600;
}

/** When a food that came aboard warm is under the limit; null where it was cold when it came. */
export function warmUntil_h(food: FoodResult, forecast: Forecast): number | null {
  const below_h = food.belowLimit_h.p50;
  return below_h !== null && below_h > aboardFrom_h(food, forecast) + 1 / 60 ? below_h : null;
}

/** What is kept only while it is solid, as ice cream is: when it is soft counts, not when it passes a temperature. */
export function isKeptSolid(food: FoodResult, forecast: Forecast): boolean {
  const item = itemOf(food, forecast);
  return item !== undefined && item.like.kind === "frozen" && item.state === "frozen";
}

/** When a food stops being as it must be: soft where it is kept solid, else over its limit. */
export function endOf_h(food: FoodResult, forecast: Forecast): Band {
  return isKeptSolid(food, forecast) && food.thawed_h.p50 !== null ? food.thawed_h : food.overLimit_h;
}

/** The reason of the verdict as the result has it; null where no rule speaks against the food. */
export function ownReason({ verdict, why }: FoodResult): Bite["kind"] | null {
  if (verdict === "keep") return null;
  return why.includes("meltwater") ? "meltwater" : why.includes("thaw") ? "soft" : "warm";
}

/** Everything that tells against a food, the earliest first; the reason of its verdict is among them. */
export function bitesOf(food: FoodResult, forecast: Forecast): Bite[] {
  const own = ownReason(food);
  const aboard_h = aboardFrom_h(food, forecast);
  const bites: Bite[] = [];
  if (own === "soft" || isKeptSolid(food, forecast)) {
    const from_h = food.thawed_h.p50 ?? (own === "soft" ? aboard_h : null);
    if (from_h !== null) bites.push({ kind: "soft", from_h });
  }
  if (own === "meltwater") bites.push({ kind: "meltwater", from_h: food.wet_h?.p50 ?? aboard_h });
  const isOver = food.overLimit_h.p10 !== null && !isKeptSolid(food, forecast);
  if (own === "warm" || (own !== null && isOver))
    bites.push({ kind: "warm", from_h: food.overLimit_h.p50 ?? food.overLimit_h.p10 ?? aboard_h });
  return bites.sort((a, b) => a.from_h - b.from_h);
}

/** One food in words, what tells against it first: "over 40 °F from day 2, 15:00, warm 14 h of 2 h allowed; …". */
export function foodStory(food: FoodResult, forecast: Forecast, voice: Voice): string {
  const bites = bitesOf(food, forecast);
  const limit = temperatureWords(forecast.result.limit.limit_C, voice.units);
  if (bites.length === 0) return keptWords(food, forecast, voice, limit);
  const sentences = bites.map((bite) => biteWords(bite, food, forecast, voice, limit));
  if (food.eaten_h !== null)
    sentences.push(`its ${last(food, forecast)}meal is ${mealWords(food.eaten_h, voice.clock)}`);
  return sentences.join("; ");
}

function biteWords(bite: Bite, food: FoodResult, forecast: Forecast, voice: Voice, limit: string): string {
  const aboard_h = aboardFrom_h(food, forecast);
  const from = (band: Band): string => {
    if (!voice.middle && band.p50 !== null) return `from ${fromWords(band, voice.clock, false)}`;
    return sinceWords(bite.from_h, aboard_h, voice);
  };
  if (bite.kind === "soft") return `soft ${from(food.thawed_h)}`;
  if (bite.kind === "meltwater") {
    const raw = food.verdict === "discard" ? " with raw food" : "";
    return `lay in meltwater${raw} ${from(food.wet_h ?? { p10: null, p50: null, p90: null })}`;
  }
  const warm = warmWords(food);
  const warmEnd = warm === "" ? "" : `, ${warm}`;
  if (food.belowLimit_h.p50 === null) return `never comes under ${limit}${warmEnd}`;
  if (food.overLimit_h.p10 === null) return `${cooledWords(food, forecast, voice, limit)}${warmEnd}`;
  return `over ${limit} ${from(food.overLimit_h)}${warmEnd}`;
}

/** "from day 2, 15:00": the full hour before what is reckoned, for minutes would claim too much. */
function sinceWords(from_h: number, aboard_h: number, { clock }: Voice): string {
  if (from_h - aboard_h < 0.5) return aboard_h === 0 ? "from the start" : "from when it came aboard";
  return `from ${hourWords(Math.max(from_h, aboard_h), clock)}`;
}

/** "comes under 40 °F by day 1, 11:00": the full hour after. */
function cooledWords(food: FoodResult, forecast: Forecast, voice: Voice, limit: string): string {
  const below_h = warmUntil_h(food, forecast);
  if (below_h === null) return `under ${limit}`;
  if (!voice.middle) return `comes under ${limit} ${fromWords(food.belowLimit_h, voice.clock, false)}`;
  return `comes under ${limit} by ${hourWords(coldBy_h(below_h, voice), voice.clock)}`;
}

/** The full hour after something is cold: earlier would be milder. */
export function coldBy_h(below_h: number, { clock }: Pick<Voice, "clock">): number {
  return fullHour_h(below_h - 2e-6, clock) + 1;
}

function keptWords(food: FoodResult, forecast: Forecast, voice: Voice, limit: string): string {
  const eaten = last(food, forecast) === "" ? "eaten" : "the last is eaten";
  const until =
    food.eaten_h === null ? "to the return" : `until ${eaten}, ${mealWords(food.eaten_h, voice.clock)}`;
  if (isKeptSolid(food, forecast)) return `solid ${until}`;
  const sentences: string[] = [];
  if (warmUntil_h(food, forecast) !== null) sentences.push(cooledWords(food, forecast, voice, limit));
  const over = food.overLimit_h;
  sentences.push(`under ${limit} ${over.p10 === null ? until : spanWords(over, voice.clock, voice.middle)}`);
  const warm = warmWords(food);
  return [...sentences, ...(warm === "" ? [] : [warm])].join("; ");
}

/** What is eaten throughout has many meals; the last of them is told. */
function last(food: FoodResult, forecast: Forecast): "" | "last " {
  return itemOf(food, forecast)?.eat_s === null ? "last " : "";
}

/** "warm 14 h of 2 h allowed": the longer end of the band counts. */
function warmWords(food: FoodResult): string {
  const { p50, p90 } = food.warm_h;
  if (p90 === 0) return "";
  const hours = p90 ?? p50;
  if (hours === null) return "warm for an unknown time";
  const span = p50 === p90 || p50 === null ? warmFor(hours) : `${warmFor(p50)} to ${warmFor(hours)}`;
  return `warm ${span}${food.warmAllowed_h === null ? "" : ` of ${durationWords(food.warmAllowed_h)} allowed`}`;
}

/** Warm time to the minute below ten hours, then to the hour, never less than it was. */
function warmFor(hours: number): string {
  if (hours >= 10) return `${Math.ceil(hours - 1e-9)} h`;
  return durationWords(Math.ceil(hours * 60 - 1e-6) / 60);
}
