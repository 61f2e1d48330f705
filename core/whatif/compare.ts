import type { EnsembleOptions } from "../ensemble/ensemble.ts";
import { joinDraws } from "../ensemble/joinDraws.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import { tasksFor } from "../ensemble/tasks.ts";
import type { Draws, RunTasks } from "../ensemble/types.ts";
import { withBands } from "../ensemble/withBands.ts";
import { forecast } from "../forecast/forecast.ts";
import { loadTrip } from "../forecast/load.ts";
import type { CoolerResult } from "../forecast/result.ts";
import { carriedOnUntil_s } from "../forecast/run.ts";
import { DomainError } from "../quantity/errors.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { checkMembers } from "./batch.ts";
import { type Drawn, fails_frac, holds } from "./gains.ts";
import type { ComparedTrip, ComparePair, CompareResult } from "./types.ts";

/** A trip to be compared, with the name of its file. */
export interface NamedTrip {
  trip: Trip;
  file: string;
}

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

interface Compared {
  letter: string;
  file: string;
  drawn: Drawn;
  coolers: CoolerResult[];
}

const sum_kg = (ice: readonly TripIce[]): number => ice.reduce((sum, lot) => sum + lot.mass_kg, 0);

function cost(ice: readonly TripIce[]): number | null {
  if (ice.some((lot) => lot.price === null)) return null;
  return ice.reduce((sum, lot) => sum + lot.price! * lot.pieces, 0);
}

/** What somebody has to do on the way, beside eating. */
function fussOf(trip: Trip): ComparedTrip["fuss"] {
  const days = trip.duration_s / 86_400;
  const habit = trip.coolers.reduce((sum, { openings }) => sum + (openings?.perDay ?? 0) * days, 0);
  const { acts } = loadTrip(trip);
  const opened = acts.filter((act) => act.do === "open").length;
  const done = acts.filter(
    (act) =>
      (act.do !== "open" && act.do !== "take out" && act.do !== "put in") ||
      (act.do === "put in" && act.lot.kind === "ice"),
  );
  const moves = trip.events.filter((event) => event.do === "move").length;
  return { openings: Math.round(habit) + opened, acts: done.length + moves };
}

/** Perishables that pass their limit in more members than the trip's confidence allows. */
function atRisk({ trip, draws }: Drawn): string[] {
  const inCoolers = trip.food.filter((item) => item.cooler !== null);
  const risky = trip.food.filter((item) => {
    if (!item.like.perishable) return false;
    if (item.cooler === null) return true;
    const { overLimit_h } = draws.food[inCoolers.indexOf(item)];
    return !holds(trip, overLimit_h.filter((hours) => !Number.isNaN(hours)).length / overLimit_h.length);
  });
  return risky.map(({ name }) => name);
}

function comparedTrip({ letter, file, drawn, coolers }: Compared): ComparedTrip {
  const { trip } = drawn;
  const isDry = (lot: TripIce): boolean => lot.form === "dry ice";
  return {
    letter,
    title: trip.title,
    file,
    ice_kg: sum_kg(trip.ice.filter((lot) => !isDry(lot))),
    dryIce_kg: sum_kg(trip.ice.filter(isDry)),
    cost: cost(trip.ice),
    packedWeight_kg: coolers.reduce((sum, { packedWeight_kg }) => sum + packedWeight_kg, 0),
    coolers: coolers.map(({ name, iceOut_h, overLimit_h }, i) => ({
      name,
      perishables: drawn.trip.food.some((item) => item.cooler === i && item.like.perishable),
      iceOut_h,
      overLimit_h,
    })),
    atRisk: atRisk(drawn),
    fails_frac: fails_frac(drawn),
    fuss: fussOf(trip),
  };
}

const asName = (name: string): string => name.trim().toLowerCase();

/** Coolers that stand for each other in two trips: of the same name; else, in trips with as many coolers, by place. */
function counterparts(a: Trip, b: Trip): { name: string; a: number; b: number }[] {
  const named = a.coolers.map(({ name }) =>
    b.coolers.findIndex((other) => asName(other.name) === asName(name)),
  );
  const taken = new Set(named);
  return a.coolers.flatMap(({ name }, i) => {
    if (named[i] >= 0) return [{ name, a: i, b: named[i] }];
    const other = b.coolers[i];
    if (a.coolers.length !== b.coolers.length || taken.has(i)) return [];
    return [{ name: `${name} / ${other.name}`, a: i, b: i }];
  });
}

function pairsOf(one: Compared, two: Compared): ComparePair[] {
  // Ice is carried on for some more lengths of a trip; of trips of two lengths only what both can show is compared.
  const horizon_h = carriedOnUntil_s(Math.min(one.drawn.trip.duration_s, two.drawn.trip.duration_s)) / 3600;
  return counterparts(one.drawn.trip, two.drawn.trip).map(({ name, a, b }) => {
    const before = one.drawn.draws.coolers[a].iceCarriedOn_h;
    const after = two.drawn.draws.coolers[b].iceCarriedOn_h;
    const gain_h = Array.from(
      before,
      (hours, m) => Math.min(horizon_h, after[m]) - Math.min(horizon_h, hours),
    );
    return { a: one.letter, b: two.letter, cooler: name, iceOutGain_h: bandOf(gain_h) };
  });
}

function comparedFrom(named: NamedTrip, i: number, draws: Draws, seed: number): Compared {
  const { result } = withBands(forecast(named.trip, { effects: false }), draws, seed);
  return {
    letter: letters[i],
    file: named.file,
    drawn: { trip: named.trip, draws },
    coolers: result.coolers,
  };
}

/**
 * Trips side by side, each as written: what they take, what they keep cold, and how far apart they are over the same
 * members. Members of one number share what the trips share by name (coolers and food by theirs, ice by its form, the days'
 * weather); what differs between the files differs.
 *
 * @param run `trips[i]` is its number i
 * @throws Cancelled when the signal is given
 * @throws DomainError for fewer than one member or trip, or more trips than letters
 */
export async function compare(
  trips: readonly NamedTrip[],
  run: RunTasks,
  options: EnsembleOptions,
): Promise<CompareResult> {
  checkMembers(options);
  if (trips.length < 1 || trips.length > letters.length)
    throw new DomainError(`trips must be 1…${letters.length}, got ${trips.length}`);
  const { members, seed, ...hooks } = options;
  const tasks = trips.map((_, i) => tasksFor(i, null, members, seed, true));
  const parts = await run(tasks.flat(), hooks);
  let at = 0;
  const compared = trips.map((named, i) => {
    const own = parts.slice(at, at + tasks[i].length);
    at += own.length;
    return comparedFrom(named, i, joinDraws(own), seed);
  });
  return {
    coldstow: 1,
    command: "compare",
    members,
    seed,
    trips: compared.map(comparedTrip),
    pairs: compared.flatMap((one, i) => compared.slice(i + 1).flatMap((two) => pairsOf(one, two))),
    series: compared.flatMap(({ letter, coolers }) =>
      coolers.map(({ name, series: { t_h, ice_kg } }) => ({ letter, cooler: name, t_h, ...ice_kg })),
    ),
  };
}
