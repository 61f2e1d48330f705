import type { Trip, TripSupply } from "../trip/types.ts";
import { dayStart_s, momentWords, weekdayAt } from "./moment.ts";

/** One chance on the way to get ice of one kind. */
export interface Visit {
  supply: TripSupply;
  /** At the counter: earliest and latest. */
  from_s: number;
  to_s: number;
  /** When the shop shuts on that day; null: not said. */
  closes_s: number | null;
  /** From the coolers to the counter, or back. `away` in the file is there and back. */
  way_s: number;
}

/** To be served before the shop shuts. Common practice. */
const SERVE_s = 300;
const QUARTER_s = 900;

/** Ice can be in the cooler from then on. */
export const backFirst_s = (visit: Visit): number => visit.from_s + visit.way_s;

function visitAt(trip: Trip, supply: TripSupply, when_s: number): Visit | string {
  const { where, open } = supply;
  const way_s = (supply.away_s ?? 0) / 2;
  const weekday = weekdayAt(trip, when_s);
  const told = `${where} (${momentWords(trip, when_s)})`;
  if (supply.closed.some((day) => day.toLowerCase() === weekday.toLowerCase()))
    return `${told} is closed on ${weekday}`;
  const day_s = dayStart_s(trip, when_s);
  const from_s = open === null ? when_s : Math.max(when_s, day_s + open.from_s);
  const closes_s = open === null ? null : day_s + open.to_s;
  const stay = trip.legs.find((leg) => leg.from_s <= when_s && when_s < leg.to_s) ?? trip.legs.at(-1);
  const backBy_s = Math.min(stay?.to_s ?? trip.duration_s, trip.duration_s);
  if (closes_s !== null && closes_s - SERVE_s < from_s) return `${told} has shut by then`;
  if (from_s + way_s >= trip.duration_s)
    return `${told} comes too late: the trip is over before the ice is there`;
  const to_s = closes_s === null ? from_s : Math.max(from_s, Math.min(closes_s - SERVE_s, backBy_s - way_s));
  return { supply, from_s, to_s, closes_s, way_s };
}

/** Every chance to get ice on the way, in order of time, and why others are none. Dry ice is left out. */
export function visitsOf(trip: Trip): { visits: Visit[]; shut: string[] } {
  const visits: Visit[] = [];
  const shut: string[] = [];
  for (const supply of trip.supply) {
    if (supply.when_s === null || supply.form === "dry ice") continue;
    if (supply.chance_frac === 0 || supply.max === 0) {
      shut.push(`${supply.where} has none to sell`);
      continue;
    }
    for (const when_s of supply.when_s) {
      const visit = visitAt(trip, supply, when_s);
      if (typeof visit === "string") shut.push(visit);
      else visits.push(visit);
    }
  }
  return { visits: visits.sort((a, b) => backFirst_s(a) - backFirst_s(b)), shut };
}

/** When to leave at the latest, be at the counter, and have the ice in. */
export interface Going {
  leave_s: number;
  there_s: number;
  in_s: number;
}

/**
 * The latest going to a visit that has the ice in by a moment, back to a quarter of an hour by the clock; never before the
 * shop can be reached open.
 */
export function latestGoing(trip: Trip, visit: Visit, needed_s: number): Going {
  const { from_s, to_s, way_s } = visit;
  const latest_s = Math.min(to_s, needed_s - way_s) - way_s;
  const clock_s = (latest_s + trip.departClock_s) % QUARTER_s;
  const leave_s = Math.max(latest_s - clock_s, from_s - way_s);
  return goingAt(visit, leave_s);
}

/** Going to a visit that leaves at a moment; the ice goes in at a whole minute, as a file has it. */
export function goingAt({ way_s }: Visit, leave_s: number): Going {
  return { leave_s, there_s: leave_s + way_s, in_s: 60 * Math.ceil((leave_s + 2 * way_s) / 60) };
}

/** One shop at one time: what is fetched there for several coolers is fetched together. */
export const isSameVisit = (one: Visit, other: Visit): boolean =>
  one.from_s === other.from_s && one.supply.where === other.supply.where;
