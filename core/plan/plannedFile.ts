import type { UnitSystem } from "../quantity/units.ts";
import type { AddedIce, EventEntry, PlannedChanges } from "../trip/plannedYaml.ts";
import { plannedYaml } from "../trip/plannedYaml.ts";
import type { Trip, TripEvent, TripIce } from "../trip/types.ts";
import { isoAt } from "./moment.ts";

/** What a plan changed in a trip: everything else is as the file has it. */
export interface Planned {
  /** The trip as planned. */
  trip: Trip;
  /** Ice that was added, aboard at departure or fetched on the way (`putIn_s`). */
  ice: readonly TripIce[];
  /** Events that were added. */
  events: readonly TripEvent[];
}

/**
 * The person's own file with the plan written into it: what was left open is filled in, ice, ice runs and merges are added.
 * Read again it gives the planned trip.
 *
 * @param text the file that `before` was read from
 * @param units what temperatures that nobody typed are told in
 */
export function plannedFile(
  text: string,
  before: Trip,
  { trip, ice, events }: Planned,
  units: UnitSystem,
  comment: string,
): string {
  const aboard = ice.filter(({ putIn_s }) => putIn_s === null);
  const fetched = ice.filter(({ putIn_s }) => putIn_s !== null);
  const changes: PlannedChanges = {
    food: trip.food.flatMap((food, i) => {
      const { open, putIn_s } = before.food[i]!;
      const place = food.cooler === null ? "dry box" : trip.coolers[food.cooler]!.name;
      const isOther = open.state && food.state !== before.food[i]!.state;
      const keys = {
        ...(open.place ? { in: place } : {}),
        ...(isOther ? { state: food.state } : {}),
        ...(isOther && food.state !== "dry" ? { at: `${Number(food.start_C.toFixed(4))} C` } : {}),
      };
      return putIn_s !== null || Object.keys(keys).length === 0 ? [] : [{ index: i, ...keys }];
    }),
    coolers: trip.coolers.flatMap(({ sealedUntil_s }, i) =>
      sealedUntil_s === null || sealedUntil_s === before.coolers[i]!.sealedUntil_s
        ? []
        : [{ index: i, "sealed until": isoAt(trip, sealedUntil_s) }],
    ),
    ice: aboard.map((lot) => addedIce(before, lot, units)),
    events: [
      ...fetched.map((lot) => iceEvent(before, lot, units)),
      ...events.map((event) => eventEntry(trip, event)),
    ],
  };
  return plannedYaml(text, changes, comment);
}

const percent = (share_frac: number): string => `${Number((100 * share_frac).toFixed(4))} %`;

function addedIce(trip: Trip, lot: TripIce, units: UnitSystem): AddedIce {
  const { form, pieces, each, layer, price } = lot;
  const name = trip.coolers[lot.cooler]!.name;
  const at = typedAt(trip, lot, units);
  return { form, pieces, each, at, liquid: percent(lot.liquid_frac), in: name, layer, price };
}

function iceEvent(trip: Trip, lot: TripIce, units: UnitSystem): EventEntry {
  const { form, pieces, each, layer, price } = lot;
  const solid = form === "jug" || form.endsWith("pack") || form === "dry ice";
  return {
    at: isoAt(trip, lot.putIn_s!),
    do: "add ice",
    to: trip.coolers[lot.cooler]!.name,
    form,
    pieces,
    each,
    from: typedAt(trip, lot, units),
    ...(solid ? {} : { liquid: percent(lot.liquid_frac) }),
    ...(layer === null ? {} : { layer }),
    ...(price === null ? {} : { price }),
  };
}

const nameOf = (trip: Trip, id: string): string => trip.food.find((food) => food.id === id)!.name;

function eventEntry(trip: Trip, event: TripEvent): EventEntry {
  const name = (cooler: number): string => trip.coolers[cooler]!.name;
  const at = isoAt(trip, event.t_s);
  if (event.do === "merge") return { at, do: "merge", from: name(event.from), into: name(event.into) };
  if (event.do === "open")
    return { at, do: "open", cooler: name(event.cooler), for: `${Number(event.for_s.toFixed(1))} s` };
  if (event.do === "take out")
    return { at, do: "take out", item: nameOf(trip, event.item), share: percent(event.share_frac) };
  return { at, do: event.do, cooler: name(event.cooler) };
}

/**
 * How cold a form of ice is, in the person's own words where they wrote it for supply or ice, else in the unit of the
 * file: a number of theirs is never handed back converted.
 */
function typedAt(trip: Trip, { form, start_C }: TripIce, units: UnitSystem): string {
  const typed = trip.typed as Record<"supply" | "ice", readonly { at?: string }[] | undefined>;
  const supply = trip.supply.map((lot, i) => ({ ...lot, start_C: lot.at_C, at: typed.supply?.[i]?.at }));
  const ice = trip.ice.map((lot, i) => ({ ...lot, at: typed.ice?.[i]?.at }));
  const own = [...supply, ...ice].find(
    (lot) => lot.form === form && lot.start_C === start_C && lot.at !== undefined,
  );
  if (own?.at !== undefined) return own.at;
  return units === "us" ? `${Number((start_C * 1.8 + 32).toFixed(4))} F` : `${Number(start_C.toFixed(4))} C`;
}
