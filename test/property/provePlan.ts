import { runMembers } from "../../core/ensemble/runMembers.ts";
import type { Draws } from "../../core/ensemble/types.ts";
import { withBands } from "../../core/ensemble/withBands.ts";
import { forecast } from "../../core/forecast/forecast.ts";
import type { Result } from "../../core/forecast/result.ts";
import { highsSolver } from "../../core/plan/assign/solver.ts";
import { failuresOf, judge, needOf } from "../../core/plan/need.ts";
import { type Planned, plannedFile } from "../../core/plan/plannedFile.ts";
import { type WholePlan, wholePlan } from "../../core/plan/wholePlan.ts";
import { linkedCoolers } from "../../core/trip/oneCooler.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import { unitsOf } from "../../core/trip/typedUnits.ts";
import type { Trip } from "../../core/trip/types.ts";

/*
 * A plan is proved by what it writes: the planned file, read as any other and forecast. Where the plan says that it holds,
 * the forecast over the same members has to say so too, and one over members that the plan was not made on nearly as often.
 */

/** What a plan was found to have said wrongly. */
export type Miss =
  /** It threw. */
  | "threw"
  /** The planned file is not read. */
  | "unread"
  /** The planned file's forecast gives other numbers than the plan told. */
  | "other numbers"
  /** It says that it holds, and its forecast fails over the same members. */
  | "not held"
  /** It says that it holds, and so fewer of other members do that chance does not explain it. */
  | "unsure"
  /** It does not hold and gives no reason. */
  | "silent";

export interface Proof {
  holds: boolean;
  misses: { miss: Miss; says: string }[];
  confidence_frac: number;
  /** Members in which every perishable holds, of those of the plan's seed and of the other one; null: none were run. */
  own_frac: number | null;
  other_frac: number | null;
  /** What the planned file fails in; empty where it holds. */
  fails: readonly string[];
  /** null: it threw. */
  planned: Planned | null;
  /** Codes and words of what the plan warned of. */
  warnings: Result["warnings"];
}

/** What a plan may give as the reason that it does not hold, beside what `failuresOf` finds. */
const reasons: ReadonlySet<string> = new Set([
  "ice-short",
  "does-not-fit",
  "plan-unsure",
  "ice-run-short",
  "no-room-for-ice",
  "food-after-merge",
]);

function readOr(text: string, says: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(`${says}: ${JSON.stringify(reading.problems)}\n${text}`);
  return reading.trip;
}

/** Plans a file as `coldstow plan` does. */
export async function planText(
  text: string,
  { members, seed }: { members: number; seed: number },
): Promise<{ trip: Trip; plan: WholePlan; file: string }> {
  const trip = readOr(text, "the trip");
  const written = (planned: Planned): string =>
    plannedFile(text, trip, planned, unitsOf(text), "Added by a plan.");
  const draw = async (planned: Planned): Promise<Draws> =>
    runMembers(readOr(written(planned), "the planned trip"), { from: 0, to: members, seed, series: true });
  const plan = await wholePlan(trip, { aim: "pieces", members, seed, solve: await highsSolver(), draw });
  return { trip, plan, file: written(plan.planned) };
}

/** What a trip fails in: food and room over the members, as `forecast` has it, and the ice in the middle case. */
export function failing(trip: Trip, told: Result, middle: Result): string[] {
  const short = trip.coolers.flatMap((_, i) => {
    const need = needOf(trip, i, linkedCoolers(trip, i));
    return need.none ? [] : judge(middle, need).failing;
  });
  return [...failuresOf(told), ...short];
}

/** Share of the members in which no perishable passes its limit before it is eaten. */
function allHold_frac(trip: Trip, draws: Draws): number {
  const inCoolers = trip.food.filter(({ cooler }) => cooler !== null);
  const watched = inCoolers.flatMap((item, i) => (item.like.perishable ? [draws.food[i]!.overLimit_h] : []));
  const n = draws.to - draws.from;
  const holding = Array.from({ length: n }, (_, at) => watched.every((over_h) => Number.isNaN(over_h[at]!)));
  return holding.filter(Boolean).length / n;
}

