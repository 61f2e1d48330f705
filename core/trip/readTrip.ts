import type { Weather } from "../sky/types.ts";
import type { ReadBeside } from "./beside.ts";
import { Calendar } from "./calendar.ts";
import { resolveCoolers } from "./coolers.ts";
import { resolveEvents } from "./events.ts";
import type { TripFile } from "./file.ts";
import { numberedCoolers } from "./fleetFile.ts";
import { type FoodSetting, resolveFood } from "./food.ts";
import { resolveIce } from "./ice.ts";
import { resolveLegs } from "./legs.ts";
import { mended } from "./mend.ts";
import { Notes } from "./notes.ts";
import { resolveConfidence_frac, resolveLimit, resolveMeals, resolveParty, resolvePlace } from "./place.ts";
import { spelled } from "./slips.ts";
import { resolveFreezer, resolveSupply } from "./supply.ts";
import { bounds, parseText } from "./text.ts";
import type { Problem, Trip, TripFood, TripReading } from "./types.ts";
import { type Finding, validateTrip } from "./validate.ts";
import { resolveRules, resolveWarmLoad } from "./warmLoad.ts";
import { resolveWeather } from "./weather.ts";

export interface ReadOptions {
  /** Name of the trip file, used as a title when the file has none. */
  file: string;
  /** Text of a file in the trip file's folder or below, or null. Only names that stay there are asked for. */
  readBeside?: ReadBeside;
}

/**
 * Reads a trip file: YAML 1.2 or JSON, at most 2 MB and 20 deep. It gives the whole trip in SI units with every
 * default listed, or all problems at once (of the text alone, where it is no YAML). It never throws for what a person
 * wrote, and it does not say whether a forecast can be made of the trip (see `forecastProblems`).
 */
export function readTrip(text: string, options: ReadOptions): TripReading {
  const reading = parseText(text);
  if (!reading.ok) return { ok: false, problems: reading.problems };
  const { typed, lineOf } = reading.parsed;
  return resolved(typed, options, lineOf);
}

/** As `readTrip`, for a file that is parsed already, such as one made by `withValue`; problems carry no lines. */
export function readTripObject(typed: unknown, options: ReadOptions): TripReading {
  return resolved(typed, options, () => null);
}

function resolved(raw: unknown, options: ReadOptions, lineOf: (path: string) => number | null): TripReading {
  const { typed, findings: slips, typedPath } = spelled(raw);
  const refuse = (findings: readonly Finding[]): TripReading => {
    const told = (finding: Finding, path: string): Problem => ({ line: lineOf(path), ...finding, path });
    const problems = findings.map((finding) => told(finding, typedPath(finding.path)));
    problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
    const first = slips.map((finding) => told(finding, finding.path));
    return { ok: false, problems: [...first, ...problems].slice(0, bounds.problems) };
  };
  const validation = validateTrip(typed);
  const notes = new Notes();
  if (!validation.ok) {
    const further = mended(typed, validation.findings);
    if (further === null) return refuse(validation.findings);
    resolveTrip(notes, further.file, typed, options);
    return refuse([...validation.findings, ...further.independent(notes.findings)]);
  }
  const trip = resolveTrip(notes, validation.file, typed, options);
  const isGood = notes.findings.length === 0 && slips.length === 0 && trip !== null;
  return isGood ? { ok: true, trip } : refuse(notes.findings);
}

/** The trip, or null where the notes hold what is wrong. */
function resolveTrip(notes: Notes, file: TripFile, typed: unknown, options: ReadOptions): Trip | null {
  if (file.coldstow === undefined)
    notes.assume("coldstow", "1", "not given: this version of the file format");
  const title = file.title ?? notes.assume("title", titleFrom(options.file), "not given: the file's name");
  const place = resolvePlace(notes, file);
  const { childPortion_frac, ...party } = resolveParty(notes, file);
  const limit = resolveLimit(notes, file);
  const confidence_frac = resolveConfidence_frac(notes, file);
  const meals = resolveMeals(notes, file);
  const calendar = new Calendar(notes, file, place.timezone, meals);
  const weather = resolveWeather(notes, file.weather, place, calendar, options.readBeside);
  const coolers = resolveCoolers(
    notes,
    calendar,
    numberedCoolers(notes, file, options.readBeside),
    options.readBeside,
  );
  const setting = { calendar, coolers, party: { ...party, childPortion_frac } };
  const contents = resolveContents(notes, file, setting, weather);
  if (weather === null) return null;
  return {
    title,
    depart: calendar.depart,
    return: calendar.return,
    duration_s: calendar.duration_s,
    departClock_s: calendar.departClock_s,
    place,
    party,
    limit,
    confidence_frac,
    meals,
    weather,
    ...contents,
    assumed: notes.assumed,
    typed,
  };
}

type Contents = Pick<
  Trip,
  "legs" | "coolers" | "food" | "ice" | "supply" | "freezer" | "carry" | "warmLoad" | "rules" | "events"
>;

/** What goes along, where it goes, and what happens to it. */
function resolveContents(
  notes: Notes,
  file: TripFile,
  setting: FoodSetting,
  weather: Weather | null,
): Contents {
  const { calendar, coolers } = setting;
  const legs = resolveLegs(notes, calendar, weather, file.legs);
  const aboard = (file.food ?? []).map((item, i) => resolveFood(notes, setting, item, `food[${i}]`, null));
  const ice = (file.ice ?? []).map((lot, i) => resolveIce(notes, coolers, lot, `ice[${i}]`));
  const there = aboard.filter((item): item is TripFood => item !== null);
  const added = resolveEvents(notes, setting, weather, file.events ?? [], there);
  const supply = (file.supply ?? []).map((lot, i) => resolveSupply(notes, calendar, lot, `supply[${i}]`));
  const freezer = resolveFreezer(notes, file);
  const people =
    file.carry?.people ?? Number(notes.assume("carry.people", "2", "not given: two lift a cooler"));
  return {
    legs,
    coolers,
    food: [...there, ...added.food],
    ice: [...ice, ...added.ice],
    supply,
    freezer,
    carry: { people },
    warmLoad: resolveWarmLoad(notes, calendar, coolers, file["warm load"]),
    rules: resolveRules(notes, file.rules),
    events: added.events,
  };
}

function titleFrom(file: string): string {
  const name = file.split(/[/\\]/).at(-1) ?? "";
  return name.replace(/\.[^.]*$/, "") || "Trip";
}
