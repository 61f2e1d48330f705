import Papa from "papaparse";
import { parseQuantity } from "../quantity/parse.ts";
import type { ReadBeside } from "../trip/beside.ts";
import { measures, Notes } from "../trip/notes.ts";
import { readTripObject } from "../trip/readTrip.ts";
import { parseText } from "../trip/text.ts";
import type { Assumed, Problem, Trip } from "../trip/types.ts";
import { validate } from "../trip/validate.ts";
import { type IceTestFile, iceTestSchema, type WeighedFile } from "./iceTestFile.ts";

/** One look at the ice, or at the water that was let out since the one before. */
export interface TestWeighing {
  after_s: number;
  of: "ice" | "drained";
  mass_kg: number;
  /** Place in the file's list. */
  index: number;
}

/** A home ice test that was read without a mistake. */
export interface IceTest {
  title: string;
  ended: string | null;
  /** The cooler with its ice as a trip that stands in a room, for as long as anybody could go on weighing. */
  trip: Trip;
  /** Air of the room since the lid was shut, rising; one point where it is constant. */
  room: readonly { t_s: number; room_C: number }[];
  humidity_frac: number;
  scale_kg: number;
  /** In order of time. */
  weighed: readonly TestWeighing[];
  assumed: readonly Pick<Assumed, "path" | "value" | "why">[];
}

export type IceTestReading = { ok: true; test: IceTest } | { ok: false; problems: Problem[] };

const hour_s = 3600;
/** Past this nobody goes on weighing, and a shut box has lost what it will. */
const longest_s = 10 * 86_400;
const span = { dimension: "duration", low: 60, high: longest_s, says: "from 1 min to 10 d" } as const;
const scaleStep = { dimension: "mass", low: 1e-4, high: 2, says: "a step from 0.1 g to 2 kg" } as const;
const roomAir = { dimension: "temperature", low: 2, high: 60, says: "from 2 C to 60 C" } as const;
const none = { low: 0, high: 2000 };

/**
 * Reads a home ice test (`coldstow-test: 1`). All problems at once, each with its line; it never throws for what a person
 * wrote.
 *
 * @param readBeside hands out the CSV of the room; without it a test with one is refused
 */
export function readIceTest(text: string, readBeside: ReadBeside = () => null): IceTestReading {
  const reading = parseText(text);
  if (!reading.ok) return { ok: false, problems: reading.problems };
  const { typed, lineOf } = reading.parsed;
  const validation = validate(iceTestSchema, typed);
  const notes = new Notes();
  const test = validation.ok ? resolved(notes, validation.file, readBeside) : null;
  const findings = validation.ok ? notes.findings : validation.findings;
  if (test !== null && findings.length === 0) return { ok: true, test };
  return { ok: false, problems: findings.map((finding) => ({ line: lineOf(finding.path), ...finding })) };
}

function resolved(notes: Notes, file: IceTestFile, readBeside: ReadBeside): IceTest | null {
  const room = roomOf(notes, file, readBeside);
  const humidity = file.humidity ?? notes.assume("humidity", "50 %", "not said: usual indoors");
  const humidity_frac = notes.si("humidity", humidity, measures.humidity);
  const scale =
    file.scale ??
    notes.assume("scale", "0.1 kg", "not said: usual for a bathroom scale", null, "common-practice");
  const scale_kg = notes.si("scale", scale, scaleStep);
  const weighed = (file.weighed ?? []).map((one, i) => weighingOf(notes, one, i));
  weighed.forEach((one, i) => {
    if (i > 0 && one.after_s < weighed[i - 1]!.after_s)
      notes.refuse(`weighed[${i}].after`, "no earlier than the one before", file.weighed![i]!.after);
    if (weighed.some((other, k) => k < i && other.after_s === one.after_s && other.of === one.of))
      notes.refuse(`weighed[${i}].after`, "a moment of its own", file.weighed![i]!.after);
  });
  const last_s = weighed.at(-1)?.after_s ?? 0;
  if (room.length > 1 && room.at(-1)!.t_s < last_s)
    notes.refuse(
      "room.file",
      `hours up to the last weighing, ${last_s / hour_s} h`,
      `up to ${room.at(-1)!.t_s / hour_s} h`,
    );
  if (file.cooler.conductance !== undefined && file.cooler.history !== undefined)
    notes.refuse("cooler.history", "left out where conductance is given", "both");
  if (notes.findings.length > 0) return null;
  const body = file.body ?? bodyAsRoom(notes, file, room[0]!.room_C);
  const trip = tripOf(notes, file, weighed, meanRoom_C(room), body, readBeside);
  if (trip === null) return null;
  const own = notes.assumed.map(({ path, value, why }) => ({ path, value, why }));
  return {
    title: file.title,
    ended: file.ended ?? null,
    trip,
    room,
    humidity_frac,
    scale_kg,
    weighed,
    assumed: own,
  };
}

function bodyAsRoom(notes: Notes, { cooler }: IceTestFile, room_C: number): string | null {
  if (cooler.start !== undefined) return null;
  return notes.assume("body", `${room_C.toFixed(0)} C`, "not said: as warm as the room when the ice went in");
}

