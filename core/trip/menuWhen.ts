import { Temporal } from "temporal-polyfill";

/** When something is eaten, as a trip file says it, with what had to be guessed; or what it must be. */
export type WhenReading =
  | { ok: true; eat: string | string[] | null; guesses: string[] }
  | { ok: false; must: string };

const meals: Readonly<Record<string, string>> = {
  breakfast: "breakfast",
  brekkie: "breakfast",
  brunch: "breakfast",
  morning: "breakfast",
  b: "breakfast",
  lunch: "lunch",
  midday: "lunch",
  noon: "lunch",
  l: "lunch",
  dinner: "dinner",
  supper: "dinner",
  tea: "dinner",
  evening: "dinner",
  d: "dinner",
};
const throughout = /^(throughout|all(?: trip)?|any ?time|snacks?|always|daily snacks?|whole trip)$/;
const everyDay = /^(?:every(?: ?day)?|daily|each(?: day)?|all days)$/;
const weekdays = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
const must =
  "a day and a meal, such as day 3 dinner, D3 dinner, Tue dinner, 2-4 lunch, every breakfast, or throughout";

/**
 * Reads what a spreadsheet says of the moment of a meal: a day column, a meal column, or both in one cell. A day of the
 * week or a date needs the day of departure. What is only half said is guessed and told.
 *
 * @param depart local ISO of the departure; null: not known
 */
export function readWhen(day: string, meal: string, depart: string | null): WhenReading {
  const words = `${day} ${meal}`
    .trim()
    .toLowerCase()
    .replace(/\s+/g, " ")
    .replace(/\bdays\b/g, "day");
  if (words === "") return { ok: true, eat: null, guesses: [] };
  if (throughout.test(words) || throughout.test(meal.trim().toLowerCase()))
    return { ok: true, eat: "throughout", guesses: [] };
  const { name, rest } = mealIn(words);
  const guesses = name === null ? ["the meal is not said: dinner"] : [];
  const taken = name ?? "dinner";
  if (rest === "" || everyDay.test(rest)) {
    if (rest === "" && name !== null) guesses.push(`the day is not said: every ${taken}`);
    return { ok: true, eat: `every ${taken}`, guesses };
  }
  const days = daysIn(rest, depart);
  if (typeof days === "string") return { ok: false, must: days };
  return { ok: true, eat: eatOf(days, taken), guesses };
}

/** The meal that a text names by its last such word, and the text without it. */
function mealIn(words: string): { name: string | null; rest: string } {
  const parts = words.split(" ");
  const at = parts.findLastIndex((part) => Object.hasOwn(meals, part));
  if (at < 0) return { name: null, rest: words };
  return { name: meals[parts[at]!]!, rest: parts.filter((_, i) => i !== at).join(" ") };
}

type Days = readonly (number | readonly [number, number])[];

function eatOf(days: Days, meal: string): string | string[] {
  const told = days.map((day) =>
    typeof day === "number" ? `day ${day} ${meal}` : `day ${day[0]}-${day[1]} ${meal}`,
  );
  return told.length === 1 ? told[0]! : told;
}

/** "3", "day 3", "D3", "2-4", "1, 3 and 5", "Tue", "2027-06-12"; else what it must be. */
function daysIn(words: string, depart: string | null): Days | string {
  const dates = words.match(/\d{4}-\d{2}-\d{2}/g);
  if (dates !== null) return datesIn(dates, depart);
  const named = words.split(/[\s,;/&]+|\band\b/).filter((word) => word !== "" && word !== "day");
  if (named.length === 0 || named.length > 40) return must;
  const days: (number | [number, number])[] = [];
  for (const word of named) {
    const weekday = weekdays.findIndex((known) => word.replace(/\.$/, "").startsWith(known));
    const span = /^d?(\d{1,3})(?:\s*[-–]\s*d?(\d{1,3}))?$/.exec(word);
    if (span !== null) {
      const [from, to] = [Number(span[1]), Number(span[2] ?? span[1])];
      if (from < 1 || to < from || to > 60) return must;
      days.push(from === to ? from : [from, to]);
    } else if (weekday >= 0 && depart !== null) days.push(dayOfWeek(weekday, depart));
    else
      return weekday >= 0
        ? "a day by its number, or the departure must be known, to tell which day that is"
        : must;
  }
  return days;
}

/** The first day of the trip that is this day of the week, 0 for Monday. */
function dayOfWeek(weekday: number, depart: string): number {
  const first = Temporal.PlainDate.from(depart.slice(0, 10)).dayOfWeek - 1;
  return 1 + ((weekday - first + 7) % 7);
}

function datesIn(dates: readonly string[], depart: string | null): Days | string {
  if (depart === null)
    return "a day by its number, or the departure must be known, to tell which day that is";
  try {
    const start = Temporal.PlainDate.from(depart.slice(0, 10));
    const days = dates.map((date) => start.until(Temporal.PlainDate.from(date)).days + 1);
    return days.every((day) => day >= 1 && day <= 60) ? days : "a date of the trip";
  } catch {
    return "a date that calendars have";
  }
}
