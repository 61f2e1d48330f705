import type { FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import type { Verdict } from "../safety/verdict.ts";
import { bitesOf, endOf_h, foodStory, itemOf, ownReason } from "./foodStory.ts";
import { cut, hanging, type Paint, padded } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { nameWords, printable } from "./words.ts";

const ORDER: readonly Verdict[] = ["discard", "eat next", "keep"];
const NAME_COLUMNS = 22;
const VERDICT_COLUMNS = 10;
/** A remark longer than this that holds for many foods is made once. */
const LONG_REMARK = 40;

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
    // A verdict is as strict as the trip asks, so a loss need not be likely.
    const isLikely = these.some((food) => (food.overLimit_frac ?? 1) >= 0.5);
    const lost = voice.middle || isLikely ? "would be lost" : "could be lost, though likely not";
    return [`${these.length} ${verdict === "discard" ? lost : "to eat next"}: ${nameList(these)}`];
  });
  if (parts.length > 0)
    return `Of ${rows.length} ${rows.length === 1 ? "food" : "foods"} to watch, ${parts.join("; ")}.`;
  const warm = rows.filter((food) => endOf_h(food, forecast).p10 !== null);
  if (warm.length > 0)
    return `${warm.length} of ${rows.length} perishables may pass ${limit}: ${nameList(warm)}.`;
  const all = rows.length === 1 ? "The one perishable stays" : `All ${rows.length} perishables stay`;
  const eaten = rows.length === 1 ? "it is" : "they are";
  return `${all} under ${limit} until ${eaten} eaten${voice.middle ? "" : ", nine times in ten"}.`;
}

function nameList(foods: readonly FoodResult[]): string {
  const names = foods.slice(0, 3).map((food) => cut(printable(food.name), 30));
  return names.join(" · ") + (foods.length > 3 ? ` and ${foods.length - 3} more` : "");
}

/** Each perishable with its verdict, what tells against it or how long it stays within the limit, and the rule. */
export function foodLines(forecast: Forecast, voice: Voice): string[] {
  const rows = byUrgency(forecast.result.food);
  const lines: string[] = [];
  const said = new Set<string>();
  rows.forEach((food, i) => {
    const colour = verdictPaint(food.verdict, voice.paint);
    const word = colour(padded(food.verdict.toUpperCase(), VERDICT_COLUMNS));
    const head = `${" ".repeat(VERDICT_COLUMNS)}${padded(printable(food.name), NAME_COLUMNS)} `;
    const [first, ...rest] = hanging(head, foodStory(food, forecast, voice), voice.width);
    lines.push(word + first!.slice(VERDICT_COLUMNS), ...rest);
    const next = rows[i + 1];
    // Rows that may be kept share the line of their rule; whatever is lost or goes next has its own.
    const shared = food.verdict === "keep" && next !== undefined && next.rule === food.rule;
    const reason = shared ? "" : reasonWords(food, forecast, said);
    if (reason !== "") {
      const indent = " ".repeat(VERDICT_COLUMNS + 2);
      lines.push(...hanging(indent, reason, voice.width, voice.paint.faint));
    }
  });
  lines.push(...unsaidLines(forecast, voice));
  const others = forecast.result.food.filter((food) => !isShown(food));
  if (others.length > 0)
    lines.push(
      ...hanging(
        "",
        `Keeps without cold: ${nameWords(
          others.map(({ name }) => name),
          12,
        )}.`,
        voice.width,
      ),
    );
  return lines;
}

/**
 * The rule, and what the row itself has not said: its hours and its limit stand there already.
 */
function reasonWords(food: FoodResult, forecast: Forecast, said: Set<string>): string {
  const rule = printable(food.rule);
  const remarks = remarksOn(food, forecast, said);
  if (rule !== "" && !printable(food.why).includes(rule)) remarks.push(`Rule: ${rule}`);
  return remarks.join(". ");
}

/** What else tells against a food, the rule left out; a long remark in `said` was made already. */
export function remarksOn(food: FoodResult, forecast: Forecast, said: Set<string>): string[] {
  const why = printable(food.why);
  const remarks: string[] = [];
  const [lead, ...others] = bitesOf(food, forecast).map(({ kind }) => kind);
  if (lead === "soft" && ownReason(food) !== "soft")
    remarks.push("Once soft, ice cream and its kind are not kept");
  if ([lead, ...others].includes("meltwater") && ownReason(food) !== "meltwater")
    remarks.push("Its package lets water in");
  if (food.verdict !== "keep") {
    const isWet = ownReason(food) === "meltwater";
    const rest = isWet
      ? "its package lets water in"
      : /^\d/.test(why)
        ? /(?:[;:]|, and) (?!\d)(.*)$/.exec(why)?.[1]
        : why;
    // That somebody is easily harmed may only be assumed; the rule names them, and a line below asks.
    const isTold = rest === undefined || said.has(rest) || rest.startsWith("somebody easily harmed");
    if (!isTold) remarks.push(rest.slice(0, 1).toUpperCase() + rest.slice(1));
    if (rest !== undefined && rest.length > LONG_REMARK) said.add(rest);
  }
  return remarks;
}

/** What the file leaves open and a verdict rests on: saying it may change the verdict. */
function unsaidLines(forecast: Forecast, voice: Voice): string[] {
  const open = new Set(forecast.trip.assumed.map(({ path }) => path));
  const against = forecast.result.food.filter((food) => food.verdict !== "keep");
  const wet = against.filter(
    (food) =>
      bitesOf(food, forecast).some(({ kind }) => kind === "meltwater") &&
      open.has(`${itemOf(food, forecast)?.path}.watertight`),
  );
  const frail = against.filter((food) => food.why.includes("easily harmed"));
  const lines: string[] = [];
  if (wet.length > 0)
    lines.push(
      `You did not say whether the packages of ${nameWords(
        wet.map(({ name }) => name),
        6,
      )} are watertight. If they are, write watertight: true.`,
    );
  if (frail.length > 0 && open.has("party.vulnerable"))
    lines.push(
      `You did not say whether somebody easily harmed (young, pregnant, old or ill) eats with you, so the stricter rule holds for ${nameWords(
        frail.map(({ name }) => name),
        6,
      )}. If nobody does, write vulnerable: false.`,
    );
  return lines.flatMap((text) => hanging("? ", text, voice.width));
}

function verdictPaint(verdict: Verdict, paint: Paint): (text: string) => string {
  return verdict === "discard" ? paint.bad : verdict === "eat next" ? paint.warn : paint.strong;
}
