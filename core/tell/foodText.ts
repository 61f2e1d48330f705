import type { FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import type { Verdict } from "../safety/verdict.ts";
import { cut, hanging, type Paint, padded } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { dayPart, durationWords, fromWords, printable, spanWords } from "./words.ts";

const ORDER: readonly Verdict[] = ["discard", "eat next", "keep"];
const NAME_COLUMNS = 22;
const VERDICT_COLUMNS = 10;

/** A clock runs for perishables; anything else with a verdict against it is shown beside them, never passed over. */
export const isShown = (food: FoodResult): boolean => food.perishable || food.verdict !== "keep";

/** Foods to be shown, the worst first; within one verdict the order of the result stays. */
export function byUrgency(food: readonly FoodResult[]): FoodResult[] {
  const shown = food.filter(isShown);
  return ORDER.flatMap((verdict) => shown.filter((one) => one.verdict === verdict));
}

/** The answer in a sentence or two: whether the food stays cold, and what goes first if not. */
export function foodAnswer(forecast: Forecast, voice: Voice): string {
  const rows = byUrgency(forecast.result.food);
  const limit = temperatureWords(forecast.result.limit.limit_C, voice.units);
  if (rows.length === 0) return "Nothing perishable is aboard.";
  const parts = (["discard", "eat next"] as const).flatMap((verdict) => {
    const these = rows.filter((food) => food.verdict === verdict);
    if (these.length === 0) return [];
    return [`${these.length} ${verdict === "discard" ? "to throw away" : "to eat next"}: ${nameList(these)}`];
  });
  if (parts.length > 0) return `Of ${rows.length} foods to watch ${parts.join("; ")}.`;
  const warm = rows.filter((food) => food.overLimit_h.p10 !== null);
  if (warm.length > 0)
    return `${warm.length} of ${rows.length} perishables may pass ${limit}: ${nameList(warm)}.`;
  const all = rows.length === 1 ? "The one perishable stays" : `All ${rows.length} perishables stay`;
  const eaten = rows.length === 1 ? "it is" : "they are";
  return `${all} under ${limit} until ${eaten} eaten${voice.middle ? " (middle case)" : ", nine times in ten"}.`;
}

function nameList(foods: readonly FoodResult[]): string {
  const names = foods.slice(0, 3).map((food) => cut(printable(food.name), 30));
  return names.join(" · ") + (foods.length > 3 ? ` and ${foods.length - 3} more` : "");
}

/** From when a food is aboard, hours from departure. A result has no ids: name, then time of the meal, tell foods apart. */
export function aboardFrom_h(food: FoodResult, { trip }: Forecast): number {
  const named = trip.food.filter((item) => item.name === food.name);
  const eaten = named.find(
    (item) => item.eat_s !== null && Math.abs(item.eat_s / 3600 - (food.eaten_h ?? -1)) < 1 / 60,
  );
  return ((eaten ?? named[0])?.putIn_s ?? 0) / 3600;
}

/** When a food that came aboard warm is under the limit; null where it was cold when it came. */
export function warmUntil_h(food: FoodResult, forecast: Forecast): number | null {
  const below_h = food.belowLimit_h.p50;
  return below_h !== null && below_h > aboardFrom_h(food, forecast) + 1 / 60 ? below_h : null;
}

/** How long one food stays within the limit, in words, without a subject. */
export function coldSpan(food: FoodResult, forecast: Forecast, voice: Voice): string {
  const { clock, middle } = voice;
  const limit = temperatureWords(forecast.result.limit.limit_C, voice.units);
  const end =
    food.eaten_h === null ? "to the return" : `${untilMeal(food.verdict)} ${dayPart(food.eaten_h, clock)}`;
  const over = food.overLimit_h;
  const sentences: string[] = [];
  const below = food.belowLimit_h.p50;
  if (below === null) sentences.push(`never comes under ${limit}`);
  else if (warmUntil_h(food, forecast) !== null)
    sentences.push(`comes under ${limit} ${fromWords(food.belowLimit_h, clock, middle)}`);
  if (below !== null) {
    if (over.p10 === null) sentences.push(`under ${limit} ${end}`);
    else sentences.push(`under ${limit} ${spanWords(over, clock, middle)}`);
  }
  const warm = warmWords(food);
  if (warm !== "") sentences.push(warm);
  if (over.p10 !== null && food.eaten_h !== null)
    sentences.push(`its meal is ${dayPart(food.eaten_h, clock)}`);
  return sentences.join("; ");
}

/** What is to be thrown away has a meal that it was meant for, but is not eaten. */
export function untilMeal(verdict: Verdict): string {
  return verdict === "discard" ? "until its meal," : "until eaten,";
}

/** "warm 4 h, 2 h allowed": the longer end of the band counts. */
function warmWords(food: FoodResult): string {
  const { p50, p90 } = food.warm_h;
  if (p90 === 0) return "";
  const hours = p90 ?? p50;
  if (hours === null) return "warm for an unknown time";
  const span =
    p50 === p90 || p50 === null ? durationWords(hours) : `${durationWords(p50)} to ${durationWords(hours)}`;
  return `warm ${span}${food.warmAllowed_h === null ? "" : `, ${durationWords(food.warmAllowed_h)} allowed`}`;
}

/** The first part of every text: each perishable with its verdict, its time within the limit and the reason. */
export function foodLines(forecast: Forecast, voice: Voice): string[] {
  const rows = byUrgency(forecast.result.food);
  const lines: string[] = [];
  rows.forEach((food, i) => {
    const colour = verdictPaint(food.verdict, voice.paint);
    const word = colour(padded(food.verdict.toUpperCase(), VERDICT_COLUMNS));
    const head = `${" ".repeat(VERDICT_COLUMNS)}${padded(printable(food.name), NAME_COLUMNS)} `;
    const [first, ...rest] = hanging(head, coldSpan(food, forecast, voice), voice.width);
    lines.push(word + first!.slice(VERDICT_COLUMNS), ...rest);
    if (i + 1 === rows.length || reason(rows[i + 1]!) !== reason(food)) {
      const indent = " ".repeat(VERDICT_COLUMNS + 2);
      lines.push(...hanging(indent, reason(food), voice.width, voice.paint.faint));
    }
  });
  const others = forecast.result.food.filter((food) => !isShown(food));
  if (others.length > 0) lines.push(...hanging("", `No clock needed: ${nameList(others)}.`, voice.width));
  return lines;
}

/** Rows that follow each other with the same reason share one line for it. */
function reason(food: FoodResult): string {
  const why = printable(food.why);
  const rule = printable(food.rule);
  return rule === "" || why.includes(rule) ? why : `${why}. Rule: ${rule}`;
}

function verdictPaint(verdict: Verdict, paint: Paint): (text: string) => string {
  return verdict === "discard" ? paint.bad : verdict === "eat next" ? paint.warn : paint.strong;
}
