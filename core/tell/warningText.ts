import { group } from "d3-array";
import type { Warning } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { massWords } from "../quantity/show.ts";
import { coolerLift } from "../safety/lifting.ts";
import type { Trip } from "../trip/types.ts";
import { hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { hourWords, nameWords, printable } from "./words.ts";

/** What may hurt somebody comes first, lifting after the food and the ice. */
const ORDER = [
  "dry-ice-air",
  "dry-ice",
  "food-after-merge",
  "freezes",
  "does-not-fit",
  "plan-unsure",
  "food-unsure",
  "ice-short",
  "ice-run-short",
  "way-out",
];
/** Said for information, not as an alarm. */
const NOTES: Readonly<Record<string, string>> = {
  "ice-enough": "Ice: ",
  "ice-on-way": "Ice: ",
  "way-out": "  or ",
  "ice-layer": "Ice: ",
  "freezer-full": "Ice: ",
  "frozen-at-meal": "Note: ",
  "dry-ice-aired": "Note: ",
  "vulnerable-eater": "Note: ",
  "supply-assumed": "Note: ",
  "cooler-unused": "Note: ",
  "plan-sure": "Plan: ",
  "no-other-assignment": "Plan: ",
  "no-merge": "Plan: ",
  "ice-run-carry": "Plan: ",
};

/** Dangers in a line each, for the head of a text; told in full below. */
export function dangerLines({ result, trip }: Forecast, voice: Voice): string[] {
  const namesWith = (code: string): string[] =>
    result.warnings.flatMap((warning) => (warning.code === code ? [nameAt(warning, trip)] : []));
  const closed = namesWith("dry-ice-air");
  const dry = namesWith("dry-ice").filter((name) => !closed.includes(name));
  const full = namesWith("does-not-fit");
  const short = [...new Set([...namesWith("ice-short"), ...namesWith("ice-run-short")])];
  const lines: string[] = [];
  if (closed.length > 0)
    lines.push(`Dry ice in a closed place (${nameWords(closed)}): its gas can suffocate people. See below.`);
  if (dry.length > 0) lines.push(`Dry ice aboard (${nameWords(dry)}): gas and cold burns. See below.`);
  if (full.length > 0) lines.push(`More than fits: ${nameWords(full)}. See below.`);
  if (short.length > 0) lines.push(`No ice found is enough: ${nameWords(short)}. See below.`);
  const fed = namesWith("ice-on-way");
  if (fed.length > 0)
    lines.push(`Do not miss the ice on the way: without it there is too little in ${nameWords(fed)}.`);
  return lines.flatMap((text) => hanging("! ", text, voice.width, voice.paint.warn));
}

/** The cooler that a warning is about: by its own path, or by that of the ice or food in it. */
function nameAt({ path }: Warning, { coolers, ice, food }: Trip): string {
  const index = /^coolers\[(\d+)\]/.exec(path)?.[1];
  const inside = [...ice, ...food].find((lot) => lot.path === path)?.cooler;
  return coolers[Number(index ?? inside ?? -1)]?.name ?? path;
}

/** Every warning once, then what is information, then what is heavy. */
export function warningLines(forecast: Forecast, voice: Voice): string[] {
  const rank = ({ code }: Warning): number => (ORDER.includes(code) ? ORDER.indexOf(code) : ORDER.length);
  const { warnings } = forecast.result;
  const told = warnings.filter(({ code }) => code !== "heavy");
  const alarms = told
    .filter(({ code }) => NOTES[code] === undefined || code === "way-out")
    .sort((a, b) => rank(a) - rank(b));
  const notes = told.filter(({ code }) => NOTES[code] !== undefined && code !== "way-out");
  const says = (warnings: readonly Warning[]): string[] =>
    [...group(warnings, (warning) => warning.says).values()].flatMap(([first]) => {
      const note = NOTES[first!.code];
      const timed = inLocalTime(printable(first!.says), first!.code, voice);
      const text = first!.code === "ice-short" ? shortWords(timed) : timed;
      return hanging(note ?? "! ", text, voice.width, note === undefined ? voice.paint.warn : undefined);
    });
  return [...says(withWays(oneFreeze(alarms))), ...liftLines(forecast, voice), ...says(notes)];
}

/** What a plan says in hours since departure, as local time. */
function inLocalTime(text: string, code: string, { clock }: Voice): string {
  if (!["ice-short", "food-after-merge", "heavy-later", "frozen-at-meal"].includes(code)) return text;
  return text.replace(/\bhour (\d{1,4})\b/g, (_, hour: string) => hourWords(Number(hour), clock));
}

const ABOVE = /^(.+) is (above the limit from .+)$/;

/** Foods that pass their limit at one time are told together. */
function shortWords(text: string): string {
  const cut = text.lastIndexOf(": ");
  const [head, parts] = [text.slice(0, cut + 2), text.slice(cut + 2).split("; ")];
  const told = [...group(parts, (part) => ABOVE.exec(part)?.[2] ?? part)].map(([when, same]) => {
    const names = same.flatMap((part) => ABOVE.exec(part)?.[1] ?? []);
    if (names.length === 0) return when;
    return `${nameWords(names, 6)} ${names.length === 1 ? "is" : "are"} ${when}`;
  });
  return `${head}${told.join("; ")}`;
}

const FREEZES = / would freeze, and that ruins it$/;

/** All that freezing ruins in one line, in words that fit one name and many. */
function oneFreeze(alarms: readonly Warning[]): Warning[] {
  const ruined = alarms.filter(({ says }) => FREEZES.test(says));
  const first = ruined[0];
  if (first === undefined) return [...alarms];
  const names = ruined.map(({ says }) => says.replace(FREEZES, ""));
  const says = `Would freeze, and freezing ruins it: ${nameWords(names, names.length)}`;
  return alarms.flatMap((one) => (one === first ? [{ ...one, says }] : ruined.includes(one) ? [] : [one]));
}

/** Ways out stand below what they lead out of. */
function withWays(alarms: readonly Warning[]): Warning[] {
  const ways = alarms.filter(({ code }) => code === "way-out");
  const rest = alarms.filter(({ code }) => code !== "way-out");
  const isLast = (warning: Warning): boolean =>
    rest.findLast(({ path, code }) => path === warning.path && isShort(code)) === warning;
  const isShort = (code: string): boolean =>
    ["ice-short", "ice-run-short", "does-not-fit", "food-unsure"].includes(code);
  const placed = rest.flatMap((warning) => [
    warning,
    ...(isShort(warning.code) && isLast(warning) ? ways.filter(({ path }) => path === warning.path) : []),
  ]);
  return [...placed, ...ways.filter((way) => !placed.includes(way))];
}

/**
 * The load constant of the revised NIOSH equation, the most that it ever recommends for one person.
 *
 * @source niosh-94-110
 */
const ONE_PERSON_KG = 23;

function liftLines({ trip, result }: Forecast, voice: Voice): string[] {
  const mass = (mass_kg: number): string => massWords(mass_kg, voice.units);
  const warned = new Set(result.warnings.flatMap(({ code, path }) => (code === "heavy" ? [path] : [])));
  const carried = result.coolers.filter((_, i) => !isBuiltIn(trip.typed, i));
  const isHeavy = (cooler: (typeof carried)[number]): boolean =>
    warned.has(`coolers[${result.coolers.indexOf(cooler)}]`);
  const heavy = carried.filter(isHeavy);
  const forTwo = carried.filter((one) => !isHeavy(one) && one.packedWeight_kg > ONE_PERSON_KG);
  const lines: string[] = [];
  const { people } = trip.carry;
  const most = ({ name, packedWeight_kg }: (typeof carried)[number]): string => {
    const { body } = trip.coolers.find((cooler) => cooler.name === name)!;
    return `${name} ${mass(packedWeight_kg)} of ${mass(coolerLift(0, people, body).recommended_kg)}`;
  };
  const weights = heavy.map(most);
  if (heavy.length > 0)
    lines.push(
      `Heavy to lift, packed, of what the NIOSH lifting equation recommends for ${people === 1 ? "one person" : `${people} people`} from the ground to a tailgate: ${nameWords(weights, 6)}. Split the load, or load it in place.`,
    );
  if (forTwo.length > 0)
    lines.push(
      `More than one person should lift ${nameWords(forTwo.map(({ name }) => name))}: packed over ${mass(ONE_PERSON_KG)}, the most for one (NIOSH lifting equation).`,
    );
  return lines.flatMap((text) => hanging("! ", text, voice.width));
}

/** A built-in icebox is loaded where it stands. */
function isBuiltIn(typed: unknown, index: number): boolean {
  const coolers = (typed as { coolers?: readonly { build?: unknown }[] } | null)?.coolers;
  return Array.isArray(coolers) && coolers[index]?.build === "icebox";
}
