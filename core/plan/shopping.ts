import type { IcePiece, PrepAct } from "../forecast/planResult.ts";
import type { Warning } from "../forecast/result.ts";
import type { Trip, TripSupply } from "../trip/types.ts";
import { eachWords, fromWhere, isFromHome } from "./iceSource.ts";
import { weekdayAt } from "./moment.ts";
import { pieceWords } from "./pieceWords.ts";
import { actId, type PrepClock } from "./prepClock.ts";

/** A shop without hours in the file: usual shopping hours. */
const usualHours = { from_s: 9 * 3600, to_s: 18 * 3600 };
/** Time from the shop's door to home and the freezer. */
const HOME_H = 0.5;

/** The last hour before packing at which a shop is open; null: closed all the week before. */
function lastOpen_ms(trip: Trip, clock: PrepClock, supply: TripSupply | undefined): number | null {
  const hours = supply?.open ?? usualHours;
  const closed = (supply?.closed ?? []).map((day) => day.trim().toLowerCase());
  for (let back = -1; back >= -7; back--) {
    const close_ms = clock.onDay_ms(clock.pack_ms, back, hours.to_s / 3600 - HOME_H);
    const open_ms = clock.onDay_ms(clock.pack_ms, back, hours.from_s / 3600);
    const day = weekdayAt(trip, (close_ms - clock.depart_ms) / 1000).toLowerCase();
    if (!closed.includes(day)) return clock.awake_ms(Math.max(open_ms, close_ms - 3_600_000));
  }
  return null;
}

function supplyOf(trip: Trip, piece: IcePiece): TripSupply | undefined {
  return trip.supply.find(
    (one) =>
      one.when_s === null &&
      one.form === piece.form &&
      Math.abs(one.each_kg - piece.each_kg) < 1e-3 * piece.each_kg,
  );
}

/** Bought pieces by place: an errand for each. */
function errands(trip: Trip, ice: readonly IcePiece[]): Map<string, IcePiece[]> {
  const byPlace = new Map<string, IcePiece[]>();
  for (const piece of ice.filter((one) => !isFromHome(one))) {
    const place = fromWhere(piece);
    const known = byPlace.get(place) ?? [];
    const same = known.find(
      (one) => one.form === piece.form && eachWords(trip, one) === eachWords(trip, piece),
    );
    if (same === undefined) known.push({ ...piece });
    else same.pieces += piece.pieces;
    byPlace.set(place, known);
  }
  return byPlace;
}

/**
 * Errands for bought ice, on the last day before packing on which its shop is open; it goes into the freezer until
 * packing where that has room, else into a cold cooler.
 */
export function buyActs(
  trip: Trip,
  clock: PrepClock,
  ice: readonly IcePiece[],
): { prep: PrepAct[]; warnings: Warning[] } {
  const prep: PrepAct[] = [];
  const warnings: Warning[] = [];
  for (const [place, pieces] of errands(trip, ice)) {
    const supply = supplyOf(trip, pieces[0]!);
    const at_ms = lastOpen_ms(trip, clock, supply);
    const words = pieces.map((one) => pieceWords(one.pieces, eachWords(trip, one), one.form)).join(" + ");
    if (at_ms === null) {
      const says = `${place} is closed on every day before departure: get ${words} elsewhere`;
      warnings.push({ code: "ice-closed", says, path: supply?.path ?? "supply" });
      continue;
    }
    prep.push({
      at: clock.iso(at_ms),
      does: `Buy ${words}: ${place}. At home into the freezer, as much as there is room for; the rest into a cooler that is cold already`,
      why: "ice kept in a deep freeze until packing is worth about a tenth more than ice at its melting point",
      id: actId("buy ice", place),
      lasts_h: null,
    });
  }
  return { prep, warnings };
}
