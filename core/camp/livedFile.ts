import { isoAt } from "../plan/moment.ts";
import { Calendar } from "../trip/calendar.ts";
import { editedTrip, type TripEdit } from "../trip/editTrip.ts";
import type { EventFile } from "../trip/file.ts";
import { Notes } from "../trip/notes.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import type { LogEntryFile } from "./logFile.ts";
import { siValue } from "./looks.ts";
import type { Entry, Log } from "./types.ts";

const hour_s = 3600;
/** A logged act stands for a planned one of its kind on the same cooler within this time of it. */
const same_s = 12 * hour_s;
/** A merge happens once: one that was logged stands for a planned one within this time. */
const sameMerge_s = 48 * hour_s;

/** A planned event with where it stands in the file. */
interface Planned {
  index: number;
  file: EventFile;
  t_s: number;
}

interface Typed {
  events?: EventFile[];
}

/** The events of the file with their moments. Those of food and ice stand in the trip's food and ice, the rest in its events. */
function plannedEvents(trip: Trip): Planned[] {
  const { events = [] } = trip.typed as Typed;
  const moments = new Map<string, number>([
    ...trip.events.map(({ path, t_s }) => [path, t_s] as const),
    ...trip.ice.flatMap(({ path, putIn_s }) => (putIn_s === null ? [] : [[path, putIn_s] as const])),
    ...trip.food.flatMap(({ path, putIn_s }) =>
      putIn_s === null ? [] : [[path.replace(/\.item$/, ""), putIn_s] as const],
    ),
  ]);
  return events.map((file, index) => ({ index, file, t_s: moments.get(`events[${index}]`) ?? Number.NaN }));
}

const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The cooler that an event empties, fills or stands by. */
function coolerNameOf(event: EventFile): string | null {
  if (event.do === "add ice" || event.do === "put in") return event.to;
  if (event.do === "merge") return event.from;
  return event.do === "take out" ? null : event.cooler;
}

/** The planned event that a logged one was; null: none, it comes on top. */
function standsFor(
  event: EventFile,
  t_s: number,
  planned: readonly Planned[],
  used: ReadonlySet<number>,
): Planned | null {
  const name = coolerNameOf(event);
  if (name === null || event.do === "open" || event.do === "put in") return null;
  const most_s = event.do === "merge" ? sameMerge_s : same_s;
  const twins = planned.filter(({ index, file, t_s: then_s }) => {
    const other = coolerNameOf(file);
    if (used.has(index) || file.do !== event.do || other === null || !sameName(other, name)) return false;
    return Math.abs(then_s - t_s) <= most_s;
  });
  return twins.sort((a, b) => Math.abs(a.t_s - t_s) - Math.abs(b.t_s - t_s))[0] ?? null;
}

const withoutUndefined = (file: object): object =>
  Object.fromEntries(Object.entries(file).filter(([, value]) => value !== undefined));

/** What was done, as the event that a trip file has for it; null: nothing that the file has a word for. */
function eventOf(trip: Trip, { file, cooler }: Entry, at: string): EventFile | null {
  if (cooler === null || !("cooler" in file)) return null;
  const name = trip.coolers[cooler]!.name;
  if ("drained" in file) return { at, do: "drain", cooler: name };
  if ("added" in file)
    return { at, do: "add ice", to: name, ...(withoutUndefined(file.added) as typeof file.added) };
  if ("in" in file) return { at, do: "put in", item: file.in, to: name };
  if ("merged into" in file) return { at, do: "merge", from: name, into: file["merged into"] };
  if ("covered" in file) return { at, do: "cover", cooler: name, cover: file.covered };
  if ("moved" in file) {
    const { id: _id, at: _at, by: _by, cooler: _cooler, moved, ...spot } = file;
    return { at, do: "move", cooler: name, to: moved, ...withoutUndefined(spot) };
  }
  // A usual opening is in the habit that the trip was reckoned with; a long one comes on top.
  if ("opened" in file && file.opened !== true) {
    const usual_s = trip.coolers[cooler]!.openings?.each_s ?? 0;
    return siValue(file.opened, "duration") > 2 * usual_s
      ? { at, do: "open", cooler: name, for: file.opened }
      : null;
  }
  const told = trip.events.some((event) => event.do === "wet cloth" && event.cooler === cooler);
  // Where the file tells no wetting, one at every meal is reckoned with already.
  return "wetted" in file && told ? { at, do: "wet cloth", cooler: name } : null;
}

