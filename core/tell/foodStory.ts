import type { Band, FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import type { TripFood } from "../trip/types.ts";
import { inHundred } from "./gainWords.ts";
import type { Voice } from "./voice.ts";
import { dayPart, durationWords, fromWords, fullHour_h, hourWords, mealWords, spanWords } from "./words.ts";

/** What tells first against a food, and from when, hours from departure. */
export interface Bite {
  kind: "soft" | "meltwater" | "warm";
  from_h: number;
  /** The same with its doubt; the earliest that is known stands in `from_h` where it is likely not to happen at all. */
  band: Band;
}

/** A smaller share of members is not worth a word beside food that is kept. */
const LEAST_frac = 0.01;

const at = (t_h: number): Band => ({ p10: t_h, p50: t_h, p90: t_h });

function biteOf(kind: Bite["kind"], band: Band, otherwise_h: number | null): Bite[] {
  const from_h = band.p50 ?? band.p10 ?? otherwise_h;
  if (from_h === null) return [];
  return [{ kind, from_h, band: band.p50 === null && band.p10 === null ? at(from_h) : band }];
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
  return isKeptSolid(food, forecast) && food.thawed_h.p10 !== null ? food.thawed_h : food.overLimit_h;
}

/** Reasons that have nothing to do with what the trip does to the food; their rule and their reason tell them in full. */
const other = /in the cold for|a second time|in a pack without air|came aboard thawed/;

/** The reason of the verdict as the result has it; null where no rule speaks against the food. */
export function ownReason({ verdict, why }: FoodResult): Bite["kind"] | "other" | null {
  if (verdict === "keep") return null;
  if (other.test(why.split("; likely:")[0]!)) return "other";
  return why.includes("meltwater") ? "meltwater" : why.includes("thaw") ? "soft" : "warm";
}

/** Everything that tells against a food, the earliest first; the reason of its verdict is among them. */
export function bitesOf(food: FoodResult, forecast: Forecast): Bite[] {
  const own = ownReason(food);
  const aboard_h = aboardFrom_h(food, forecast);
  const bites: Bite[] = [];
  if (own === "soft" || isKeptSolid(food, forecast))
    bites.push(...biteOf("soft", food.thawed_h, own === "soft" ? aboard_h : null));
  const isWet = food.wet_h !== null && food.wet_h.p10 !== null;
  if (own === "meltwater" || (own !== null && isWet))
    bites.push(...biteOf("meltwater", food.wet_h ?? at(aboard_h), aboard_h));
  const isWarm = (food.overLimit_h.p10 !== null || isHalfSpent(food)) && !isKeptSolid(food, forecast);
  if (own === "warm" || (own !== null && isWarm)) bites.push(...biteOf("warm", food.overLimit_h, aboard_h));
  return bites.sort((a, b) => a.from_h - b.from_h);
}

/** More than half of the warm time allowed may be used up: from there on the rule speaks against it. */
function isHalfSpent({ warm_h, warmAllowed_h }: FoodResult): boolean {
  return warmAllowed_h !== null && (warm_h.p90 ?? Number.POSITIVE_INFINITY) > warmAllowed_h / 2;
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
  const from = sinceWords(bite, aboardFrom_h(food, forecast), voice);
  if (isUnlikely(bite, voice)) return unlikelyWords(bite, food, limit, voice);
  if (bite.kind === "soft") return `soft ${from}`;
  if (bite.kind === "meltwater")
    return `lay in meltwater${food.verdict === "discard" && ownReason(food) === "meltwater" ? " with raw food" : ""} ${from}`;
  const warm = warmWords(food, voice);
  const warmEnd = warm === "" ? "" : `, ${warm}`;
  if (food.belowLimit_h.p50 === null) return `${neverWords(food)} under ${limit}${warmEnd}`;
  if (food.overLimit_h.p10 === null) return `${cooledWords(food, forecast, voice, limit)}${warmEnd}`;
  return `over ${limit} ${from}${oftenWords(food)}${warmEnd}`;
}

/** One in ten, but not likely. */
function isUnlikely({ band }: Bite, { middle }: Voice): boolean {
  return !middle && band.p50 === null && band.p10 !== null;
}

/** "likely not over 40 °F, could be from day 2 noon (19 in 100 members)". */
function unlikelyWords({ kind, band }: Bite, food: FoodResult, limit: string, voice: Voice): string {
  const what = kind === "soft" ? "soft" : kind === "meltwater" ? "in meltwater" : `over ${limit}`;
  const warm = kind === "warm" ? warmWords(food, voice) : "";
  const often = kind === "warm" ? oftenWords(food) : "";
  const from = `could be from ${dayPart(band.p10!, voice.clock)}`;
  return `likely not ${what}, ${from}${often}${warm === "" ? "" : `, ${warm}`}`;
}

/** "never comes", or where one in ten does, "likely never comes". */
export function neverWords({ belowLimit_h }: FoodResult): string {
  return belowLimit_h.p10 === null ? "never comes" : "likely never comes";
}

/** "; over it in 3 in 100 members": said of what is likely kept all the same. */
function oftenOver({ overLimit_frac }: FoodResult): string {
  return overLimit_frac === undefined ? "" : `; over it in ${inHundred(overLimit_frac)} members`;
}

/** In how many members it passes its limit before it is eaten; nothing where no members were counted. */
function oftenWords({ overLimit_frac }: FoodResult): string {
  return overLimit_frac === undefined ? "" : ` (${inHundred(overLimit_frac)} members)`;
}

/** "from day 2, 15:00": the full hour before what is reckoned, for minutes would claim too much. */
function sinceWords({ from_h, band }: Bite, aboard_h: number, { clock, middle }: Voice): string {
  const latest_h = middle ? from_h : (band.p90 ?? Number.POSITIVE_INFINITY);
  if (latest_h - aboard_h < 0.5) return aboard_h === 0 ? "from the start" : "from when it came aboard";
  if (middle) return `from ${hourWords(Math.max(from_h, aboard_h), clock)}`;
  return `from ${fromWords(band, clock, false)}`;
}

/** "comes under 40 °F by day 1, 11:00": the full hour after. */
function cooledWords(food: FoodResult, forecast: Forecast, voice: Voice, limit: string): string {
  const below_h = warmUntil_h(food, forecast);
  if (below_h === null) return `under ${limit}`;
  return `comes under ${limit} by ${coldByWords(food.belowLimit_h, below_h, voice)}`;
}

/** The full hour after something is cold: earlier would be milder. */
export function coldBy_h(below_h: number, { clock }: Pick<Voice, "clock">): number {
  return fullHour_h(below_h - 2e-6, clock) + 1;
}

/** "day 4, 14:00", with its doubt "day 4, 14:00, could be day 4, 13:00 to 15:00": each the full hour after. */
export function coldByWords(band: Band, below_h: number, voice: Pick<Voice, "clock" | "middle">): string {
  const say = (t_h: number): string => hourWords(coldBy_h(t_h, voice), voice.clock);
  return voice.middle ? say(below_h) : fromWords(band, voice.clock, false, say);
}

function keptWords(food: FoodResult, forecast: Forecast, voice: Voice, limit: string): string {
  const eaten = last(food, forecast) === "" ? "eaten" : "the last is eaten";
  const until =
    food.eaten_h === null ? "to the return" : `until ${eaten}, ${mealWords(food.eaten_h, voice.clock)}`;
  if (isKeptSolid(food, forecast)) return `solid ${until}`;
  const sentences: string[] = [];
  if (warmUntil_h(food, forecast) !== null) sentences.push(cooledWords(food, forecast, voice, limit));
  const over = food.overLimit_h;
  const often = over.p10 === null && (food.overLimit_frac ?? 0) < LEAST_frac ? "" : oftenOver(food);
  sentences.push(
    `under ${limit} ${over.p10 === null ? until : spanWords(over, voice.clock, voice.middle)}${often}`,
  );
  const warm = warmWords(food, voice);
  return [...sentences, ...(warm === "" ? [] : [warm])].join("; ");
}

/** What is eaten throughout or in parts has many meals; the last of them is told. */
function last(food: FoodResult, forecast: Forecast): "" | "last " {
  const item = itemOf(food, forecast);
  return item?.eat_s === null || (item?.parts_s ?? null) !== null ? "last " : "";
}

/** "warm 14 h of 2 h allowed", "warm 9 h 24 min, could be 7 h to 11 h, of 2 h allowed". */
function warmWords({ warm_h, warmAllowed_h }: FoodResult, { middle }: Voice): string {
  const { p10, p50, p90 } = warm_h;
  if (p90 === 0) return "";
  if (p90 === null && p50 === null) return "warm for an unknown time";
  const allowed = warmAllowed_h === null ? "" : ` of ${durationWords(warmAllowed_h)} allowed`;
  if (middle) return `warm ${warmFor(p90 ?? p50!)}${allowed}`;
  const longest = p90 === null ? "an unknown time" : warmFor(p90);
  if (p50 === 0) return `likely not warm, could be for ${longest}${allowed}`;
  const likely = p50 === null ? "an unknown time" : warmFor(p50);
  const shortest = warmFor(p10 ?? 0, Math.floor);
  if (likely === longest && shortest === longest) return `warm ${likely}${allowed}`;
  return `warm ${likely}, could be ${shortest} to ${longest}${allowed === "" ? "" : `,${allowed}`}`;
}

/** Warm time to the minute below ten hours, then to the hour; never less than it was, unless rounded down. */
function warmFor(hours: number, round: (x: number) => number = (x) => Math.ceil(x - 1e-6)): string {
  return hours >= 10 ? `${round(hours)} h` : durationWords(round(hours * 60) / 60);
}
