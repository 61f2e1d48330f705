import { joinHistory, oddRecords } from "../cooler/joinHistory.ts";
import { joinDraws } from "../ensemble/joinDraws.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import { tasksFor } from "../ensemble/tasks.ts";
import type { CoolerDraws, RunHooks, RunTasks } from "../ensemble/types.ts";
import { runTrip } from "../forecast/run.ts";
import type { CoolerHistory, LearnedRecord, Trip } from "../trip/types.ts";
import type { CloseOutCooler, CloseOutResult, NextTime } from "./closeOutResult.ts";
import { type Learned, type Look, learnFrom, memberConductances_W_per_K } from "./learn.ts";
import type { IceLevel } from "./logFile.ts";
import { nextFood, nextIce } from "./nextTime.ts";
import type { CloseOut, LeftOver } from "./readCloseOut.ts";

const hour_s = 3600;
/** Standard score of the 90 % point. */
const z90 = 1.2815515655446004;

/**
 * How rough looks are: a glance is good to a tenth of the full amount eight times in ten, a scale to 3 % and to 50 g of
 * water that clings, a moment at which the last ice was missed to a quarter of a day; and to a twentieth of all ice no
 * member is the trip, whatever its walls.
 *
 * @source engineering-judgement
 */
const lookErrors: Readonly<
  Record<"glance_frac" | "slush_frac" | "weighed_frac" | "weighed_kg" | "gone_h" | "model_frac", number>
> = {
  glance_frac: 0.1 / z90,
  slush_frac: 0.05,
  weighed_frac: 0.03,
  weighed_kg: 0.05,
  gone_h: 6,
  model_frac: 0.05,
};

const levelShare_frac: Readonly<Record<IceLevel, number>> = {
  full: 1,
  "3/4": 0.75,
  "1/2": 0.5,
  "1/4": 0.25,
  slush: 0.05,
  water: 0,
};

export interface CloseOutOptions extends RunHooks {
  members: number;
  seed: number;
}

/**
 * What a trip taught: what was left in each cooler against what was thought, what that says of its walls, and what to take
 * less or more of next time. It judges no food and no person.
 *
 * @param run the trip is its number 0
 * @throws Cancelled when the signal is given
 */
export async function closeOut(
  trip: Trip,
  seen: CloseOut,
  run: RunTasks,
  options: CloseOutOptions,
): Promise<CloseOutResult> {
  const { members, seed, ...hooks } = options;
  const draws = joinDraws(await run(tasksFor(0, null, members, seed, false), hooks));
  const conductances = memberConductances_W_per_K(trip, members, seed);
  const fleet = runTrip(trip);
  const next: NextTime[] = [];
  const coolers = seen.left.map((left) => {
    const { cooler } = left;
    const most_kg = Math.max(...fleet.tracks[cooler].ice_kg);
    const loaded_kg = fleet.boxes[cooler].books.iceIn_kg;
    const told = coolerOf(trip, left, { most_kg, loaded_kg }, draws.coolers[cooler], conductances[cooler]);
    const known = told.next_W_per_K ?? told.before_W_per_K;
    const ice = known === null || told.left_kg === null ? null : nextIce(trip, cooler, known, told.left_kg);
    if (ice !== null) next.push(ice);
    return told;
  });
  return {
    coldstow: 1,
    command: "closeout",
    trip: { title: trip.title, depart: trip.depart, return: trip.return, hours: trip.duration_s / hour_s },
    members,
    seed,
    coolers,
    binned: binnedOf(trip, seen),
    neverOpened: seen.neverOpened.map(({ name }) => name),
    wrong: [...seen.wrong],
    next: [...next, ...nextFood(trip, seen)],
  };
}

interface Ice {
  /** Most that the cooler held at one time, and all that went in. */
  most_kg: number;
  loaded_kg: number;
}

/** The look as a number; null where the glance says nothing. */
function lookOf({ level, weighed_kg, gone_s }: LeftOver, { most_kg, loaded_kg }: Ice): Look {
  const { glance_frac, slush_frac, weighed_frac, gone_h, model_frac } = lookErrors;
  const model_kg = model_frac * loaded_kg;
  if (level === "water" || weighed_kg === 0)
    return gone_s === null ? { kind: "gone" } : { kind: "gone at", gone_h: gone_s / hour_s, error_h: gone_h };
  if (level === null) {
    const scale_kg = Math.hypot(lookErrors.weighed_kg, weighed_frac * weighed_kg!);
    return { kind: "ice", left_kg: weighed_kg!, error_kg: Math.hypot(scale_kg, model_kg) };
  }
  const glance_kg = (level === "slush" ? slush_frac : glance_frac) * most_kg;
  return {
    kind: "ice",
    left_kg: levelShare_frac[level] * most_kg,
    error_kg: Math.hypot(glance_kg, model_kg),
  };
}

