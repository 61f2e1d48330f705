import type { AssumedResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { parseQuantity } from "../quantity/parse.ts";
import { quantityWords } from "../quantity/show.ts";
import type { Dimension, UnitSystem } from "../quantity/units.ts";
import type { Trip } from "../trip/types.ts";
import { cut, hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { clockOf, durationWords, localTime, printable } from "./words.ts";

/** Assumptions that move the end of the ice by less are only counted. */
const COUNTS_h = 1;

/** What was assumed and moves the end of the ice by an hour or more, the one that moves it most first. */
export function assumedLines({ trip, result }: Forecast, nShown: number, voice: Voice): string[] {
  const { assumed } = result;
  if (assumed.length === 0) return [];
  const moving = assumed
    .filter(({ effect_h }) => Math.abs(effect_h ?? 0) >= COUNTS_h)
    .sort((a, b) => Math.abs(b.effect_h!) - Math.abs(a.effect_h!));
  const count = assumed.length === 1 ? "1 thing" : `${assumed.length} things`;
  const head = `We assumed ${count} that the file does not say${
    moving.length === 0 ? "; none moves the ice by an hour or more" : ". What moves the ice most"
  }`;
  const lines = hanging("", `${head}${moving.length === 0 ? "." : ":"}`, voice.width, voice.paint.strong);
  for (const one of moving.slice(0, nShown))
    lines.push(...hanging("  ", assumedWords(one, trip, voice.units), voice.width));
  const more = assumed.length - Math.min(moving.length, nShown);
  if (more > 0) lines.push(`  \`coldstow check\` lists ${moving.length === 0 ? "them" : "the others"}.`);
  return lines;
}

/** "thickness of lettuce: 2 in, moves it 3 h – usual for its kind"; how far only where that is known. */
export function assumptionWords(
  { path, value, why, effect_h }: AssumedResult,
  trip: Trip,
  units: UnitSystem,
): string {
  const moves = effect_h === null ? "" : `, moves it ${durationWords(Math.round(Math.abs(effect_h)))}`;
  const said = cut(valueWords(printable(value), units), 80);
  return `${pathWords(path, trip)}: ${said}${moves} – ${printable(why)}`;
}

function assumedWords(one: AssumedResult, trip: Trip, units: UnitSystem): string {
  return `${assumptionWords(one, trip, units)} (${cut(printable(one.path), 60)})`;
}

const DIMENSIONS: readonly Dimension[] = ["temperature", "length", "speed", "mass", "volume"];

/** A value as typed in a file, in the reader's units where it is a quantity. */
function valueWords(value: string, units: UnitSystem): string {
  for (const dimension of DIMENSIONS) {
    const reading = parseQuantity(value, dimension);
    if (!reading.ok) continue;
    const { unit, typedValue } = reading.quantity;
    if (unit.system !== units) return quantityWords(reading.quantity, units);
    return `${String(typedValue).replace("-", "−")} ${unit.symbol}`;
  }
  return value;
}

const LEAVES: Readonly<Record<string, string>> = {
  thick: "thickness",
  at: "starting temperature",
  like: "kind",
  eat: "meal",
  liquid: "share of water",
  shade: "shade",
  air: "air temperature",
  water: "water temperature",
  "start.at": "temperature when packed",
  "start.kept": "temperature where it was kept",
  "openings.per day": "openings a day",
  "openings.for": "length of an opening",
  "openings.from": "first opening",
  "openings.to": "last opening",
  drain: "drain habit",
  color: "colour",
  "wall.insulation": "insulation",
};

/** "thickness of lettuce", "temperature when packed of galley": whose it is by name, not by number. */
function pathWords(path: string, trip: Trip): string {
  const meal = /^meals\.(\w+)$/.exec(path);
  if (meal !== null) return `hour of ${meal[1]}`;
  const days = /^weather\.days\[(\d+)\]\.(.+)$/.exec(path);
  if (days !== null) return `${days[2]} of the weather, day ${Number(days[1]) + 1}`;
  const parts = /^(\w+)\[(\d+)\]\.(.+)$/.exec(path);
  if (parts === null) return printable(path.replace(/\./g, " "));
  const [, list, at, leaf] = parts as unknown as [string, string, string, string];
  const whose = ownerOf(list, Number(at), `${list}[${at}]`, trip);
  return `${LEAVES[leaf] ?? printable(leaf.replace(/\./g, " "))} of ${cut(printable(whose), 40)}`;
}

function ownerOf(list: string, i: number, path: string, trip: Trip): string {
  if (list === "coolers") return trip.coolers[i]?.name ?? path;
  if (list === "food") return trip.food.find((food) => food.path === path)?.name ?? path;
  if (list === "legs") return trip.legs[i] === undefined ? path : `leg ${i + 1} (${trip.legs[i].place})`;
  const ice = list === "ice" || list === "events" ? trip.ice.find((lot) => lot.path === path) : undefined;
  if (ice === undefined) return path;
  const form = /^(?:block|cube|crushed)$/.test(ice.form) ? `${ice.form} ice` : ice.form;
  const when = ice.putIn_s === null ? "in" : `of day ${localTime(ice.putIn_s / 3600, clockOf(trip)).day} for`;
  return `the ${form} ${when} ${trip.coolers[ice.cooler]?.name ?? path}`;
}
