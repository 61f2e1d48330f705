import { chartRowsOf } from "./chartRows.ts";
import type { DaysRow } from "./charts.ts";
import type { Finding, FoodHistory } from "./history.ts";
import { dayWords } from "./timeWords.ts";

const DAY_s = 86_400;
/** A meal is not served to the minute: crossings by less than this are none. */
const rounding_s = 60;

/**
 * Days that ready-to-eat food of an inspected kitchen may be kept at 41 °F or below; the day that it is made or opened
 * counts as the first. Freezing stops the count.
 *
 * @source fda-food-code-2022
 */
const dateMark_days: number = 7;

/** Days that common practice gives a food that no row speaks of: the first number of its words; null: shelf goods. */
function usual_days({ days }: FoodHistory["food"]): number | null {
  if (/ambient|cut/.test(days)) return null;
  const first = /^\d+/.exec(days)?.[0];
  return first === undefined ? null : Number(first);
}

/**
 * The finding on days in the cold: from the strict end of its row of the public chart on an item is eaten next, past the
 * lenient end it is discarded. For eaters who are easily harmed, food that is ready to eat has only the strict end (the
 * project's own rule). An inspected kitchen discards ready-to-eat food by its date mark instead. Where no row speaks of a
 * food, common practice alone discards nothing. Food that the charts keep when warm is not judged by days: its days are a
 * matter of taste.
 *
 * @source public-cold-storage-chart, fda-food-code-2022, common-practice
 */
export function coldDaysFinding(history: FoodHistory): Finding | null {
  const { food, cold_s } = history;
  if (cold_s === null || food.warm === "keep" || food.warm === "keep whole") return null;
  const marked = food.kind === "rte" && history.profile === "inspected";
  if (marked && (history.mark_days ?? 0) > dateMark_days) return markFinding(history);
  const row = chartRowsOf(food.key).days;
  if (row !== null) return rowFinding(history, row, marked);
  const most_days = usual_days(food);
  if (most_days === null || cold_s <= most_days * DAY_s + rounding_s) return null;
  return {
    verdict: "eat next",
    rule: `${most_days === 1 ? "1 day" : `${most_days} days`} in the cold for food like ${food.name} (common practice)`,
    why: coldWords(history),
  };
}

function markFinding(history: FoodHistory): Finding {
  return {
    verdict: "discard",
    rule: `Ready-to-eat food is kept ${dateMark_days} days at most, the day it was made or opened being day 1 (Food Code 2022, 3-501.17)`,
    why: `its date mark is at day ${history.mark_days}: ${coldWords(history)}`,
  };
}

function rowFinding(history: FoodHistory, row: DaysRow, marked: boolean): Finding | null {
  const cold_s = history.cold_s!;
  const { strict_days, lenient_days } = row;
  if (cold_s <= strict_days * DAY_s + rounding_s) return null;
  const isFrail = history.vulnerable && history.food.kind === "rte";
  const end_days = isFrail ? strict_days : lenient_days;
  const past = !marked && cold_s > end_days * DAY_s + rounding_s;
  const span = strict_days === lenient_days ? `${strict_days}` : `${strict_days} to ${lenient_days}`;
  const frail =
    isFrail && past && cold_s <= lenient_days * DAY_s + rounding_s
      ? "; the first of both where somebody easily harmed eats, the project's own rule"
      : "";
  return {
    verdict: past ? "discard" : "eat next",
    rule: `${span} days at or below 40 °F for "${row.row}" (public cold-storage chart${frail})`,
    why: coldWords(history),
  };
}

function coldWords({ cold_s, coldGuessed, cameFrozen }: FoodHistory): string {
  const guessed = coldGuessed ? ", a day of it before departure, since the file does not say" : "";
  const frozen = cameFrozen ? ", the time it was frozen left out" : "";
  return `in the cold for ${dayWords(cold_s!)}${guessed}${frozen}`;
}
