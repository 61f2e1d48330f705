import type { IceForm } from "../cooler/types.ts";
import type { Band } from "../forecast/result.ts";
import {
  brickDimensions_ratio,
  type FreezingStuff,
  freezingStuff,
  phamFreezing_s,
  plankFreezing_s,
} from "../heat/freezingTime.ts";
import { foodDensity_kg_per_m3, foodEnthalpy_J_per_kg } from "../matter/foodProperties.ts";
import { foods } from "../matter/foods.ts";
import { packs } from "../matter/packs.ts";
import type { Spread } from "../matter/spread.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { FREEZER_FRAC, foodRoom_m3, iceRoom_m3 } from "./freezerRoom.ts";
import { pieceWords } from "./pieceWords.ts";

/**
 * Still air of a home freezer at the skin of a piece, radiation and package included; the low end is for pieces that touch.
 * Engineering judgement, in W/m²K.
 */
const freezerFilm_W_per_m2K: Spread = { p10: 5.5, p50: 8, p90: 10 };

/**
 * Heat that a home freezer takes out of what is put into it, beside its own losses, in W. Engineering judgement: a small
 * one does less, a chest with a switch for quick freezing more; what stands in it already warms a little meanwhile.
 */
export const freezerHeat_W: Spread = { p10: 30, p50: 50, p90: 80 };

/** Water from the tap, and food from the refrigerator. */
const TAP_C = 15;
const FRIDGE_C = 4;
/** A piece counts as frozen when its middle is this near to the freezer's air. */
const NEAR_K = 5;
const PHAM_REL = 0.1;
const hour_s = 3600;

/** Something to be frozen at home. */
export interface FreezerJob {
  /** "1-gal jug", "chili". */
  what: string;
  /** What kind of ice it is; null: food. */
  ice: { form: IceForm; each: string } | null;
  pieces: number;
  /** Of one piece. */
  room_m3: number;
  heat_J: number;
  /** From going in until its middle is frozen, alone on a shelf; p90 packed close. null inside: it never freezes there. */
  takes_h: Band;
}

interface Piece {
  stuff: FreezingStuff;
  sides_m: readonly [number, number, number];
  from_C: number;
}

function pham_h({ stuff, sides_m, from_C }: Piece, air_C: number, film_W_per_m2K: number): number | null {
  const centre_C = Math.min(air_C + NEAR_K, -3);
  if (air_C > -5 || centre_C <= air_C) return null;
  const thick_m = Math.min(...sides_m);
  const biot = (film_W_per_m2K * thick_m) / 2 / stuff.kFrozen_W_per_mK;
  const shape = { thick_m, dimensions_ratio: brickDimensions_ratio(biot, sides_m) };
  return phamFreezing_s(stuff, shape, from_C, air_C, centre_C, film_W_per_m2K) / hour_s;
}

/** Fast where air gets around a piece, slow where pieces touch; the slow end has the method's own error too. */
function bandOf(at: (film_W_per_m2K: number) => number | null): Band {
  const slow = at(freezerFilm_W_per_m2K.p10);
  return {
    p10: at(freezerFilm_W_per_m2K.p90),
    p50: at(freezerFilm_W_per_m2K.p50),
    p90: slow === null ? null : slow * (1 + PHAM_REL),
  };
}

/** Sides of a box of this volume, in these proportions. */
function sidesOf(volume_m3: number, [a, b, c]: readonly [number, number, number]): Piece["sides_m"] {
  const unit_m = Math.cbrt(volume_m3 / (a * b * c));
  return [a * unit_m, b * unit_m, c * unit_m];
}

/** Common proportions: a jug is upright and square, a block made at home a bread pan, a pack flat, ice cubes a tray. */
const proportions: Readonly<Record<IceForm, readonly [number, number, number]>> = {
  jug: [1, 1, 1.6],
  block: [1, 1.8, 3.5],
  cube: [1, 5, 8],
  crushed: [1, 5, 8],
  "gel pack": [1, 5, 7],
  "eutectic pack": [1, 5, 7],
  "dry ice": [1, 1, 1],
};

/**
 * One piece of ice or one pack to be made in a freezer.
 *
 * @param air_C of the freezer, −40…−1
 * @param each_kg 0.05…50
 */
export function iceJob(
  form: IceForm,
  each_kg: number,
  each: string,
  pieces: number,
  air_C: number,
): FreezerJob {
  const isPack = form === "gel pack" || form === "eutectic pack";
  return {
    what: pieceWords(1, each, form).replace(/^1 × /, ""),
    ice: { form, each },
    pieces,
    room_m3: iceRoom_m3(form, each_kg),
    heat_J: each_kg * (isPack ? packHeat_J_per_kg(form) : waterHeat_J_per_kg(air_C)),
    takes_h: isPack ? packTime(form, each_kg, air_C) : waterTime(form, each_kg, air_C),
  };
}

const water = foods.water!;

function waterHeat_J_per_kg(air_C: number): number {
  return foodEnthalpy_J_per_kg(water, TAP_C) - foodEnthalpy_J_per_kg(water, air_C);
}

