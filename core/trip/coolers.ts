import { type BuildKey, bodyOf } from "../cooler/builds.ts";
import { medianClosures } from "../cooler/closures.ts";
import type { BodyStart, CoolerBody, OpeningHabit } from "../cooler/types.ts";
import { conductanceRange_W_per_K } from "../cooler/walls.ts";
import { solarAbsorptances } from "../matter/shells.ts";
import type { Spread } from "../matter/spread.ts";
import type { ReadBeside } from "./beside.ts";
import type { Calendar } from "./calendar.ts";
import type { CoolerFile } from "./file.ts";
import { blameFleet, type FleetCooler } from "./fleetFile.ts";
import { coolerHistory } from "./historyFile.ts";
import { nearest } from "./nearest.ts";
import { measures, type Notes } from "./notes.ts";
import type { CoolerHistory, TripCooler } from "./types.ts";

/** The name that stands for no cooler at all: a box, bag or shelf without ice. */
export const dryBox = "dry box";

const asName = (typed: string): string => typed.trim().toLowerCase();

/** All coolers of the file, in order. */
export function resolveCoolers(
  notes: Notes,
  calendar: Calendar,
  fleet: readonly FleetCooler[],
  readBeside: ReadBeside | undefined,
): TripCooler[] {
  const seen = new Map<string, number>([[dryBox, -1]]);
  return fleet.map((known, i) => {
    const { file } = known;
    const path = `coolers[${i}]`;
    const earlier = seen.get(asName(file.name));
    if (earlier === -1)
      notes.refuse(`${path}.name`, `a name other than ${dryBox}, which is always there`, file.name);
    else if (earlier !== undefined)
      notes.refuse(`${path}.name`, `unlike the name of coolers[${earlier}]`, file.name);
    else seen.set(asName(file.name), i);
    const before = notes.findings.length;
    const history = historyOf(notes, file, path, readBeside);
    const cooler = resolveCooler(notes, calendar, file, path, history);
    blameFleet(notes.findings.slice(before), path, known);
    return cooler;
  });
}

/** The cooler that a name means, whatever its case; NaN with the problem noted when there is none. */
export function coolerNamed(
  notes: Notes,
  coolers: readonly TripCooler[],
  path: string,
  typed: string,
): number {
  const index = coolers.findIndex((cooler) => asName(cooler.name) === asName(typed));
  if (index >= 0) return index;
  const names = coolers.map((cooler) => cooler.name);
  return notes.refuse(
    path,
    `the name of a cooler: ${names.slice(0, 10).join(", ")}`,
    typed,
    nearest(typed, names),
  );
}

const historyWords = ({ history }: CoolerFile): string =>
  typeof history === "string" ? history : "what stands under it";

/** Earlier trips give way to a conductance that is stated. */
function historyOf(
  notes: Notes,
  file: CoolerFile,
  path: string,
  readBeside: ReadBeside | undefined,
): CoolerHistory | null {
  const history = coolerHistory(notes, `${path}.history`, file, readBeside);
  return file.conductance === undefined ? history : null;
}

function resolveCooler(
  notes: Notes,
  calendar: Calendar,
  file: CoolerFile,
  path: string,
  history: CoolerHistory | null,
): TripCooler {
  const room = insideOf(notes, file, path);
  const holds = file.holds ?? notes.assume(`${path}.holds`, "any", "not given");
  const nothing = "not given: nothing there";
  const keep = "not given: meltwater stays in";
  return {
    name: file.name,
    number: file.number ?? null,
    size: room.size,
    volume_m3: room.volume_m3,
    body: bodyFor(notes, file, path, room, history),
    measured_frac: history === null ? null : relative(history.now_W_per_K),
    history,
    start: startOf(notes, file, path),
    holds,
    sealedUntil_s:
      file["sealed until"] === undefined
        ? null
        : calendar.seconds(`${path}.sealed until`, file["sealed until"]),
    openings: openingsOf(notes, file, path, holds),
    drain: file.drain ?? notes.assume(`${path}.drain`, "keep", keep, ["keep", "open"], "common-practice"),
    cover: file.cover ?? notes.assume(`${path}.cover`, "none", nothing),
    top: file.top ?? notes.assume(`${path}.top`, "none", nothing),
  };
}

interface Room {
  size: string;
  volume_m3: number;
  inside: CoolerBody["inside"] | null;
}

