import { medianClosures } from "../cooler/closures.ts";
import { drawWorld } from "../ensemble/drawWorld.ts";
import { changedCoolers, withFresh } from "../ensemble/partDraws.ts";
import type { Draws } from "../ensemble/types.ts";
import { withBands } from "../ensemble/withBands.ts";
import { forecast } from "../forecast/forecast.ts";
import type { Warning } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import type { Trip, TripCooler, TripIce } from "../trip/types.ts";
import { climb, type Stood } from "./climb.ts";
import { judge } from "./need.ts";
import { type IcePlan, type IceSearch, searchIce, toldIce } from "./planIce.ts";
import { type PlanOptions, Scene } from "./scene.ts";
import { allowedCount, isSure, type Standing, standingOf, watchedOver_h } from "./standing.ts";

/** How often the search is made anew for a harder world before it is said that it did not come together. */
const mostRounds = 4;
/** Members that a round is tried on; only what holds in these is tried on all. */
const roundMembers = 64;

export interface SureOptions extends PlanOptions {
  seed: number;
  members: number;
  /** Runs the first members of the trip with this ice: as many as said, or all of them, with series; `only` as in `MemberTask`. */
  draw: (addedIce: readonly TripIce[], count: number | "all", only?: readonly number[]) => Promise<Draws>;
}

const orLast = (over_h: number): number => (Number.isNaN(over_h) ? Infinity : over_h);

const warmest_C = ({ coolers }: Draws, at: number): number =>
  coolers.reduce(
    (most, draws) => Math.max(most, draws.warmest_C[at] || Number.NEGATIVE_INFINITY),
    Number.NEGATIVE_INFINITY,
  );

/** Members from the one whose food fails first; those in which none fails are ordered by their warmest food. */
function worstFirst(trip: Trip, draws: Draws): { member: number; fails: boolean }[] {
  const n = draws.to - draws.from;
  const foods = watchedOver_h(trip, draws);
  const all = Array.from({ length: n }, (_, at) => {
    const over_h = foods.reduce((first, times) => Math.min(first, orLast(times[at]!)), Infinity);
    return { member: draws.from + at, over_h, warm_C: warmest_C(draws, at) };
  });
  all.sort((a, b) =>
    a.over_h === b.over_h ? b.warm_C - a.warm_C || a.member - b.member : a.over_h - b.over_h,
  );
  return all.map(({ member, over_h }) => ({ member, fails: over_h < Infinity }));
}

interface Tried {
  search: IceSearch;
  draws: Draws;
  order: { member: number; fails: boolean }[];
  failing: number;
  /** On all members, with series. */
  isAll: boolean;
}

const fits = ({ search }: Tried): boolean =>
  search.added.every(({ judgement }) => judgement.filled_frac <= 1 + 1e-9);

const failing_frac = ({ failing, order }: Tried): number => failing / order.length;

const isBetter = (one: Tried, other: Tried): boolean =>
  one.search === other.search || (failing_frac(one) < failing_frac(other) && (fits(one) || !fits(other)));

/** The same pieces at the same places: another search has nothing more to offer. */
function isSame(one: IceSearch, other: IceSearch): boolean {
  const words = ({ addedIce }: IceSearch): string =>
    addedIce
      .map(({ form, pieces, each, cooler, layer }) => [form, pieces, each, cooler, layer].join())
      .join(";");
  return words(one) === words(other);
}

/**
 * In how many of the members every perishable keeps its limit, beside what was asked; and what is to be discarded for want
 * of cold though that is reached.
 */
