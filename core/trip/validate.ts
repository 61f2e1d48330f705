import * as v from "valibot";
import { withoutComma } from "../quantity/parse.ts";
import type { FleetFile, TripFile } from "./file.ts";
import { meant } from "./meant.ts";
import { nearest } from "./nearest.ts";
import { pathOf, type Step } from "./paths.ts";
import { fleetSchema } from "./schema/coolers.ts";
import { tripSchema } from "./schema/trip.ts";
import { bounds } from "./text.ts";

/** A problem that does not know its line yet. */
export interface Finding {
  path: string;
  must: string;
  got: string;
  near: string | null;
}

export type Validation<File> = { ok: true; file: File } | { ok: false; findings: Finding[] };

/**
 * Checks the shape of a parsed trip file against the one schema: keys, kinds of value, words of lists, lengths. It
 * does not read units, moments or names of coolers; that is the resolving step.
 */
export function validateTrip(typed: unknown): Validation<TripFile> {
  return validate(tripSchema, typed);
}

/** As `validateTrip`, for a fleet file. */
export function validateFleet(typed: unknown): Validation<FleetFile> {
  return validate(fleetSchema, typed);
}

/** As `validateTrip`, for a file of any shape. */
export function validate<File>(schema: v.GenericSchema<unknown, File>, typed: unknown): Validation<File> {
  const findings: Finding[] = [];
  findStrange(findings, schema as unknown as Shape, typed, []);
  const outcome = v.safeParse(schema, typed);
  const lists = findings.filter(({ got }) => got === aList).map(({ path }) => path);
  const told = new Set(findings.map(({ path }) => path));
  for (const issue of outcome.issues ?? []) {
    const steps = (issue.path ?? []).map((item) => item.key as Step);
    // The validator names one strange key per mapping, and takes a list for one; `findStrange` has them all.
    const path = pathOf(steps);
    if (issue.expected === "never" || told.has(path) || lists.includes(pathOf(steps.slice(0, -1)))) continue;
    findings.push({
      path,
      must:
        issue.received === "undefined"
          ? (wantedAt(schema as unknown as Shape, steps, typed) ?? issue.message)
          : issue.message,
      got: shown(issue.input),
      near: nearOf(issue, steps),
    });
  }
  if (findings.length > 0 || !outcome.success) return { ok: false, findings };
  return { ok: true, file: outcome.output };
}

const aList = "a list";

/** What a person typed, short enough to stand in a message and without characters that act on a terminal. */
export function shown(value: unknown): string {
  if (value === undefined || value === null || value === "") return "nothing";
  if (Array.isArray(value)) return aList;
  if (typeof value === "object") return "a mapping";
  const text = String(value).replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "�");
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

/** What was most likely meant by a word that is on no list, or by a yes or no in another word. */
function nearOf(issue: v.BaseIssue<unknown>, steps: readonly Step[]): string | null {
  const known = wordsIn(issue.expected);
  const isWord = known.length > 0 || issue.expected === "boolean";
  return isWord
    ? meant(String(steps.findLast((step) => typeof step === "string")), issue.input, known)
    : null;
}

/** The words of a list, from the validator's own account of what it expected. */
function wordsIn(expected: string | null): string[] {
  return [...(expected ?? "").matchAll(/"([^"]+)"/g)].map(([, word]) => word as string);
}

/** What is needed of the validator's schema objects to walk them. */
interface Shape {
  type: string;
  message?: unknown;
  entries?: Record<string, Shape>;
  wrapped?: Shape;
  item?: Shape;
  key?: string;
  options?: readonly Shape[];
}

/** The shape without its optional wrapper; of alternatives the one that `value` names. */
function settled(shape: Shape, value: unknown): Shape {
  if (shape.wrapped !== undefined) return settled(shape.wrapped, value);
  if (shape.key === undefined || shape.options === undefined) return shape;
  const key = shape.key;
  const word = (value as Record<string, unknown> | null)?.[key];
  const named = (option: Shape): boolean =>
    (option.entries?.[key] as { literal?: unknown })?.literal === word;
  return shape.options.find(named) ?? shape;
}

/** Adds every unknown key, and every list that stands where a mapping should, until there are more than enough. */
function findStrange(findings: Finding[], shape: Shape, value: unknown, steps: readonly Step[]): void {
  if (typeof value !== "object" || value === null || findings.length >= bounds.problems) return;
  const here = settled(shape, value);
  const { item, entries } = here;
  if (Array.isArray(value)) {
    if (item !== undefined)
      for (const [place, part] of value.entries()) findStrange(findings, item, part, [...steps, place]);
    else if (entries !== undefined || here.type === "record") {
      findings.push({ path: pathOf(steps), must: String(here.message), got: aList, near: null });
    }
    return;
  }
  if (entries === undefined) return;
  const known = Object.keys(entries);
  const pairs = Object.entries(value);
  for (const [place, [key, part]] of pairs.entries()) {
    if (findings.length >= bounds.problems) return;
    const split = known.includes(key) ? null : commaSplit(pairs[place - 1], [key, part], steps);
    if (split !== null) {
      findings.push(split);
      continue;
    }
    if (known.includes(key)) {
      findStrange(findings, entries[key] as Shape, part, [...steps, key]);
      continue;
    }
    const path = shown(pathOf([...steps, key.length > 40 ? `${key.slice(0, 39)}…` : key]));
    findings.push({
      path,
      must: `a known key: ${known.join(", ")}`,
      got: shown(key),
      near: nearest(key, known),
    });
  }
}

/** Inside braces a comma ends a value, so `{ amount: 0,6 kg }` reads as an amount of 0 and a key "6 kg". */
function commaSplit(
  before: readonly [string, unknown] | undefined,
  [key, part]: readonly [string, unknown],
  steps: readonly Step[],
): Finding | null {
  if (before === undefined || part !== null || !/^\d/.test(key) || !/^-?\d+$/.test(String(before[1])))
    return null;
  const got = `${String(before[1])},${key}`;
  const write = withoutComma(got);
  if (write === null) return null;
  const must = `a number with a decimal point; write ${write}`;
  return { path: pathOf([...steps, before[0]]), must, got: shown(got), near: null };
}

/** What the value that is missing at this path would have to be. */
function wantedAt(whole: Shape, steps: readonly Step[], typed: unknown): string | null {
  let shape = whole;
  let value = typed;
  for (const step of steps) {
    const here = settled(shape, value);
    const next = typeof step === "number" ? here.item : here.entries?.[step];
    if (next === undefined) return null;
    shape = next;
    value = (value as Record<Step, unknown> | null)?.[step];
  }
  const message = settled(shape, value).message;
  return typeof message === "string" ? message : null;
}
