import { nearest } from "../trip/nearest.ts";
import { measures, Notes } from "../trip/notes.ts";
import { readTripObject } from "../trip/readTrip.ts";
import { parseText } from "../trip/text.ts";
import type { Problem, Trip } from "../trip/types.ts";
import { type Finding, validate } from "../trip/validate.ts";
import { type ArmFile, type ExperimentFile, experimentSchema } from "./experimentFile.ts";

/** One box of an experiment, as a trip that stands in a room. */
export interface Arm {
  name: string;
  room_C: number;
  trip: Trip;
}

export interface Experiment {
  file: ExperimentFile;
  humidity_frac: number;
  scale_kg: number;
  /** Since the lid was shut, rising. */
  weigh_s: readonly number[];
  oneBox: boolean;
  arms: readonly Arm[];
  /** Ice left at the last weighing, as somebody thinks. */
  guesses: readonly { who: string; arm: number; ice_kg: number }[];
  measured: readonly { arm: number; after_s: number; ice_kg: number; run: number }[];
}

export type ExperimentReading = { ok: true; experiment: Experiment } | { ok: false; problems: Problem[] };

/** How long the lid is up for weighing. */
const weighing_s = 90;
const hour_s = 3600;
const longest = { dimension: "duration", low: 60, high: 10 * 86_400, says: "from 1 min to 10 d" } as const;
const scaleStep = { dimension: "mass", low: 1e-4, high: 1, says: "a step from 0.1 g to 1 kg" } as const;
const roomAir = { dimension: "temperature", low: -10, high: 50, says: "from -10 C to 50 C" } as const;

/**
 * Reads a kitchen experiment (`coldstow-experiment: 1`): every arm becomes a trip of one cooler in a room, so that it is
 * checked and reckoned as any trip is. All problems at once, each with its line; it never throws for what a person wrote.
 */
export function readExperiment(text: string): ExperimentReading {
  const reading = parseText(text);
  if (!reading.ok) return { ok: false, problems: reading.problems };
  const { typed, lineOf } = reading.parsed;
  const validation = validate(experimentSchema, typed);
  const notes = new Notes();
  const experiment = validation.ok ? resolved(notes, validation.file) : null;
  const findings = validation.ok ? notes.findings : validation.findings;
  if (experiment !== null && findings.length === 0) return { ok: true, experiment };
  return { ok: false, problems: findings.map((finding) => ({ line: lineOf(finding.path), ...finding })) };
}

function resolved(notes: Notes, file: ExperimentFile): Experiment | null {
  const weigh_s = file.weigh.map((typed, i) => notes.si(`weigh[${i}]`, typed, longest));
  weigh_s.forEach((t_s, i) => {
    if (i > 0 && t_s <= weigh_s[i - 1])
      notes.refuse(`weigh[${i}]`, "later than the one before", file.weigh[i]);
  });
  const names = file.arms.map(({ name }) => name);
  names.forEach((name, i) => {
    if (names.indexOf(name) < i) notes.refuse(`arms[${i}].name`, "unlike the other names", name);
  });
  const room_C = file.arms.map(({ room }, i) =>
    notes.si(room === undefined ? "room" : `arms[${i}].room`, room ?? file.room, roomAir),
  );
  const humidity_frac = notes.siOrNull("humidity", file.humidity, measures.humidity) ?? 0.5;
  const scale_kg = notes.si("scale", file.scale, scaleStep);
  const [guesses, measured] = [guessesOf(notes, file), measuredOf(notes, file, weigh_s)];
  if (notes.findings.length > 0) return null;
  const trips = file.arms.map((arm, i) => tripOf(notes, file, arm, i, weigh_s));
  if (trips.some((trip) => trip === null)) return null;
  const arms = trips.map((trip, i) => ({ name: names[i], room_C: room_C[i], trip: trip! }));
  const oneBox = file["one box"] ?? false;
  return { file, humidity_frac, scale_kg, weigh_s, oneBox, arms, guesses, measured };
}

function armNamed(notes: Notes, file: ExperimentFile, path: string, typed: string): number {
  const names = file.arms.map(({ name }) => name);
  const at = names.findIndex((name) => name.toLowerCase() === typed.trim().toLowerCase());
  if (at < 0) notes.refuse(path, `the name of an arm: ${names.join(", ")}`, typed, nearest(typed, names));
  return at;
}