/** Room inside, from sizes measured inside, or else from the volume. */
function insideOf(notes: Notes, file: CoolerFile, path: string): Room {
  const stated_m3 = notes.siOrNull(`${path}.size`, file.size, measures.coolerSize);
  if (file.inside === undefined) {
    if (stated_m3 !== null) return { size: file.size as string, volume_m3: stated_m3, inside: null };
    const must = "a volume with its unit, such as 45 qt or 40 L, or else give inside";
    return { size: "", volume_m3: notes.refuse(`${path}.size`, must, undefined), inside: null };
  }
  const side = (key: "length" | "width" | "height"): number =>
    notes.si(`${path}.inside.${key}`, (file.inside as Record<typeof key, string>)[key], measures.inside);
  const inside = { length_m: side("length"), width_m: side("width"), height_m: side("height") };
  const volume_m3 = inside.length_m * inside.width_m * inside.height_m;
  const litres = `${(volume_m3 * 1000).toFixed(volume_m3 < 0.01 ? 1 : 0)} L`;
  if (volume_m3 < measures.coolerSize.low || volume_m3 > measures.coolerSize.high) {
    notes.refuse(`${path}.inside`, measures.coolerSize.says, litres);
  } else if (stated_m3 !== null && (stated_m3 > 2 * volume_m3 || volume_m3 > 2 * stated_m3)) {
    notes.refuse(`${path}.size`, `about the room of inside, ${litres}`, file.size);
  }
  return { size: file.size ?? litres, volume_m3, inside };
}

const relative = ({ p10, p50, p90 }: Spread): Spread => ({ p10: p10 / p50, p50: 1, p90: p90 / p50 });

function bodyFor(
  notes: Notes,
  file: CoolerFile,
  path: string,
  room: Room,
  history: CoolerHistory | null,
): CoolerBody {
  const build: BuildKey =
    file.build ??
    notes.assume(
      `${path}.build`,
      "standard",
      "not given: foamed walls and lid, no gasket",
      ["thin", "thick"],
      "common-practice",
    );
  const body = bodyOf(
    build,
    Number.isFinite(room.volume_m3) ? room.volume_m3 : 0.05,
    absorptanceOf(notes, file, path),
  );
  if (room.inside !== null) body.inside = room.inside;
  wallOf(notes, file, path, body);
  body.emptyWeight_kg =
    notes.siOrNull(`${path}.weight`, file.weight, measures.emptyWeight) ?? body.emptyWeight_kg;
  const stated = notes.siOrNull(`${path}.conductance`, file.conductance, measures.conductance);
  const whole = Number.isFinite(room.volume_m3) ? body : null;
  body.measured_W_per_K =
    history === null
      ? measuredIn(notes, `${path}.conductance`, stated, file.conductance, whole)
      : measuredIn(notes, `${path}.history`, history.now_W_per_K.p50, historyWords(file), whole);
  return body;
}

/** A conductance, within what walls of this body's joint and faces could have; as it is where its room is unknown. */
function measuredIn(
  notes: Notes,
  at: string,
  stated: number | null,
  typed: string | undefined,
  body: CoolerBody | null,
): number | null {
  if (stated === null || Number.isNaN(stated) || body === null || !isWhole(body)) return stated;
  const { least_W_per_K, most_W_per_K } = conductanceRange_W_per_K(body, medianClosures);
  // Rounded inwards, so that the ends told are ends allowed.
  const least = Math.ceil(least_W_per_K * 1.001 * 1000) / 1000;
  const most = Math.floor(most_W_per_K * 0.999 * 100) / 100;
  if (stated >= least && stated <= most) return stated;
  const must = `between ${least} W/K and ${most} W/K, which is what a body of this size and joint can have`;
  return notes.refuse(at, must, typed);
}

/** Whether all sizes of a body are known: those with a problem are NaN. */
function isWhole({ inside, lid, sides, base }: CoolerBody): boolean {
  const sizes = [...Object.values(inside), lid.thickness_m, sides.thickness_m, base.thickness_m];
  return sizes.every((size) => Number.isFinite(size) && size > 0);
}

function absorptanceOf(notes: Notes, file: CoolerFile, path: string): number {
  if (file.absorptance !== undefined) return file.absorptance;
  const why = "not given: as most coolers are";
  const color =
    file.color ?? notes.assume(`${path}.color`, "white", why, ["white", "medium"], "common-practice");
  return solarAbsorptances[color].p50;
}

