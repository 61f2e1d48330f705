import type { Food } from "../matter/food.ts";
import type { Calendar, MealWord } from "./calendar.ts";
import type { FoodFile } from "./file.ts";
import type { Notes } from "./notes.ts";
import { momentWords } from "./schema/words.ts";

/** When something is eaten. */
export interface Eating {
  /** The last moment of eating; null: eaten throughout. */
  eat_s: number | null;
  /** Moments at which equal parts are eaten, where there are several. */
  parts_s: readonly number[] | null;
  /** At how many meals. */
  meals: number;
}

const every = /^every\s+(breakfast|lunch|dinner)$/i;
const someDays = /^days?\s+(\d{1,3})\s*(?:-|–|to)\s*(\d{1,3})\s+(breakfast|lunch|dinner)$/i;
const mustBe = `${momentWords}; or every breakfast, every lunch, every dinner; or day 2-5 lunch; or throughout`;

const mealOf = (typed: string | undefined): MealWord => (typed as string).toLowerCase() as MealWord;

/**
 * When a food is eaten. Meals of `every lunch` and `day 2-5 lunch` are counted after departure (or after it is put in)
 * and up to return; single moments must lie within the trip.
 *
 * @param putIn_s when it is put in on the way; null: aboard from the start
 */
export function resolveEating(
  notes: Notes,
  calendar: Calendar,
  file: FoodFile,
  path: string,
  like: Food,
  putIn_s: number | null,
): Eating {
  const at = `${path}.eat`;
  const isThroughout = typeof file.eat === "string" && file.eat.trim().toLowerCase() === "throughout";
  if (isThroughout || (file.eat === undefined && like.kind === "drink")) {
    if (!isThroughout) notes.assume(at, "throughout", "not given: a drink");
    const meals = calendar.allMeals_s().filter((t_s) => t_s > (putIn_s ?? 0) && t_s < calendar.duration_s);
    return { eat_s: null, parts_s: null, meals: meals.length };
  }
  if (file.eat === undefined) {
    notes.assume(at, calendar.return, "not given: it must keep until return");
    return { eat_s: calendar.duration_s, parts_s: null, meals: 1 };
  }
  const typed: readonly string[] = typeof file.eat === "string" ? [file.eat] : file.eat;
  const pathOf = (i: number): string => (typeof file.eat === "string" ? at : `${at}[${i}]`);
  if (typed.length === 0) notes.refuse(at, "at least one moment", "an empty list");
  const found = typed.flatMap((one, i) => momentsOf(notes, calendar, one.trim(), pathOf(i), putIn_s));
  const moments = [...new Set(found)].sort((a, b) => a - b);
  return {
    eat_s: moments.at(-1) ?? Number.NaN,
    parts_s: moments.length > 1 ? moments : null,
    meals: Math.max(1, moments.length),
  };
}

function momentsOf(
  notes: Notes,
  calendar: Calendar,
  typed: string,
  path: string,
  putIn_s: number | null,
): number[] {
  const daily = every.exec(typed);
  const span = someDays.exec(typed);
  if (daily === null && span === null) return [oneMoment(notes, calendar, typed, path, putIn_s)];
  if (Number.isNaN(calendar.duration_s)) return [];
  const meal = mealOf(daily?.[1] ?? span?.[3]);
  const [first, last] = span === null ? [1, Number.POSITIVE_INFINITY] : [Number(span[1]), Number(span[2])];
  if (first < 1 || last < first) {
    notes.refuse(path, "days from the first to the last, with day 1 the day of departure", typed);
    return [];
  }
  const all = calendar.mealsOn(meal).filter(({ t_s }) => t_s > (putIn_s ?? 0));
  const moments = all.filter(({ day }) => day >= first && day <= last);
  if (moments.length === 0) {
    const after = putIn_s === null ? "after departure" : "after it is put in";
    notes.refuse(path, `so that at least one ${meal} is meant, ${after} and by the return`, typed);
  } else if (span !== null) tellCut(notes, path, meal, [first, last], moments);
  return moments.map(({ t_s }) => t_s);
}

/** Meals of the stated days that the trip does not have are left out, and that is said. */
function tellCut(
  notes: Notes,
  path: string,
  meal: MealWord,
  [first, last]: readonly [number, number],
  moments: readonly { day: number }[],
): void {
  if (moments.length === last - first + 1) return;
  const [from, to] = [moments[0]!.day, moments.at(-1)!.day];
  const value = from === to ? `day ${from} ${meal}` : `day ${from}-${to} ${meal}`;
  notes.assume(path, value, "the other days of it have no such meal between departure and return");
}

function oneMoment(
  notes: Notes,
  calendar: Calendar,
  typed: string,
  path: string,
  putIn_s: number | null,
): number {
  if (/^(every|days)\b/i.test(typed)) return notes.refuse(path, mustBe, typed);
  const t_s = calendar.seconds(path, typed);
  const isLate = putIn_s !== null && putIn_s >= calendar.duration_s;
  if (putIn_s !== null && !isLate && t_s <= putIn_s)
    notes.refuse(path, "later than the moment it is put in", typed);
  return t_s;
}