function guessesOf(notes: Notes, file: ExperimentFile): Experiment["guesses"] {
  return (file.guesses ?? []).map(({ who, arm, ice }, i) => ({
    who,
    arm: armNamed(notes, file, `guesses[${i}].arm`, arm),
    ice_kg: notes.si(`guesses[${i}].ice`, ice, { ...measures.mass, low: 0 }),
  }));
}

function measuredOf(notes: Notes, file: ExperimentFile, weigh_s: readonly number[]): Experiment["measured"] {
  const seen = new Set<string>();
  return (file.measured ?? []).map(({ arm, after, ice, run = 1 }, i) => {
    const path = `measured[${i}]`;
    const after_s = notes.si(`${path}.after`, after, longest);
    if (!weigh_s.some((t_s) => Math.abs(t_s - after_s) < 1))
      notes.refuse(`${path}.after`, `one of weigh: ${file.weigh.join(", ")}`, after);
    const place = armNamed(notes, file, `${path}.arm`, arm);
    const key = `${place} ${after_s} ${run}`;
    if (seen.has(key)) notes.refuse(path, "each arm, time and run once", `${arm}, ${after}, run ${run}`);
    seen.add(key);
    return { arm: place, after_s, run, ice_kg: notes.si(`${path}.ice`, ice, { ...measures.mass, low: 0 }) };
  });
}

const iso = (t_s: number): string =>
  new Date(Date.UTC(2027, 0, 1, 8) + t_s * 1000).toISOString().slice(0, 19);

/** The arm as a trip file would say it: a lid that stays shut but for weighing, in a room without sun or wind. */
function tripFile(file: ExperimentFile, arm: ArmFile, i: number, weigh_s: readonly number[]): object {
  const box = file["one box"] ? "box" : `box ${i + 1}`;
  const room = arm.room ?? file.room;
  const cover = arm.cooler?.cover ?? file.cooler.cover;
  const opened = weigh_s.slice(0, -1);
  const end = iso(weigh_s.at(-1)! + hour_s);
  return {
    title: arm.name,
    depart: iso(0),
    return: end,
    place: { latitude: 0, longitude: 0, elevation: "0 m", timezone: "UTC" },
    party: { adults: 1, vulnerable: false },
    weather: {
      days: [{ high: room, low: room, humidity: file.humidity ?? "50 %", cloud: "100 %", wind: "0 m/s" }],
    },
    legs: [{ where: "indoors", air: room }],
    coolers: [{ ...file.cooler, ...arm.cooler, name: box, openings: { "per day": 0 } }],
    ice: arm.ice.map((lot) => ({ ...lot, in: box })),
    food: (arm.food ?? []).map((item) => ({ ...item, in: box, eat: end })),
    events: [
      ...opened.map((t_s) => ({ at: iso(t_s), do: "open", cooler: box, for: `${weighing_s} s` })),
      // Wetted whenever somebody weighs: between times it dries as it dries.
      ...(cover === "wet cloth" ? opened.map((t_s) => ({ at: iso(t_s), do: "wet cloth", cooler: box })) : []),
    ],
  };
}

function tripOf(
  notes: Notes,
  file: ExperimentFile,
  arm: ArmFile,
  i: number,
  weigh_s: readonly number[],
): Trip | null {
  const reading = readTripObject(tripFile(file, arm, i, weigh_s), { file: arm.name });
  if (reading.ok) return reading.trip;
  for (const { path, must, got, near } of reading.problems)
    notes.refuse(ownPath(path, arm, i), must, got as Finding["got"], near);
  return null;
}

/** Where in the experiment a mistake in the trip that was made of it stands. */
function ownPath(path: string, arm: ArmFile, i: number): string {
  const key = /^coolers\[0\]\.?([^.[]*)/.exec(path);
  if (key !== null) {
    const isOwn = Object.hasOwn(arm.cooler ?? {}, key[1]);
    return path.replace("coolers[0]", isOwn ? `arms[${i}].cooler` : "cooler");
  }
  if (/^(?:ice|food)\[/.test(path)) return `arms[${i}].${path}`;
  return /^(?:weather|legs)/.test(path) ? (arm.room === undefined ? "room" : `arms[${i}].room`) : path;
}
