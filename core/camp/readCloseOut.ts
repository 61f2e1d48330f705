import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import { parseQuantity } from "../quantity/parse.ts";
import { Calendar } from "../trip/calendar.ts";
import { coolerNamed } from "../trip/coolers.ts";
import { statedMass_kg } from "../trip/ice.ts";
import { nearest } from "../trip/nearest.ts";
import { measures, Notes } from "../trip/notes.ts";
import { parseText } from "../trip/text.ts";
import type { Problem, Trip, TripFood } from "../trip/types.ts";
import { validate } from "../trip/validate.ts";
import { type BinnedWhy, type CloseOutFile, closeOutSchema, iceLevels } from "./closeOutFile.ts";
import type { IceLevel } from "./logFile.ts";

/** What somebody saw in one cooler at the return. */
export interface LeftOver {
  /** Index into the trip's coolers. */
  cooler: number;
  /** As typed. */
  typed: string;
  /** By eye; null: weighed. */
  level: IceLevel | null;
  /** Weighed; null: by eye. */
  weighed_kg: number | null;
  /** About when the last of it went; null: not said, or it is not gone. */
  gone_s: number | null;
}

export interface Binned {
  item: TripFood;
  mass_kg: number;
  why: BinnedWhy;
}

/** A close-out read against its trip. */
export interface CloseOut {
  left: readonly LeftOver[];
  binned: readonly Binned[];
  neverOpened: readonly TripFood[];
  ranOut: readonly { item: TripFood; when_s: number | null }[];
  wrong: readonly string[];
}

export type CloseOutReading = { ok: true; closeOut: CloseOut } | { ok: false; problems: Problem[] };

/**
 * Reads a close-out (`coldstow-closeout: 1`) against its trip: names of coolers and items, levels, weights, moments. All
 * problems at once, each with its line; it never throws for what a person wrote, and it draws no conclusions.
 */
export function readCloseOut(text: string, trip: Trip): CloseOutReading {
  const reading = parseText(text);
  if (!reading.ok) return { ok: false, problems: reading.problems };
  const { typed, lineOf } = reading.parsed;
  const validation = validate(closeOutSchema, typed);
  const notes = new Notes();
  const closeOut = validation.ok ? resolved(notes, validation.file, trip) : null;
  const findings = validation.ok ? notes.findings : validation.findings;
  if (closeOut !== null && findings.length === 0) return { ok: true, closeOut };
  return { ok: false, problems: findings.map((finding) => ({ line: lineOf(finding.path), ...finding })) };
}

function resolved(notes: Notes, file: CloseOutFile, trip: Trip): CloseOut {
  const calendar = new Calendar(notes, trip, trip.place.timezone, trip.meals);
  const moment = (path: string, typed: string | undefined): number | null =>
    typed === undefined ? null : calendar.seconds(path, typed);
  const items = <T>(list: readonly T[] | undefined, of: (one: T, i: number) => TripFood | null): TripFood[] =>
    (list ?? []).map(of).filter((item): item is TripFood => item !== null);
  const ranOut = (file["ran out"] ?? []).flatMap(({ item: name, when }, i) => {
    const item = itemNamed(notes, trip, `ran out[${i}].item`, name);
    return item === null ? [] : [{ item, when_s: moment(`ran out[${i}].when`, when) }];
  });
  return {
    left: leftOvers(notes, file, trip, moment),
    binned: (file.binned ?? []).flatMap((one, i) => binnedOf(notes, trip, one, `binned[${i}]`)),
    neverOpened: items(file["never opened"], (name, i) => itemNamed(notes, trip, `never opened[${i}]`, name)),
    ranOut,
    wrong: file.wrong ?? [],
  };
}

function leftOvers(
  notes: Notes,
  file: CloseOutFile,
  trip: Trip,
  moment: (path: string, typed: string | undefined) => number | null,
): LeftOver[] {
  const seen = new Set<number>();
  return file.coolers.map(({ name, ice, gone }, i) => {
    const path = `coolers[${i}]`;
    const cooler = coolerNamed(notes, trip.coolers, `${path}.name`, name);
    if (seen.has(cooler)) notes.refuse(`${path}.name`, "each cooler once", name);
    seen.add(cooler);
    const amount = iceOf(notes, `${path}.ice`, ice);
    const isGone = amount.level === "water" || amount.weighed_kg === 0;
    if (gone !== undefined && !isGone)
      notes.refuse(`${path}.gone`, "left out where ice is left (water says that none is)", gone);
    return { cooler, typed: ice, ...amount, gone_s: moment(`${path}.gone`, gone) };
  });
}

function iceOf(notes: Notes, path: string, typed: string): Pick<LeftOver, "level" | "weighed_kg"> {
  const word = typed.trim().toLowerCase();
  const level = iceLevels.find((known) => known === word) ?? null;
  if (level !== null) return { level, weighed_kg: null };
  const reading = parseQuantity(typed, "mass");
  const most_kg = measures.mass.high;
  if (reading.ok && reading.quantity.value <= most_kg)
    return { level: null, weighed_kg: reading.quantity.value };
  const must = `one of ${iceLevels.join(", ")}, or a weight with its unit, such as 2.3 kg or 5 lb`;
  return { level: null, weighed_kg: notes.refuse(path, must, typed, nearest(word, [...iceLevels])) };
}

/** An item by its name, whatever its case; null with the problem noted. */
function itemNamed(notes: Notes, trip: Trip, path: string, typed: string): TripFood | null {
  const wanted = typed.trim().toLowerCase();
  const item = trip.food.find(({ name }) => name.trim().toLowerCase() === wanted);
  if (item !== undefined) return item;
  const names = trip.food.map(({ name }) => name);
  const known = names.length === 0 ? "the trip has none" : names.slice(0, 10).join(", ");
  notes.refuse(path, `the name of an item of the trip: ${known}`, typed, nearest(typed, names));
  return null;
}

function binnedOf(
  notes: Notes,
  trip: Trip,
  { item: name, amount, share, why = "other" }: NonNullable<CloseOutFile["binned"]>[number],
  path: string,
): Binned[] {
  const item = itemNamed(notes, trip, `${path}.item`, name);
  if (item === null) return [];
  if (amount !== undefined && share !== undefined)
    notes.refuse(`${path}.share`, "left out where amount is given", share);
  if (amount === undefined)
    return [
      { item, mass_kg: item.mass_kg * (notes.siOrNull(`${path}.share`, share, measures.share) ?? 1), why },
    ];
  const density = foodDensity_kg_per_m3(item.like, 5);
  const mass_kg = statedMass_kg(notes, `${path}.amount`, amount, density);
  // Juice runs into a bag and a scale is rough, so a little more than was packed is no mistake.
  if (mass_kg > 1.25 * item.mass_kg)
    notes.refuse(`${path}.amount`, `at most what was packed, ${item.amount}`, amount);
  return [{ item, mass_kg: Math.min(mass_kg, item.mass_kg), why }];
}