/** Food that is eaten all at once, at a moment that the file gives. */
const eatenOnce = (food: TripFood): boolean => food.eat_s !== null && food.parts_s === null;

/** Items of a name that lie in a cooler, or any of that name. */
function itemNamed(trip: Trip, name: string, cooler: number | null, t_s: number): TripFood | null {
  const named = trip.food.filter((food) => sameName(food.name, name));
  const there = named.filter(({ putIn_s }) => (putIn_s ?? 0) <= t_s);
  return there.find((food) => food.cooler === cooler) ?? there[0] ?? named[0] ?? null;
}

/** Collects the changes that a log makes to a file. */
class Changes {
  readonly edits: TripEdit[] = [];
  readonly added: EventFile[] = [];
  readonly dropped: Set<number> = new Set();
  readonly eat: Map<string, number> = new Map();
  readonly #trip: Trip;
  readonly #planned: readonly Planned[];

  constructor(trip: Trip) {
    this.#trip = trip;
    this.#planned = plannedEvents(trip);
  }

  /** Visits that had no ice, by the supply's place in the file. */
  readonly barren: Map<number, Set<number>> = new Map();

  /** @param end_s the return as it now is, beyond which nothing may happen */
  entry(entry: Entry, end_s: number): void {
    const t_s = Math.min(end_s, Math.max(0, entry.t_s));
    const at = isoAt(this.#trip, t_s);
    const event = eventOf(this.#trip, entry, at);
    if (event !== null) this.#add(event, t_s);
    this.#outAndMeals(entry, t_s, at);
  }

  #add(event: EventFile, t_s: number): void {
    const twin = standsFor(event, t_s, this.#planned, this.dropped);
    if (twin !== null) this.dropped.add(twin.index);
    this.added.push(event);
  }

  #outAndMeals({ file, cooler }: Entry, t_s: number, at: string): void {
    if ("out" in file) this.#out(file.out, file.share, { cooler, t_s, at });
    else if ("dumped" in file)
      for (const food of this.#trip.food)
        if (food.cooler === cooler) this.added.push({ at, do: "take out", item: food.name });
    if ("skipped" in file) this.#mealTo(momentIn_s(this.#trip, file.skipped), this.#trip.duration_s);
    if ("none at" in file) this.#noneAt(file["none at"], t_s);
    if ("swapped" in file) {
      const [one, two] = file.swapped.map((meal) => momentIn_s(this.#trip, meal)) as [number, number];
      const [first, second] = [this.#at(one), this.#at(two)];
      for (const { id } of first) this.eat.set(id, two);
      for (const { id } of second) this.eat.set(id, one);
    }
  }

  /** The visit nearest to this moment brings nothing, from any supply of that place. */
  #noneAt(where: string, t_s: number): void {
    this.#trip.supply.forEach((supply, i) => {
      const near = (other_s: number): boolean => Math.abs(other_s - t_s) <= same_s;
      if (!sameName(supply.where, where) || !supply.when_s?.some(near)) return;
      for (const [k, visit_s] of supply.when_s.entries()) if (near(visit_s)) this.#noVisit(i, k);
      for (const { index, file, t_s: then_s } of this.#planned)
        if (file.do === "add ice" && file.form === supply.form && near(then_s)) this.dropped.add(index);
    });
  }

  #noVisit(supply: number, visit: number): void {
    this.barren.set(supply, (this.barren.get(supply) ?? new Set<number>()).add(visit));
  }

  #out(
    name: string,
    share: string | undefined,
    when: { cooler: number | null; t_s: number; at: string },
  ): void {
    const food = itemNamed(this.#trip, name, when.cooler, when.t_s);
    if (food === null) return;
    if (share === undefined && eatenOnce(food)) this.eat.set(food.id, when.t_s);
    else
      this.added.push({
        at: when.at,
        do: "take out",
        item: food.name,
        ...(share === undefined ? {} : { share }),
      });
  }

  /** Food that is eaten at a moment, as changed so far. */
  #at(t_s: number): TripFood[] {
    return this.#trip.food.filter(
      (food) => eatenOnce(food) && Math.abs((this.eat.get(food.id) ?? food.eat_s!) - t_s) < 60,
    );
  }