export function sureWarning(trip: Trip, draws: Draws, { lost }: Pick<Standing, "lost">): Warning {
  const order = worstFirst(trip, draws);
  const failing = order.filter(({ fails }) => fails).length;
  const members = order.length;
  const asked = Math.round(100 * trip.confidence_frac);
  const held = members - failing;
  const isReached = failing <= allowedCount(trip, members);
  const names = lost.map(({ food }) => food.name).join(", ");
  const spoilt = lost.length === 0 ? "" : `; to be ${asked} % sure, ${names} must still be discarded`;
  const says = `every perishable in a cooler stays within its limit in ${held} of ${members} members; ${asked} % was asked`;
  const unreached = isReached ? "" : ", and no ice that fits was found to reach it";
  const unmended = isReached && lost.length > 0 ? ", and no ice that fits was found to mend that" : "";
  const isSurely = isReached && lost.length === 0;
  return {
    code: isSurely ? "plan-sure" : "plan-unsure",
    says: says + unreached + spoilt + unmended,
    path: "",
  };
}

/**
 * The world that a search is made in, for each trial: how things are packed is not in doubt there, or what fits in it
 * would not fit in the cooler that is told. A trial may hold some of the coolers only, and pieces that the trip has not.
 */
function searchWorld(trip: Trip, member: number, seed: number): NonNullable<PlanOptions["worldOf"]> {
  const drawn = drawWorld(trip, member, seed);
  // How far blocks cover the floor stays in doubt: it decides how much of the food lies on ice.
  const { cubePacking_frac, crushedPacking_frac, foodPacking_frac, gapFill_frac } = medianClosures;
  const packing = { cubePacking_frac, crushedPacking_frac, foodPacking_frac, gapFill_frac };
  const packed = drawn.coolers.map((own) => ({ ...own, closures: { ...own.closures, ...packing } }));
  const place = ({ name }: TripCooler): number => trip.coolers.findIndex((cooler) => cooler.name === name);
  return (trial, whole) => ({
    ...drawn,
    coolers: trial.coolers.map((cooler) => packed[place(cooler)]!),
    lots: drawWorld(whole, member, seed).lots,
  });
}

/** What a search found in its world is no forecast, and is told as what it is. */
function fromWorld(trip: Trip, warnings: readonly Warning[]): Warning[] {
  const watchedPaths = new Set(
    trip.food.filter((item) => item.like.perishable).map(({ cooler }) => `coolers[${cooler}]`),
  );
  return warnings.map((warning) =>
    ofSearch.has(warning.code) && (warning.path === "" || watchedPaths.has(warning.path))
      ? { ...warning, says: `Where more goes wrong than likely: ${warning.says}` }
      : warning,
  );
}
const ofSearch: ReadonlySet<string> = new Set(["way-out", "ice-enough", "ice-layer", "freezer-full"]);

const holdsSurely = (trip: Trip, { failing, order }: Tried): boolean =>
  failing <= allowedCount(trip, order.length);

/** Tries a search on members. */
type Trying = (search: IceSearch, count: number | "all") => Promise<Tried>;

/**
 * Pieces that hold at the trip's confidence, or the best that was found: searched for the middle case, tried on some
 * members, and where too many fail searched again for the first of them that must not fail; then tried on all. What is
 * not sure then is climbed from, member by member.
 */
async function sureIce(trip: Trip, options: SureOptions): Promise<Tried> {
  const { members, draw, ...searching } = options;
  const some = members > roundMembers ? roundMembers : "all";
  const drawn = new Map<number | "all", { trip: Trip; draws: Draws }>();
  /** Members of coolers that are as they were the last time are not run again. */
  const drawnOf = async (addedIce: readonly TripIce[], count: number | "all"): Promise<Draws> => {
    const filled = { ...trip, ice: [...trip.ice, ...addedIce] };
    const last = drawn.get(count);
    const only = last && changedCoolers(last.trip, filled);
    const fresh = only?.length === 0 ? last!.draws : await draw(addedIce, count, only);
    const draws = last && only ? withFresh(filled, last.draws, fresh, only) : fresh;
    drawn.set(count, { trip: filled, draws });
    return draws;
  };
  const tried: Trying = async (search, count) => {
    const draws = await drawnOf(search.addedIce, count);
    const order = worstFirst(trip, draws);
    const failing = order.filter(({ fails }) => fails).length;
    return { search, draws, order, failing, isAll: count === "all" };
  };
  const scene = new Scene(searching);
  const found = await searched(trip, scene, tried, { ...options, some });
  // First where it is cheap; what only all members tell is mended on all.
  const near = await climbed(trip, scene, found, tried);
  if (near.tried.isAll) return near.tried;
  const all = await tried(near.tried.search, "all");
  return near.isSure ? (await climbed(trip, scene, all, tried)).tried : all;
}

