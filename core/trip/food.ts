import type { Food } from "../matter/food.ts";
import { findFood } from "../matter/foods.ts";
import type { Calendar } from "./calendar.ts";
import { coolerNamed, dryBox } from "./coolers.ts";
import { resolveEating } from "./eating.ts";
import type { FoodFile, ShapeFile } from "./file.ts";
import { refuseMedicine } from "./medicines.ts";
import { inFahrenheit, measures, type Notes } from "./notes.ts";
import { type Eaters, resolveAmount } from "./portions.ts";
import type { TripCooler, TripFood } from "./types.ts";

/** A moment and a cooler at which food goes in later; null for what is aboard from the start. */
export interface PutIn {
  t_s: number;
  cooler: number;
}

/** What a food is read in the light of. */
export interface FoodSetting {
  calendar: Calendar;
  coolers: readonly TripCooler[];
  party: Eaters;
}

/** Room temperature of food that was never cooled. */
const ambientAt = "25 C";
/** Food stated at most this cold, and not frozen, counts as chilled. */
const chilledTo_C = 8;
/** Nobody calls warmer food chilled; it is mostly a Fahrenheit figure with the other letter. */
const chilledAtMost_C = 20;

/** One food or drink of the file; null when its kind is unknown, or a medicine (with the problem noted). */
export function resolveFood(
  notes: Notes,
  { calendar, coolers, party }: FoodSetting,
  file: FoodFile,
  path: string,
  putIn: PutIn | null,
): TripFood | null {
  if (refuseMedicine(notes, file, path)) return null;
  const like = kindOf(notes, file, path);
  const cooler = putIn === null ? aboardIn(notes, coolers, file, path) : refuseIn(notes, file, path, putIn);
  if (like === null) return null;
  const state = stateOf(notes, file, path, like);
  const start_C = startOf(notes, file, path, state, like);
  const { eat_s, parts_s, meals } = resolveEating(notes, calendar, file, path, like, putIn?.t_s ?? null);
  return {
    id: path,
    path,
    name: file.name,
    ...resolveAmount(notes, file, path, like, { party, meals }),
    like,
    raw: file.raw ?? like.rawAnimal,
    state,
    start_C,
    ...thicknessOf(notes, file, path, like),
    freezesBadly: file["freezes badly"] ?? like.freezesBadly,
    watertight: watertightOf(notes, file, path, like, cooler),
    eat_s,
    parts_s,
    cooler,
    layer: file.layer ?? null,
    warmBefore_s: warmBeforeOf(notes, file, path, like),
    putIn_s: putIn?.t_s ?? null,
    open: {
      place: putIn === null && file.in === undefined && state !== "dry",
      state: file.state === undefined,
    },
    contains: file.contains ?? null,
    price: file.price ?? null,
    reducedOxygen: file["vacuum packed"] ?? false,
    refrozen: file.refrozen ?? false,
    daysCold: file["days old"] ?? null,
  };
}

/** The kind of food it is like; guessed from its name only where the name is a known food. */
export function kindOf(
  notes: Notes,
  file: { name: string; like?: string | undefined },
  path: string,
): Food | null {
  const found = findFood(file.like ?? file.name);
  if ("food" in found) {
    if (file.like === undefined)
      notes.assume(`${path}.like`, found.food.key, "from its name", null, found.food.source);
    return found.food;
  }
  const any = "any food much like it will do";
  const must =
    file.like === undefined
      ? `given, since the name is not a food that is known; ${any}, such as like: ${found.near[0]}`
      : `a food that is known; ${any}`;
  notes.refuse(`${path}.like`, must, file.like ?? file.name, found.near.join(", "));
  return null;
}

function aboardIn(notes: Notes, coolers: readonly TripCooler[], file: FoodFile, path: string): number | null {
  if (file.in === undefined || file.in.trim().toLowerCase() === dryBox) return null;
  return coolerNamed(notes, coolers, `${path}.in`, file.in);
}

function refuseIn(notes: Notes, file: FoodFile, path: string, putIn: PutIn): number {
  if (file.in !== undefined) notes.refuse(`${path}.in`, "left out: the event's to names the cooler", file.in);
  return putIn.cooler;
}

type State = TripFood["state"];

function stateOf(notes: Notes, file: FoodFile, path: string, like: Food): State {
  if (file.state !== undefined) {
    if (file.state === "dry" && file.in !== undefined && file.in.trim().toLowerCase() !== dryBox) {
      notes.refuse(`${path}.state`, "frozen, chilled or ambient for food in a cooler", file.state);
    }
    return file.state;
  }
  const stateAt = `${path}.state`;
  if (file.in?.trim().toLowerCase() === dryBox)
    return notes.assume<State>(stateAt, "dry", "it is in the dry box");
  if (file.at === undefined) return usualStateOf(notes, file, stateAt, like);
  const at_C = notes.si(`${path}.at`, file.at, measures.anyTemperature);
  const state: State = at_C < (like.freezes_C ?? 0) ? "frozen" : at_C <= chilledTo_C ? "chilled" : "ambient";
  return notes.assume<State>(stateAt, state, "from its temperature");
}

