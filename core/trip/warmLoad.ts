import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import type { Calendar } from "./calendar.ts";
import { coolerNamed } from "./coolers.ts";
import type { InsideFile, RulesFile, WarmLoadFile } from "./file.ts";
import { kindOf, thicknessOf } from "./food.ts";
import { statedMass_kg } from "./ice.ts";
import { refuseMedicine } from "./medicines.ts";
import { measures, type Notes } from "./notes.ts";
import type { TripCooler, TripRules, TripWarmLoad } from "./types.ts";

const path = "warm load";

/** A big load that may come warm; null where there is none, or with the problem noted. */
export function resolveWarmLoad(
  notes: Notes,
  calendar: Calendar,
  coolers: readonly TripCooler[],
  file: WarmLoadFile | undefined,
): TripWarmLoad | null {
  if (file === undefined || refuseMedicine(notes, file, path)) return null;
  const like = kindOf(notes, file, path);
  if (like === null) return null;
  const density = foodDensity_kg_per_m3(like, Math.max(5, like.freezes_C ?? 5));
  const mass_kg = statedMass_kg(notes, `${path}.amount`, file.amount, density);
  const pieces =
    file.pieces ??
    Number(notes.assume(`${path}.pieces`, "1", "not given: in one piece, the slowest to cool"));
  const at = file.at ?? notes.assume(`${path}.at`, "37 C", "not given: as warm as the living animal");
  return {
    path,
    name: file.name,
    amount: file.amount,
    mass_kg,
    pieces,
    like,
    start_C: notes.si(`${path}.at`, at, measures.warmLoad),
    ...sizeOf(notes, file, mass_kg / pieces / density, like),
    boneIn: (file.bone ?? notes.assume(`${path}.bone`, "in", "not given: the slower way to cool")) === "in",
    latest_s: latestOf(notes, calendar, file.by),
    cooler: placeOf(notes, coolers, file.into),
  };
}

/** A piece of game or a big fish is flatter than a cube of its weight. */
const flatness = 0.75;

function sizeOf(
  notes: Notes,
  file: WarmLoadFile,
  piece_m3: number,
  like: TripWarmLoad["like"],
): Pick<TripWarmLoad, "thick_m" | "shape"> {
  if (file.thick !== undefined || file.shape !== undefined || !(piece_m3 > 0))
    return thicknessOf(notes, file, path, like);
  const mm = Math.min(600, Math.max(1, Math.round(1000 * flatness * Math.cbrt(piece_m3))));
  const typed = notes.assume(`${path}.thick`, `${mm} mm`, "not given: a lump of its weight, a little flat");
  return { thick_m: notes.si(`${path}.thick`, typed, measures.thickness), shape: "lump" };
}

function latestOf(notes: Notes, calendar: Calendar, typed: string): number {
  const latest_s = calendar.seconds(`${path}.by`, typed);
  if (latest_s >= calendar.duration_s)
    return notes.refuse(`${path}.by`, `before the return, ${calendar.return}`, typed);
  return latest_s;
}

function placeOf(notes: Notes, coolers: readonly TripCooler[], typed: string | undefined): number {
  if (typed !== undefined) return coolerNamed(notes, coolers, `${path}.into`, typed);
  const names = coolers.map((cooler) => cooler.name);
  if (names.length > 1)
    return notes.refuse(`${path}.into`, `the name of a cooler: ${names.slice(0, 10).join(", ")}`, undefined);
  notes.assume(`${path}.into`, names[0] as string, "not given: the only cooler");
  return 0;
}

/** What was found out about the rules of the place; what is left out stays an open question and is not assumed. */
export function resolveRules(notes: Notes, file: RulesFile | undefined): TripRules | null {
  if (file === undefined) return null;
  return {
    agency: file.agency ?? null,
    read: file.read ?? null,
    permit: file.permit ?? null,
    bears: file.bears ?? null,
    locker: file.locker === undefined ? null : lockerOf(notes, file.locker),
    glass: file.glass ?? null,
    fires: file.fires ?? null,
    packOut: file["pack out"] ?? null,
    carcass: file.carcass ?? null,
  };
}

function lockerOf(notes: Notes, file: InsideFile): NonNullable<TripRules["locker"]> {
  const side = (key: keyof InsideFile): number => notes.si(`rules.locker.${key}`, file[key], measures.inside);
  return { length_m: side("length"), width_m: side("width"), height_m: side("height") };
}