/** Adds ice to what was found until it is sure on as many members, if that is to be had. */
async function climbed(
  trip: Trip,
  scene: Scene,
  found: Tried,
  tried: Trying,
): Promise<{ tried: Tried; isSure: boolean }> {
  const count = found.isAll ? "all" : found.order.length;
  const all = new Map<IceSearch, Tried>();
  const read = ({ search, draws }: Tried): Stood => {
    const filled = { ...trip, ice: [...trip.ice, ...search.addedIce] };
    const middle = forecast(filled, { effects: false });
    const added = search.added.map((fill) => {
      const judgement = fill.need.none ? fill.judgement : judge(middle.result, fill.need);
      return { ...fill, judgement, holds: judgement.outcome === "holds" };
    });
    const told = search.isClimbed ? { ...search, added } : search;
    return { search: told, standing: standingOf(filled, draws, middle) };
  };
  const stand = async (search: IceSearch): Promise<Stood> => {
    const one = await tried(search, count);
    const stood = read(one);
    all.set(stood.search, { ...one, search: stood.search });
    return stood;
  };
  const best = await climb(scene, trip, read(found), stand);
  return { tried: all.get(best.search) ?? found, isSure: isSure(best.standing) };
}

async function searched(
  trip: Trip,
  scene: Scene,
  tried: Trying,
  options: SureOptions & { some: number | "all" },
): Promise<Tried> {
  const { seed, some } = options;
  let last = await tried(searchIce(trip, scene), some);
  let best = last;
  // A world in which no ice that fits holds says that those further out need not be asked: the members are, by the climb.
  for (let [round, isOver] = [0, false]; !options.signal?.aborted && !isOver; ) {
    if (holdsSurely(trip, last)) {
      if (last.isAll) return last;
      last = await tried(last.search, "all");
    } else {
      if (round === mostRounds) break;
      // Each round a world further out, so that it comes to an end.
      const { member } =
        last.order[Math.floor(allowedCount(trip, last.order.length) * (1 - round++ / mostRounds))]!;
      const search = searchIce(trip, scene.inWorld(searchWorld(trip, member, seed)));
      if (isSame(search, last.search)) break;
      isOver = search.added.some(({ holds, need }) => !holds && need.foods.size > 0);
      last = await tried(search, some);
    }
    if (isBetter(last, best)) best = last;
  }
  return best;
}

/**
 * An ice plan that holds at the trip's confidence: what was found is told with the share of members that it keeps, whether
 * that is enough or not.
 *
 * Limits: one world stands for all, so the plan may have a piece more than the least; food that fails in the middle case
 * for another reason than too little ice is not mended.
 */
export async function surePlan(
  trip: Trip,
  options: SureOptions,
): Promise<{ plan: IcePlan; forecast: Forecast; draws: Draws }> {
  const best = await sureIce(trip, options);
  const { draws, search } = best;
  const plan = toldIce(trip, search);
  const { result } = withBands(plan.forecast, draws, options.seed);
  const found =
    search.scene.options.worldOf === undefined ? result.warnings : fromWorld(trip, result.warnings);
  const planned = plan.forecast.trip;
  const warnings = [sureWarning(trip, draws, standingOf(planned, draws, plan.forecast)), ...found];
  return { draws, plan, forecast: { ...plan.forecast, result: { ...result, warnings } } };
}