/** Overrules the build's walls, zone by zone, with what the person knows. */
function wallOf(notes: Notes, file: CoolerFile, path: string, body: CoolerBody): void {
  const wall = file.wall;
  if (wall === undefined) return;
  const zones = (["lid", "sides", "base"] as const).filter((zone) => wall[zone] !== undefined);
  const why = "not given: as most chests with foamed walls";
  const filling =
    wall.insulation ??
    (zones.length === 0
      ? null
      : notes.assume(`${path}.wall.insulation`, "polyurethane", why, ["polyurethane", "EPS"]));
  for (const zone of zones) {
    body[zone].thickness_m = notes.si(`${path}.wall.${zone}`, wall[zone] as string, measures.wall);
  }
  if (filling === null) return;
  for (const zone of zones.length === 0 ? (["lid", "sides", "base"] as const) : zones)
    body[zone].insulation = filling;
}

/** How warm the body is when the load goes in. */
function startOf(notes: Notes, file: CoolerFile, path: string): BodyStart {
  const start = file.start ?? {};
  const at = `${path}.start`;
  if (start.at !== undefined) {
    const rest = (["prechill", "with", "kept"] as const).find((key) => start[key] !== undefined);
    if (rest !== undefined) notes.refuse(`${at}.${rest}`, "left out where at is given", start[rest]);
    return { kind: "uniform", body_C: notes.si(`${at}.at`, start.at, measures.outdoors) };
  }
  if (start.prechill !== undefined || start.with !== undefined) return prechillOf(notes, file, at);
  if (start.kept !== undefined)
    return { kind: "uniform", body_C: notes.si(`${at}.kept`, start.kept, measures.outdoors) };
  const typed = notes.assume(`${at}.at`, "22 C", "not given: kept in a room until packing", ["10 C", "35 C"]);
  return { kind: "uniform", body_C: notes.si(`${at}.at`, typed, measures.outdoors) };
}

function prechillOf(notes: Notes, file: CoolerFile, at: string): BodyStart {
  const { prechill, with: ice, kept } = file.start ?? {};
  if (prechill === undefined)
    notes.refuse(`${at}.prechill`, "a length of time, such as 12 h, beside with", undefined);
  if (ice === undefined)
    notes.refuse(`${at}.with`, "a weight of ice, such as 4 kg, beside prechill", undefined);
  const room =
    kept ?? notes.assume(`${at}.kept`, "22 C", "not given: pre-chilled in a room", ["15 C", "32 C"]);
  return {
    kind: "prechill",
    for_s: notes.siOrNull(`${at}.prechill`, prechill, measures.prechill) ?? Number.NaN,
    ice_kg: notes.siOrNull(`${at}.with`, ice, measures.mass) ?? Number.NaN,
    room_C: notes.si(`${at}.kept`, room, measures.outdoors),
  };
}

const usualOpenings = {
  food: ["8", "4", "16"],
  drinks: ["15", "8", "40"],
  any: ["10", "5", "25"],
} as const;

function openingsOf(
  notes: Notes,
  file: CoolerFile,
  path: string,
  holds: TripCooler["holds"],
): OpeningHabit | null {
  const typed = file.openings ?? {};
  const at = `${path}.openings`;
  const [usual, few, many] = usualOpenings[holds];
  const says = holds === "any" ? "not given" : `not given: usual for ${holds}`;
  const perDay = typed["per day"] ?? Number(notes.assume(`${at}.per day`, usual, says, [few, many]));
  const each =
    typed.for ?? notes.assume(`${at}.for`, "20 s", "not given: find it and shut", ["10 s", "60 s"]);
  const from = typed.from ?? notes.assume(`${at}.from`, "07:00", "not given: first opening at breakfast");
  const to = typed.to ?? notes.assume(`${at}.to`, "21:00", "not given: last opening in the evening");
  const habit = {
    perDay,
    each_s: notes.si(`${at}.for`, each, measures.opening),
    from_s: notes.clock(`${at}.from`, from),
    to_s: notes.clock(`${at}.to`, to),
  };
  if (habit.to_s <= habit.from_s) notes.refuse(`${at}.to`, `later than from, ${from}`, to);
  else if (perDay * habit.each_s > habit.to_s - habit.from_s) {
    notes.refuse(`${at}.per day`, "so few that the lid is not open all the time", perDay);
  }
  return perDay === 0 ? null : habit;
}