  #mealTo(from_s: number, to_s: number): void {
    for (const { id } of this.#at(from_s)) this.eat.set(id, to_s);
  }

  /** What is planned past a new return happens no more, visits to a shop with it; what was to be eaten then is eaten by the return. */
  until(end_s: number): void {
    for (const { index, t_s } of this.#planned) if (t_s > end_s) this.dropped.add(index);
    this.#trip.supply.forEach(({ when_s }, i) => {
      for (const [k, visit_s] of (when_s ?? []).entries()) if (visit_s > end_s) this.#noVisit(i, k);
    });
    for (const food of this.#trip.food)
      if (eatenOnce(food) && (this.eat.get(food.id) ?? food.eat_s!) > end_s) this.eat.set(food.id, end_s);
  }
}

const longest_s = 60 * 86_400;

/** Seconds from departure of a moment that was checked when the log was read; it may lie past the return. */
function momentIn_s(trip: Trip, typed: string): number {
  const far = { depart: trip.depart, return: isoAt(trip, longest_s) };
  return new Calendar(new Notes(), far, trip.place.timezone, trip.meals).seconds("at", typed);
}

const returnOf = (file: LogEntryFile): string | null => ("return" in file ? file.return : null);

/** Path of the value that says when a food is eaten. */
const eatPath = (food: TripFood): string => `${food.path}.eat`;

/**
 * The trip file as it was lived so far: what the log says was done stands in it as events, meals and return; what the plan
 * has and the log does not deny stays. A logged act takes the place of the planned one of its kind within half a day; merges
 * within two. It says nothing of looks and readings: they weigh the members (`weighLooks`), and food (`floors`).
 *
 * @param text a file that was read as `trip`
 */
export function livedFile(text: string, trip: Trip, log: Log): string {
  const standing = log.entries.filter(({ withdrawnBy }) => withdrawnBy === null);
  const home = standing.map(({ file }) => returnOf(file)).findLast((at) => at !== null) ?? null;
  const end_s = home === null ? trip.duration_s : momentIn_s(trip, home);
  const changes = new Changes(trip);
  for (const entry of standing) changes.entry(entry, end_s);
  if (end_s < trip.duration_s) changes.until(end_s);
  const { events = [] } = trip.typed as Typed;
  const kept = events.filter((_, index) => !changes.dropped.has(index));
  const edits: TripEdit[] = [...changes.eat].map(([id, t_s]) => ({
    path: eatPath(trip.food.find((food) => food.id === id)!),
    value: isoAt(trip, t_s),
  }));
  edits.push(...supplyEdits(trip, changes.barren));
  if (home !== null) edits.push({ path: "return", value: isoAt(trip, end_s) });
  // Items that came in stand in the events: they are edited before the list is written anew.
  const edited = edits.length === 0 ? text : editedTrip(text, edits);
  if (changes.added.length === 0 && kept.length === events.length) return edited;
  return withEvents(edited, changes.dropped, changes.added, events.length);
}

/** The visits that are left to each supply that had none on one. */
function supplyEdits(trip: Trip, barren: ReadonlyMap<number, ReadonlySet<number>>): TripEdit[] {
  return [...barren].map(([i, gone]) => {
    const { path, when_s } = trip.supply[i]!;
    const left = (when_s ?? []).filter((_, k) => !gone.has(k)).map((t_s) => isoAt(trip, t_s));
    // A supply without a moment would be one before departure: with no visit left it has nothing.
    return left.length > 0 ? { path: `${path}.when`, value: left } : { path: `${path}.max`, value: 0 };
  });
}

function withEvents(
  text: string,
  dropped: ReadonlySet<number>,
  added: readonly EventFile[],
  nEvents: number,
): string {
  // From the last on, so that the places before stay what they are.
  const gone = [...dropped].sort((a, b) => b - a);
  const from = nEvents - gone.length;
  return editedTrip(text, [
    ...gone.map((index) => ({ path: `events[${index}]`, value: undefined })),
    ...added.map((event, i) => ({ path: `events[${from + i}]`, value: event })),
  ]);
}