/** Why nothing can be learned of a cooler, whatever was seen; null: something can. */
function barOf(trip: Trip, cooler: number, { loaded_kg }: Ice): string | null {
  if (trip.events.some((event) => event.do === "merge" && event.from === cooler))
    return "it was emptied into another cooler on the way";
  return loaded_kg > 0 ? null : "no water ice was in it";
}

function coolerOf(
  trip: Trip,
  left: LeftOver,
  ice: Ice,
  draws: CoolerDraws,
  conductance_W_per_K: Float64Array,
): CloseOutCooler {
  const { name, history } = trip.coolers[left.cooler];
  const head = {
    name,
    seen: left.typed,
    thought: { iceLeft_kg: bandOf(draws.iceLeft_kg), iceOut_h: bandOf(draws.iceOut_h) },
  };
  const bar = barOf(trip, left.cooler, ice);
  const earlier = { records: history?.records.length ?? 0, odd: oddNames(history) };
  if (bar !== null) {
    const none = { before_W_per_K: null, learned_W_per_K: null, next_W_per_K: null };
    return { ...head, left_kg: null, place: "not told", why: bar, ...none, ...earlier };
  }
  const look = lookOf(left, ice);
  const learned = learnFrom(look, conductance_W_per_K, draws);
  return {
    ...head,
    left_kg: look.kind === "ice" ? look.left_kg : 0,
    place: placeOf(look, learned),
    why: whyNot(learned),
    before_W_per_K: learned.before_W_per_K,
    learned_W_per_K: learned.alone_W_per_K,
    ...withRecord(trip, history, learned),
  };
}

const oddNames = (history: CoolerHistory | null): string[] =>
  (history?.odd ?? []).map((at) => history!.records[at].trip);

/** One in five members lie further out on that side. */
const ordinary_frac = 0.2;

function placeOf(look: Look, { less_frac, beyond }: Learned): CloseOutCooler["place"] {
  if (beyond) return "beyond";
  if (less_frac > 1 - ordinary_frac && look.kind !== "gone") return "more";
  return less_frac < ordinary_frac ? "less" : "as thought";
}

function whyNot({ alone_W_per_K, beyond }: Learned): string | null {
  if (beyond)
    return "it lies outside what any walls of such a cooler would do, so something else is behind it: a lid not shut, a drain, openings, ice that was not as written";
  return alone_W_per_K === null
    ? "weather, openings and the rest of the trip explain it as well as walls"
    : null;
}

/** What the next trip begins with: the history with this trip's record, or what was believed before. */
function withRecord(
  trip: Trip,
  history: CoolerHistory | null,
  { before_W_per_K, alone_W_per_K }: Learned,
): Pick<CloseOutCooler, "next_W_per_K" | "records" | "odd"> {
  const earlier = history?.records ?? [];
  const own: LearnedRecord[] =
    alone_W_per_K === null
      ? []
      : [{ trip: trip.title, ended: trip.return, from: "close-out", conductance_W_per_K: alone_W_per_K }];
  const records = [...earlier, ...own];
  const first = history?.before_W_per_K ?? before_W_per_K;
  const learned = records.map((record) => record.conductance_W_per_K);
  return {
    next_W_per_K: joinHistory(first, learned),
    records: records.length,
    odd: oddRecords(first, learned).map((at) => records[at].trip),
  };
}

function binnedOf(trip: Trip, { binned }: CloseOut): CloseOutResult["binned"] {
  const aboard_kg = trip.food.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const mass_kg = binned.reduce((sum, one) => sum + one.mass_kg, 0);
  const priced = binned.filter(({ item }) => item.price !== null);
  const cost = priced.reduce((sum, one) => sum + (one.item.price! * one.mass_kg) / one.item.mass_kg, 0);
  return {
    mass_kg,
    share_frac: aboard_kg > 0 ? mass_kg / aboard_kg : null,
    cost: priced.length === 0 ? null : cost,
    items: binned.map(({ item, mass_kg: gone_kg, why }) => ({ name: item.name, mass_kg: gone_kg, why })),
  };
}
