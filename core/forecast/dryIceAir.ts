import type { Fleet } from "../cooler/fleetState.ts";
import {
  airChangesNeeded_per_h,
  airLimits,
  carbonDioxide_ppm,
  closedRooms,
  dryIceCaution,
  dryIceGas_m3_per_h,
  timeToCarbonDioxide_h,
} from "../safety/dryIce.ts";
import type { Stay } from "../sky/types.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { staysOf } from "./load.ts";
import type { Warning } from "./result.ts";
import { valueAt } from "./series.ts";

const hour_s = 3600;

/** A closed stay of dry ice, from when it is there on. */
interface ClosedStay {
  cooler: number;
  stay: Stay;
  from_s: number;
  to_s: number;
}

/** Closed places that something stands in from a moment on, in this cooler and in those it is merged into. */
function closedStays(trip: Trip, cooler: number, from_s: number): ClosedStay[] {
  const merge = trip.events.find(
    (event) => event.do === "merge" && event.from === cooler && event.t_s >= from_s,
  );
  const end_s = merge?.t_s ?? trip.duration_s;
  const here = staysOf(trip, cooler)
    .map((stay) => ({
      cooler,
      stay,
      from_s: Math.max(stay.from_s, from_s),
      to_s: Math.min(stay.to_s, end_s),
    }))
    .filter((one) => closedRooms[one.stay.place] !== undefined && one.from_s < one.to_s);
  const later = merge?.do === "merge" ? closedStays(trip, merge.into, merge.t_s) : [];
  return [...here, ...later];
}

/** What a cooler loses of its dry ice in an hour from a moment on; what is put in meanwhile does not hide it. */
function loss_kg_per_h(fleet: Fleet, cooler: number, from_s: number, to_s: number): number {
  const { t_s, dryIce_kg } = fleet.tracks[cooler];
  const end_s = Math.min(to_s, from_s + hour_s);
  if (end_s <= from_s) return 0;
  let lost_kg = 0;
  let last_kg = valueAt(t_s, dryIce_kg, from_s);
  t_s.forEach((t, i) => {
    if (t <= from_s || t > end_s) return;
    lost_kg += Math.max(0, last_kg - dryIce_kg[i]);
    last_kg = dryIce_kg[i];
  });
  lost_kg += Math.max(0, last_kg - valueAt(t_s, dryIce_kg, end_s));
  return (lost_kg * hour_s) / (end_s - from_s);
}

/** The gas of all coolers that stand in the same kind of place then: nobody says that they are two places. */
function lossThere_kg_per_h(trip: Trip, fleet: Fleet, { stay, from_s, to_s }: ClosedStay): number {
  const at = (cooler: number): boolean =>
    staysOf(trip, cooler).some((s) => s.place === stay.place && s.from_s <= from_s && from_s < s.to_s);
  const there = trip.coolers.map((_, i) => i).filter(at);
  return there.reduce((sum, cooler) => sum + loss_kg_per_h(fleet, cooler, from_s, to_s), 0);
}

/** What a stay comes to: the gas, and the air that it needs. */
interface Gassing {
  closed: ClosedStay;
  gas_m3_per_h: number;
  room_m3: number;
  needed_per_h: number;
  /** As the trip has it; null: not known. */
  airChanges_per_h: number | null;
}

function gassingOf(trip: Trip, fleet: Fleet, closed: ClosedStay): Gassing {
  const gas_m3_per_h = dryIceGas_m3_per_h(Math.min(100, lossThere_kg_per_h(trip, fleet, closed)));
  const room_m3 = closedRooms[closed.stay.place]!.least_m3;
  const needed_per_h = airChangesNeeded_per_h({ gas_m3_per_h, room_m3 }, airLimits.day.limit_ppm);
  return {
    closed,
    gas_m3_per_h,
    room_m3,
    needed_per_h,
    airChanges_per_h: closed.stay.airChanges_per_h ?? null,
  };
}

/** Dry ice that is used up before the stay, in the middle case, may still be there in another. */
const isAired = ({ airChanges_per_h, needed_per_h }: Gassing): boolean =>
  airChanges_per_h !== null && airChanges_per_h > 0 && airChanges_per_h >= needed_per_h;

const twoDigits = (value: number): string =>
  value >= 10 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));

