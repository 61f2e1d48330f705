import type { Calendar } from "./calendar.ts";
import type { SupplyFile, TripFile } from "./file.ts";
import { iceCondition, pieceMass_kg } from "./ice.ts";
import { measures, type Notes } from "./notes.ts";
import type { Trip, TripSupply } from "./types.ts";

/** Ice that can be bought or made. */
export function resolveSupply(notes: Notes, calendar: Calendar, file: SupplyFile, path: string): TripSupply {
  const { start_C, liquid_frac } = iceCondition(notes, file, path, { path: `${path}.at`, typed: file.at });
  const { max, price } = file;
  return {
    path,
    form: file.form,
    each: file.each,
    each_kg: pieceMass_kg(notes, `${path}.each`, file.form, file.each),
    at_C: start_C,
    liquid_frac,
    price: price ?? null,
    where: file.where ?? notes.assume(`${path}.where`, file.form === "jug" ? "home" : "shop", "not given"),
    when_s: file.when === undefined ? null : momentsOf(calendar, file.when, `${path}.when`),
    open: file.open === undefined ? null : hoursOf(notes, file.open, `${path}.open`),
    closed: file.closed ?? [],
    max: max ?? null,
    chance_frac: notes.siOrNull(`${path}.chance`, file.chance, measures.share),
    away_s: notes.siOrNull(`${path}.away`, file.away, measures.away),
  };
}

function momentsOf(calendar: Calendar, typed: string | string[], path: string): number[] {
  if (typeof typed === "string") return [calendar.seconds(path, typed)];
  return typed.map((moment, i) => calendar.seconds(`${path}[${i}]`, moment)).sort((a, b) => a - b);
}

function hoursOf(notes: Notes, typed: string, path: string): TripSupply["open"] {
  const parts = typed.split(/\s*[-–]\s*/);
  if (parts.length !== 2) {
    notes.refuse(path, 'two times of day with a dash, such as "08:00-18:00"', typed);
    return null;
  }
  const [from_s, to_s] = parts.map((part) => notes.clock(path, part)) as [number, number];
  if (to_s <= from_s) notes.refuse(path, "hours that close later than they open, on one day", typed);
  return { from_s, to_s };
}

/** Room in the freezer at home, for ice and frozen food; null when there is none to speak of. */
export function resolveFreezer(notes: Notes, file: TripFile): Trip["freezer"] {
  if (file.freezer === undefined) return null;
  const usual = "-16 C";
  const typed =
    file.freezer.at ?? notes.assume("freezer.at", usual, "not given: a home freezer", ["-20 C", "-12 C"]);
  return {
    space_m3: notes.si("freezer.space", file.freezer.space, measures.freezer),
    at_C: notes.si("freezer.at", typed, measures.freezerTemperature),
  };
}