/** What of a result another one must repeat, to six digits. */
function gist({ food, coolers }: Result): string[] {
  const short = (value: number | null | undefined): string => (value == null ? "-" : value.toPrecision(6));
  return [
    ...food.map(({ name, cooler, overLimit_frac, verdict }) =>
      [name, cooler, short(overLimit_frac), verdict].join(),
    ),
    ...coolers.map(({ name, filled_frac, iceOut_h: { p10, p50, p90 } }) =>
      [name, ...[filled_frac, p10, p50, p90].map(short)].join(),
    ),
  ].sort();
}

/** What one has and the other has not; empty: the same. */
function apart(one: Result, other: Result): string {
  const [had, has] = [gist(one), gist(other)];
  const only = (here: string[], there: string[]): string =>
    here.filter((line) => !there.includes(line)).join("; ");
  return had.join() === has.join() ? "" : `${only(had, has)} became ${only(has, had)}`;
}

/**
 * How far below the confidence the share of other members may fall by chance. The plan was made to reach it on n members,
 * so it is known of the plan itself only as well as n members tell; another m tell it again. Both are taken as binomial
 * (the draw is stratified and scatters less), at three standard deviations of their difference: 1 in 700 by chance.
 */
const byChance_frac = (confidence_frac: number, n: number, m: number): number =>
  3 * Math.sqrt(confidence_frac * (1 - confidence_frac) * (1 / n + 1 / m));

export interface ProveOptions {
  /** Members that the plan is made on, and as many from another seed as it is proved on. */
  members: number;
  others: number;
  seed: number;
}

/** Plans a trip, writes it down, reads it again and forecasts it. */
export async function provePlan(text: string, { members, others, seed }: ProveOptions): Promise<Proof> {
  const misses: Proof["misses"] = [];
  const { plan, file, trip: asked } = await planText(text, { members, seed });
  const { warnings } = plan.forecast.result;
  const proof = {
    holds: plan.holds,
    misses,
    confidence_frac: asked.confidence_frac,
    planned: plan.planned,
    warnings,
  };
  const reading = readTrip(file, { file: "trip.planned.yaml" });
  if (!reading.ok) {
    misses.push({ miss: "unread", says: JSON.stringify(reading.problems) });
    return { ...proof, fails: [], own_frac: null, other_frac: null };
  }
  const { trip } = reading;
  const own = runMembers(trip, { from: 0, to: members, seed, series: true });
  const middle = forecast(trip, { effects: false });
  const told = withBands(middle, own, seed).result;
  const differs = apart(plan.forecast.result, told);
  if (differs !== "") misses.push({ miss: "other numbers", says: differs });
  const fails = failing(trip, told, middle.result);
  if (plan.holds && fails.length > 0) misses.push({ miss: "not held", says: fails.join("; ") });
  const isTold =
    failuresOf(plan.forecast.result).length > 0 || warnings.some(({ code }) => reasons.has(code));
  if (!plan.holds && !isTold) misses.push({ miss: "silent", says: warnings.map(({ code }) => code).join() });
  const own_frac = allHold_frac(trip, own);
  if (!plan.holds) return { ...proof, fails, own_frac, other_frac: null };
  const other = runMembers(trip, { from: 0, to: others, seed: seed + 1, series: false });
  const other_frac = allHold_frac(trip, other);
  const least_frac = trip.confidence_frac - byChance_frac(trip.confidence_frac, members, others);
  if (other_frac < least_frac)
    misses.push({
      miss: "unsure",
      says: `${other_frac} of others, ${own_frac} of its own, ${trip.confidence_frac} asked`,
    });
  return { ...proof, fails, own_frac, other_frac };
}
