import type { CampFacts } from "../worker/logAsks.ts";
import type { CampPlan } from "./keptPlan.ts";

/** One row of the day's card. */
export interface TodayRow {
  id: string;
  /** Local ISO. */
  at: string;
  head: string;
  second: string;
}

/** "7 am" or "7:15 pm" of a local ISO moment. */
function clockOf(iso: string): string {
  const [hour = 0, minute = 0] = iso.slice(11, 16).split(":").map(Number);
  const shown = hour % 12 === 0 ? 12 : hour % 12;
  return `${shown}${minute === 0 ? "" : `:${String(minute).padStart(2, "0")}`} ${hour < 12 ? "am" : "pm"}`;
}

const dayOf = (iso: string, { depart }: CampFacts): number =>
  1 +
  Math.round(
    (Date.parse(`${iso.slice(0, 10)}T00:00Z`) - Date.parse(`${depart.slice(0, 10)}T00:00Z`)) / 86_400_000,
  );

/** What is to be done on a day, in order of time: what each lid is opened for, what thaws, ice runs, merges. */
export function rowsOf(plan: CampPlan, facts: CampFacts, day: number): TodayRow[] {
  const isToday = ({ at }: { at: string }): boolean => dayOf(at, facts) === day;
  const pulls = plan.pull.filter(isToday).flatMap(({ at, meal, take, thaw }): TodayRow[] => {
    const coolers = [...new Set(take.map(({ cooler }) => cooler))];
    const opened = coolers.map((cooler) => ({
      id: `camp ${at} ${cooler}`,
      at,
      head: `${cooler}, ${clockOf(at)}, one go`,
      second:
        take
          .filter((one) => one.cooler === cooler)
          .map(({ item }) => item)
          .join(" · ") || meal,
    }));
    const thawed = thaw.map(({ item, from, to, for: meant }) => ({
      id: `camp ${at} thaw ${item}`,
      at,
      head: `${item} out to thaw`,
      second: `${from} to ${to}, for ${meant}`,
    }));
    return [...opened, ...thawed];
  });
  const runs = plan.iceRuns.filter(isToday).map(({ at, leaveBy, pieces, form, into }) => ({
    id: `camp ${at} run ${into}`,
    at: leaveBy,
    head: `Ice run: leave by ${clockOf(leaveBy)}`,
    second: `${pieces} × ${form} for ${into}`,
  }));
  const merges = plan.merges.filter(isToday).map(({ at, from, into, why }) => ({
    id: `camp ${at} merge ${from}`,
    at,
    head: `${clockOf(at)}: empty ${from} into ${into}`,
    second: why,
  }));
  return [...pulls, ...runs, ...merges].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}
