import { type Box, frozen_kg, isLoose, type Part } from "./box.ts";
import type { Fleet } from "./fleetState.ts";
import { addPart, partOf, splitPart } from "./layout.ts";
import { spilled_m3 } from "./lidOpen.ts";
import { clothFull_kg } from "./outside.ts";
import { drainTo } from "./stepper.ts";
import { makeLotTrack } from "./track.ts";
import type { Act, Lot } from "./types.ts";

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
  if (isLoose(part.form)) books.waterOut_kg += part.mass_kg;
}

function putIn(fleet: Fleet, box: Box, lot: Lot): void {
  const index = fleet.lots.push(lot) - 1;
  fleet.lotTracks.push(makeLotTrack(box.index));
  const part = partOf(lot, index, box.closures);
  bookIn(box, part);
  addPart(box, part);
}

function takeOut(fleet: Fleet, id: string, share_frac: number, t_s: number): void {
  const index = fleet.lots.findIndex((lot) => lot.id === id);
  for (const box of fleet.boxes)
    for (const part of box.parts) {
      if (part.lot !== index) continue;
      bookOut(box, splitPart(part, share_frac));
    }
  if (share_frac >= 1 && index >= 0) {
    fleet.lotTracks[index].left_s = t_s;
    for (const box of fleet.boxes) box.parts = box.parts.filter((part) => part.lot !== index);
  }
}

/** Everything of one box into another, lowest first; the water stays behind and is poured away. */
function merge(fleet: Fleet, from: Box, into: Box): void {
  const moving = [...from.parts].filter((part) => part.mass_kg > 0).sort((a, b) => a.layer - b.layer);
  from.parts = [];
  for (const part of moving) {
    bookOut(from, part);
    bookIn(into, part);
    addPart(into, part);
    fleet.lotTracks[part.lot].cooler = into.index;
  }
  drainTo(from, 0);
}

/**
 * Does one act to the fleet at its moment. Mass and heat that cross a border are booked.
 *
 * @returns the boxes whose contents changed, so that their steppers are made anew
 */
export function doAct(fleet: Fleet, act: Act): Box[] {
  if (act.do === "take out") {
    const index = fleet.lots.findIndex((lot) => lot.id === act.lot);
    const touched = fleet.boxes.filter((box) => box.parts.some((part) => part.lot === index));
    takeOut(fleet, act.lot, act.share_frac, act.t_s);
    return touched;
  }
  if (act.do === "merge") {
    const from = fleet.boxes[act.from];
    const into = fleet.boxes[act.into];
    merge(fleet, from, into);
    return [from, into];
  }
  const box = fleet.boxes[act.cooler];
  if (act.do === "put in") putIn(fleet, box, act.lot);
  else if (act.do === "drain") drainTo(box, box.closures.drainFilm_m * box.walls.floor_m2 * 1000);
  else if (act.do === "open") {
    box.openUntil_s = act.t_s + act.for_s;
    box.openAir_m3_per_s =
      spilled_m3(fleet.steppers[box.index].bench.touching.headspace_m3, act.for_s, box.closures.spill_s) /
      act.for_s;
    return [];
  } else {
    if (act.do === "cover") box.cover = act.cover;
    box.cloth_kg = clothFull_kg(box);
    return [];
  }
  return [box];
}