function waterTime(form: IceForm, each_kg: number, air_C: number): Band {
  const sides_m = sidesOf(each_kg / 917, proportions[form]);
  const piece = { stuff: freezingStuff(water)!, sides_m, from_C: TAP_C };
  return bandOf((film) => pham_h(piece, air_C, film));
}

function packHeat_J_per_kg(form: keyof typeof packs): number {
  const { h_J_per_kg, t_C } = packs[form].curve;
  const solid = t_C.findIndex((t) => t > -80);
  return h_J_per_kg.at(-1)! - h_J_per_kg[solid]!;
}

/** Plank's law at the pack's own melting point; a freezer that is hardly colder never gets it done. */
function packTime(form: keyof typeof packs, each_kg: number, air_C: number): Band {
  const pack = packs[form];
  const drive_K = pack.melts_C - air_C;
  if (drive_K < 2) return { p10: null, p50: null, p90: null };
  const sides_m = sidesOf(each_kg / pack.density_kg_per_m3, proportions[form]);
  const { density_kg_per_m3, kFrozen_W_per_mK: k_W_per_mK } = pack;
  const stuff = { density_kg_per_m3, k_W_per_mK, latent_J_per_kg: packHeat_J_per_kg(form) };
  return bandOf((film) => {
    const biot = (film * sides_m[0]) / 2 / k_W_per_mK;
    const shape = { thick_m: sides_m[0], dimensions_ratio: brickDimensions_ratio(biot, sides_m) };
    return plankFreezing_s(stuff, drive_K, shape, film) / hour_s;
  });
}

/** Sides of one piece of a food as packed, its thickness as stated. */
function foodSides_m(food: TripFood): Piece["sides_m"] {
  const volume_m3 = food.mass_kg / food.pieces / foodDensity_kg_per_m3(food.like, FRIDGE_C);
  const { thick_m } = food;
  if (food.shape === "lump") return [thick_m, thick_m, thick_m];
  if (food.shape === "cylinder") return [thick_m, thick_m, Math.max(thick_m, volume_m3 / thick_m ** 2)];
  const wide_m = Math.sqrt(volume_m3 / thick_m / 1.4);
  return [thick_m, Math.max(thick_m, wide_m), Math.max(thick_m, 1.4 * wide_m)];
}

/** A food to be frozen from the refrigerator; null where it has no freezing point that a freezer reaches. */
export function foodJob(food: TripFood, air_C: number): FreezerJob | null {
  const stuff = freezingStuff(food.like);
  if (stuff === null || (food.like.freezes_C ?? 0) < air_C + 1) return null;
  const piece = { stuff, sides_m: foodSides_m(food), from_C: FRIDGE_C };
  const h = (t_C: number): number => foodEnthalpy_J_per_kg(food.like, t_C);
  return {
    what: food.name,
    ice: null,
    pieces: food.pieces,
    room_m3: foodRoom_m3(food) / food.pieces,
    heat_J: (food.mass_kg / food.pieces) * (h(FRIDGE_C) - h(air_C)),
    takes_h: bandOf((film) => pham_h(piece, air_C, film)),
  };
}

/** How many of the pieces one wants are frozen in time, and what does not let it be more. */
export interface Freezable {
  pieces: number;
  limit: "room" | "heat" | "time" | null;
  takes_h: Band;
  says: string;
}

/**
 * How many pieces a freezer can have frozen within so many hours, if nothing else is in it: room for them, heat that it can
 * take out (middle case), and the time that one piece takes (middle case).
 *
 * @param within_h 0…10000
 */
export function freezableWithin(
  freezer: NonNullable<Trip["freezer"]>,
  job: FreezerJob,
  within_h: number,
): Freezable {
  const room = Math.floor((FREEZER_FRAC * freezer.space_m3) / job.room_m3 + 1e-9);
  const heat = Math.floor((freezerHeat_W.p50 * within_h * hour_s) / job.heat_J + 1e-9);
  const inTime = (job.takes_h.p50 ?? Number.POSITIVE_INFINITY) <= within_h ? job.pieces : 0;
  const pieces = Math.min(job.pieces, room, heat, inTime);
  const limit = pieces === job.pieces ? null : pieces === inTime ? "time" : room <= heat ? "room" : "heat";
  return { pieces, limit, takes_h: job.takes_h, says: freezableWords(job, pieces, limit, within_h) };
}

/** "3 × 1-gal frozen jugs", "2 × chili". */
export function jobWords({ ice, what }: FreezerJob, pieces: number): string {
  return ice === null ? `${pieces} × ${what}` : pieceWords(pieces, ice.each, ice.form);
}

function freezableWords(
  job: FreezerJob,
  pieces: number,
  limit: Freezable["limit"],
  within_h: number,
): string {
  const head = `${pieces} of ${jobWords(job, job.pieces)} are frozen within ${Math.round(within_h)} h`;
  if (limit === null) return head;
  const why = {
    room: "the freezer has no room for more",
    heat: "it cannot take out more heat in that time",
    time: `one takes ${job.takes_h.p50 === null ? "longer than the freezer can ever do" : `about ${Math.round(job.takes_h.p50)} h`}`,
  }[limit];
  return `${head}: ${why}; buy block ice for the rest`;
}