/** As it is sold: a kind that is sold frozen, or a name that says so, goes in frozen. */
function usualStateOf(notes: Notes, file: FoodFile, stateAt: string, like: Food): State {
  const why = `not given: usual for ${like.name}`;
  if (like.usualState === "frozen") return notes.assume<State>(stateAt, "frozen", why);
  if ([file.name, file.like].some((name) => /^\s*frozen\b/i.test(name ?? "")))
    return notes.assume<State>(stateAt, "frozen", "from its name");
  const other = like.usualState === "chilled" ? "ambient" : "chilled";
  return notes.assume<State>(stateAt, like.usualState, why, [like.usualState, other]);
}

const usualStart: Readonly<Record<State, readonly [string, readonly [string, string] | null, string]>> = {
  frozen: ["-16 C", null, "not given: from a home freezer"],
  chilled: ["4 C", ["2 C", "7 C"], "not given: from a refrigerator"],
  ambient: [ambientAt, ["18 C", "32 C"], "not given: from a warm room"],
  dry: [ambientAt, null, "not given: in no cooler"],
};

/** A home freezer's range, kept below the food's own freezing point. */
const frozenRange = (like: Food): readonly [string, string] => [
  "-20 C",
  `${Math.min(-12, Math.floor((like.freezes_C ?? 0) - 1))} C`,
];

function startOf(notes: Notes, file: FoodFile, path: string, state: State, like: Food): number {
  const [usual, range, why] = usualStart[state];
  const typed =
    file.at ?? notes.assume(`${path}.at`, usual, why, state === "frozen" ? frozenRange(like) : range);
  const start_C = notes.si(`${path}.at`, typed, measures.anyTemperature);
  const freezes_C = like.freezes_C ?? 0;
  if (state === "frozen" && start_C >= freezes_C) {
    notes.refuse(
      `${path}.at`,
      `colder than ${freezes_C} C, where ${like.name} freezes, or state other than frozen`,
      typed,
      inFahrenheit(typed, -80, freezes_C),
    );
  }
  if (state === "chilled" && start_C > chilledAtMost_C) {
    const near = inFahrenheit(typed, freezes_C - 1, chilledAtMost_C);
    notes.refuse(
      `${path}.at`,
      `at most ${chilledAtMost_C} C for chilled food, or state ambient`,
      typed,
      near,
    );
  }
  if ((state === "chilled" || state === "ambient") && start_C < freezes_C - 1) {
    notes.refuse(
      `${path}.at`,
      `warmer than ${freezes_C} C, where ${like.name} freezes, or state frozen`,
      typed,
    );
  }
  return start_C;
}

const shapes = { bag: "slab", round: "cylinder", lump: "lump" } as const;

/** How thick one piece is, and of what shape: as stated, else usual for its kind. */
export function thicknessOf(
  notes: Notes,
  file: { shape?: ShapeFile | undefined; thick?: string | undefined },
  path: string,
  like: Food,
): Pick<TripFood, "thick_m" | "shape"> {
  const keys = (["bag", "round", "lump"] as const).filter((key) => file.shape?.[key] !== undefined);
  if (file.shape !== undefined && keys.length !== 1) {
    notes.refuse(`${path}.shape`, "a mapping with one of bag, round, lump", keys.join(", "));
  }
  const key = keys[0];
  if (key !== undefined) {
    if (file.thick !== undefined) notes.refuse(`${path}.thick`, "left out where shape is given", file.thick);
    const thick_m = notes.si(`${path}.shape.${key}`, file.shape?.[key] as string, measures.thickness);
    return { thick_m, shape: shapes[key] };
  }
  const mm = (factor: number): string => `${Math.round(like.thick_m * factor * 1000)} mm`;
  const why = `not given: usual for ${like.name}`;
  const typed = file.thick ?? notes.assume(`${path}.thick`, mm(1), why, [mm(0.6), mm(1.6)], like.source);
  return { thick_m: notes.si(`${path}.thick`, typed, measures.thickness), shape: like.shape };
}

/**
 * Silence about the package: cans, bottles and cartons of drink keep water out by nature; anything else is read as not
 * watertight, the stricter rule.
 */
function watertightOf(
  notes: Notes,
  file: FoodFile,
  path: string,
  like: Food,
  cooler: number | null,
): boolean {
  const usual = like.kind === "drink";
  if (file.watertight !== undefined || cooler === null) return file.watertight ?? usual;
  const [why, source] = usual
    ? ["not said: cans, bottles and cartons are; write false for an open one", "common-practice"]
    : ["not said, so it counts as wet once it lies in meltwater; write true if it is sealed in a bag or box"];
  notes.assume(`${path}.watertight`, String(usual), why as string, null, source);
  return usual;
}

/** Warm time before packing counts; silence about it is listed where the food is perishable. */
function warmBeforeOf(notes: Notes, file: FoodFile, path: string, like: Food): number {
  const at = `${path}.warm before`;
  const typed = file["warm before"] ?? "0 h";
  if (file["warm before"] === undefined && like.perishable)
    notes.assume(at, typed, "not said: as if cold without a break until it goes in");
  return notes.si(at, typed, measures.warmBefore);
}
