import { runMembers } from "../../ensemble/runMembers.ts";
import type { OtherAssignment } from "../../forecast/planResult.ts";
import { massWords } from "../../quantity/show.ts";
import type { Trip } from "../../trip/types.ts";
import { type Drawn, gainOf } from "../../whatif/gains.ts";
import { dryBox, type Lump } from "./lumps.ts";
import { placedTrip, withReserve } from "./placed.ts";
import type { Answer } from "./program.ts";
import { assignWarnings } from "./reasons.ts";
import { type AssignOptions, type Settled, solved } from "./refine.ts";
import type { Task } from "./task.ts";

/** Members that two assignments are compared over. */
const usualMembers = 16;

interface Other {
  /** What is done otherwise, in words that "would take more ice" can follow. */
  does: string;
  task: Task;
  answer: Answer;
}

const placeWords = (trip: Trip, place: number): string =>
  place === dryBox ? "the dry box" : trip.coolers[place]!.name;

const differs = (one: Answer, other: Answer): boolean =>
  one.shut !== other.shut || one.place.some((place, i) => place !== other.place[i]);
const over_L = ({ over_L: over }: Answer): number => over.reduce((a, b) => a + b, 0);

/** The same without a cooler that stays shut for the first half. */
function unsealed(task: Task, answer: Answer): { does: string; task: Task } | null {
  if (answer.shut === null) return null;
  const name = task.trip.coolers[answer.shut]!.name;
  return {
    does: `${name} not kept shut for the first half`,
    task: { ...task, bins: task.bins.map((bin) => ({ ...bin, mayShut: false })) },
  };
}

function drinksAnywhere(task: Task): { does: string; task: Task } | null {
  const mixable = task.bins.some(({ holds }) => holds === "any") && task.bins.length > 1;
  const hasDrinks = task.lumps.some(({ drink, pinned }) => drink && !pinned);
  return mixable && hasDrinks
    ? { does: "drinks and food in one cooler", task: { ...task, drinksAnywhere: true } }
    : null;
}

/** The bulkiest item that could go elsewhere, kept out of the place that it has. */
function elsewhere(task: Task, answer: Answer): { task: Task; lump: Lump; index: number } | null {
  const free = task.lumps
    .map((lump, index) => ({ lump, index }))
    .filter(({ lump }) => !lump.pinned && lump.places.filter((place) => place !== dryBox).length > 1);
  free.sort((a, b) => b.lump.bulk_L - a.lump.bulk_L || a.index - b.index);
  const [first] = free;
  if (first === undefined) return null;
  const banned = [{ lump: first.lump, place: answer.place[first.index]! }];
  return { task: { ...task, banned }, ...first };
}

async function candidates(best: Settled, options: AssignOptions): Promise<Other[]> {
  const { task, answer } = best;
  const out: Other[] = [];
  for (const way of [unsealed(task, answer), drinksAnywhere(task)])
    if (way !== null) out.push({ ...way, answer: await solved(way.task, options) });
  const moved = elsewhere(task, answer);
  if (moved !== null) {
    const other = await solved(moved.task, options);
    const names = moved.lump.items.map((item) => task.trip.food[item]!.name);
    const what = names.length > 2 ? `${names[0]} and ${names.length - 1} more` : names.join(" and ");
    const place = other.place[moved.index]!;
    out.push({ does: `${what} in ${placeWords(task.trip, place)}`, task: moved.task, answer: other });
  }
  return out.filter((other) => differs(answer, other.answer) && over_L(other.answer) === 0);
}

/** Members of a placed trip with as much ice in all as the best answer has. */
function drawn(task: Task, answer: Answer, total_kg: number, options: AssignOptions): Drawn {
  const scale_frac = answer.ice_total_kg > 0 ? total_kg / answer.ice_total_kg : 1;
  const trip = withReserve(task, answer, placedTrip(task, answer), { scale_frac });
  const { seed = 1, members = usualMembers } = options;
  return { trip, draws: runMembers(trip, { from: 0, to: members, seed, series: false }) };
}

function iceWords(more_kg: number): string {
  if (Math.abs(more_kg) < 0.25) return "about as much ice";
  const [metric, us] = [massWords(Math.abs(more_kg), "metric"), massWords(Math.abs(more_kg), "us")];
  return `${metric} (${us}) ${more_kg > 0 ? "more" : "less"} ice`;
}

/** What one would put up with that the best answer spares. */
function faultWords(best: Settled, other: Other): string {
  const known = new Set(assignWarnings(best.task, best.answer).map(({ code, path }) => code + path));
  const more = assignWarnings(other.task, other.answer).filter(({ code, path }) => !known.has(code + path));
  return more.length === 0 ? "" : `, but ${more.map(({ says }) => says).join("; ")}`;
}

/**
 * The best assignment that was not taken: of a few that differ in one decision, the one that takes least ice and fits.
 * Its gains are hours won by going over to it with the same ice in all, member by member; below zero it loses them.
 */
export async function otherAssignments(best: Settled, options: AssignOptions): Promise<OtherAssignment[]> {
  const others = await candidates(best, options);
  others.sort((a, b) => a.answer.ice_total_kg - b.answer.ice_total_kg);
  const [other] = others;
  if (other === undefined) return [];
  const more_kg = other.answer.ice_total_kg - best.answer.ice_total_kg;
  const head = `${other.does} would take ${iceWords(more_kg)}${faultWords(best, other)}`;
  if ((options.members ?? usualMembers) === 0)
    return [{ says: `${head}; not compared member by member`, foodGain_h: null, iceGain_h: null }];
  const total_kg = best.answer.ice_total_kg;
  const was = drawn(best.task, best.answer, total_kg, options);
  const is = drawn(other.task, other.answer, total_kg, options);
  const { food_h, ice_h } = gainOf(was, is);
  return [{ says: head, foodGain_h: food_h, iceGain_h: ice_h }];
}
