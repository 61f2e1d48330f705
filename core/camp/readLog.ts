import { dayStart_ms, localInstant_ms, localIso } from "../sky/localTime.ts";
import { Calendar } from "../trip/calendar.ts";
import { coolerNamed } from "../trip/coolers.ts";
import { type FoodSetting, resolveFood } from "../trip/food.ts";
import { resolveAddedIce } from "../trip/ice.ts";
import { spotOf } from "../trip/legs.ts";
import { nearest } from "../trip/nearest.ts";
import { type Measure, measures, Notes } from "../trip/notes.ts";
import { bounds, parseText } from "../trip/text.ts";
import type { Problem, Trip } from "../trip/types.ts";
import { type Finding, validate } from "../trip/validate.ts";
import type { CoolerEntryFile, LogEntryFile, LogFile } from "./logFile.ts";
import { coolerActs, logSchema, tripActs } from "./logSchema.ts";
import { sameEntry } from "./mergeLogs.ts";
import type { Entry, Log } from "./types.ts";

export type LogReading = { ok: true; log: Log; file: LogFile } | { ok: false; problems: readonly Problem[] };

/** How long before departure something may have been logged: coolers are packed and looked at the days before. */
const BEFORE_days = 3;
/** How long after the planned return: extra nights. */
const AFTER_days = 14;
/** A trip file reaches no further. */
const LONGEST_days = 60;

const anyReading: Measure = {
  dimension: "temperature",
  low: -80,
  high: 80,
  says: "a temperature from -80 C to 80 C",
};
const lidOpen: Measure = {
  dimension: "duration",
  low: 1,
  high: 12 * 3600,
  says: "a length of time from 1 s to 12 h",
};

/** Coolers are read by name and meals by day and word, as in a trip file. */
const mealPattern = /^day\s+\d{1,3}\s+(breakfast|lunch|dinner)$/i;

/**
 * Reads a camp log against its trip: YAML 1.2 or JSON in the bounds of a trip file. It gives every entry with its moment
 * and cooler, in order of time, or all problems at once, each with its line. An entry that stands twice, word for word,
 * counts once. Moments may lie up to 3 days before departure and 14 days after the return of the trip file, but not more
 * than 60 days after departure. It never throws for what a person wrote, and it does not say what an entry means for ice
 * and food.
 */
export function readLog(text: string, trip: Trip): LogReading {
  const parsed = parseText(text);
  if (!parsed.ok) return { ok: false, problems: parsed.problems };
  const { typed, lineOf } = parsed.parsed;
  const told = (findings: readonly Finding[]): LogReading => {
    const problems = findings.map((finding) => ({ line: lineOf(finding.path), ...finding }));
    problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
    return { ok: false, problems: problems.slice(0, bounds.problems) };
  };
  const validation = validate(logSchema, typed);
  if (!validation.ok) return told(validation.findings);
  const reader = new LogReader(trip, validation.file);
  const entries = reader.entries();
  if (reader.notes.findings.length > 0) return told(reader.notes.findings);
  return { ok: true, log: { entries }, file: validation.file };
}

class LogReader {
  readonly notes: Notes = new Notes();
  readonly #trip: Trip;
  readonly #file: LogFile;
  readonly #calendar: Calendar;
  readonly #setting: FoodSetting;
  readonly #range_s: readonly [number, number];
  readonly #rangeWords: string;
  readonly #items: readonly string[];