const spanWords = (time_h: number): string =>
  time_h < 1 ? `${Math.max(1, Math.floor(time_h * 60))} min` : `${twoDigits(time_h)} h`;

/** The limits that are reached while it stands there, and when. */
function reachedWords({ gas_m3_per_h, room_m3, airChanges_per_h, closed }: Gassing): string {
  const room = { gas_m3_per_h, room_m3, airChanges_per_h: airChanges_per_h ?? 0 };
  const stay_h = (closed.to_s - closed.from_s) / hour_s;
  const reached = Object.values(airLimits).flatMap(({ limit_ppm, says }) => {
    const time_h = timeToCarbonDioxide_h(room, limit_ppm);
    return time_h === null || time_h > stay_h ? [] : [`${says}, after ${spanWords(time_h)}`];
  });
  if (reached.length > 0) return reached.join("; ");
  const end_ppm = Math.round(carbonDioxide_ppm(room, stay_h) / 100) * 100;
  return `about ${end_ppm} ppm at the end of the stay in the middle case, in fresh air at its start`;
}

/** The worst stay of one lot: the one that needs most air. */
function airWarning(trip: Trip, fleet: Fleet, ice: TripIce): Warning | null {
  const all = closedStays(trip, ice.cooler, ice.putIn_s ?? 0).map((closed) => gassingOf(trip, fleet, closed));
  if (all.length === 0) return null;
  const { name } = trip.coolers[ice.cooler];
  const most = (some: readonly Gassing[]): Gassing =>
    some.reduce((a, b) => (b.needed_per_h > a.needed_per_h ? b : a));
  const open = all.filter((one) => !isAired(one));
  const worst = most(open.length > 0 ? open : all);
  const needs = `${twoDigits(Math.max(0.1, Math.ceil(worst.needed_per_h * 10) / 10))} changes of air an hour`;
  const gas = `${Math.ceil(worst.gas_m3_per_h * 1000)} L of carbon dioxide an hour`;
  if (open.length === 0)
    return {
      code: "dry-ice-aired",
      says: `${name}: its dry ice gives ${gas} in a closed place (${worst.closed.stay.place}); to stay under ${airLimits.day.says}, it needs ${needs}, and the file says ${twoDigits(worst.airChanges_per_h!)}. Keep it aired all the while.`,
      path: ice.path,
    };
  const places = [...new Set(open.map(({ closed }) => closed.stay.place))].join(", ");
  const known =
    worst.airChanges_per_h === null ? "" : ` at ${twoDigits(worst.airChanges_per_h)} changes of air an hour`;
  return {
    code: "dry-ice-air",
    says: `${name}: its dry ice would be in a closed place (${places}), and its gas can suffocate people. It gives ${gas}; in ${worst.room_m3} m³ of air${known} that is ${reachedWords(worst)}. To stay under 5000 ppm takes ${needs}. Do not travel or sleep so: carry it outside, or air the place and write how many changes of air it gets.`,
    path: ice.path,
  };
}

/** How much went while it waited for departure is told where the file says that it waited. */
function waitWords(ice: TripIce, aboard_kg: number | undefined): string {
  if (ice.boughtBefore_s === 0 || aboard_kg === undefined || ice.putIn_s !== null) return "";
  const share = Math.round((100 * aboard_kg) / ice.mass_kg);
  return ` About ${share} % of it is left at departure, ${twoDigits(ice.boughtBefore_s / hour_s)} h after it was bought.`;
}

/**
 * The cautions of dry ice, and for dry ice in a closed place what its gas comes to there: a warning that stays until the
 * leg or the move says enough changes of air, and is a note from then on.
 */
export function dryIceWarnings(trip: Trip, fleet: Fleet): Warning[] {
  return trip.ice
    .filter((ice) => ice.form === "dry ice")
    .flatMap((ice) => {
      const aboard_kg = fleet.input.coolers[ice.cooler]?.lots.find(({ id }) => id === ice.id)?.mass_kg;
      const says = dryIceCaution.says + waitWords(ice, aboard_kg);
      const caution = { code: dryIceCaution.code, says, path: ice.path };
      const air = airWarning(trip, fleet, ice);
      return air === null ? [caution] : [air, caution];
    });
}
