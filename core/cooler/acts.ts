import { type Box, frozen_kg, isLoose, type Part } from "./box.ts";
import { drainFilm_kg, drainTo } from "./drain.ts";
import type { Fleet } from "./fleetState.ts";
import { addPart, partOf, shedWater, splitPart, tidy } from "./layout.ts";
import { spilled_m3 } from "./lidOpen.ts";
import { clothFull_kg } from "./outside.ts";
import type { Act } from "./types.ts";

/** An act on one box; a merge is the only one on two. */
export type BoxAct = Exclude<Act, { do: "merge" }>;

const heat_J = (part: Part): number => part.skin_J + part.core_J;

/** Books a part that comes into the box. */
export function bookIn(box: Box, part: Part): void {
  const { books } = box;
  books.putIn_J += heat_J(part);
  if (part.form === "food") books.foodIn_J += heat_J(part);
  books.iceIn_kg += frozen_kg(part);
  if (isLoose(part.form)) books.waterIn_kg += part.mass_kg;
}

/** Books a part that leaves the box. */
function bookOut(box: Box, part: Part): void {
  const { books } = box;
  books.tookOut_J += heat_J(part);
  if (part.form === "food") books.foodOut_J += heat_J(part);
  books.iceOut_kg += frozen_kg(part);
  if (isLoose(part.form)) books.waterOut_kg += part.mass_kg;
}

function putIn(fleet: Fleet, box: Box, id: string): void {
  const index = fleet.lotIndex.get(id) ?? -1;
  const part = partOf(fleet.lots[index], index, box.closures);
  bookIn(box, part);
  addPart(box, part, fleet.lots[index].layer);
  shedWater(box);
}

function takeOut(fleet: Fleet, box: Box, id: string, share_frac: number, t_s: number): void {
  const index = fleet.lotIndex.get(id) ?? -1;
  // Whoever takes what is gone already takes nothing, and it stays gone since then.
  if (!box.parts.some((part) => part.lot === index)) return;
  for (const part of box.parts) if (part.lot === index) bookOut(box, splitPart(part, share_frac));
  if (share_frac < 1 || index < 0) return;
  fleet.lotTracks[index].left_s = t_s;
  box.parts = box.parts.filter((part) => part.lot !== index);
}

/** An opening joins one that is still going on: the lid stays open to the later end, and the air counts once more. */
function open(fleet: Fleet, box: Box, t_s: number, for_s: number): void {
  const until_s = Math.max(box.openUntil_s, t_s + for_s);
  const left_m3 = Math.max(0, box.openUntil_s - t_s) * box.openAir_m3_per_s;
  const headspace_m3 = fleet.steppers[box.index].bench.touching.headspace_m3;
  box.openUntil_s = until_s;
  box.openAir_m3_per_s =
    Math.max(left_m3, spilled_m3(headspace_m3, until_s - t_s, box.closures.spill_s)) / (until_s - t_s);
}

/** Everything of one box into another, lowest first; the water stays behind and is poured away. */
export function mergeBoxes(fleet: Fleet, from: Box, into: Box): void {
  const moving = from.parts.filter((part) => part.mass_kg > 0).sort((a, b) => a.layer - b.layer);
  from.parts = [];
  for (const part of moving) {
    bookOut(from, part);
    bookIn(into, part);
    addPart(into, part, null);
    fleet.lotTracks[part.lot].cooler = into.index;
  }
  drainTo(from, 0);
  tidy(from);
  tidy(into);
}

/**
 * Does one act to its box at its moment. Mass and heat that cross the border are booked.
 *
 * @returns whether the contents changed, so that the stepper is made anew
 */
export function doAct(fleet: Fleet, box: Box, act: BoxAct): boolean {
  if (act.do === "take out") takeOut(fleet, box, act.lot, act.share_frac, act.t_s);
  else if (act.do === "put in") putIn(fleet, box, act.lot.id);
  else if (act.do === "drain") drainTo(box, drainFilm_kg(box));
  else {
    if (act.do === "open") open(fleet, box, act.t_s, act.for_s);
    else {
      if (act.do === "cover") box.cover = act.cover;
      box.cloth_kg = clothFull_kg(box);
    }
    return false;
  }
  tidy(box);
  return true;
}