  constructor(trip: Trip, file: LogFile) {
    this.#trip = trip;
    this.#file = file;
    const { timezone } = trip.place;
    const depart_ms = localInstant_ms(trip.depart, timezone);
    const from_ms = dayStart_ms(depart_ms, timezone, -BEFORE_days);
    const last_ms = Math.min(
      depart_ms + trip.duration_s * 1000 + AFTER_days * 86_400_000,
      depart_ms + LONGEST_days * 86_400_000,
    );
    this.#range_s = [(from_ms - depart_ms) / 1000, (last_ms - depart_ms) / 1000];
    const ends = [from_ms, last_ms].map((end_ms) => localIso(end_ms, timezone));
    this.#rangeWords = `from ${BEFORE_days} days before departure to ${AFTER_days} days after return: ${ends[0]} to ${ends[1]}`;
    // Food that was put in may be meant for an extra day, so meals are counted to the last moment that a log may name.
    this.#calendar = new Calendar(
      this.notes,
      { depart: trip.depart, return: ends[1]! },
      timezone,
      trip.meals,
    );
    // A child's portion only counts where amounts are counted from heads; here it is checked that they can be.
    const party = { ...trip.party, childPortion_frac: 1 };
    this.#setting = { calendar: this.#calendar, coolers: trip.coolers, party };
    const putIn = file.entries.flatMap((entry) =>
      "in" in entry && entry.in !== undefined ? [entry.in.name] : [],
    );
    this.#items = [...trip.food.map(({ name }) => name), ...putIn];
  }

  entries(): Entry[] {
    const first = new Map<string, LogEntryFile>();
    const read: Entry[] = [];
    this.#file.entries.forEach((file, i) => {
      const path = `entries[${i}]`;
      const earlier = first.get(file.id);
      if (earlier !== undefined && sameEntry(earlier, file)) return;
      if (earlier !== undefined) this.notes.refuse(`${path}.id`, "an id that no other entry has", file.id);
      first.set(file.id, file);
      read.push(this.#entry(file, path));
    });
    this.#withdraw(read, first);
    return read.sort((a, b) => a.t_s - b.t_s || (a.id < b.id ? -1 : 1));
  }

  #entry(file: LogEntryFile, path: string): Entry {
    const t_s = this.#moment(`${path}.at`, file.at);
    const all = file as unknown as Record<string, unknown>;
    const given = [...coolerActs, ...tripActs].filter((act) => all[act] !== undefined);
    const base = { id: file.id, t_s, file, withdrawnBy: null };
    if (given.length !== 1) {
      const known = [...coolerActs, ...tripActs].join(", ");
      this.notes.refuse(
        path,
        `one of ${known}, and no second`,
        given.length === 0 ? undefined : given.join(" and "),
      );
      return { ...base, cooler: null };
    }
    const act = given[0]!;
    this.#refuseStray(all, path, act);
    if ((tripActs as readonly string[]).includes(act)) {
      this.#tripEntry(all, path);
      return { ...base, cooler: null };
    }
    const cooler = this.#cooler(`${path}.cooler`, all.cooler as string | undefined);
    this.#coolerEntry(file as CoolerEntryFile, path, { t_s, cooler });
    return { ...base, cooler };
  }

  #moment(path: string, typed: string): number {
    return this.#calendar.within_s(path, typed, this.#range_s, this.#rangeWords);
  }

  /** Keys that say more about one kind of entry stand with it alone. */
  #refuseStray(all: Record<string, unknown>, path: string, act: string): void {
    const goesWith: Readonly<Record<string, string>> = {
      of: "read",
      share: "out",
      shade: "moved",
      ground: "moved",
      air: "moved",
      water: "moved",
      "air changes": "moved",
    };
    for (const [key, only] of Object.entries(goesWith))
      if (all[key] !== undefined && act !== only)
        this.notes.refuse(`${path}.${key}`, `left out but beside ${only}`, all[key]);
    if (all.cooler !== undefined && (tripActs as readonly string[]).includes(act))
      this.notes.refuse(`${path}.cooler`, `left out beside ${act}`, all.cooler);
  }

  #cooler(path: string, typed: string | undefined): number {
    const { coolers } = this.#trip;
    const names = coolers.map(({ name }) => name).slice(0, 10);
    if (typed === undefined)
      return this.notes.refuse(path, `the name of a cooler: ${names.join(", ")}`, typed);
    return coolerNamed(this.notes, coolers, path, typed);
  }

  #coolerEntry(file: CoolerEntryFile, path: string, { t_s, cooler }: { t_s: number; cooler: number }): void {
    const { notes } = this;
    if ("read" in file) {
      notes.si(`${path}.read`, file.read, anyReading);
      const of = file.of?.trim().toLowerCase() ?? "air";
      if (of !== "air" && of !== "water") this.#item(`${path}.of`, file.of!, "air, water or ");
    } else if ("drained" in file && file.drained !== true)
      notes.si(`${path}.drained`, file.drained, measures.volume);
    else if ("opened" in file && file.opened !== true) notes.si(`${path}.opened`, file.opened, lidOpen);
    else if ("added" in file) this.#added(file, path, t_s);
    else if ("out" in file) {
      this.#item(`${path}.out`, file.out, "");
      notes.siOrNull(`${path}.share`, file.share, measures.share);
    } else if ("in" in file) resolveFood(notes, this.#setting, file.in, `${path}.in`, { t_s, cooler });
    else if ("moved" in file)
      spotOf(notes, file, { path, place: file.moved, from_s: t_s, weather: this.#trip.weather });
    else if ("merged into" in file) {
      const at = `${path}.merged into`;
      if (coolerNamed(notes, this.#trip.coolers, at, file["merged into"]) === cooler)
        notes.refuse(at, "another cooler", file["merged into"]);
    }
  }

  #added(file: CoolerEntryFile & { added: object }, path: string, t_s: number): void {
    const { coolers } = this.#trip;
    // The cooler has been read already; the first one stands in for it, so that it is not told twice.
    const as = { ...file.added, at: file.at, do: "add ice" as const, to: coolers[0]!.name };
    resolveAddedIce(this.notes, coolers, as as Parameters<typeof resolveAddedIce>[2], `${path}.added`, t_s);
  }

  #item(path: string, typed: string, or: string): void {
    const wanted = typed.trim().toLowerCase();
    if (this.#items.some((name) => name.trim().toLowerCase() === wanted)) return;
    const names = [...new Set(this.#items)];
    const must = `${or}the name of an item of the trip, or of one that was put in`;
    this.notes.refuse(path, must, typed, nearest(typed, names));
  }

  #tripEntry(all: Record<string, unknown>, path: string): void {
    if (typeof all.return === "string") {
      const t_s = this.#moment(`${path}.return`, all.return);
      if (t_s <= 0) this.notes.refuse(`${path}.return`, `after departure, ${this.#trip.depart}`, all.return);
    }
    if (typeof all["none at"] === "string") this.#place(`${path}.none at`, all["none at"]);
    if (typeof all.skipped === "string") this.#meal(`${path}.skipped`, all.skipped);
    const swapped = (all.swapped ?? []) as readonly string[];
    const moments = swapped.map((one, i) => this.#meal(`${path}.swapped[${i}]`, one));
    if (moments.length === 2 && moments[0] === moments[1])
      this.notes.refuse(`${path}.swapped[1]`, "another meal than the first", swapped[1]);
  }

  #place(path: string, typed: string): void {
    const sells = [...new Set(this.#trip.supply.map(({ where }) => where))];
    const wanted = typed.trim().toLowerCase();
    if (sells.some((where) => where.trim().toLowerCase() === wanted)) return;
    const must =
      sells.length === 0
        ? "left out, for the trip lists no supply"
        : `a place of the trip's supply: ${sells.slice(0, 10).join(", ")}`;
    this.notes.refuse(path, must, typed, nearest(typed, sells));
  }

  #meal(path: string, typed: string): number {
    return mealPattern.test(typed.trim())
      ? this.#moment(path, typed)
      : this.notes.refuse(path, "a meal such as day 3 dinner", typed);
  }

  /** Marks what is withdrawn. A withdrawal cannot be taken back: what was withdrawn is logged anew. */
  #withdraw(read: readonly Entry[], byId: ReadonlyMap<string, LogEntryFile>): void {
    const entryOf = new Map(read.map((entry) => [entry.id, entry]));
    const at = new Map(this.#file.entries.map((file, i) => [file, `entries[${i}].withdraws`]));
    for (const { file } of [...read].sort((a, b) => (a.id < b.id ? -1 : 1))) {
      if (!("withdraws" in file) || file.withdraws === undefined) continue;
      const path = at.get(file)!;
      const found = byId.get(file.withdraws);
      if (found === undefined) {
        const near = nearest(file.withdraws, [...byId.keys()]);
        this.notes.refuse(path, "the id of an entry of this log", file.withdraws, near);
      } else if ("withdraws" in found && found.withdraws !== undefined)
        this.notes.refuse(
          path,
          "an entry that is no withdrawal; log again what was withdrawn",
          file.withdraws,
        );
      else entryOf.get(file.withdraws)!.withdrawnBy ??= file.id;
    }
  }
}
