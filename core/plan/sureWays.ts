import { runMembers } from "../ensemble/runMembers.ts";
import { Cancelled } from "../ensemble/types.ts";
import { withDrain } from "../forecast/drainSwitch.ts";
import type { Warning } from "../forecast/result.ts";
import { linkedCoolers, onlyCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { type Standing, standingOf } from "./standing.ts";
import type { ProposeOptions } from "./trials.ts";
import { type WayOut, waysOutOf } from "./wayOut.ts";

/** Ways out that are told of a cooler. */
const MOST_WAYS = 3;
const COLD_C = 3;

/** A change with how the coolers that it concerns stand then. */
interface Way {
  does: string;
  standing: Standing;
}

const namesOf = (food: readonly { name: string }[]): string => food.map(({ name }) => name).join(", ");

function withFood(trip: Trip, change: (food: TripFood) => Partial<TripFood> | null): Trip | null {
  let isOther = false;
  const food = trip.food.map((one) => {
    const other = change(one);
    isOther ||= other !== null;
    return other === null ? one : { ...one, ...other };
  });
  return isOther ? { ...trip, food } : null;
}

/** What ice does not mend: food that comes warm, packages that let water in. */
function foodWays(trip: Trip, cooler: number, { wet }: Standing): WayOut[] {
  const isWarm = ({ cooler: at, state, start_C, putIn_s, like }: TripFood): boolean =>
    at === cooler && state === "chilled" && putIn_s === null && like.perishable && start_C > COLD_C;
  const warm = trip.food.filter(isWarm);
  const chilled = withFood(trip, (food) => (isWarm(food) ? { start_C: COLD_C } : null));
  const soaked = new Set(wet.map(({ item }) => item.id));
  const dry = withFood(trip, (food) => (soaked.has(food.id) ? { watertight: true } : null));
  const drained = trip.coolers[cooler]!.drain === "open" ? null : withDrain(trip, cooler, "open");
  return [
    ...(dry === null ? [] : [{ does: `pack ${namesOf(wet.map(({ item }) => item))} watertight`, trip: dry }]),
    ...(dry === null || drained === null
      ? []
      : [{ does: `let the meltwater of ${trip.coolers[cooler]!.name} out`, trip: drained }]),
    ...(chilled === null
      ? []
      : [{ does: `pack ${namesOf(warm)} at 37 °F (3 °C), not warmer`, trip: chilled }]),
  ];
}

const lostCount = ({ lost, wet }: Standing): number => lost.length + wet.length;

const isEnough = (standing: Standing): boolean => standing.excessCount === 0 && lostCount(standing) === 0;

/** How much later the second one's food likely passes its limit, to half an hour: less is not worth telling. */
const later_h = (one: Standing, other: Standing): number =>
  (Math.round(2 * other.likelyOver_h) - Math.round(2 * one.likelyOver_h)) / 2;

/** Negative: the first stands nearer to what was asked. */
const apart = (a: Standing, b: Standing): number =>
  a.excessCount - b.excessCount || lostCount(a) - lostCount(b) || b.heldCount - a.heldCount || later_h(a, b);

const foodWords = (count: number): string =>
  count === 0 ? "nothing" : count === 1 ? "1 food" : `${count} foods`;

function gainWords(trip: Trip, base: Standing, then: Standing, members: number): string {
  const asked = Math.round(100 * trip.confidence_frac);
  const instead = base.heldCount === then.heldCount ? "" : ` instead of ${base.heldCount}`;
  const held = `its food is then within its limit in ${then.heldCount} of ${members} members${instead}`;
  const [was, is] = [lostCount(base), lostCount(then)];
  const more = was === is ? `still ${foodWords(is)}` : `${foodWords(is)} instead of ${foodWords(was)}`;
  const lost = was + is === 0 ? "" : `; to be discarded, to be ${asked} % sure: ${more}`;
  const gain_h = isEnough(then) ? 0 : later_h(base, then);
  const later = gain_h > 0 ? `, and likely passes it ${Math.round(gain_h)} h later` : "";
  return `${isEnough(then) ? "" : "not enough by itself: "}${held}${later}${lost}`;
}

/** What one cooler fails in, as the head of its ways out. */
function headWords(trip: Trip, cooler: number, { heldCount, lost, wet }: Standing, members: number): string {
  const asked = Math.round(100 * trip.confidence_frac);
  const why = [
    ...lost.map(({ item }) => `${item.name} (not cold enough)`),
    ...wet.map(({ item }) => `${item.name} (meltwater in its package)`),
  ];
  const discarded = why.length === 0 ? "" : `; to be discarded, to be ${asked} % sure: ${why.join(", ")}`;
  return `${trip.coolers[cooler]!.name}: with this plan its food is within its limit in ${heldCount} of ${members} members${discarded}`;
}

/** The changes that bring one cooler, and those that merges join to it, nearest to what was asked, below what it fails in. */
function waysFor(trip: Trip, cooler: number, options: ProposeOptions): Warning[] {
  const { members, seed, signal, onProgress } = options;
  const linked = linkedCoolers(trip, cooler);
  const part = onlyCoolers(trip, linked);
  const place = [...linked].sort((a, b) => a - b).indexOf(cooler);
  const stand = (changed: Trip): Standing => {
    if (signal?.aborted) throw new Cancelled("called off");
    onProgress?.(0.99, `ways out for ${trip.coolers[cooler]!.name}`);
    return standingOf(changed, runMembers(changed, { from: 0, to: members, seed, series: false }));
  };
  const base = stand(part);
  if (isEnough(base)) return [];
  const ways: Way[] = [...foodWays(part, place, base), ...waysOutOf(part, place)].map((way) => ({
    does: way.does,
    standing: stand(way.trip),
  }));
  const better = ways
    .filter(({ standing }) => apart(standing, base) < 0)
    .sort((a, b) => apart(a.standing, b.standing));
  const none = `; of ${ways.length} changes that were tried, none gives more by itself`;
  const told = better
    .slice(0, MOST_WAYS)
    .map(({ does, standing }) => `${does}: ${gainWords(trip, base, standing, members)}`);
  const path = `coolers[${cooler}]`;
  return [
    {
      code: "food-unsure",
      says: headWords(trip, cooler, base, members) + (told.length === 0 ? none : ""),
      path,
    },
    ...told.map((says) => ({ code: "way-out", says, path })),
  ];
}

/**
 * For a plan that does not reach the trip's confidence: what each cooler fails in, and up to three changes for it, each run
 * over the same members, with what it gives. Coolers that have been told ways out already are left out.
 *
 * Limits: each change by itself, with the ice of the plan; few members, so shares are coarse.
 *
 * @param trip the planned trip
 * @throws Cancelled when the signal is given
 */
export function sureWays(
  trip: Trip,
  standing: Standing,
  told: readonly Warning[],
  options: ProposeOptions,
): Warning[] {
  const done = new Set(told.flatMap(({ code, path }) => (code === "way-out" ? [path] : [])));
  const isReached = standing.excessCount === 0 && lostCount(standing) === 0;
  if (options.members === 0 || isReached) return [];
  return [...standing.weak].flatMap((cooler) => {
    return done.has(`coolers[${cooler}]`) ? [] : waysFor(trip, cooler, options);
  });
}