const meanRoom_C = (room: IceTest["room"]): number =>
  room.reduce((sum, { room_C }) => sum + room_C, 0) / room.length;

function weighingOf(notes: Notes, one: WeighedFile, index: number): TestWeighing {
  const path = `weighed[${index}]`;
  const after_s = notes.si(`${path}.after`, one.after, span);
  if ((one.ice === undefined) === (one.drained === undefined))
    notes.refuse(path, "ice or drained, one of the two", one.ice === undefined ? "neither" : "both");
  if (one.ice !== undefined)
    return {
      after_s,
      of: "ice",
      index,
      mass_kg: notes.si(`${path}.ice`, one.ice, { ...measures.mass, ...none }),
    };
  const drained = one.drained ?? "0 kg";
  const asMass = parseQuantity(drained, "mass");
  const mass_kg = asMass.ok
    ? notes.si(`${path}.drained`, drained, { ...measures.mass, ...none })
    : 1000 * notes.si(`${path}.drained`, drained, { ...measures.volume, low: 0 });
  return { after_s, of: "drained", index, mass_kg };
}

/** One temperature for all the time, or a CSV with the columns hours and C or F. */
function roomOf(notes: Notes, { room }: IceTestFile, readBeside: ReadBeside): IceTest["room"] {
  if (typeof room === "string") return [{ t_s: 0, room_C: notes.si("room", room, roomAir) }];
  const text = readBeside(room.file);
  const bad = (must: string, got: string): IceTest["room"] => {
    notes.refuse("room.file", must, got);
    return [{ t_s: 0, room_C: Number.NaN }];
  };
  if (text === null) return bad("a CSV file beside this one", room.file);
  const { data } = Papa.parse<string[]>(text.trim(), { skipEmptyLines: true });
  const [heads = [], ...rows] = data;
  const names = heads.map((name) => name.trim().toLowerCase());
  const hours = names.indexOf("hours");
  const [celsius, fahrenheit] = [names.indexOf("c"), names.indexOf("f")];
  const at = celsius >= 0 ? celsius : fahrenheit;
  if (hours < 0 || at < 0)
    return bad("a CSV whose first line names the columns hours and C or F", heads.join(","));
  const points = rows.map((row) => {
    const typed = Number(row[at]);
    return { t_s: hour_s * Number(row[hours]), room_C: celsius >= 0 ? typed : (typed - 32) / 1.8 };
  });
  const wrong = points.findIndex(
    ({ t_s, room_C }, i) =>
      !(room_C >= roomAir.low && room_C <= roomAir.high && t_s >= 0 && (i === 0 || t_s > points[i - 1]!.t_s)),
  );
  if (points.length === 0 || wrong >= 0)
    return bad(
      `rows with rising hours and a temperature ${roomAir.says}`,
      points.length === 0 ? "no rows" : `line ${wrong + 2}: ${rows[wrong]!.join(",")}`,
    );
  return points;
}

const iso = (t_s: number): string =>
  new Date(Date.UTC(2027, 0, 1, 8) + t_s * 1000).toISOString().slice(0, 19);

/** The test as a trip file would say it: a lid that stays shut but for weighing, in a room without sun or wind. */
function tripFile(
  file: IceTestFile,
  weighed: readonly TestWeighing[],
  room_C: number,
  body: string | null,
): object {
  const { name } = file.cooler;
  const end = iso(longest_s + hour_s);
  const [opened, drained] = (["ice", "drained"] as const).map((of) => weighed.filter((one) => one.of === of));
  return {
    title: file.title,
    depart: iso(0),
    return: end,
    place: { latitude: 0, longitude: 0, elevation: "0 m", timezone: "UTC" },
    party: { adults: 1, vulnerable: false },
    weather: {
      days: [
        {
          high: `${room_C} C`,
          low: `${room_C} C`,
          humidity: file.humidity ?? "50 %",
          cloud: "100 %",
          wind: "0 m/s",
        },
      ],
    },
    legs: [{ where: "indoors", air: `${room_C} C` }],
    coolers: [
      {
        drain: "keep",
        ...(body === null ? {} : { start: { at: body } }),
        ...file.cooler,
        openings: { "per day": 0 },
      },
    ],
    ice: file.ice.map((lot) => ({ ...lot, in: name })),
    food: [],
    events: [
      ...opened!.map(({ after_s }) => ({ at: iso(after_s), do: "open", cooler: name, for: "90 s" })),
      ...drained!.map(({ after_s }) => ({ at: iso(after_s), do: "drain", cooler: name })),
    ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
  };
}

function tripOf(
  notes: Notes,
  file: IceTestFile,
  weighed: readonly TestWeighing[],
  room_C: number,
  body: string | null,
  readBeside: ReadBeside,
): Trip | null {
  const reading = readTripObject(tripFile(file, weighed, room_C, body), { file: file.title, readBeside });
  if (reading.ok) return reading.trip;
  for (const { path, must, got, near } of reading.problems)
    notes.refuse(path.replace("coolers[0]", "cooler"), must, got, near);
  return null;
}
