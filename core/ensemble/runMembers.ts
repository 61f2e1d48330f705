import { runFleet, startFleet } from "../cooler/fleet.ts";
import type { Fleet } from "../cooler/fleetState.ts";
import type { FleetInput } from "../cooler/types.ts";
import {
  type GridPoint,
  gridOf,
  onGrid,
  overLimit_s,
  warmestPerishable_C,
} from "../forecast/coolerResult.ts";
import { foodFacts, trackOf } from "../forecast/foodResult.ts";
import { inWorld } from "../forecast/inWorld.ts";
import { loadTrip } from "../forecast/load.ts";
import { iceOut_s, iceOutCarriedOn_s, looseStep_rel } from "../forecast/run.ts";
import type { World } from "../forecast/world.ts";
import { DomainError } from "../quantity/errors.ts";
import { linkedCoolers, onlyCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { drawWorld, worldAt } from "./drawWorld.ts";
import { inputsOf } from "./inputs.ts";
import { makeBins, putInBin } from "./seriesBins.ts";
import type { CoolerDraws, CoolerSeriesBins, Draws, FoodDraws, MemberTask, SeriesBins } from "./types.ts";

const tolerance = looseStep_rel;
const hour_s = 3600;

/** What all members of a trip have in common, made once. */
interface Prepared {
  /** The trip, or the part of it that is run. */
  part: Trip;
  /** Places of its coolers in the whole trip, and of its food among all items that lie in a cooler. */
  coolerAt: readonly number[];
  foodAt: readonly number[];
  /** Its items in a cooler, in the trip's order. */
  food: readonly TripFood[];
  input: FleetInput;
  grids: readonly (readonly GridPoint[])[];
}

const prepared = new WeakMap<Trip, Map<string, Prepared>>();

const inCoolers = ({ food }: Trip): TripFood[] => food.filter((item) => item.cooler !== null);

function prepare(trip: Trip, only: readonly number[] | undefined): Prepared {
  const known = prepared.get(trip) ?? new Map<string, Prepared>();
  prepared.set(trip, known);
  const key = only?.join() ?? "all";
  const before = known.get(key);
  if (before !== undefined) return before;
  const wanted = new Set(only?.flatMap((i) => [...linkedCoolers(trip, i)]) ?? trip.coolers.keys());
  const coolerAt = [...wanted].sort((a, b) => a - b);
  const part = coolerAt.length === trip.coolers.length ? trip : onlyCoolers(trip, wanted);
  const input = loadTrip(part);
  const fleet = startFleet(input, { tolerance, books: "end" });
  runFleet(fleet, input.end_s);
  const grids = fleet.tracks.map((track) => gridOf(fleet, track));
  const ids = inCoolers(trip).map(({ id }) => id);
  const food = inCoolers(part);
  const made = { part, coolerAt, foodAt: food.map(({ id }) => ids.indexOf(id)), food, input, grids };
  known.set(key, made);
  return made;
}

/** The world of a whole trip as it is for some of its coolers. */
const worldFor = (world: World, coolerAt: readonly number[]): World => ({
  ...world,
  coolers: coolerAt.map((i) => world.coolers[i]!),
});

const column = (n: number): Float64Array => new Float64Array(n).fill(Number.NaN);

const makeCoolerDraws = (n: number): CoolerDraws => ({
  iceOut_h: column(n),
  iceCarriedOn_h: column(n),
  overLimit_h: column(n),
  iceLeft_kg: column(n),
  warmest_C: column(n),
});
const makeFoodDraws = (n: number): FoodDraws => ({
  belowLimit_h: column(n),
  overLimit_h: column(n),
  warm_h: column(n),
  hotAir_h: column(n),
  over10C_h: column(n),
  coreMax_C: column(n),
  coreMin_C: column(n),
  thawed_h: column(n),
  wet_h: column(n),
});

const coldest_C = -85;
const hottest_C = 75;

/** Bins fine enough that a printed number is not moved: 0.25 K, and a three-hundredth of all the ice. */
function makeSeries(trip: Trip, grid: readonly GridPoint[], n: number): CoolerSeriesBins {
  const moments = grid.length;
  const sum = (dry: boolean): number =>
    trip.ice.reduce((all, ice) => all + ((ice.form === "dry ice") === dry ? ice.mass_kg : 0), 0);
  const temperature = (): SeriesBins => makeBins(moments, n, coldest_C, hottest_C, 641);
  const mass = (most_kg: number): SeriesBins => makeBins(moments, n, 0, most_kg > 0 ? most_kg : 1, 401);
  const ice_kg = 1.15 * sum(false);
  return {
    air_C: temperature(),
    ice_kg: makeBins(moments, n, 0, ice_kg + 0.5, 401),
    dryIce_kg: mass(1.15 * sum(true)),
    water_L: makeBins(moments, n, 0, ice_kg + 1, 401),
    warmestPerishable_C: temperature(),
  };
}

function keepSeries(
  trip: Trip,
  fleet: Fleet,
  i: number,
  grid: readonly GridPoint[],
  member: number,
  into: CoolerSeriesBins,
): void {
  const track = fleet.tracks[i]!;
  const put = (key: keyof CoolerSeriesBins, values: readonly (number | null)[]): void => {
    for (let moment = 0; moment < grid.length; moment++) putInBin(into[key], member, moment, values[moment]!);
  };
  put("air_C", onGrid(track, track.air_C, grid));
  put("ice_kg", onGrid(track, track.ice_kg, grid));
  put("dryIce_kg", onGrid(track, track.dryIce_kg, grid));
  put("water_L", onGrid(track, track.water_kg, grid));
  put("warmestPerishable_C", warmestPerishable_C(trip, fleet, i, grid));
}

const inHours = (time_s: number | null): number => (time_s === null ? Number.NaN : time_s / hour_s);

function keepFood(trip: Trip, fleet: Fleet, item: TripFood, at: number, into: FoodDraws): number | null {
  const facts = foodFacts(trip, fleet, item, trackOf(fleet, item.id)!);
  into.belowLimit_h[at] = inHours(facts.below_s);
  into.overLimit_h[at] = inHours(facts.over_s);
  into.warm_h[at] = inHours(facts.warm_s);
  into.hotAir_h[at] = inHours(facts.hotAir_s);
  into.over10C_h[at] = inHours(facts.over10C_s);
  into.coreMax_C[at] = facts.coreMax_C ?? Number.NaN;
  into.coreMin_C[at] = facts.coreMin_C ?? Number.NaN;
  into.thawed_h[at] = inHours(facts.thawed_s);
  into.wet_h[at] = inHours(facts.wet_s);
  return item.like.perishable ? facts.coreMax_C : null;
}

function keepCooler(trip: Trip, fleet: Fleet, i: number, at: number, into: CoolerDraws): void {
  const { ice_kg } = fleet.tracks[i]!;
  into.iceOut_h[at] = inHours(iceOut_s(fleet, i));
  into.iceCarriedOn_h[at] = iceOutCarriedOn_s(fleet, i) / hour_s;
  into.overLimit_h[at] = inHours(overLimit_s(trip, fleet, i));
  into.iceLeft_kg[at] = ice_kg.at(-1)!;
}

function worldOf(trip: Trip, task: Pick<MemberTask, "from" | "seed" | "scores">, at: number): World {
  if (task.scores === undefined) return drawWorld(trip, task.from + at, task.seed);
  const n = inputsOf(trip).length;
  const own = task.scores.subarray(at * n, (at + 1) * n);
  if (own.length !== n) throw new DomainError(`scores must be ${n} a member, got ${own.length}`);
  return worldAt(trip, own);
}

/**
 * Runs a stretch of members of a trip, one after the other, and keeps their numbers. What is kept of a member does not
 * depend on who runs it or on which others are in the stretch.
 *
 * @throws ModelError when no step settles
 */
export function runMembers(
  trip: Trip,
  task: Pick<MemberTask, "from" | "to" | "seed" | "series" | "scores" | "only">,
): Draws {
  const { part, coolerAt, foodAt, food, input, grids } = prepare(trip, task.only);
  const n = task.to - task.from;
  const draws: Draws = {
    from: task.from,
    to: task.to,
    coolers: trip.coolers.map(() => makeCoolerDraws(n)),
    food: inCoolers(trip).map(() => makeFoodDraws(n)),
    series: task.series
      ? trip.coolers.map((_, i) => makeSeries(trip, grids[coolerAt.indexOf(i)] ?? [], n))
      : null,
  };
  for (let at = 0; at < n; at++) {
    const world = worldFor(worldOf(trip, task, at), coolerAt);
    const fleet = startFleet(inWorld(input, trip.weather, world), { tolerance, books: "end" });
    runFleet(fleet, input.end_s);
    food.forEach((item, k) => {
      const most_C = keepFood(part, fleet, item, at, draws.food[foodAt[k]!]!);
      const { warmest_C } = draws.coolers[coolerAt[item.cooler!]!]!;
      if (most_C !== null && !(warmest_C[at]! > most_C)) warmest_C[at] = most_C;
    });
    coolerAt.forEach((place, i) => {
      keepCooler(part, fleet, i, at, draws.coolers[place]!);
      if (draws.series !== null) keepSeries(part, fleet, i, grids[i]!, at, draws.series[place]!);
    });
  }
  return draws;
}
